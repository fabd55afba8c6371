/** What the ends of a line mean for the order of work. */
import type { Line, LineEnd } from '@runback/job';
import type { EndName, Hook } from './types.ts';

/** The end of a line by its name. */
export const endOf = (line: Line, end: EndName): LineEnd => (end === 'A' ? line.endA : line.endZ);

/** True when the end is formed at all: flared, beaded; not left as it is sawn. */
export const isFormed = ({ fitting }: LineEnd): boolean =>
  fitting.traps || fitting.bar.value > 0 || fitting.uses.value > 0;

/** True when the end is formed before the tube is bent: from then on it is the finished end. */
export const formedBefore = (end: LineEnd): boolean => isFormed(end) && end.flareWhen === 'before';

const FLARE = /flare/iu;

/** What forming this end is called: a flare, or by the name of its fitting. */
export const formWord = ({ fitting }: LineEnd): 'FLARE' | 'FORM' =>
  FLARE.test(fitting.name) ? 'FLARE' : 'FORM';

/** What the tape hooks on: the finished face of START when it is formed before bending, its sawn end otherwise. */
export function hookOf(line: Line, from: EndName): Hook {
  const end = endOf(line, from);
  if (!formedBefore(end)) return { end: from, face: 'sawn', words: `SAWN END of ${from}` };
  const face = formWord(end) === 'FLARE' ? 'FLARED FACE' : 'FORMED FACE';
  return { end: from, face: 'finished', words: `${face} of ${from}` };
}
