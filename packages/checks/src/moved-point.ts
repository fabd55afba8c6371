import type { Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import { pointEdit, tidyPoint } from './edits.ts';
import type { Edit } from './types.ts';

/**
 * The edit of the job file that puts a point of a line (0 = end A) at `at`, mm: in the job's own units, with no more
 * decimals than a person would write, and for an opposite hand in the line that it mirrors. Coordinates that stay are
 * not touched.
 * @throws RangeError when the line has no such point.
 */
export function movedPoint(line: Line, index: number, at: Vec3): Edit {
  const corner = line.corners[index];
  if (corner === undefined)
    throw new RangeError(
      `movedPoint: line "${line.id}" has points 0 to ${line.corners.length - 1}, got ${index}`,
    );
  return pointEdit(line, index, tidyPoint(line, at, corner.at));
}
