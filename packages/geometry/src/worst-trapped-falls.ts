/** When the fall of a run proves that nothing stays in it, whatever the attitude. */
import type { Patch } from './attitude.ts';
import type { BoreSpan } from './pockets-run.ts';
import { worstFromCrest } from './slope-crest.ts';
import { worstOfPiece } from './slope-piece.ts';
import type { DrainEnd } from './types.ts';
import { goesOn, type Walk } from './worst-trapped-walk.ts';

/**
 * True when the tangent falls towards the outlet everywhere in every attitude of the patch, and no lip and no smaller
 * bore stands in the way: then the floor falls with it (worst-trapped-bound.ts), and the highest floor on the way out
 * is the one a place has itself. With both ends open that is asked on either side of one crest, of a run of one tube.
 */
export function fallsOut(
  run: readonly BoreSpan[],
  walk: Walk,
  ask: { readonly patch: Patch; readonly outlets: DrainEnd; readonly of: 'liquid' | 'air' },
): boolean {
  const { patch, outlets, of } = ask;
  if (outlets === 'both')
    return run.length === 1 && of === 'liquid' && worstFromCrest(run[0]!.pieces, patch).slope > 0;
  // Air rises out of the end the line falls away from.
  const low = (of === 'air') === (outlets === 'A') ? 'Z' : 'A';
  return (
    openWay(walk, outlets) &&
    run.every(({ pieces }) => pieces.every((piece) => worstOfPiece(piece, low, patch).slope > 0))
  );
}

/** No lip, no kink, and no joint at which the bore grows smaller on its way to the outlet. */
function openWay({ steps }: Walk, outlet: 'A' | 'Z'): boolean {
  return steps.every((step, i) => {
    const before = steps[i - 1];
    if (step.length === 0) return false;
    if (!step.first || !before) return true;
    return outlet === 'A' ? goesOn(before.z, step.a) : goesOn(step.a, before.z);
  });
}
