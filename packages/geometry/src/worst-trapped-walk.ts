/** A run cut into short steps, laid out once, to be looked at under many directions of up. */
import { arcRadial } from './arc.ts';
import { PARALLEL } from './numeric.ts';
import { piecePoint, pieceTangent } from './path.ts';
import type { PlacedBore } from './pockets-run.ts';
import type { Piece, Vec3 } from './types.ts';
import { cross, negate, norm } from './vec.ts';

/** A cross-section of the bore. */
export interface Section {
  readonly index: number;
  readonly centre: Vec3;
  /** Unit, towards Z. */
  readonly tangent: Vec3;
  /** Unit, towards the centre of the bend. `null` on a straight. */
  readonly inward: Vec3 | null;
  readonly r: number;
}

/** From one section to the next of the same piece; for a lip both are the same. */
export interface Step {
  readonly a: Section;
  readonly z: Section;
  readonly length: number;
  /** Angle of arc, radians; 0 on a straight. */
  readonly turned: number;
  /** Radius of the bend; infinite on a straight. */
  readonly radius: number;
  /** How far the floor may stand above or below what its two ends say, mm. */
  readonly bulge: number;
  /** True for the first step of its piece, seen from A; and seen from Z. */
  readonly first: boolean;
  readonly last: boolean;
}

export interface Walk {
  readonly sections: readonly Section[];
  readonly steps: readonly Step[];
}

/** Steps of an arc, radians: the floor bulges by (R + r)/8 of the square, a thousandth or two of a millimetre. */
const ARC_STEP = 1 / 64;
/** Steps of a straight: as long as two bores, but so many at least and at most. */
const STRAIGHT_STEPS = [4, 24] as const;

export function walkOf(bores: readonly PlacedBore[]): Walk {
  const sections: Section[] = [];
  const steps: Step[] = [];
  bores.forEach((placed, i) => {
    const { piece, r } = placed.bore;
    if (piece.length === 0 && !narrows(bores, i)) return;
    const count = stepsOf(piece, r);
    const own = Array.from({ length: piece.length === 0 ? 1 : count + 1 }, (_, k) =>
      sectionAt(piece, { s: piece.start + (piece.length * k) / count, r, index: sections.length + k }),
    );
    sections.push(...own);
    const turned = piece.kind === 'arc' ? piece.angle / count : 0;
    const radius = piece.kind === 'arc' ? piece.radius : Number.POSITIVE_INFINITY;
    const bulge = piece.kind === 'arc' ? ((piece.radius + r) * turned ** 2) / 8 : 0;
    const shared = { length: piece.length / count, turned, radius, bulge };
    for (let k = 0; k < count; k++) {
      const [a, z] = [own[k]!, own[Math.min(k + 1, own.length - 1)]!];
      steps.push({ a, z, ...shared, first: k === 0, last: k === count - 1 });
    }
  });
  return { sections, steps };
}

/** A lip that is no smaller than what it sits between holds nothing. */
function narrows(bores: readonly PlacedBore[], i: number): boolean {
  const beside = [bores[i - 1], bores[i + 1]].flatMap((one) => (one ? [one.bore.r] : []));
  return bores[i]!.bore.r < Math.min(...beside);
}

function stepsOf(piece: Piece, r: number): number {
  if (piece.length === 0) return 1;
  if (piece.kind === 'arc') return Math.ceil(piece.angle / ARC_STEP);
  const [least, most] = STRAIGHT_STEPS;
  return Math.min(most, Math.max(least, Math.ceil(piece.length / (4 * r))));
}

function sectionAt(
  piece: Piece,
  { s, r, index }: { readonly s: number; readonly r: number; readonly index: number },
): Section {
  const [centre, tangent] = [piecePoint(piece, s), pieceTangent(piece, s)];
  const inward =
    piece.kind === 'arc'
      ? negate(arcRadial(piece, Math.min(piece.angle, (s - piece.start) / piece.radius)))
      : null;
  return { index, centre, tangent, inward, r };
}

/** True when the bore goes on through a joint, from `before` into `next`, without its floor stepping down. */
export const goesOn = (before: Section, next: Section): boolean =>
  next.r <= before.r && norm(cross(before.tangent, next.tangent)) <= PARALLEL_JOINT;

/** Tangents at a joint as they come out of a job: some roundings more than PARALLEL. */
const PARALLEL_JOINT = PARALLEL * 2 ** 10;
