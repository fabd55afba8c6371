import { type Container, type Element, SVG, withWindow } from '@svgdotjs/svg.js';
import { CAP_EM, cleanText } from './measure.ts';
import type { Grey, GroupItem, Item, Page, PathStep, Stroke, TextItem } from './types.ts';

/** The window svg.js draws in: a browser's own, or under Node the one of svgdom, handed in by the app. */
export type SvgWindow = object;

const FONT = 'DejaVu Sans Condensed, DejaVu Sans, Verdana, sans-serif';

/** Characters stand one by one, as they were measured. */
const STYLE = 'font-kerning:none;font-variant-ligatures:none';

export interface SvgOptions {
  /**
   * Whether the text carries the style that sets characters one by one (default). Without it nothing in the text is
   * against a Content-Security-Policy that forbids style attributes; the page it is shown in sets
   * `font-kerning: none; font-variant-ligatures: none` itself.
   */
  readonly styled?: boolean;
}

/**
 * A page as SVG text at true scale: one user unit is one millimetre. The same page gives the same bytes, in Node
 * and in a browser. `window` is only drawn in and left as it was.
 */
export function renderSvg(page: Page, window: SvgWindow, { styled = true }: SvgOptions = {}): string {
  const drawn = withWindow(window as Parameters<typeof withWindow>[0], () => draw(page));
  // A browser leaves quotes between tags as they are.
  const text = drawn.replace(/>[^<]+/g, (between) => between.replaceAll('"', '&quot;'));
  // Not set while drawing: under such a policy that alone would be a breach.
  return styled ? text.replace(JOIN, ` style="${STYLE}"${JOIN}`) : text;
}

const JOIN = ' stroke-linejoin="round"';

function draw(page: Page): string {
  const svg = SVG().attr({
    width: `${round(page.width)}mm`,
    height: `${round(page.height)}mm`,
    viewBox: `0 0 ${round(page.width)} ${round(page.height)}`,
    lang: cleanText(page.lang),
    role: 'img',
    'font-family': FONT,
    'stroke-linejoin': 'round',
  });
  // svg.js has no methods for these two.
  const words = [
    ['title', page.title],
    ['desc', page.description],
  ] as const;
  for (const [tag, text] of words) svg.element(tag).words(cleanText(text));
  svg.rect(round(page.width), round(page.height)).attr({ fill: hex(1) });
  const clips: Clips = { count: 0 };
  for (const item of page.items) add(svg, item, clips);
  return svg.svg();
}

/** Numbers the clips of one page, so that ids are the same on every run. */
interface Clips {
  count: number;
}

/** What prints is whole micrometres: the same bytes wherever the last bit of a double fell. Never −0. */
const round = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

function hex(grey: Grey): string {
  const level = Math.round(Math.min(1, Math.max(0, grey)) * 255);
  return `#${level.toString(16).padStart(2, '0').repeat(3)}`;
}

function paint(item: {
  readonly fill?: Grey | null;
  readonly stroke?: Stroke;
}): Record<string, string | number> {
  const fill = { fill: item.fill === undefined || item.fill === null ? 'none' : hex(item.fill) };
  const { stroke } = item;
  if (!stroke) return fill;
  return {
    ...fill,
    stroke: hex(stroke.grey),
    'stroke-width': round(stroke.width),
    ...(stroke.dash ? { 'stroke-dasharray': stroke.dash.map(round).join(' ') } : {}),
    ...(stroke.cap ? { 'stroke-linecap': stroke.cap } : {}),
  };
}

function add(parent: Container, item: Item, clips: Clips): void {
  const element = shape(parent, item, clips);
  if (item.name) element.addClass(item.name);
}

function shape(parent: Container, item: Item, clips: Clips): Element {
  switch (item.kind) {
    case 'line':
      return parent
        .line(round(item.from[0]), round(item.from[1]), round(item.to[0]), round(item.to[1]))
        .attr(paint(item));
    case 'rect':
      return parent
        .rect(round(item.width), round(item.height))
        .attr({ x: round(item.x), y: round(item.y), ...(item.round ? { rx: round(item.round) } : {}) })
        .attr(paint(item));
    case 'circle':
      return parent.circle().attr({
        cx: round(item.centre[0]),
        cy: round(item.centre[1]),
        r: round(item.radius),
        ...paint(item),
      });
    case 'path':
      // Set as an attribute: svg.js would otherwise parse and rewrite the path.
      return parent.path().attr({ d: item.steps.map(step).join(''), ...paint(item) });
    case 'text':
      return text(parent, item);
    case 'group':
      return group(parent, item, clips);
  }
}

function step(s: PathStep): string {
  if (s[0] === 'Z') return 'Z';
  if (s[0] === 'A') return `A${round(s[1])} ${round(s[1])} 0 ${s[2]} ${s[3]} ${round(s[4])} ${round(s[5])}`;
  return `${s[0]}${s
    .slice(1)
    .map((n) => round(n as number))
    .join(' ')}`;
}

function text(parent: Container, item: TextItem): Element {
  return parent.plain(cleanText(item.text)).attr({
    x: round(item.x),
    y: round(item.y),
    'text-anchor': item.anchor,
    'font-size': round(item.cap / CAP_EM),
    'font-weight': item.weight === 'bold' ? 'bold' : 'normal',
    ...paint({ fill: item.fill, ...(item.outline ? { stroke: item.outline } : {}) }),
  });
}

function group(parent: Container, item: GroupItem, clips: Clips): Element {
  const turn = item.turn ? ` rotate(${round(item.turn)})` : '';
  const g = parent.group().attr({ transform: `translate(${round(item.at[0])} ${round(item.at[1])})${turn}` });
  if (item.clip) {
    clips.count += 1;
    const id = `clip-${clips.count}`;
    const { x, y, width, height } = item.clip;
    const clip = g.element('clipPath').attr({ id });
    clip.node.appendChild(
      parent
        .rect(round(width), round(height))
        .attr({ x: round(x), y: round(y) })
        .remove().node,
    );
    g.attr({ 'clip-path': `url(#${id})` });
  }
  for (const inner of item.items) add(g, inner, clips);
  return g;
}
