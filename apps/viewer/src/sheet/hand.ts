/** The opposite hand of a line: the lines of the job that are it, or the edit that adds it. */
import type { Line, WorkedJob, WorkedLine } from 'runback';
import { LONGEST_ID } from '../words/setup/edits/ids.ts';
import { acrossOf, type Made, oppositeHand } from '../words/setup/edits/lines.ts';
import type { Written } from '../words/setup/edits/written.ts';

/** The lines of the job that are `line` seen in a mirror. */
export function otherHands(job: WorkedJob, { id, mirror }: Line): readonly WorkedLine[] {
  return job.lines.filter(({ line }) => (mirror ? line.id === mirror.of : line.mirror?.of === id));
}

const TAIL = '-opposite';

/** Adds the mirror image of a line behind it, seen across the plane through zero that parts left from right. */
export function addedHand(job: Written, { id, axes }: Line): Made {
  const name = `${id.slice(0, LONGEST_ID - TAIL.length)}${TAIL}`;
  return oppositeHand(job, { of: id, name, across: acrossOf(axes.left), offset: undefined });
}
