import { endMovement, freeGrowth, growthLeg, type Heat, heldForce } from '@runback/bending';
import { type Centreline, dot, norm, POINT_MM, piecePoint, scale, sub, type Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { LineThermal } from '../fluid-types.ts';

/** Of the yield strength, where no code names an allowable stress. */
const OF_YIELD = 2 / 3;
/** Places along a bend at which its distance from the line between the ends is taken. */
const PLACES = 24;

/** What heat does to a line; `null` when the job gives no range or the metal's expansion is not known. */
export function thermalOf(line: Line, centreline: Centreline): LineThermal | null {
  const { expansion } = line.tube.material;
  const deltaK = farthest(line);
  if (deltaK === null || expansion === null) return null;
  const heat: Heat = { expansionPerK: expansion.value, deltaK };
  const [a, z] = endsOf(centreline);
  const { vector, distance } = endMovement(a, z, heat);
  return {
    deltaK,
    growth: freeGrowth(centreline.length, heat),
    movement: vector,
    leg: legOf({ line, centreline, heat }, distance),
  };
}

/** From the temperature it was fitted at to the end of the range that is farther from it, K. */
function farthest({ duty }: Line): number | null {
  const { temperature } = duty;
  const ends = [temperature?.lowest, temperature?.highest].flatMap((end) => (end ? [end.value] : []));
  const steps = ends.map((end) => end - temperature!.fitted.value);
  return steps.length === 0 ? null : steps.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
}

const endsOf = ({ pieces }: Centreline): readonly [Vec3, Vec3] => [pieces[0]!.from, pieces.at(-1)!.to];

/** What the tube may bear from its own growth, MPa, and who says so. */
export function growthStress({ tube }: Line): { readonly value: number; readonly source: string } | null {
  const { allowable, yield: yields } = tube.material;
  if (allowable !== null) return { value: allowable.value, source: `allowable stress, ${allowable.source}` };
  if (yields === null) return null;
  return {
    value: yields.value * OF_YIELD,
    source: `two thirds of the yield strength (common practice, no source), ${yields.source}`,
  };
}

interface Warmed {
  readonly line: Line;
  readonly centreline: Centreline;
  readonly heat: Heat;
}

/** Both ends held: the line's largest distance from the straight between them is the leg that has to give. */
function legOf({ line, centreline, heat }: Warmed, movement: number): LineThermal['leg'] {
  const stress = growthStress(line);
  const { youngs } = line.tube.material;
  if (!line.endA.rigid || !line.endZ.rigid || stress === null || youngs === null) return null;
  const { od, wall } = line.tube;
  const length = widest(centreline);
  const given = { od, youngsMPa: youngs.value, allowableMPa: stress.value, movement };
  if (length > POINT_MM) return { ...growthLeg({ ...given, leg: length }), length };
  // Nothing gives: the metal itself is squeezed or stretched.
  const held = Math.abs(heldForce({ od, wall, youngsMPa: youngs.value, ...heat }).stressMPa);
  const leg = growthLeg({ ...given, leg: 1 });
  return { ...leg, takes: held <= stress.value, stressMPa: held, length: 0 };
}

/** The largest distance from the straight through both ends; in bends at a few places, so never too large. */
function widest(centreline: Centreline): number {
  const [a, z] = endsOf(centreline);
  const chord = sub(z, a);
  const square = dot(chord, chord);
  const away = (point: Vec3): number => {
    const from = sub(point, a);
    return norm(square > 0 ? sub(from, scale(chord, dot(from, chord) / square)) : from);
  };
  return Math.max(
    ...centreline.pieces.flatMap((piece) => {
      const inside = piece.kind === 'arc' ? PLACES : 1;
      return Array.from({ length: inside }, (_, i) =>
        away(piecePoint(piece, piece.start + (piece.length * i) / inside)),
      );
    }),
  );
}
