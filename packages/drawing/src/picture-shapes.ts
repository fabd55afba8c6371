/** The solid things of a bend picture: former, clamp, the arrow round the tube. Millimetres of the thing. */
import { add, addScaled, rotate, scale, sinCos, type Vec3 } from '@runback/geometry';
import { type Laying, laid, type Projection, project, type Spot } from './picture-project.ts';
import { stepsOf } from './picture-tube.ts';
import { pen } from './set.ts';
import type { Item, PathItem, Point } from './types.ts';

/** What a solid is drawn with. */
export interface Lens {
  readonly projection: Projection;
  readonly laying: Laying;
}

export const seen = (places: readonly Vec3[], { projection, laying }: Lens): readonly Spot[] =>
  laid(
    places.map((place) => project(place, projection)),
    laying,
  );

export interface Disc {
  readonly centre: Vec3;
  /** Unit vectors: the axis, and two square to it. */
  readonly axis: Vec3;
  readonly across: readonly [Vec3, Vec3];
  readonly radius: number;
  /** Half its thickness. */
  readonly half: number;
}

const RIM = 48;

const ring = ({ centre, axis, across: [u, v], radius, half }: Disc, side: number): readonly Vec3[] =>
  Array.from({ length: RIM }, (_, i) => {
    const [sine, cosine] = sinCos((2 * Math.PI * i) / RIM);
    return addScaled(addScaled(addScaled(centre, axis, half * side), u, radius * cosine), v, radius * sine);
  });

/** A thick disc: its body, and on it the face that looks this way. */
export function disc(shape: Disc, lens: Lens, grey = 0.78): readonly Item[] {
  const faces = [1, -1].map((side) => seen(ring(shape, side), lens));
  const nearer = meanDepth(faces[0]!) < meanDepth(faces[1]!) ? faces[0]! : faces[1]!;
  const hub = seen(
    [addScaled(shape.centre, shape.axis, nearer === faces[0] ? shape.half : -shape.half)],
    lens,
  );
  return [
    closed(hull(faces.flat().map((spot) => spot.at)), grey - 0.16),
    closed(
      nearer.map((spot) => spot.at),
      grey,
    ),
    { kind: 'circle', centre: hub[0]!.at, radius: 0.7, fill: 0 },
  ];
}

const meanDepth = (spots: readonly Spot[]): number =>
  spots.reduce((sum, { depth }) => sum + depth, 0) / spots.length;

function closed(points: readonly Point[], fill: number): PathItem {
  return { kind: 'path', steps: [...stepsOf(points), ['Z']], fill, stroke: pen(0.2) };
}

/** A block by its middle and its three half sizes. */
export function block(centre: Vec3, halves: readonly [Vec3, Vec3, Vec3], lens: Lens): readonly Item[] {
  const [a, b, c] = halves.map((half) => towardLooker(half, lens.projection)) as [Vec3, Vec3, Vec3];
  const corner = add(add(add(centre, a), b), c);
  const face = (u: Vec3, v: Vec3): PathItem => {
    const square = [
      corner,
      addScaled(corner, u, -2),
      addScaled(addScaled(corner, u, -2), v, -2),
      addScaled(corner, v, -2),
    ];
    return closed(
      seen(square, lens).map((spot) => spot.at),
      0.62,
    );
  };
  return [face(a, b), face(b, c), face(a, c)];
}

const towardLooker = (v: Vec3, { into }: Projection): Vec3 =>
  v[0] * into[0] + v[1] * into[1] + v[2] * into[2] > 0 ? scale(v, -1) : v;

/** The convex outline of points, in order round it. */
export function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const p of list) {
      while (kept.length >= 2 && leftOf(kept.at(-2)!, kept.at(-1)!, p) <= 0) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const leftOf = (a: Point, b: Point, p: Point): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

export interface Turning {
  /** The middle of the circle, on the tube. */
  readonly centre: Vec3;
  readonly travel: Vec3;
  /** Where the arrow passes: the top, or for a bender the former. */
  readonly top: Vec3;
  /** 1 right-handed about travel. */
  readonly way: 1 | -1;
  readonly radius: number;
}

/** The shaft begins so far before the top and its head ends so far behind it, degrees. */
const TAIL = 150;
const NECK = 22;
const TIP = 58;
const SHAFT = 1.7;
const HEAD_HALF = 2.1;

/** The places of the arrow: over the near face of the tube (or behind it), its head at the top going the way of the turn. */
export function arrowPlaces({ centre, travel, top, way, radius }: Turning): {
  readonly shaft: readonly Vec3[];
  readonly tip: Vec3;
} {
  const at = (degrees: number): Vec3 =>
    addScaled(centre, rotate(top, travel, (way * degrees * Math.PI) / 180), radius);
  const count = 24;
  return {
    shaft: Array.from({ length: count + 1 }, (_, i) => at(-TAIL + ((TAIL + NECK) * i) / count)),
    tip: at(TIP),
  };
}

/** The arrow drawn: what lies behind the tube, and what lies before it. */
export function arrow(
  turning: Turning,
  lens: Lens,
): { readonly behind: readonly Item[]; readonly front: readonly Item[] } {
  const { shaft, tip } = arrowPlaces(turning);
  const spots = seen(shaft, lens);
  const [middle, end] = seen([turning.centre, tip], lens);
  const split = spots.map((spot) => spot.depth > middle!.depth);
  return {
    behind: runs(spots, split, true).map(stroked),
    front: [...runs(spots, split, false).map(stroked), ...head(spots.at(-1)!.at, end!.at)],
  };
}

const stroked = (points: readonly Point[]): Item => ({
  kind: 'path',
  steps: stepsOf(points),
  stroke: { width: SHAFT, grey: 0, cap: 'butt' },
});

/** Stretches of neighbours that share a side, each with the first of the next so that no gap shows. */
function runs(
  spots: readonly Spot[],
  sides: readonly boolean[],
  wanted: boolean,
): readonly (readonly Point[])[] {
  const found: Point[][] = [];
  for (let i = 0; i + 1 < spots.length; i++) {
    if (sides[i] !== wanted) continue;
    if (i > 0 && sides[i - 1] === wanted) found.at(-1)!.push(spots[i + 1]!.at);
    else found.push([spots[i]!.at, spots[i + 1]!.at]);
  }
  return found;
}

function head(neck: Point, tip: Point): Item[] {
  const [dx, dy] = [tip[0] - neck[0], tip[1] - neck[1]];
  const long = Math.hypot(dx, dy) || 1;
  const [ax, ay] = [(-dy / long) * HEAD_HALF, (dx / long) * HEAD_HALF];
  // Never so short that it is no arrow, however the circle lies.
  const by = Math.max(long, HEAD_LENGTH) / long;
  const end: Point = [neck[0] + dx * by, neck[1] + dy * by];
  const [left, right]: readonly Point[] = [
    [neck[0] + ax, neck[1] + ay],
    [neck[0] - ax, neck[1] - ay],
  ];
  return [
    {
      kind: 'path',
      name: 'turn-head',
      steps: [['M', ...end], ['L', ...left!], ['L', ...right!], ['Z']],
      fill: 0,
      stroke: pen(0.2, 1),
    },
  ];
}

const HEAD_LENGTH = 3.4;
