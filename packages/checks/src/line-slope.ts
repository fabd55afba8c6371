import { type Centreline, lowsAndHighs, type SlopeExtreme, smallestSlope } from '@runback/geometry';
import type { Drain, Line } from '@runback/job';
import { slopeProof } from './slope-proof.ts';
import type { LineSlope } from './types.ts';

/** Smallest slope at rest. */
export const restSlope = (line: Line, drain: Drain, centreline: Centreline): SlopeExtreme =>
  smallestSlope(centreline, { drain: drain.to, axes: line.axes, attitudes: { kind: 'rest' } });

/** Smallest slope over all attitudes of the line. */
export const worstSlope = (line: Line, drain: Drain, centreline: Centreline): SlopeExtreme =>
  smallestSlope(centreline, { drain: drain.to, axes: line.axes, attitudes: line.attitudes });

/** The smallest slopes of a line that drains, what they prove, and its low and high points at rest. Null when nothing drains. */
export function lineSlope(line: Line, centreline: Centreline): LineSlope | null {
  const { drain, axes } = line;
  if (drain === null) return null;
  const found = {
    toward: drain.to,
    rest: restSlope(line, drain, centreline),
    worst: worstSlope(line, drain, centreline),
    ...lowsAndHighs(centreline, axes.up),
  };
  return { proof: slopeProof(line, centreline, found), ...found };
}
