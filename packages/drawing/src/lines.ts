/** Breaking a text into lines. Widths are in em and heights in cap heights, so that one measuring serves any size. */
import { cleanText, type Room, roomOf } from './measure.ts';
import type { Weight } from './types.ts';

export interface Line extends Room {
  readonly text: string;
}

/** A word; a bound one stands on the line of the word before it where there is room for both. */
interface Word extends Line {
  readonly bound: boolean;
}

/** The words of a text, each measured once. */
export interface Words {
  readonly weight: Weight;
  readonly spaceEm: number;
  readonly words: readonly Word[];
}

/** Spaces a line may break at: not between END and its letter, or a word and its number. */
const TOGETHER =
  /(?<!\b(?:END|NUT|SLEEVE|FLARE|FREE|START|FACE of|bend|page|at|by|end(?= [AZ]\b))) | (?=\S{5})/u;

export function wordsOf(text: string, weight: Weight): Words {
  const words = cleanText(text).split(TOGETHER);
  return {
    weight,
    spaceEm: roomOf(' ', weight).em,
    words: words.map((word, i) => ({
      text: word,
      ...roomOf(word, weight),
      bound: i > 0 && isBound(words[i - 1]!, word),
    })),
  };
}

const UNIT = /^(?:mm|ml|MPa|kPa|bar|psi|kg|Hz|°C|%|L|s)(?!\p{L})/u;

/** A unit behind its number, a number behind what it sizes, a dot between two of a list. */
const isBound = (before: string, word: string): boolean =>
  word === '·' || (UNIT.test(word) && /\d$/u.test(before)) || /^[(]?(?:OD|R)$/u.test(before);

/** Breaks at spaces only; a word wider than the width stands alone on its line, too wide. */
export function broken({ words, spaceEm }: Words, widthEm: number): readonly Line[] {
  const lines: Word[][] = [];
  let em = 0;
  for (const word of words) {
    const last = lines.at(-1);
    if (last && em + spaceEm + word.em <= widthEm) {
      last.push(word);
      em += spaceEm + word.em;
      continue;
    }
    const next = [...(last ? leaving(last, word, { widthEm, spaceEm }) : []), word];
    lines.push(next);
    em = emOf(next, spaceEm);
  }
  return lines.map(([first, ...more]) =>
    more.reduce((line: Line, word) => joined(line, word, spaceEm), lineOf(first!)),
  );
}

/** Takes off a line the words that a bound one goes with: none where nothing would be left of it, or they do not fit either. */
function leaving(
  line: Word[],
  word: Word,
  { widthEm, spaceEm }: { readonly widthEm: number; readonly spaceEm: number },
): readonly Word[] {
  let from = line.length;
  for (let bound = word.bound; bound && from > 0; bound = line[from]!.bound) from -= 1;
  const gone = line.slice(from);
  if (from === 0 || emOf([...gone, word], spaceEm) > widthEm) return [];
  line.length = from;
  return gone;
}

const emOf = (words: readonly Word[], spaceEm: number): number =>
  words.reduce((em, word, i) => em + (i === 0 ? 0 : spaceEm) + word.em, 0);

const lineOf = ({ text, em, up, down }: Word): Line => ({ text, em, up, down });

const joined = (a: Line, b: Line, spaceEm: number): Line => ({
  text: `${a.text} ${b.text}`,
  em: a.em + spaceEm + b.em,
  up: Math.max(a.up, b.up),
  down: Math.max(a.down, b.down),
});

/** Shortens a line by whole letters until it and an ellipsis fit; `always` where words behind it were dropped. */
export function shortened(line: Line, weight: Weight, how: { widthEm: number; always?: boolean }): Line {
  if (!how.always && line.em <= how.widthEm) return line;
  const letters = [...line.text];
  for (;;) {
    const text = `${letters.join('').trimEnd()}…`;
    const room = roomOf(text, weight);
    if (room.em <= how.widthEm || letters.length === 0) return { text, ...room };
    letters.pop();
  }
}

/** Baselines of the lines of one text are this many cap heights apart, or more when their letters need it. */
const LEADING = 1.45;

const most = (values: readonly number[]): number => Math.max(...values);

/** Distance between the baselines of these lines, in cap heights: never so close that letters meet. */
export const leading = (lines: readonly Line[]): number =>
  Math.max(LEADING, most(lines.map((line) => line.up)) + most(lines.map((line) => line.down)));

/** Lines with and without tails take the same room: what stands under each other is evenly apart. */
export const evened = (line: Line): Line => ({
  ...line,
  up: Math.max(line.up, ORDINARY.up),
  down: Math.max(line.down, ORDINARY.down),
});

/** How far the letters of most words reach. */
const ORDINARY = { up: 1.05, down: 0.3 };

/** Height in cap heights of these lines set under each other; there is at least one. */
export const blockHeight = (lines: readonly Line[]): number =>
  lines[0]!.up + (lines.length - 1) * leading(lines) + lines.at(-1)!.down;
