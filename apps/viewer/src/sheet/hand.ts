/** The opposite hand of a line: the lines of the job that are it, or the edit that adds it. */
import type { JobEdit, Line, WorkedJob, WorkedLine } from 'runback';

export type Axis = 'x' | 'y' | 'z';
const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** The lines of the job that are `line` seen in a mirror. */
export function otherHands(job: WorkedJob, { id, mirror }: Line): readonly WorkedLine[] {
  return job.lines.filter(({ line }) => (mirror ? line.id === mirror.of : line.mirror?.of === id));
}

/** The axis of the machine that runs most nearly from side to side. */
export function sideways({ axes }: Line): Axis {
  const sizes = axes.left.map(Math.abs);
  return AXES[sizes.indexOf(Math.max(...sizes))]!;
}

export interface AddedHand {
  readonly id: string;
  readonly edits: readonly JobEdit[];
}

/** Adds the mirror image of a line behind it, seen across the plane through zero that parts left from right. */
export function addedHand({ lines }: WorkedJob, of: Line): AddedHand {
  const ids = lines.map(({ line }) => line.id);
  const id = freeId(ids, of.id);
  const value = { id, mirrorOf: of.id, across: sideways(of) };
  return { id, edits: [{ path: 'lines', insert: ids.indexOf(of.id) + 1, value }] };
}

/** An id may have this many characters. */
const LONGEST_ID = 64;

function freeId(taken: readonly string[], of: string): string {
  for (let n = 1; ; n++) {
    const tail = n === 1 ? '-opposite' : `-opposite-${n}`;
    const id = `${of.slice(0, LONGEST_ID - tail.length)}${tail}`;
    if (!taken.includes(id)) return id;
  }
}
