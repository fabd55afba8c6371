/** Surroundings of a job: a new one, another id, and away with one, wherever it is named. */
import type { JobEdit, Vec3 } from 'runback';
import { idFrom } from './ids.ts';
import { entry, isMirror, path, roundOf, type Written, type WrittenPoint } from './written.ts';

export type NewShape = 'sphere' | 'box' | 'cylinder';

/** Half the size of a new one, mm. */
const HALF = 50;

/** A new surrounding about a place (mm), to be measured and named: its id, and the edit. */
export function newSurrounding(
  job: Written,
  shape: NewShape,
  about: Vec3,
): { readonly id: string; readonly edits: readonly JobEdit[] } {
  const list = job.surroundings ?? [];
  const id = idFrom(shape, { taken: list.map((one) => one.id), otherwise: shape });
  const at = (dx: number, dy: number, dz: number): WrittenPoint => {
    const round = (mm: number): number => roundOf(mm, job.units);
    return [round(about[0] + dx), round(about[1] + dy), round(about[2] + dz)];
  };
  const diameter = roundOf(2 * HALF, job.units);
  const sizes = {
    sphere: { centre: at(0, 0, 0), diameter },
    box: { min: at(-HALF, -HALF, -HALF), max: at(HALF, HALF, HALF) },
    cylinder: { from: at(0, 0, -HALF), to: at(0, 0, HALF), diameter },
  };
  const value = { id, shape, ...sizes[shape], because: 'fixed' };
  return { id, edits: [{ path: 'surroundings', insert: list.length, value }] };
}

/** Removes a surrounding, and every mention of it. */
export function removeSurrounding(job: Written, id: string): readonly JobEdit[] {
  const i = job.surroundings?.findIndex((one) => one.id === id) ?? -1;
  if (i < 0) return [];
  return [...mentions(job, id, null), { path: path('surroundings', i), value: undefined }];
}

/** Another id for a surrounding, wherever it is named. */
export function renameSurrounding(job: Written, id: string, to: string): readonly JobEdit[] {
  const i = job.surroundings?.findIndex((one) => one.id === id) ?? -1;
  if (i < 0) return [];
  return [{ path: path('surroundings', i, 'id'), value: to }, ...mentions(job, id, to)];
}

/** Edits of the lines that name a surrounding: its new id in its place, or nothing. */
function mentions(job: Written, id: string, to: string | null): readonly JobEdit[] {
  return job.lines.flatMap((line, i): JobEdit[] => {
    const at = path('lines', i);
    const ends = isMirror(line) ? [] : (['endA', 'endZ'] as const);
    const joined = ends.flatMap((end) =>
      isMirror(line) ? [] : joinEdits(`${at}.${end}.joins`, line[end]?.joins ?? [], [id, to]),
    );
    const kept = entry(line.clearance?.to, id);
    if (kept === undefined) return joined;
    const given = (key: string): string => `${at}.${path('clearance', 'to', key)}`;
    const last = Object.keys(line.clearance?.to ?? {}).length === 1;
    if (to === null) return [...joined, { path: last ? `${at}.clearance.to` : given(id), value: undefined }];
    return [...joined, { path: given(id), value: undefined }, { path: given(to), value: kept }];
  });
}

function joinEdits(
  at: string,
  joins: readonly string[],
  [id, to]: readonly [string, string | null],
): JobEdit[] {
  if (!joins.includes(id)) return [];
  const left = joins.flatMap((one) => (one !== id ? [one] : to === null ? [] : [to]));
  return [{ path: at, value: left.length === 0 ? undefined : left }];
}

/** The edit that adds a surrounding to those an end is seated in, or takes it out. */
export function toggleJoin(at: string, joins: readonly string[], id: string): JobEdit {
  const left = joins.includes(id) ? joins.filter((one) => one !== id) : [...joins, id];
  return { path: `${at}.joins`, value: left.length === 0 ? undefined : left };
}
