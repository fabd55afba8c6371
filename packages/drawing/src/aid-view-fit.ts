/** Laying a stretch on paper: turned so that it takes the fewest sheets, and lies low, so that several share one. Millimetres, y down as on the page. */
import { sinCos } from '@runback/geometry';
import { toRadians } from '@runback/job';
import type { FlatPiece, Stretch } from './aid-stretches.ts';
import type { Box, Point } from './types.ts';

/** A window on the drawing: one sheet of it. `column` and `row` count from 0. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  /** In the drawing's mm. */
  readonly window: Box;
}

export interface Laid {
  readonly stretch: Stretch;
  /** Pieces in the drawing's own mm, y down. */
  readonly pieces: readonly FlatPiece[];
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** The sheets the tube lies on. */
  readonly tiles: readonly Tile[];
}

/** Neighbouring sheets share this much. mm */
export const OVERLAP = 12;
/** Round the outline: room for labels. mm */
const AIR = 10;
/** Turns tried, degrees. */
const TRY = 5;

export function layOut(
  stretch: Stretch,
  od: number,
  room: { readonly width: number; readonly height: number },
): Laid {
  const tries = Array.from({ length: 360 / TRY }, (_, i) => laidAt(stretch, i * TRY, { od, room }));
  return tries.reduce((best, one) => (isBetter(cost(one), cost(best)) ? one : best));
}

/** Sheets, then height in whole mm, then START on the left. */
function cost({ tiles, height, pieces }: Laid): readonly number[] {
  return [tiles.length, Math.round(height), pieces[0]!.from[0] < pieces.at(-1)!.to[0] ? 0 : 1];
}

function isBetter(one: readonly number[], other: readonly number[]): boolean {
  const i = one.findIndex((value, k) => value !== other[k]);
  return i >= 0 && one[i]! < other[i]!;
}

interface Sheet {
  readonly od: number;
  readonly room: { readonly width: number; readonly height: number };
}

function laidAt(stretch: Stretch, degrees: number, { od, room }: Sheet): Laid {
  const [s, c] = sinCos(toRadians(degrees));
  // The stretch has y up, the page y down: one sign keeps the side it is seen from.
  const turned = ([x, y]: Point): Point => [c * x - s * y, -(s * x + c * y)];
  const points = stretch.pieces.flatMap((piece) => samples(piece).map(turned));
  const pad = od / 2 + AIR;
  const [left, top] = [
    Math.min(...points.map((p) => p[0])) - pad,
    Math.min(...points.map((p) => p[1])) - pad,
  ];
  const width = Math.max(...points.map((p) => p[0])) + pad - left;
  const height = Math.max(...points.map((p) => p[1])) + pad - top;
  const place = (p: Point): Point => {
    const [x, y] = turned(p);
    return [x - left, y - top];
  };
  const columns = count(width, room.width);
  const rows = count(height, room.height);
  const inked = points.map(([x, y]): Point => [x - left, y - top]);
  const tiles = Array.from({ length: columns * rows }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const window = {
      x: column * (room.width - OVERLAP),
      y: row * (room.height - OVERLAP),
      width: columns === 1 ? width : room.width,
      height: rows === 1 ? height : room.height,
    };
    return { column, row, window };
  }).filter(({ window }) => inked.some((point) => near(point, window, od / 2)));
  return {
    stretch,
    pieces: stretch.pieces.map((piece) => moved(piece, place)),
    width,
    height,
    columns,
    rows,
    tiles,
  };
}

const count = (long: number, room: number): number =>
  long <= room ? 1 : Math.ceil((long - OVERLAP) / (room - OVERLAP));

const near = ([x, y]: Point, box: Box, reach: number): boolean =>
  x >= box.x - reach &&
  x <= box.x + box.width + reach &&
  y >= box.y - reach &&
  y <= box.y + box.height + reach;

const moved = (piece: FlatPiece, place: (p: Point) => Point): FlatPiece =>
  piece.kind === 'straight'
    ? { ...piece, from: place(piece.from), to: place(piece.to) }
    : { ...piece, from: place(piece.from), to: place(piece.to), centre: place(piece.centre) };

/** Apart on the centreline, mm. */
const SAMPLE = 4;

/** Points along the centreline of a piece, both ends among them; y up (`up` 1) or y down (−1). */
export function samples(piece: FlatPiece, up: 1 | -1 = 1): readonly Point[] {
  const { from, to } = piece;
  const long = piece.kind === 'straight' ? piece.length : piece.radius * piece.angle;
  const steps = Math.max(1, Math.ceil(long / SAMPLE));
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    if (i === steps) return to;
    if (piece.kind === 'straight')
      return [from[0] + ((to[0] - from[0]) * i) / steps, from[1] + ((to[1] - from[1]) * i) / steps];
    const [s, c] = sinCos(((piece.left ? up : -up) * piece.angle * i) / steps);
    const [x, y] = [from[0] - piece.centre[0], from[1] - piece.centre[1]];
    return [piece.centre[0] + c * x - s * y, piece.centre[1] + s * x + c * y];
  });
}
