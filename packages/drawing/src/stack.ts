/** Paragraphs under each other in one or two columns of a zone, as large as they will go. */
import { sizes } from './fit.ts';
import { blockHeight, broken, evened, type Line, shortened, type Words, wordsOf } from './lines.ts';
import { CAP_EM } from './measure.ts';
import { type Part, pen, rect, typeset } from './set.ts';
import type { Item, Weight, Zone } from './types.ts';

export interface Paragraph {
  readonly text: string;
  readonly weight?: Weight;
  /** A box to tick stands before it. */
  readonly tick?: boolean;
}

export interface StackStyle {
  readonly cap: number;
  readonly minCap: number;
  /** Columns allowed; fewer are tried first. Default 1. */
  readonly columns?: number;
  /** Air between paragraphs, in cap heights. Default 0.6. */
  readonly gap?: number;
  /** What the last line says where paragraphs are left over; default: that they are on a later page. */
  readonly pointer?: string;
}

export interface Stacked {
  readonly part: Part;
  /** Paragraphs there was no room for: they go on another page, whole. */
  readonly left: readonly Paragraph[];
  /** The size they were set at, mm. */
  readonly cap: number;
}

/** Sets paragraphs into a zone, at the largest size at which all fit; those that do not fit at the least are left. */
export function stack(zone: Zone, paragraphs: readonly Paragraph[], style: StackStyle): Stacked {
  const { cap, minCap, columns = 1, gap = GAP } = style;
  const measured = paragraphs.map(measure);
  for (const size of sizes(cap, minCap))
    for (let count = 1; count <= columns; count++) {
      const set = fill(zone, measured, { cap: size, count, gap });
      if (set.left.length === 0) return set;
    }
  return fill(zone, measured, { cap: minCap, count: columns, gap });
}

export const ON_A_LATER_PAGE = 'MORE on a later page.';

/** The same, but where paragraphs are left over the last line says where they are. */
export function stackOrPoint(zone: Zone, paragraphs: readonly Paragraph[], style: StackStyle): Stacked {
  const all = stack(zone, paragraphs, style);
  const pointer: Paragraph = { text: style.pointer ?? ON_A_LATER_PAGE, weight: 'bold' };
  if (all.left.length === 0) return all;
  for (let kept = paragraphs.length - all.left.length; ; kept--) {
    const set = stack(zone, [...paragraphs.slice(0, kept), pointer], { ...style, cap: style.minCap });
    if (set.left.length === 0 || kept === 0) return { ...set, left: paragraphs.slice(kept) };
  }
}

interface Measured {
  readonly paragraph: Paragraph;
  readonly words: Words;
}

const measure = (paragraph: Paragraph): Measured => ({
  paragraph,
  words: wordsOf(paragraph.text, paragraph.weight ?? 'regular'),
});

interface Columns {
  readonly cap: number;
  readonly count: number;
  readonly gap: number;
}

/** Between columns, mm. */
const GUTTER = 5;
/** Space between paragraphs, and room for a box to tick, in cap heights. */
const GAP = 0.6;
const TICK = 1.9;

function fill(zone: Zone, paragraphs: readonly Measured[], { cap, count, gap }: Columns): Stacked {
  const width = (zone.width - GUTTER * (count - 1)) / count;
  const bottom = zone.y + zone.height;
  const items: Item[] = [];
  let column = 0;
  let y = zone.y;
  for (const [i, { paragraph, words }] of paragraphs.entries()) {
    const indent = paragraph.tick ? TICK * cap : 0;
    const widthEm = ((width - indent) * CAP_EM) / cap;
    const lines = broken(words, widthEm, { anywhere: true }).map((line) =>
      evened(shortened(line, words.weight, { widthEm })),
    );
    const height = blockHeight(lines) * cap;
    if (y + height > bottom && y > zone.y && column < count - 1) {
      column += 1;
      y = zone.y;
    }
    if (y + height > bottom)
      return { part: { zones: [zone], items }, left: paragraphs.slice(i).map((p) => p.paragraph), cap };
    items.push(
      ...placed(paragraph, lines, { cap, x: zone.x + column * (width + GUTTER), y, zone: zone.name }),
    );
    y += height + gap * cap;
  }
  return { part: { zones: [zone], items }, left: [], cap };
}

interface Place {
  readonly cap: number;
  readonly x: number;
  readonly y: number;
  readonly zone: string;
}

function placed(paragraph: Paragraph, lines: readonly Line[], { cap, x, y, zone }: Place): Item[] {
  const first = y + lines[0]!.up * cap;
  const box = { x, y: first - cap * 1.05, width: cap * 1.1, height: cap * 1.1 };
  const text = {
    x: x + (paragraph.tick ? TICK * cap : 0),
    y: first,
    cap,
    weight: paragraph.weight ?? 'regular',
    anchor: 'start',
    fill: 0,
    zone,
  } as const;
  return [...(paragraph.tick ? [rect(box, { stroke: pen(0.3) })] : []), ...typeset(lines, text)];
}
