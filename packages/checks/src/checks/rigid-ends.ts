import type { LineEnd } from '@runback/job';
import { sourcePath } from '../edits.ts';
import { finding } from '../finding.ts';
import { isFormed } from '../straights-of.ts';
import type { Finding } from '../types.ts';
import type { Work } from '../work.ts';

const CHECK = 'rigid-ends';
const BASIS =
  'AC 43.13-1B para 8-31c and MIL-H-8891A para 3.11.4.5: no straight rigid line between two rigid ends, at least one bend';

/** At least one bend between two rigid ends, to take up what heat and shaking do to the length. */
export function rigidEnds({ line, centreline }: Work): Finding[] {
  const bends = centreline.bends.length;
  const shared = {
    check: CHECK,
    found: bends,
    limit: 1,
    unit: 'count' as const,
    path: `${sourcePath(line)}.points`,
    basis: BASIS,
  };
  if (bends > 0) {
    const message = `${bends === 1 ? 'One bend lies' : `${bends} bends lie`} between the ends: the line can give.`;
    return [finding({ ...shared, verdict: 'pass', message })];
  }
  if (!line.endA.rigid || !line.endZ.rigid) {
    const message = `No bend, but end ${line.endA.rigid ? 'Z' : 'A'} can move: the line is not held at both ends.`;
    return [finding({ ...shared, verdict: 'pass', message })];
  }
  if (fastened(line.endA) && fastened(line.endZ)) {
    const message = 'A straight line between two rigid ends: give it at least one bend, or let one end move.';
    return [finding({ ...shared, verdict: 'fail', message })];
  }
  const message =
    'A straight line without a bend: if both ends are held rigidly it needs one. The job does not say.';
  return [finding({ ...shared, verdict: 'note', message })];
}

/** Held by something: it joins a surrounding, carries a nut, or is formed for a fitting. */
const fastened = (end: LineEnd): boolean => end.joins.length > 0 || end.nut !== null || isFormed(end);
