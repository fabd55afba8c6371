/** Lines of a job: a new one, a copy, the opposite hand, another name, and away with one. */
import type { JobEdit, Vec3 } from 'runback';
import type { WrittenLength } from '../../parts/read.ts';
import { idFrom } from './ids.ts';
import { isMirror, nameOf, path, roundOf, type Written, type WrittenPoint, writtenOf } from './written.ts';

/** A line there will be, and the edits that make it. */
export interface Made {
  readonly id: string;
  readonly edits: readonly JobEdit[];
}

const idsOf = (job: Written): readonly string[] => job.lines.map(({ id }) => id);
/** Lines and runs share their ids. */
const takenIn = (job: Written): readonly string[] => [...idsOf(job), ...(job.runs ?? []).map(({ id }) => id)];
export const lineIdFrom = (job: Written, name: string): string =>
  idFrom(name, { taken: takenIn(job), otherwise: 'line' });

export interface NewLine {
  readonly name: string;
  readonly tube: string;
  readonly bender: string | null;
  readonly service: string;
  readonly from: WrittenPoint;
  readonly to: WrittenPoint;
}

/** A straight line between two points, at the end of the list. */
export function newLine(job: Written, { name, tube, bender, service, from, to }: NewLine): Made {
  const id = lineIdFrom(job, name);
  const value = {
    id,
    ...(name !== id && { name }),
    ...(service !== 'general' && { service }),
    tube,
    ...(bender !== null && { bender }),
    points: [{ at: from }, { at: to }],
  };
  return { id, edits: [{ path: 'lines', insert: job.lines.length, value }] };
}

/** How far apart the two points of a new line stand, and how far from the end of the chosen one. mm. */
const APART = 200;
const BESIDE = 100;

export interface Beside {
  /** End Z of the chosen line, mm, or null. */
  readonly end: Vec3 | null;
  readonly forward: Vec3;
  readonly left: Vec3;
}

/** Two points to begin with: beside the end of the chosen line, or from the origin, one behind the other. */
export function firstPoints(
  job: Written,
  { end, forward, left }: Beside,
): readonly [WrittenPoint, WrittenPoint] {
  const round = (mm: number): WrittenLength => {
    const value = roundOf(mm, job.units);
    return job.units === 'in' ? value : writtenOf(value, 'mm');
  };
  const along = (k: 0 | 1 | 2, ahead: number): WrittenLength =>
    round((end ? end[k] + BESIDE * left[k] : 0) + ahead * forward[k]);
  const point = (ahead: number): WrittenPoint => [along(0, ahead), along(1, ahead), along(2, ahead)];
  return [point(0), point(APART)];
}

/** The same line once more, behind it and marked as a copy. */
export function duplicate(job: Written, id: string): Made {
  const i = idsOf(job).indexOf(id);
  const line = job.lines[i];
  if (!line) return { id, edits: [] };
  const copy = idFrom(`${id}-copy`, { taken: takenIn(job), otherwise: 'line' });
  const value = { ...line, id: copy, name: `${nameOf(line)}, copy` };
  return { id: copy, edits: [{ path: 'lines', insert: i + 1, value }] };
}

export type Across = 'x' | 'y' | 'z';

export interface OppositeHand {
  readonly of: string;
  readonly name: string;
  readonly across: Across;
  readonly offset: WrittenLength | undefined;
}

/** The opposite hand of a line, behind it. */
export function oppositeHand(job: Written, { of, name, across, offset }: OppositeHand): Made {
  const id = lineIdFrom(job, name);
  const i = idsOf(job).indexOf(of);
  const value = { id, ...(name !== id && { name }), mirrorOf: of, across, offset: offset ?? 0 };
  return { id, edits: [{ path: 'lines', insert: i + 1, value }] };
}

/** The axis most across the machine: what swaps left and right. */
export function acrossOf(left: Vec3): Across {
  const sizes = left.map(Math.abs);
  return (['x', 'y', 'z'] as const)[sizes.indexOf(Math.max(...sizes))] ?? 'y';
}

/** Ids of the lines that are the opposite hand of this one. */
export const handsOf = (job: Written, id: string): readonly string[] =>
  job.lines.flatMap((line) => (isMirror(line) && line.mirrorOf === id ? [line.id] : []));

/** The runs that these lines are part of, by name. */
export const runsOf = (job: Written, ids: readonly string[]): readonly string[] =>
  (job.runs ?? []).filter(({ lines }) => lines.some((id) => ids.includes(id))).map(nameOf);

/**
 * Removes a line, and the opposite hands made from it, from the runs they are part of too; a run that is left without a
 * line goes. The edits from the last to the first, for places to hold.
 */
export function removeLine(job: Written, id: string): readonly JobEdit[] {
  const gone = [id, ...handsOf(job, id)];
  const lines = job.lines.flatMap((line, i) => (gone.includes(line.id) ? [path('lines', i)] : []));
  const runs = (job.runs ?? []).flatMap((run, r): readonly string[] => {
    const places = run.lines.flatMap((line, i) => (gone.includes(line) ? [path('runs', r, 'lines', i)] : []));
    return places.length === run.lines.length ? [path('runs', r)] : places;
  });
  return [...lines, ...runs].toReversed().map((place) => ({ path: place, value: undefined }));
}

/** Another id for a line, wherever it is named. */
export function renameLineId(job: Written, id: string, to: string): readonly JobEdit[] {
  const lines = job.lines.flatMap((line, i): readonly string[] => {
    if (line.id === id) return [path('lines', i, 'id')];
    return isMirror(line) && line.mirrorOf === id ? [path('lines', i, 'mirrorOf')] : [];
  });
  const runs = (job.runs ?? []).flatMap((run, r) =>
    run.lines.flatMap((line, i) => (line === id ? [path('runs', r, 'lines', i)] : [])),
  );
  return [...lines, ...runs].map((place) => ({ path: place, value: to }));
}
