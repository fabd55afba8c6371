/** The second confirmation of a turn: what the finished leg does, or where the next bend leaves. */
import { scale, sinCos } from '@runback/geometry';
import { degText, endWords } from './say.ts';
import { type Stance, sideOf } from './stance.ts';
import type { EndName, Side } from './types.ts';

const RADIANS = Math.PI / 180;

const MOVES: Readonly<Record<Side, string>> = {
  above: 'rises',
  below: 'drops',
  away: 'leans away',
  toward: 'leans toward you',
  left: 'leans left',
  right: 'leans right',
};

const PLACES: Readonly<Record<Side, string>> = {
  above: 'high',
  below: 'low',
  away: 'on the far side',
  toward: 'on your side',
  left: 'on the left',
  right: 'on the right',
};

/**
 * What the finished leg does in a still tool when the tube is turned by −turn about travel. The leg reaches from
 * the tube towards the former (`legSide` 1; −1 when it lies behind, after a bend of more than a half turn). Up to
 * 90° from where the last bend left it: how it moves. Beyond: where it ends.
 */
export function legConfirmation(turnDeg: number, stance: Stance, legSide: 1 | -1): string | null {
  const [sine, cosine] = sinCos(turnDeg * RADIANS);
  const aside = sideOf(scale(stance.plane, -sine * legSide));
  const back = sideOf(scale(stance.former, cosine * legSide));
  const size = Math.abs(turnDeg);
  if (size === 0) return null;
  if (size <= 90) return `finished leg ${MOVES[aside]}`;
  if (size === 180)
    return back === 'above' || back === 'below'
      ? `finished leg ends straight ${back === 'above' ? 'up' : 'down'}`
      : `finished leg ends level, ${PLACES[back]}`;
  const upright = back === 'above' || back === 'below';
  const [first, second] = upright ? [back, aside] : [aside, back];
  return `finished leg ends ${PLACES[first]}, ${PLACES[second]}`;
}

/** Where the next bend leaves, seen from START: true whatever turns. */
export function nextConfirmation(turnDeg: number, from: EndName): string | null {
  if (turnDeg === 0) return null;
  const seen = `seen from ${endWords(from)}`;
  if (turnDeg === 180) return `next bend leaves opposite the last, ${seen}`;
  const way = turnDeg > 0 ? 'clockwise' : 'anticlockwise';
  return `next bend leaves ${degText(Math.abs(turnDeg))}° ${way} of the last, ${seen}`;
}
