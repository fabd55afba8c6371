/** Words and numbers of the run profile. */
import { formatDegrees, type LengthStyle } from 'runback';
import { shortened } from './measure.ts';
import type { Nearest, Reading } from './readings.ts';
import { bare } from './ticks.ts';

/** "64.7°" */
export const degrees = (radians: number, decimals = 1): string => `${formatDegrees(radians, decimals)}°`;

export interface TurnText {
  readonly words: string;
  readonly short: string;
  /** Whether there is a way to turn that a dial can show. */
  readonly dial: boolean;
}

/** How far the plane turns; which way is for the dial to show. */
export function turnText(turn: number): TurnText {
  const size = degrees(Math.abs(turn), 0);
  if (size === '0°') return { words: 'no turn', short: 'no turn', dial: false };
  if (size === '180°') return { words: 'half turn', short: 'half', dial: true };
  return { words: `turn ${size}`, short: size, dial: true };
}

/** "59° anticlockwise of the last, seen from end A" */
export function turnWay(turn: number): string {
  const { words, dial } = turnText(turn);
  if (!dial || words === 'half turn') return words;
  return `${words} ${turn > 0 ? 'clockwise' : 'anticlockwise'}, seen from end A`;
}

/** Where a place is: "B2", "A–B1", "B2–Z". */
export function whereShort({ bend, before }: Reading, bends: number): string {
  if (bend !== null) return `in B${bend + 1}`;
  const from = before === 0 ? 'A' : `B${before}`;
  return `${from}–${before === bends ? 'Z' : `B${before + 1}`}`;
}

export function whereLong({ bend, before }: Reading, bends: number): string {
  if (bend !== null) return `in bend B${bend + 1}`;
  const from = before === 0 ? 'end A' : `B${before}`;
  return `between ${from} and ${before === bends ? 'end Z' : `B${before + 1}`}`;
}

/** "falls 16.2° to A", "rises 3° to A", "level" */
export function fallWords({ slope, toward }: Pick<Reading, 'slope' | 'toward'>): string | null {
  if (slope === null || toward === null) return null;
  const size = degrees(Math.abs(slope));
  if (size === '0°') return 'level';
  return `${slope > 0 ? 'falls' : 'rises'} ${size} to ${toward}`;
}

/** Longest name that is written out. */
const NAME_MOST = 18;

export const nameOf = ({ to }: Nearest): string => shortened(to, NAME_MOST);

/** "exhaust-1 93.5, 40 wanted" */
export function nearestWords(nearest: Nearest, style: LengthStyle): string {
  const { distance, keepOff } = nearest;
  if (distance < 0) return `overlaps ${nameOf(nearest)} by ${bare(-distance, style)}`;
  return `${nameOf(nearest)} ${bare(distance, style)}, ${bare(keepOff, style)} wanted`;
}
