/** The bore of one line as the liquid meets it, from end A to end Z. */
import { type BoreSpan, type Centreline, type DrainEnd, frameAt } from '@runback/geometry';
import type { Line, LineEnd } from '@runback/job';

/** True when every bend is wider than its bore: else neither a stick nor liquid can be worked in it. */
export const isOpen = ({
  line,
  centreline,
}: {
  readonly line: Line;
  readonly centreline: Centreline;
}): boolean => centreline.bends.every(({ radius }) => radius > line.tube.bore / 2);

/** The bore of a line that is open, with a lip at each end that has an opening smaller than it. */
export function lineBore(line: Line, centreline: Centreline): readonly BoreSpan[] {
  const tube: BoreSpan = { pieces: centreline.pieces, bore: line.tube.bore };
  return [
    ...lip(line, line.endA, [centreline, 0]),
    tube,
    ...lip(line, line.endZ, [centreline, centreline.length]),
  ];
}

/** Whether what is on this end is narrower than the bore. */
export const hasLip = ({ tube }: Line, { opening }: LineEnd): boolean =>
  opening !== null && opening < tube.bore;

/** Whether a lip stands in the way out. */
export const lipAtOutlet = (line: Line, outlets: DrainEnd): boolean =>
  (outlets !== 'Z' && hasLip(line, line.endA)) || (outlets !== 'A' && hasLip(line, line.endZ));

function lip(line: Line, end: LineEnd, [centreline, at]: readonly [Centreline, number]): readonly BoreSpan[] {
  if (end.opening === null || !hasLip(line, end)) return [];
  const { point, tangent } = frameAt(centreline, at);
  const rim = { from: point, to: point, direction: tangent, length: 0, start: at, end: at };
  return [{ pieces: [{ kind: 'straight', ...rim }], bore: end.opening }];
}
