import { type Corner, type CornerPoint, type Layout, slackOf } from './corners.ts';
import { findCure } from './cure.ts';
import { POINT_MM } from './numeric.ts';
import type { Misfit } from './types.ts';

/** Everything that keeps a row of points from being rounded, from A to Z: too short legs and corners that turn back. */
export function findMisfits(
  points: readonly CornerPoint[],
  layout: Layout,
  { cures }: { readonly cures: boolean },
): readonly Misfit[] {
  const cure = (legs: readonly number[]): Misfit['cure'] => (cures ? findCure(points, layout, legs) : null);
  return layout.legs.flatMap((_, i) => [
    ...(slackOf(layout, i) < -POINT_MM ? [shortLeg(layout, i, cure([i]))] : []),
    ...(layout.corners[i]?.turnsBack ? [turnsBack(layout, i, cure([i, i + 1]))] : []),
  ]);
}

function shortLeg(layout: Layout, i: number, cure: Misfit['cure']): Misfit {
  const slack = slackOf(layout, i);
  const leg = layout.legs[i]!;
  const [before, after] = [layout.corners[i - 1], layout.corners[i]];
  const which = (before?.setback ?? 0) >= (after?.setback ?? 0) ? i - 1 : i;
  const corner = layout.corners[which]!;
  return {
    point: corner.point,
    reason: 'leg-too-short',
    radius: corner.radius,
    largestRadius: largestRadius(layout, which),
    found: leg.length,
    needed: leg.length - slack,
    leg: leg.points,
    cure,
  };
}

function turnsBack(layout: Layout, c: number, cure: Misfit['cure']): Misfit {
  const corner = layout.corners[c]!;
  const [before, after] = [layout.legs[c]!, layout.legs[c + 1]!];
  return {
    point: corner.point,
    reason: 'turns-back',
    radius: corner.radius,
    largestRadius: 0,
    found: 0,
    needed: 2 * corner.radius,
    leg: (before.length <= after.length ? before : after).points,
    cure,
  };
}

/** Largest radius at corner c with its neighbours held: the free part of the shorter adjoining leg / tan(angle/2). */
function largestRadius({ legs, corners }: Layout, c: number): number {
  const corner: Corner = corners[c]!;
  const freeBefore = legs[c]!.length - (corners[c - 1]?.setback ?? 0);
  const freeAfter = legs[c + 1]!.length - (corners[c + 1]?.setback ?? 0);
  return Math.max(0, Math.min(freeBefore, freeAfter)) / corner.tanHalf;
}
