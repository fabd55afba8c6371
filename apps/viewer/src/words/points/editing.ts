/** What can be done to the points of a line, each as one step of the history with a name for undo. */
import type { Job, JobEdit, JobIssue, WorkedLine } from 'runback';
import type { Store } from '../../store/types.ts';
import { pointName } from '../parts/chosen.ts';
import type { WrittenLength } from '../parts/index.ts';
import {
  movePoint,
  removePoint,
  setCoordinate,
  setNote,
  setRadius,
  splitLeg,
  type WrittenPoints,
} from './edits.ts';
import { type DieChoice, dieChoices } from './radii.ts';

type Faults = Promise<readonly JobIssue[]>;

export interface Editing {
  readonly written: WrittenPoints;
  readonly dies: readonly DieChoice[];
  coordinate(point: number, axis: number, value: WrittenLength): Faults;
  radius(point: number, value: WrittenLength | undefined): Faults;
  note(point: number, value: string | undefined): Faults;
  split(leg: number): Faults;
  remove(point: number): Faults;
  move(point: number, to: number): Faults;
  choose(point: number): void;
}

interface Edited {
  readonly job: Job;
  readonly worked: WorkedLine;
  readonly written: WrittenPoints;
}

export function editing(store: Store, { job, worked, written }: Edited): Editing {
  const { line } = worked;
  const count = written.points.length;
  const say = (what: string, point: number): string => `${what} ${pointName(point, count)} of ${line.name}`;
  const dies = dieChoices(job, line.bender?.id, line.tube.od);
  const choose = (index: number): void => {
    const now = store.selection.value;
    if (now?.kind !== 'point' || now.index !== index) store.select({ kind: 'point', index });
  };
  /** Once the edit is made, the point it left behind is the selected one. */
  const then = async (label: string, edits: readonly JobEdit[], point: number | null): Faults => {
    const issues = await store.edit(label, edits);
    if (issues.length === 0) store.select(point === null ? null : { kind: 'point', index: point });
    return issues;
  };
  return {
    written,
    dies,
    choose,
    coordinate: (point, axis, value) =>
      store.edit(say('move point', point), setCoordinate(written, { point, axis }, value)),
    radius: (point, value) => store.edit(say('radius at point', point), setRadius(written, point, value)),
    note: (point, value) => store.edit(say('note at point', point), setNote(written, point, value)),
    split: (leg) => then(say('new point after', leg), splitLeg(written, leg, dies.length > 0), leg + 1),
    remove: (point) => then(say('remove point', point), removePoint(written, point), null),
    move: (point, to) => then(say('reorder point', point), movePoint(written, point, to), to),
  };
}
