/** The stops of a line: how far round the tube each bend leaves, for the wheel and the wrap strip. */
import { type BenchPlan, type TurnWords, turnWords } from '@runback/bending';
import { toDegrees } from '@runback/job';

export interface Stop {
  /** Whole degrees clockwise of the pencil line, seen from START, 0 ≤ x < 360. */
  readonly degrees: number;
  /** Working numbers of the bends made there. */
  readonly bends: readonly number[];
}

/**
 * The stops, by degrees. A stop at the pointer puts the pencil line where the sheet has it: as far the other way.
 * Bends made with the tube turned the same share a stop.
 */
export function stopsOf({ rows }: BenchPlan): readonly Stop[] {
  const stops = new Map<number, number[]>();
  for (const { bend, pencil } of rows) {
    const degrees = (360 - Math.round(toDegrees(pencil.after))) % 360;
    stops.set(degrees, [...(stops.get(degrees) ?? []), bend]);
  }
  return [...stops].map(([degrees, bends]) => ({ degrees, bends })).sort((a, b) => a.degrees - b.degrees);
}

export const stopName = ({ bends }: Stop): string => bends.join(', ');

export const stopDegrees = (stops: readonly Stop[], bend: number): number =>
  stops.find((stop) => stop.bends.includes(bend))?.degrees ?? 0;

/** How to get to a stop clockwise (+1) or anticlockwise (−1) of where one is, seen from START, in the words of the bench. */
export const sideWords = (plan: BenchPlan, side: 1 | -1): TurnWords =>
  turnWords(side * 90, plan.bench, { from: plan.from });

/** `40°`, or on the other half, counted the short way round. */
export const roundDegrees = (degrees: number): string => `${degrees <= 180 ? degrees : 360 - degrees}°`;
