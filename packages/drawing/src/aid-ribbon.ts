/** A strip longer than the paper, cut into pieces that are glued end to end: where each begins and ends. */
import { type JobUnit, type LengthStyle, MM_PER_INCH, plainUnit } from '@runback/job';

/** One piece, in distances along the strip, mm. */
export interface Segment {
  /** 1, 2, … of `count`. */
  readonly number: number;
  readonly count: number;
  readonly from: number;
  /** Where the next one's left edge is laid, or the end of the strip. */
  readonly to: number;
}

/** Overlap that is glued, mm. */
export const GLUE = 14;

/** Joints stand at multiples of this, so that a rule can be laid to them. */
const JOINT_STEP: Readonly<Record<JobUnit, number>> = { mm: 10, in: MM_PER_INCH / 2 };

/**
 * Cuts a strip into pieces about equally long, so that none is a snippet. `most` is the length one piece may have
 * without its glue.
 */
export function segmentsOf(length: number, most: number, unit: LengthStyle): readonly Segment[] {
  if (length <= most) return [{ number: 1, count: 1, from: 0, to: length }];
  const step = JOINT_STEP[plainUnit(unit)];
  const least = Math.ceil(length / (Math.floor(most / step) * step));
  const each = Math.ceil(length / least / step) * step;
  const count = Math.ceil(length / each);
  return Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    count,
    from: i * each,
    to: Math.min(length, (i + 1) * each),
  }));
}

/** The match letters of a joint: A, B, … Z, A2, B2, … */
export function jointName(joint: number): string {
  const round = Math.floor((joint - 1) / 26);
  return `${String.fromCharCode(65 + ((joint - 1) % 26))}${round === 0 ? '' : round + 1}`;
}
