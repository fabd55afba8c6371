/** Overall dimensions of a view, outside of it: extension lines, a dimension line with arrow heads, the figure. */
import { CAP_EM, roomOf } from './measure.ts';
import type { Barrier } from './page-labels.ts';
import { line, pen } from './set.ts';
import type { Box, Item, Point } from './types.ts';

/** From the tube to the dimension line, mm. */
export const DIMENSION_OUT = 9;
const CAP = 2.5;
const AIR = 0.8;
const ARROW = 1.8;
const THIN = pen(0.18);

export interface Dimension {
  readonly items: readonly Item[];
  readonly box: Box;
  readonly barriers: readonly Barrier[];
}

export interface DimensionAsk {
  readonly text: string;
  readonly zone: string;
  /** The two ends measured, and where the dimension line runs. */
  readonly from: number;
  readonly to: number;
  readonly line: number;
  /** Where the extension lines begin. */
  readonly edge: number;
}

/** A level dimension: `from` and `to` are left and right, `line` and `edge` down the page. */
export function across(ask: DimensionAsk): Dimension {
  const size = sizeOf(ask.text);
  const wide = ask.to - ask.from;
  const inside = wide > size.width + 2 * ARROW + 1;
  const x = inside ? (ask.from + ask.to) / 2 - size.width / 2 : ask.to + AIR + ARROW + 1;
  const y = inside ? ask.line - AIR - size.height : ask.line - size.height / 2;
  return made(ask, { x, y, ...size }, (along, over) => [along, over]);
}

/** An upright dimension: `from` and `to` are top and bottom, `line` and `edge` across the page; the figure stands right of it. */
export function upright(ask: DimensionAsk): Dimension {
  const size = sizeOf(ask.text);
  const box = { x: ask.line + AIR, y: (ask.from + ask.to) / 2 - size.height / 2, ...size };
  return made(ask, box, (along, over) => [over, along]);
}

function sizeOf(text: string): { readonly width: number; readonly height: number } {
  const room = roomOf(text, 'regular');
  return { width: (room.em * CAP) / CAP_EM, height: (room.up + room.down) * CAP };
}

function made(ask: DimensionAsk, box: Box, at: (along: number, over: number) => Point): Dimension {
  const { from, to, line: over, edge, text, zone } = ask;
  const beyond = Math.sign(over - edge) * 1.2;
  const extensions: readonly (readonly [Point, Point])[] = [from, to].map((end) => [
    at(end, edge + beyond),
    at(end, over + beyond),
  ]);
  const tight = to - from < 2 * ARROW + 1;
  const ends: readonly [Point, Point] = tight
    ? [at(from - 3, over), at(to + 3, over)]
    : [at(from, over), at(to, over)];
  const lines = [...extensions, ends];
  return {
    box,
    barriers: lines.map(([a, b]) => ({ from: a, to: b, half: 0.2 })),
    items: [
      ...lines.map(([a, b]) => line(a, b, THIN)),
      head(at(from, over), at(tight ? from - 1 : from + 1, over)),
      head(at(to, over), at(tight ? to + 1 : to - 1, over)),
      {
        kind: 'text',
        x: box.x,
        y: box.y + roomOf(text, 'regular').up * CAP,
        cap: CAP,
        weight: 'regular',
        anchor: 'start',
        fill: 0,
        text,
        zone,
        name: 'dimension',
      },
    ],
  };
}

/** A slim filled head, its tip at the end, coming from `from`. */
function head(tip: Point, from: Point): Item {
  const [dx, dy] = [from[0] - tip[0], from[1] - tip[1]];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = [(dx / long) * ARROW, (dy / long) * ARROW];
  return {
    kind: 'path',
    fill: 0,
    steps: [
      ['M', ...tip],
      ['L', tip[0] + ux - uy * 0.18, tip[1] + uy + ux * 0.18],
      ['L', tip[0] + ux + uy * 0.18, tip[1] + uy - ux * 0.18],
      ['Z'],
    ],
  };
}
