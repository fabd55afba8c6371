/** What a selection means for the points and bends of a line, so that every table marks the same thing. */
import type { Finding, WorkedLine } from 'runback';
import type { Selection } from '../../store/types.ts';

/** Index of the point a finding is about, by its path; `null` when it is about none. */
export function pointOf(worked: WorkedLine, finding: Finding): number | null {
  const { path } = finding;
  if (path === null) return null;
  const index = worked.line.corners.findIndex(
    (corner) => path === corner.path || path.startsWith(`${corner.path}.`),
  );
  return index < 0 ? null : index;
}

/** Points that the selection is or lies on. */
export function chosenPoints(worked: WorkedLine, selection: Selection | null): readonly number[] {
  if (selection === null) return [];
  if (selection.kind === 'point') return [selection.index];
  if (selection.kind === 'bend') return worked.centreline?.bends[selection.index]?.points ?? [];
  if (selection.kind !== 'finding') return [];
  const finding = worked.findings[selection.index];
  const point = finding ? pointOf(worked, finding) : null;
  return point === null ? [] : [point];
}

/** Index from end A of the bend that the selection is or belongs to; `null` for none. */
export function chosenBend(worked: WorkedLine, selection: Selection | null): number | null {
  if (selection === null) return null;
  if (selection.kind === 'bend') return selection.index;
  if (selection.kind === 'finding') {
    const bend = worked.findings[selection.index]?.bend ?? null;
    return bend === null ? null : bend - 1;
  }
  if (selection.kind !== 'point') return null;
  const index = worked.centreline?.bends.findIndex((bend) => bend.points.includes(selection.index)) ?? -1;
  return index < 0 ? null : index;
}

/** A, 1, 2, …, Z. */
export const pointName = (index: number, count: number): string =>
  index === 0 ? 'A' : index === count - 1 ? 'Z' : String(index);
