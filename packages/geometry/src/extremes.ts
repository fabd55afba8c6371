import { ANGLE_RAD } from './numeric.ts';
import { pointAt } from './path.ts';
import type { Arc, Centreline, Piece, Vec3 } from './types.ts';
import { dot, sinCos } from './vec.ts';

/** A stretch of the line that rises (1), falls (−1) or is level (0) all along, from end A to end Z. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly sense: -1 | 0 | 1;
}

/**
 * The places inside a line where its height along `up` (a unit vector) turns from falling to rising (lows) and from
 * rising to falling (highs), in order from A; the two ends are left out. `at` is mm from A. Level is a rise or fall
 * of at most 1e-6°: a level stretch between a fall and a rise counts once, at its middle (half its length along the
 * line, whatever it is made of); between two rises, or reaching an end, it is no extreme.
 * @example
 * import { fromRows, lowsAndHighs } from '@runback/geometry';
 * const rows = [{ straightBefore: 50, turn: null, angle: Math.PI, radius: 40 }];
 * const hoop = fromRows(rows, 50, { origin: [0, 0, 0], direction: [0, 0, 1], normal: [0, 1, 0] });
 * lowsAndHighs(hoop, [0, 0, 1]).highs.map(({ point }) => point.map(Math.round)); // => [[40, 0, 90]]
 */
export function lowsAndHighs(
  c: Centreline,
  up: Vec3,
): {
  readonly lows: readonly { readonly at: number; readonly point: Vec3 }[];
  readonly highs: readonly { readonly at: number; readonly point: Vec3 }[];
} {
  const lows: { at: number; point: Vec3 }[] = [];
  const highs: { at: number; point: Vec3 }[] = [];
  let last: Stretch | null = null;
  for (const stretch of c.pieces.flatMap((piece) => stretchesOf(piece, up))) {
    if (stretch.sense === 0) continue;
    if (last !== null && last.sense !== stretch.sense) {
      const at = (last.end + stretch.start) / 2;
      (stretch.sense > 0 ? lows : highs).push({ at, point: pointAt(c, at) });
    }
    last = stretch;
  }
  return { lows, highs };
}

function stretchesOf(piece: Piece, up: Vec3): readonly Stretch[] {
  if (piece.length === 0) return [];
  if (piece.kind === 'straight')
    return [{ start: piece.start, end: piece.end, sense: senseOf(dot(piece.direction, up)) }];
  const rise = (angle: number): number => {
    const [s, c] = sinCos(angle);
    return c * dot(piece.v, up) - s * dot(piece.u, up);
  };
  const cuts = [0, ...levelAngles(piece, up), piece.angle];
  return cuts.slice(1).map((to, i): Stretch => {
    const from = cuts[i]!;
    const place = (angle: number) => (angle === piece.angle ? piece.end : piece.start + angle * piece.radius);
    // Half way between two cuts a sinusoid is at least half as large as anywhere between them.
    return { start: place(from), end: place(to), sense: senseOf(rise((from + to) / 2)) };
  });
}

function senseOf(rise: number): -1 | 0 | 1 {
  if (Math.abs(rise) <= ANGLE_RAD) return 0;
  return rise > 0 ? 1 : -1;
}

/** Angles inside an arc at which its tangent passes level: half a turn apart. */
function levelAngles(arc: Arc, up: Vec3): readonly number[] {
  const first = Math.atan2(dot(arc.v, up), dot(arc.u, up));
  const from = first < 0 ? first + Math.PI : first;
  return [from, from + Math.PI].filter((angle) => angle > 0 && angle < arc.angle);
}
