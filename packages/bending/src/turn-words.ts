/** The words for a turn, for every standing place at the bench. Degrees. */
import type { Bench } from '@runback/job';
import { legConfirmation, nextConfirmation } from './confirmation.ts';
import { degText, endWords } from './say.ts';
import { contradicts, goSign, type Stance, stanceOf } from './stance.ts';
import type { EndName, TurnWords } from './types.ts';

/** Over this a turn is said as a half turn, so much short or past. Degrees. */
export const NEAR_HALF_DEG = 150;
/** From here the sign is soon measuring noise, and the sheet offers a flat jog. Degrees; judgement, no source. */
export const OFFER_FLAT_DEG = 170;

export interface TurnWordsOptions {
  /** The end worked from (START). Default 'A'. */
  readonly from?: EndName;
  /**
   * On which side of the tube the last leg lies before the turn: 1 towards the former (default), −1 behind it (a
   * last bend of more than a half turn with a long leg), 0 neither: no confirmation by the leg.
   */
  readonly legSide?: 1 | 0 | -1;
}

/**
 * What the operator does to turn the tube (or carry the bender round it) into the next plane of bend.
 *
 * A turn φ is right-hand about travel START→FREE. In a still tool the tube turns by −φ: anticlockwise seen from
 * START, clockwise for somebody behind FREE, top AWAY for somebody at the side with START on their left, top
 * TOWARD with START on their right. A bender carried round a still tube goes clockwise seen from START. Which
 * side of the tube the former is on changes only the confirmation. Over 150° the words keep one way to turn (top
 * AWAY, or CLOCKWISE) and say how far short of a half turn or past it, so that they hardly change where a hair
 * changes the sign: 155 in one is `25° short`, −155 `25° past`.
 *
 * @param turnDeg rounded turn in [−180, 180]; `null` for the first bend
 * @param bench how the operator stands; `null`: words as seen from START, with a note
 * @throws RangeError when the turn is out of range
 * @example
 * import { turnWords } from '@runback/bending';
 * const bench = { stand: 'side', startOn: 'left', plane: 'upright', former: 'above', moves: 'tube' } as const;
 * turnWords(-59, bench).line; // => "TURN TUBE: TOP TOWARD YOU 59° (finished leg leans toward you)"
 */
export function turnWords(
  turnDeg: number | null,
  bench: Bench | null,
  options: TurnWordsOptions = {},
): TurnWords {
  if (turnDeg !== null && !(Math.abs(turnDeg) <= 180))
    throw new RangeError(`turnWords: turn must be within -180 and 180 degrees, got ${turnDeg}`);
  const { from = 'A', legSide = 1 } = options;
  const turn = turnDeg === null ? null : turnDeg === -180 ? 180 : turnDeg + 0;
  const moves = bench?.moves ?? 'tube';
  const stance = stanceOf(bench);
  const said = sayTurn(turn ?? 0, { stance, moves, from, first: turn === null });
  const confirmation =
    stance.view === 'start'
      ? nextConfirmation(turn ?? 0, from)
      : legSide === 0
        ? null
        : legConfirmation(turn ?? 0, stance, legSide);
  return {
    turnDeg: turn,
    moves,
    view: stance.view,
    ...said,
    confirmation,
    seenFromStart: seenFromStart(turn ?? 0, moves),
    nextLeavesDeg: ((turn ?? 0) + 360) % 360,
    offerFlat: said.kind === 'near-half' && Math.abs(turn ?? 0) >= OFFER_FLAT_DEG,
    note: noteFor(bench, from),
    line: confirmation === null ? said.line : `${said.line} (${confirmation})`,
  };
}

type Said = Pick<TurnWords, 'kind' | 'direction' | 'goDeg' | 'head' | 'amount' | 'line'>;

interface Saying {
  readonly stance: Stance;
  readonly moves: Bench['moves'];
  readonly from: EndName;
  readonly first: boolean;
}

function sayTurn(turn: number, saying: Saying): Said {
  const still = { direction: null, goDeg: 0 } as const;
  if (saying.first) {
    const head = 'PENCIL LINE AT THE FORMER';
    return { ...still, kind: 'first', head, amount: 'no turn', line: 'pencil line at the former; no turn' };
  }
  if (turn === 0) return { ...still, kind: 'none', head: 'NO TURN', amount: 'no turn', line: 'no turn' };
  const verb = saying.moves === 'tube' ? 'TURN TUBE' : 'CARRY BENDER';
  if (turn === 180) {
    const amount = 'half turn, either way';
    return { kind: 'half', direction: null, goDeg: 180, head: verb, amount, line: `${verb}: ${amount}` };
  }
  const go = turn * goSign(saying.stance, saying.moves);
  if (Math.abs(turn) > NEAR_HALF_DEG) return nearHalf(go > 0 ? go : go + 360, verb, saying);
  const head = `${verb}: ${wayWords(go > 0, saying)}`;
  const amount = `${degText(Math.abs(go))}°`;
  const direction = directionOf(go > 0, saying.stance);
  return { kind: 'turn', direction, goDeg: Math.abs(go), head, amount, line: `${head} ${amount}` };
}

function nearHalf(goDeg: number, verb: string, saying: Saying): Said {
  const off = `${degText(Math.abs(180 - goDeg))}° ${goDeg < 180 ? 'short' : 'past'}`;
  const way = saying.stance.view === 'side' ? 'top AWAY' : wayWords(true, saying);
  const head = `${verb}: HALF TURN`;
  const amount = `${off}, ${way}`;
  const direction = directionOf(true, saying.stance);
  return { kind: 'near-half', direction, goDeg, head, amount, line: `${head}, ${amount}` };
}

function directionOf(forward: boolean, { view }: Stance): NonNullable<TurnWords['direction']> {
  if (view === 'side') return forward ? 'away' : 'toward';
  return forward ? 'clockwise' : 'anticlockwise';
}

function wayWords(forward: boolean, { stance, from }: Saying): string {
  if (stance.view === 'side') return forward ? 'TOP AWAY FROM YOU' : 'TOP TOWARD YOU';
  const looking = stance.view === 'start' ? `seen from ${endWords(from)}` : 'as you look';
  return `${forward ? 'CLOCKWISE' : 'ANTICLOCKWISE'} ${looking}`;
}

function seenFromStart(turn: number, moves: Bench['moves']): TurnWords['seenFromStart'] {
  if (turn === 0 || turn === 180) return null;
  return turn > 0 === (moves === 'bender') ? 'clockwise' : 'anticlockwise';
}

function noteFor(bench: Bench | null, from: EndName): string | null {
  const words = `turns are of the TUBE, seen from ${endWords(from)} looking along it.`;
  if (bench === null) return `The job does not say how you stand at the bench: ${words}`;
  if (bench.moves === 'bender' || !contradicts(bench)) return null;
  return `The job says a tool bending ${bench.plane} with its former ${bench.former}, which cannot be: ${words}`;
}
