/** Tubes of a job: which there are, and one more out of the catalogue. */
import type { Catalogue, JobEdit } from 'runback';
import { written } from '../../parts/read.ts';
import { idFrom } from './ids.ts';
import { entry, mmOf, nameOf, path, type Written, writtenOf } from './written.ts';

/** A choice of a list. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** "12 × 1", as written. */
export const sizeOf = ({ od, wall }: NonNullable<Written['tubes']>[string]): string =>
  `${written(od)} × ${written(wall)}`;

/** Materials of the catalogue and the job by name, in the order of their names. */
export function materialChoices(job: Written, catalogue: Catalogue): readonly Choice[] {
  const names = Object.entries(catalogue.materials).map(([id, { name }]) => [id, name] as const);
  const own = Object.entries(job.materials ?? {}).map(([id, { name }]) => [id, name ?? id] as const);
  return byLabel([...new Map([...names, ...own])]);
}

const byLabel = (pairs: readonly (readonly [string, string])[]): readonly Choice[] =>
  pairs.map(([value, label]) => ({ value, label })).toSorted((a, b) => a.label.localeCompare(b.label, 'en'));

/** Name of a material. */
export const materialName = (job: Written, catalogue: Catalogue, id: string): string =>
  entry(job.materials, id)?.name ?? entry(catalogue.materials, id)?.name ?? id;

/** Tubes a line can be of: the job's, and the one it is of now when that is the catalogue's. */
export function tubeChoices(job: Written, catalogue: Catalogue, now: string | null): readonly Choice[] {
  const own = Object.entries(job.tubes ?? {}).map(([id, tube]) => ({
    value: id,
    label: `${id} (${sizeOf(tube)}, ${materialName(job, catalogue, tube.material)})`,
  }));
  if (now === null || own.some(({ value }) => value === now)) return own;
  return [...own, { value: now, label: `${now} (of the catalogue)` }];
}

/** Sizes the catalogue has in a material. `od` and `wall` in mm. */
export function sizesIn(catalogue: Catalogue, material: string) {
  return Object.entries(catalogue.tubes)
    .filter(([, tube]) => tube.material === material)
    .map(([id, tube]) => ({ id, ...tube }))
    .toSorted((a, b) => a.od - b.od || a.wall - b.wall);
}

/** A tube of the catalogue put into the job: its id there, and the edits (none when it is there already). */
export function tubeFromCatalogue(
  job: Written,
  catalogue: Catalogue,
  id: string,
): { readonly id: string; readonly edits: readonly JobEdit[] } {
  const tube = entry(catalogue.tubes, id);
  if (!tube) return { id, edits: [] };
  const own = entry(job.tubes, id);
  if (own && own.material === tube.material && sameSize(own, tube, job)) return { id, edits: [] };
  const free = own ? idFrom(id, { taken: Object.keys(job.tubes ?? {}), otherwise: 'tube' }) : id;
  const { material, od, wall } = tube;
  const value = { material, od: writtenOf(od, job.units), wall: writtenOf(wall, job.units) };
  return { id: free, edits: [{ path: path('tubes', free), value }] };
}

const SAME_MM = 1e-6;

function sameSize(
  own: NonNullable<Written['tubes']>[string],
  tube: { readonly od: number; readonly wall: number },
  { units }: Written,
): boolean {
  const same = (a: number, b: number): boolean => Math.abs(a - b) < SAME_MM;
  return same(mmOf(own.od, units), tube.od) && same(mmOf(own.wall, units), tube.wall);
}

/** Names of the other lines that are of this tube, or bent on this bender. */
export function alsoUsing(
  job: Written,
  key: 'tube' | 'bender',
  of: { id: string; but: string },
): readonly string[] {
  return job.lines.flatMap((line) =>
    !('mirrorOf' in line) && line.id !== of.but && line[key] === of.id ? [nameOf(line)] : [],
  );
}
