/** How far things reach: for the ground under them, the shadow and the camera. */
import {
  add,
  addScaled,
  anyNormal,
  distance,
  dot,
  type Piece,
  piecePoint,
  type Solid,
  scale,
  sub,
  unit,
  type Vec3,
} from 'runback';
import { spokes } from './circle.ts';

/** Something round: the largest distance from `points` that belongs to it is `radius`. */
export interface Cloud {
  readonly points: readonly Vec3[];
  readonly radius: number;
}

/** Along a direction, how far a cloud reaches at most: the height of its highest point when that is up. */
export const reachOf = ({ points, radius }: Cloud, direction: Vec3): number =>
  Math.max(...points.map((point) => dot(point, direction))) + radius;

const ARC_PARTS = 24;

/** Points of a path close enough to tell how far it reaches: ends of straights, and along arcs. */
export function pathPoints(pieces: readonly Piece[]): readonly Vec3[] {
  return pieces.flatMap((piece) =>
    piece.kind === 'straight'
      ? [piece.from, piece.to]
      : Array.from({ length: ARC_PARTS + 1 }, (_, i) =>
          piecePoint(piece, piece.start + (i * piece.length) / ARC_PARTS),
        ),
  );
}

export const tubeCloud = (pieces: readonly Piece[], radius: number): Cloud => ({
  points: pathPoints(pieces),
  radius,
});

/** A half-space reaches everywhere and says nothing: it has no cloud. */
export function solidCloud(solid: Solid): Cloud | null {
  switch (solid.kind) {
    case 'half-space':
      return null;
    case 'sphere':
      return { points: [solid.centre], radius: solid.radius };
    case 'tube':
      return tubeCloud(solid.path, solid.radius);
    case 'box':
      return { points: boxCorners(solid), radius: 0 };
    case 'cylinder':
      return { points: rims(solid), radius: 0 };
  }
}

const SIGNS = [-1, 1] as const;

export const boxCorners = ({ centre, half, axes }: Solid & { readonly kind: 'box' }): readonly Vec3[] =>
  SIGNS.flatMap((x) =>
    SIGNS.flatMap((y) =>
      SIGNS.map((z) =>
        add(
          centre,
          addScaled(addScaled(scale(axes[0], x * half[0]), axes[1], y * half[1]), axes[2], z * half[2]),
        ),
      ),
    ),
  );

const RIM_POINTS = 24;

function rims({ from, to, radius }: Solid & { readonly kind: 'cylinder' }): readonly Vec3[] {
  const tangent = unit(sub(to, from));
  const out = spokes({ tangent, side: anyNormal(tangent) }, RIM_POINTS);
  return [from, to].flatMap((end) => out.map((spoke) => addScaled(end, spoke, radius)));
}

export interface Ball {
  readonly centre: Vec3;
  readonly radius: number;
}

/** A ball round some clouds: about the middle of their box. `null` of nothing. */
export function ballRound(clouds: readonly Cloud[]): Ball | null {
  const all = clouds.flatMap(({ points, radius }) => points.map((point) => ({ point, radius })));
  if (all.length === 0) return null;
  const edge = (k: 0 | 1 | 2, sign: 1 | -1): number =>
    sign * Math.max(...all.map(({ point, radius }) => sign * point[k] + radius));
  const middle = (k: 0 | 1 | 2): number => (edge(k, 1) + edge(k, -1)) / 2;
  const centre: Vec3 = [middle(0), middle(1), middle(2)];
  return { centre, radius: Math.max(...all.map(({ point, radius }) => distance(point, centre) + radius)) };
}
