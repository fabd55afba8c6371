/** Ways to check a turn before the bend is pulled: flag, gauge on the last leg, height of its end. */
import { scale, sinCos } from '@runback/geometry';
import type { Bench, LengthStyle } from '@runback/job';
import { endWords, isLevel, offToolPlane, sayDeg } from './say.ts';
import { type Stance, sideOf, stanceOf } from './stance.ts';
import type { EndName, Side, TurnChecks } from './types.ts';

/** Under this the last bend gives no leg to measure on: 1 mm of error is several degrees of turn. */
export const SHALLOW_RAD = Math.PI / 9;

/** The leg before the last bend and the turn now made. Millimetres and radians. */
export interface LastLeg {
  /** The last bend, > 0. */
  readonly angle: number;
  /** Its radius; 0 when `straight` is counted from its corner. */
  readonly radius: number;
  /** The straight before it, ≥ 0. */
  readonly straight: number;
  /** The turn, right-hand about travel START→FREE. */
  readonly turn: number;
  /** True when that straight begins at the START end (the last bend is bend 1). */
  readonly fromStart: boolean;
}

export interface TurnCheckOptions {
  /** The end worked from (START). Default 'A'. */
  readonly from?: EndName;
  /** Unit of the words. Default 'mm'. */
  readonly unit?: LengthStyle;
}

/** How far the far end of the last leg stands out from the tube towards the former before the turn, mm. */
export function legReach({ angle, radius, straight }: Omit<LastLeg, 'turn' | 'fromStart'>): number {
  const [sine] = sinCos(angle);
  const half = sinCos(angle / 2)[0];
  return straight * sine + 2 * radius * half * half;
}

/**
 * How a turn φ after a bend β can be checked, and what each way reads.
 *
 * - flag, square to the tube in the plane of the last bend: φ, in any tool.
 * - gauge on the last leg, the clamped straight level: asin(sin β·|sin φ|) in a flat tool, asin(sin β·|cos φ|) in
 *   an upright one. It has no sign: flat, 180° − φ reads the same; upright, −φ does.
 * - height of the far end of the last leg over the tool plane: leg·sin β·sin φ with the leg measured from the
 *   corner; signed in words.
 *
 * After a bend under 20° only the flag or the pencil line serves. No gauge either within 20° of a half-turn bend,
 * with a bender carried round the tube, or without a bench.
 * @throws RangeError when a number is out of range
 * @example
 * import { turnChecks } from '@runback/bending';
 * const bench = { stand: 'side', startOn: 'left', plane: 'flat', former: 'far', moves: 'tube' } as const;
 * const leg = { angle: Math.PI / 3, radius: 0, straight: 100, turn: Math.PI / 2, fromStart: true };
 * turnChecks(leg, bench).height?.words; // => "END A 87 below the tool plane"
 */
export function turnChecks(leg: LastLeg, bench: Bench | null, options: TurnCheckOptions = {}): TurnChecks {
  if (!(leg.angle > 0)) throw new RangeError(`turnChecks: angle must be > 0, got ${leg.angle}`);
  if (!(leg.straight >= 0)) throw new RangeError(`turnChecks: straight must be >= 0 mm, got ${leg.straight}`);
  if (!Number.isFinite(leg.turn)) throw new RangeError(`turnChecks: turn must be a number, got ${leg.turn}`);
  const stance = stanceOf(bench);
  const flagOnly = leg.angle < SHALLOW_RAD;
  const flag = Math.abs(leg.turn);
  return {
    flag,
    flagWords: `flag ${sayDeg(flag)}°`,
    gauge: flagOnly || stance.view === 'start' ? null : gaugeOf(leg, stance),
    height: flagOnly ? null : heightOf(leg, stance, options),
    flagOnly,
  };
}

function gaugeOf(leg: LastLeg, stance: Stance): TurnChecks['gauge'] {
  const lean = Math.abs(sinCos(leg.angle)[0]);
  if (lean < sinCos(SHALLOW_RAD)[0]) return null;
  const upright = stance.former[2] !== 0;
  const [sine, cosine] = sinCos(leg.turn);
  const part = lean * Math.abs(upright ? cosine : sine);
  const reading = Math.atan2(part, Math.sqrt(Math.max(0, 1 - part * part)));
  const other = upright ? -leg.turn : Math.sign(leg.turn || 1) * Math.PI - leg.turn;
  const same = Math.abs(other) === Math.abs(leg.turn) && (!upright || leg.turn === 0 || flat(leg.turn));
  const confusedWith = same ? [] : [other];
  return { reading, confusedWith, words: gaugeWords(reading, same ? null : leg, stance) };
}

const flat = (turn: number): boolean => Math.abs(turn) === Math.PI;

function gaugeWords(reading: number, leg: LastLeg | null, stance: Stance): string {
  const words = `gauge on the last leg ${sayDeg(reading)}°`;
  if (leg === null) return words;
  const reach = legReach(leg);
  const [sine, cosine] = sinCos(leg.turn);
  if (stance.former[2] === 0) {
    const side = sideOf(scale(stance.former, cosine * reach));
    return `${words}; ${sayDeg(Math.PI - Math.abs(leg.turn))}° reads the same: the leg must lie ${LIES[side]}`;
  }
  const side = sideOf(scale(stance.plane, -sine * reach));
  return `${words}; the wrong way reads the same: the leg must lean ${LEANS[side]}`;
}

const LIES: Readonly<Record<Side, string>> = {
  above: 'high',
  below: 'low',
  away: 'on the far side of the tube',
  toward: 'on your side of the tube',
  left: 'left of the tube',
  right: 'right of the tube',
};

const LEANS: Readonly<Record<Side, string>> = {
  above: 'up',
  below: 'down',
  away: 'away',
  toward: 'toward you',
  left: 'left',
  right: 'right',
};

function heightOf(leg: LastLeg, stance: Stance, options: TurnCheckOptions): TurnChecks['height'] {
  const { from = 'A', unit = 'mm' } = options;
  const over = -legReach(leg) * sinCos(leg.turn)[0] + 0;
  const side = isLevel(over, unit) ? null : sideOf(scale(stance.plane, over));
  const who = leg.fromStart ? endWords(from) : 'far end of the last leg';
  return { over, side, words: `${who} ${offToolPlane(over, side, unit)}${viewNote(stance, from)}` };
}

/** What makes left and right definite where the words are as seen from START. */
export const viewNote = (stance: Stance, from: EndName): string =>
  stance.view === 'start' ? `, seen from ${endWords(from)} with the former at 12` : '';
