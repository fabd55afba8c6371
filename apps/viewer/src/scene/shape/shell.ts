/** The surface at a distance from a solid: what a tube must stay out of. Corners and rims are round, as distance is. */
import { add, addScaled, anyNormal, cross, type Solid, scale, sub, unit, type Vec3 } from 'runback';
import { circle, fan, spokes, strip } from './circle.ts';
import { MeshBuilder, type MeshData } from './mesh.ts';
import { sidesWithin, stepWithin } from './rings.ts';
import { sweptTube } from './sweep.ts';

/** Solids with an inside: a half-space is shown as a plate. */
export type ClosedSolid = Exclude<Solid, { kind: 'half-space' }>;

/** How far the mesh may lie inside the true surface, mm. */
const CHORD = 0.25;

/** Mesh of the surface `off` mm outside a solid. */
export function shellOf(solid: ClosedSolid, off: number): MeshData {
  switch (solid.kind) {
    case 'sphere':
      return roundedBox({ centre: solid.centre, half: [0, 0, 0], axes: WORLD, off: solid.radius + off });
    case 'box':
      return roundedBox({ ...solid, off });
    case 'cylinder':
      return roundedCylinder(solid, off);
    case 'tube':
      return sweptTube(solid.path, { outer: solid.radius + off, chord: CHORD, ends: { kind: 'round' } });
  }
}

const WORLD: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

interface RoundedBox {
  readonly centre: Vec3;
  readonly half: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly off: number;
}

/**
 * A ball cut in eight and pulled apart by a box: circles of latitude, with two vertices at each quarter of longitude
 * and two circles at the equator, so that faces and edges lie between the pulled parts.
 */
function roundedBox({ centre, half, axes, off }: RoundedBox): MeshData {
  const builder = new MeshBuilder();
  const steps = Math.max(3, Math.ceil(Math.PI / 2 / stepWithin(off, CHORD)));
  const vertex = (local: Vec3, corner: Vec3): number => {
    const normal = along(axes, local);
    const at = addScaled(add(centre, along(axes, corner)), normal, off);
    return builder.vertex({ at, normal });
  };
  const circleAt = (latitude: number, top: 1 | -1): readonly number[] =>
    QUARTERS.flatMap(([sx, sy], quarter) =>
      Array.from({ length: steps + 1 }, (_, i) => {
        const longitude = ((quarter + i / steps) * Math.PI) / 2;
        const flat = Math.cos(latitude);
        const local: Vec3 = [flat * Math.cos(longitude), flat * Math.sin(longitude), Math.sin(latitude)];
        return vertex(local, [sx * half[0], sy * half[1], top * half[2]]);
      }),
    );
  const latitudes = Array.from({ length: steps + 1 }, (_, i) => ((i / steps) * Math.PI) / 2);
  const circles = [
    ...latitudes.toReversed().map((latitude) => circleAt(-latitude, -1)),
    ...latitudes.map((latitude) => circleAt(latitude, 1)),
  ];
  circles.slice(1).forEach((to, i) => {
    strip(builder, circles[i]!, to);
  });
  capBox(builder, circles[0]!, { steps, upward: false });
  capBox(builder, circles[circles.length - 1]!, { steps, upward: true });
  return builder.finish();
}

/** Signs of x and y in each quarter of longitude. */
const QUARTERS = [
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;

const along = (axes: readonly [Vec3, Vec3, Vec3], [x, y, z]: Vec3): Vec3 =>
  addScaled(addScaled(scale(axes[0], x), axes[1], y), axes[2], z);

/** The flat top or bottom: at the pole each quarter is one corner of it. */
function capBox(
  builder: MeshBuilder,
  pole: readonly number[],
  { steps, upward }: { readonly steps: number; readonly upward: boolean },
): void {
  const corner = (quarter: number): number => pole[quarter * (steps + 1)]!;
  const corners = [corner(0), corner(1), corner(2), corner(3)] as const;
  builder.quad(upward ? corners : [corners[3], corners[2], corners[1], corners[0]]);
}

/** A cylinder with its rims rounded by `off`. */
function roundedCylinder(
  { from, to, radius }: { readonly from: Vec3; readonly to: Vec3; readonly radius: number },
  off: number,
): MeshData {
  const builder = new MeshBuilder();
  const axis = unit(sub(to, from));
  const side = anyNormal(axis);
  const sides = sidesWithin(radius + off, CHORD);
  const out = spokes({ tangent: axis, side }, sides);
  const steps = Math.max(3, Math.ceil(Math.PI / 2 / stepWithin(off, CHORD)));
  const rim = (end: Vec3, top: 1 | -1): readonly (readonly number[])[] =>
    Array.from({ length: steps + 1 }, (_, i) => {
      const angle = ((i / steps) * Math.PI) / 2;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const normal = (spoke: Vec3): Vec3 => addScaled(scale(spoke, c), axis, top * s);
      return circle(builder, addScaled(end, axis, top * off * s), { radius: radius + off * c, out, normal });
    });
  const circles = [...rim(from, -1).toReversed(), ...rim(to, 1)];
  circles.slice(1).forEach((next, i) => {
    strip(builder, circles[i]!, next);
  });
  flatEnd(builder, { middle: addScaled(from, axis, -off), axis: scale(axis, -1), side, radius, sides });
  flatEnd(builder, { middle: addScaled(to, axis, off), axis, side, radius, sides });
  return builder.finish();
}

interface FlatEnd {
  readonly middle: Vec3;
  /** Unit, out of the solid. */
  readonly axis: Vec3;
  readonly side: Vec3;
  readonly radius: number;
  readonly sides: number;
}

function flatEnd(builder: MeshBuilder, { middle, axis, side, radius, sides }: FlatEnd): void {
  const out = spokes({ tangent: axis, side }, sides);
  const edge = circle(builder, middle, { radius, out, normal: () => axis });
  fan(builder, edge, builder.vertex({ at: middle, normal: axis }));
}

/** A square of a plane, `half` mm to each side of `centre`: its corners, anticlockwise about the normal. */
export function plateCorners(centre: Vec3, normal: Vec3, half: number): readonly Vec3[] {
  const x = anyNormal(normal);
  const y = cross(normal, x);
  return QUARTERS.map(([sx, sy]) => addScaled(addScaled(centre, x, sx * half), y, sy * half));
}
