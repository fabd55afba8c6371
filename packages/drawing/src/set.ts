/** Setting text into zones, and the few shapes the sheet is made of. */
import { type FitOptions, fitLines } from './fit.ts';
import { blockHeight, type Line, leading } from './lines.ts';
import type { Anchor, Box, Grey, Item, LineItem, Point, RectItem, Stroke, TextItem, Zone } from './types.ts';

/** Cap height of seven points: nothing that is read at the bench should be smaller. mm */
export const READABLE = 1.8;

/** A piece of a page: what is drawn and the zones its texts stand in. */
export interface Part {
  readonly zones: readonly Zone[];
  readonly items: readonly Item[];
}

export const joined = (parts: readonly Part[]): Part => ({
  zones: parts.flatMap((p) => p.zones),
  items: parts.flatMap((p) => p.items),
});

export interface Style extends Omit<FitOptions, 'width' | 'height'> {
  readonly anchor?: Anchor;
  readonly at?: 'top' | 'middle' | 'bottom';
  readonly fill?: Grey;
}

/** One text in a zone of its own, placed by its style and never leaving it. An empty text makes nothing. */
export function cell(zone: Zone, text: string, style: Style): Part {
  const { anchor = 'start', at = 'middle', fill = 0, weight = 'regular', ...fit } = style;
  if (text === '') return { zones: [], items: [] };
  const { cap, lines } = fitLines(text, { ...fit, weight, width: zone.width, height: zone.height });
  const x = zone.x + (anchor === 'start' ? 0 : anchor === 'middle' ? zone.width / 2 : zone.width);
  const y = baseline(zone, { lines, cap, at });
  return { zones: [zone], items: typeset(lines, { x, y, cap, weight, anchor, fill, zone: zone.name }) };
}

/** Lines of text under each other, the first on the baseline `y`. */
export function typeset(lines: readonly Line[], how: Omit<TextItem, 'kind' | 'text'>): TextItem[] {
  const apart = leading(lines) * how.cap;
  return lines.map(({ text }, i) => ({ kind: 'text', ...how, y: how.y + i * apart, text }));
}

interface Block {
  readonly lines: readonly Line[];
  readonly cap: number;
  readonly at: 'top' | 'middle' | 'bottom';
}

/** Where the first line stands. In the middle means the capitals are, so that neighbours of one size line up. */
function baseline(zone: Zone, { lines, cap, at }: Block): number {
  const highest = zone.y + lines[0]!.up * cap;
  const lowest = highest + zone.height - blockHeight(lines) * cap;
  if (at === 'top') return highest;
  if (at === 'bottom') return lowest;
  const tall = cap * (1 + (lines.length - 1) * leading(lines));
  return Math.min(lowest, Math.max(highest, zone.y + (zone.height - tall) / 2 + cap));
}

export const zone = (name: string, [x, y]: Point, [width, height]: Point): Zone => ({
  name,
  x,
  y,
  width,
  height,
});

export const line = (from: Point, to: Point, stroke: Stroke): LineItem => ({
  kind: 'line',
  from,
  to,
  stroke,
});

export const rect = (
  { x, y, width, height }: Box,
  paint: { readonly fill?: Grey; readonly stroke?: Stroke; readonly round?: number },
): RectItem => ({ kind: 'rect', x, y, width, height, ...paint });

export const pen = (width: number, grey: Grey = 0): Stroke => ({ width, grey });
