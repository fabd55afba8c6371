/** A tube along a trace of the paper: as two outlines with its centreline, or as one fat line, nearer parts over farther. */
import type { Spot } from './picture-project.ts';
import type { Item, PathStep, Point, Stroke } from './types.ts';

export interface TubeStyle {
  /** OD on the paper, mm. */
  readonly width: number;
  /** `outline`: both edges and the centreline; `solid`: one fat line. */
  readonly as: 'outline' | 'solid';
  readonly grey?: number;
  readonly dash?: readonly number[];
  /** Name of the first item. */
  readonly name?: string;
}

const EDGE = 0.35;
/** White left at both sides of the nearer tube where two cross. mm */
const HALO = 0.6;
/** ISO 128-2:2020, line type 10 (long dash, dot) for centrelines, thinner (from memory). */
const CENTRELINE: Stroke = { width: 0.13, grey: 0, dash: [4, 0.8, 0.4, 0.8] };

/** The tube, whole first, then again in short pieces wherever it passes in front of itself. */
export function tubeItems(spots: readonly Spot[], style: TubeStyle): readonly Item[] {
  const points = spots.map((spot) => spot.at);
  const [first, ...rest] = stretch(points, style, false);
  const whole =
    first && style.name ? [{ ...first, name: style.name }, ...rest] : stretch(points, style, false);
  return [...whole, ...crossings(spots, style.width).flatMap((points) => stretch(points, style, true))];
}

function stretch(points: readonly Point[], style: TubeStyle, haloed: boolean): Item[] {
  const { width, as, grey = 0, dash } = style;
  const stroked = (stroke: Stroke): Item => ({ kind: 'path', steps: stepsOf(points), stroke });
  const halo = haloed ? [stroked({ width: width + 2 * HALO, grey: 1 })] : [];
  const line: Stroke = { width, grey, cap: haloed ? 'butt' : 'round', ...(dash ? { dash } : {}) };
  if (as === 'solid') return [...halo, stroked(line)];
  const ends = haloed ? [] : [cap(points[0]!, points[1]!, width), cap(points.at(-1)!, points.at(-2)!, width)];
  return [
    ...halo,
    stroked({ width, grey, cap: 'butt' }),
    stroked({ width: Math.max(width - 2 * EDGE, width * 0.3), grey: 1, cap: 'butt' }),
    ...ends.flat(),
    ...(haloed ? [] : [stroked(CENTRELINE)]),
  ];
}

/** The sawn end: a line across the tube. */
function cap(end: Point, next: Point, width: number): Item[] {
  const [dx, dy] = [next[0] - end[0], next[1] - end[1]];
  const long = Math.hypot(dx, dy);
  if (long === 0) return [];
  const [ax, ay] = [((-dy / long) * width) / 2, ((dx / long) * width) / 2];
  return [
    {
      kind: 'line',
      from: [end[0] + ax, end[1] + ay],
      to: [end[0] - ax, end[1] - ay],
      stroke: { width: EDGE, grey: 0 },
    },
  ];
}

export const stepsOf = (points: readonly Point[]): PathStep[] =>
  points.map(([x, y], i) => [i === 0 ? 'M' : 'L', x, y] as const);

/** The nearer stretches at places where a trace crosses itself, each a little longer than the tube is wide. */
export function crossings(spots: readonly Spot[], width: number): readonly (readonly Point[])[] {
  const found: (readonly Point[])[] = [];
  for (let i = 0; i + 1 < spots.length; i++)
    for (let j = i + 2; j + 1 < spots.length; j++) {
      const hit = meeting([spots[i]!, spots[i + 1]!], [spots[j]!, spots[j + 1]!]);
      if (!hit) continue;
      const nearer = hit.first < hit.second ? { index: i, t: hit.t } : { index: j, t: hit.u };
      if (Math.abs(hit.first - hit.second) > width * 0.5)
        found.push(around(spots, nearer, width * 0.8 + HALO));
    }
  return found;
}

type Pair = readonly [Spot, Spot];

/** Where two stretches cross on the paper, as shares of each, and their depths there. */
function meeting([a, b]: Pair, [c, d]: Pair): { t: number; u: number; first: number; second: number } | null {
  const [rx, ry] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const [sx, sy] = [d.at[0] - c.at[0], d.at[1] - c.at[1]];
  const area = rx * sy - ry * sx;
  if (area === 0) return null;
  const [qx, qy] = [c.at[0] - a.at[0], c.at[1] - a.at[1]];
  const [t, u] = [(qx * sy - qy * sx) / area, (qx * ry - qy * rx) / area];
  if (t < 0 || t > 1 || u < 0 || u > 1) return null;
  return { t, u, first: mix(a.depth, b.depth, t), second: mix(c.depth, d.depth, u) };
}

const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

/** The trace from `reach` mm before a place of it to `reach` mm behind it. */
function around(
  spots: readonly Spot[],
  place: { readonly index: number; readonly t: number },
  reach: number,
): readonly Point[] {
  const { index, t } = place;
  const middle: Point = between(spots[index]!.at, spots[index + 1]!.at, t);
  const back = walk(
    middle,
    spots
      .slice(0, index + 1)
      .map((spot) => spot.at)
      .reverse(),
    reach,
  );
  const ahead = walk(
    middle,
    spots.slice(index + 1).map((spot) => spot.at),
    reach,
  );
  return [...back.reverse(), middle, ...ahead];
}

/** The points passed walking `reach` mm from `from` along `points`, the last one cut to length. */
export function walk(from: Point, points: readonly Point[], reach: number): Point[] {
  const passed: Point[] = [];
  let [at, left] = [from, reach];
  for (const next of points) {
    const long = Math.hypot(next[0] - at[0], next[1] - at[1]);
    if (long >= left) return [...passed, between(at, next, long === 0 ? 0 : left / long)];
    passed.push(next);
    left -= long;
    at = next;
  }
  return passed;
}

export const between = (a: Point, b: Point, t: number): Point => [mix(a[0], b[0], t), mix(a[1], b[1], t)];
