/** Applies the edits of a cure to a line built by `aLine`, as the job file would bring them back. */
import type { Edit } from '@runback/checks';
import type { Vec3 } from '@runback/geometry';
import type { Corner, Line } from '@runback/job';

const MM_PER_INCH = 25.4;

/**
 * The line with the edits done. Knows point places, radii and clips: what cures write. Values are in job units, and
 * those of a mirrored line are on the line that it mirrors.
 */
export const applyEdits = (line: Line, edits: readonly Edit[]): Line => edits.reduce(applyEdit, line);

function applyEdit(line: Line, { path, value }: Edit): Line {
  const mm = (x: number): number => (line.units === 'in' ? x * MM_PER_INCH : x);
  const index = line.corners.findIndex((corner) => path.startsWith(`${corner.path}.`));
  if (path.endsWith('.at') && index >= 0)
    return withCorner(line, index, { at: fromJob(line, value as Vec3, mm) });
  if (path.endsWith('.radius') && index >= 0) {
    const radius = mm(value as number);
    const die = line.bender?.dies.find((d) => Math.abs(d.radius - radius) < 1e-9) ?? null;
    return withCorner(line, index, { radius, die });
  }
  if (path.endsWith('.clips')) return { ...line, clips: (value as number[]).map(mm) };
  const clip = /\.clips\[(\d+)\]$/.exec(path);
  if (clip && line.clips)
    return { ...line, clips: line.clips.map((at, i) => (i === Number(clip[1]) ? mm(value as number) : at)) };
  throw new Error(`applyEdits: no such place in the line: ${path}`);
}

const withCorner = (line: Line, index: number, change: Partial<Corner>): Line => ({
  ...line,
  corners: line.corners.map((corner, i) => (i === index ? { ...corner, ...change } : corner)),
});

function fromJob(line: Line, value: Vec3, mm: (x: number) => number): Vec3 {
  const at = value.map(mm);
  const { mirror } = line;
  if (mirror) at[mirror.axis] = 2 * mirror.offset - at[mirror.axis]!;
  return at as unknown as Vec3;
}
