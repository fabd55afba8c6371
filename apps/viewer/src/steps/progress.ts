/** Where in the steps somebody is. */
import type { Done } from './done.ts';
import type { Step } from './step-list.ts';

export type Ticks = 'none' | 'some' | 'all';

/** How much of a step is ticked; a step with nothing to tick is never done. */
export function ticksOf({ items }: Step, done: Done): Ticks {
  const ticked = items.filter(({ id }) => done.has(id)).length;
  if (ticked === 0) return 'none';
  return ticked === items.length ? 'all' : 'some';
}

/** The first step that is not done, once something is; else the first. */
export function resumeAt(steps: readonly Step[], done: Done): number {
  if (steps.every((step) => ticksOf(step, done) === 'none')) return 0;
  const open = steps.findIndex((step) => step.items.length > 0 && ticksOf(step, done) !== 'all');
  return open === -1 ? steps.length - 1 : open;
}

export const clampStep = (at: number, { length }: readonly Step[]): number =>
  Math.min(Math.max(at, 0), Math.max(0, length - 1));
