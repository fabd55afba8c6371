/** Which corners of a line have no room for their bend, as its findings say. */
import type { WorkedLine } from 'runback';

export function misfitPoints({ line, findings }: WorkedLine): ReadonlySet<number> {
  const paths = findings
    .filter(({ check, verdict }) => check === 'corner-fit' && verdict === 'fail')
    .map(({ path }) => path);
  const points = line.corners.flatMap(({ path }, index) =>
    paths.some((one) => one?.startsWith(`${path}.`)) ? [index] : [],
  );
  return new Set(points);
}
