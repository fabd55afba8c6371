/** A round bar along a trace, without twist, and a line drawn along its side. */
import {
  addScaled,
  angleBetween,
  anyNormal,
  cross,
  distance,
  dot,
  norm,
  rotate,
  sub,
  unit,
  type Vec3,
} from 'runback';
import { BufferGeometry, Float32BufferAttribute } from 'three';

const SIDES = 20;
/** Places nearer to each other than this are one, mm; directions this near to each other are one. */
const SAME_MM = 1e-4;
const STRAIGHT = 1e-9;

interface Ring {
  readonly at: Vec3;
  readonly along: Vec3;
  /** Unit vector square to the trace: where the line lies. */
  readonly side: Vec3;
}

/** Rings along the trace: the side is carried from each to the next by the turn between their directions. */
export function ringsAlong(trace: readonly Vec3[], side?: Vec3): readonly Ring[] {
  const places = trace.filter((place, i) => i === 0 || distance(place, trace[i - 1]!) > SAME_MM);
  const directions = places.map((place, i) => {
    const [last, next] = [places[i - 1] ?? place, places[i + 1] ?? place];
    return unit(sub(next, last));
  });
  const first = directions[0]!;
  const given = side ?? anyNormal(first);
  let carried = unit(addScaled(given, first, -dot(given, first)));
  return places.map((at, i) => {
    const along = directions[i]!;
    if (i > 0) carried = carry(carried, directions[i - 1]!, along);
    return { at, along, side: carried };
  });
}

function carry(v: Vec3, from: Vec3, to: Vec3): Vec3 {
  const axis = cross(from, to);
  return norm(axis) < STRAIGHT ? v : rotate(v, unit(axis), angleBetween(from, to));
}

/** The bar, closed at both ends. */
export function bar(places: readonly Vec3[], radius: number): BufferGeometry {
  const rings = ringsAlong(places);
  const position: number[] = [];
  const normal: number[] = [];
  for (const { at, along, side } of rings)
    for (let k = 0; k < SIDES; k++) {
      const out = rotate(side, along, (2 * Math.PI * k) / SIDES);
      position.push(...addScaled(at, out, radius));
      normal.push(...out);
    }
  const index: number[] = [];
  for (let i = 0; i + 1 < rings.length; i++)
    for (let k = 0; k < SIDES; k++) {
      const [a, b] = [i * SIDES + k, i * SIDES + ((k + 1) % SIDES)];
      index.push(a, b, a + SIDES, b, b + SIDES, a + SIDES);
    }
  const cap = (ring: Ring, way: 1 | -1): void => {
    const middle = position.length / 3;
    position.push(...ring.at);
    normal.push(...addScaled([0, 0, 0], ring.along, way));
    for (let k = 0; k < SIDES; k++) {
      position.push(...addScaled(ring.at, rotate(ring.side, ring.along, (2 * Math.PI * k) / SIDES), radius));
      normal.push(...addScaled([0, 0, 0], ring.along, way));
    }
    for (let k = 0; k < SIDES; k++) {
      const [a, b] = [middle + 1 + k, middle + 1 + ((k + 1) % SIDES)];
      index.push(...(way === 1 ? [middle, a, b] : [middle, b, a]));
    }
  };
  cap(rings[0]!, -1);
  cap(rings.at(-1)!, 1);
  return geometryOf(position, normal, index);
}

/** A narrow band along the side of a bar, standing a little off it: the pencil line. */
export function band(
  places: readonly Vec3[],
  how: { readonly side: Vec3; readonly radius: number },
): BufferGeometry {
  const position: number[] = [];
  const normal: number[] = [];
  const rings = ringsAlong(places, how.side);
  for (const { at, along, side } of rings)
    for (const lean of [-0.22, 0, 0.22]) {
      const out = rotate(side, along, lean);
      position.push(...addScaled(at, out, how.radius * 1.03));
      normal.push(...out);
    }
  const index: number[] = [];
  for (let i = 0; i + 1 < rings.length; i++)
    for (const k of [0, 1]) {
      const a = i * 3 + k;
      index.push(a, a + 1, a + 3, a + 1, a + 4, a + 3);
    }
  return geometryOf(position, normal, index);
}

function geometryOf(position: number[], normal: number[], index: number[]): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(position, 3));
  geometry.setAttribute('normal', new Float32BufferAttribute(normal, 3));
  geometry.setIndex(index);
  return geometry;
}
