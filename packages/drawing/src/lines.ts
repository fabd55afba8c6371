/** Breaking a text into lines. Widths are in em and heights in cap heights, so that one measuring serves any size. */
import { cleanText, type Room, roomOf } from './measure.ts';
import type { Weight } from './types.ts';

export interface Line extends Room {
  readonly text: string;
}

/** The words of a text, each measured once. */
export interface Words {
  readonly weight: Weight;
  readonly spaceEm: number;
  readonly words: readonly Line[];
}

/** Spaces a line may break at: not between END and its letter, or a word and its number. */
const TOGETHER = /(?<!\b(?:END|NUT|SLEEVE|FLARE|FREE|START|FACE of|bend|page|at|by)) | (?=\S{5})/u;

export function wordsOf(text: string, weight: Weight): Words {
  const words = cleanText(text)
    .split(TOGETHER)
    .map((word) => ({ text: word, ...roomOf(word, weight) }));
  return { weight, spaceEm: roomOf(' ', weight).em, words };
}

/** Breaks at spaces only; a word wider than the width stands alone on its line, too wide. */
export function broken({ words, spaceEm }: Words, widthEm: number): readonly Line[] {
  const lines: Line[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    if (last && last.em + spaceEm + word.em <= widthEm) lines[lines.length - 1] = joined(last, word, spaceEm);
    else lines.push(word);
  }
  return lines;
}

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

/** Height in cap heights of these lines set under each other; there is at least one. */
export const blockHeight = (lines: readonly Line[]): number =>
  lines[0]!.up + (lines.length - 1) * leading(lines) + lines.at(-1)!.down;
