/** Breaking a text into lines. Widths are in em and heights in cap heights, so that one measuring serves any size. */
import { cleanText, type Room, roomOf } from './measure.ts';
import type { Weight } from './types.ts';

export interface Line extends Room {
  readonly text: string;
}

/** A word; a bound one stands on the line of the word before it where there is room for both, a tight one close to it. */
interface Word extends Line {
  readonly bound: boolean;
  readonly tight: boolean;
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
    words: words.flatMap((word, i) =>
      word.split(SPACELESS).map((piece, j) => ({
        text: piece,
        ...roomOf(piece, weight),
        bound: i > 0 && j === 0 && isBound(words[i - 1]!, word),
        tight: j > 0,
      })),
    ),
  };
}

/** Scripts that are written without spaces break between letters, but not before a stop or behind an opening bracket. */
const SPACELESS = (() => {
  const letter =
    '[\\p{Script=Han}\\p{Script=Hiragana}\\p{Script=Katakana}\\u3000-\\u303f\\u30fc\\uff01-\\uff60]';
  const closing = '[、。，．・：；？！ー）］｝〕〉》」』】ぁぃぅぇぉっゃゅょァィゥェォッャュョ]';
  const opening = '[（［｛〔〈《「『【]';
  return new RegExp(`(?<!${opening})(?:(?<=${letter})|(?=${letter}))(?!${closing})`, 'u');
})();

const UNIT = /^(?:mm|ml|MPa|kPa|bar|psi|kg|Hz|°C|%|L|s)(?!\p{L})/u;

/** A unit behind its number, a number behind what it sizes, a dot between two of a list. */
const isBound = (before: string, word: string): boolean =>
  word === '·' || (UNIT.test(word) && /\d$/u.test(before)) || /^[(]?(?:OD|R)$/u.test(before);

/**
 * Breaks where a text may break; a word wider than the width stands alone on its line, too wide. With `anywhere`, for
 * a text that gets no smaller, such a word goes over as many lines as its letters need.
 */
export function broken(
  { words, spaceEm, weight }: Words,
  widthEm: number,
  { anywhere = false }: { readonly anywhere?: boolean } = {},
): readonly Line[] {
  const lines: Word[][] = [];
  let em = 0;
  for (const word of anywhere ? words.flatMap((one) => pieces(one, weight, widthEm)) : words) {
    const last = lines.at(-1);
    const more = spaceBefore(word, spaceEm) + word.em;
    if (last && em + more <= widthEm) {
      last.push(word);
      em += more;
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

const spaceBefore = ({ tight }: Word, spaceEm: number): number => (tight ? 0 : spaceEm);

/** A word too wide for a line in pieces that are not, by whole letters. */
function pieces(word: Word, weight: Weight, widthEm: number): readonly Word[] {
  if (word.em <= widthEm) return [word];
  const texts: string[] = [];
  let em = 0;
  for (const letter of word.text.match(/.\p{M}*/gsu) ?? []) {
    const wide = roomOf(letter, weight).em;
    if (texts.length > 0 && em + wide <= widthEm) {
      texts[texts.length - 1] += letter;
      em += wide;
    } else {
      texts.push(letter);
      em = wide;
    }
  }
  return texts.map((text, i) => ({
    text,
    ...roomOf(text, weight),
    bound: i === 0 && word.bound,
    tight: i > 0 || word.tight,
  }));
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
  words.reduce((em, word, i) => em + (i === 0 ? 0 : spaceBefore(word, spaceEm)) + word.em, 0);

const lineOf = ({ text, em, up, down }: Word): Line => ({ text, em, up, down });

const joined = (a: Line, b: Word, spaceEm: number): Line => ({
  text: `${a.text}${b.tight ? '' : ' '}${b.text}`,
  em: a.em + spaceBefore(b, spaceEm) + b.em,
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
