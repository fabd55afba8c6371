import type { Weight } from './types.ts';
import { boldFace, type FaceData, regularFace } from './widths-data.ts';

/** How far letters reach above and below the baseline, as multiples of the cap height. */
export interface Reach {
  readonly up: number;
  readonly down: number;
}

interface Letter extends Reach {
  readonly advanceEm: number;
}

interface Face {
  readonly capEm: number;
  readonly letters: ReadonlyMap<number, Letter>;
}

function read(data: FaceData): Face {
  const letters = new Map<number, Letter>();
  for (const [first, ...lists] of data.runs) {
    const [advances, tops, bottoms] = lists.map((list) => list.split(' ').map(Number));
    advances!.forEach((advance, i) => {
      if (advance < 0) return;
      const [up, down] = [tops![i]! / data.capHeight, -bottoms![i]! / data.capHeight];
      letters.set(first + i, { advanceEm: advance / data.unitsPerEm, up, down });
    });
  }
  return { capEm: data.capHeight / data.unitsPerEm, letters };
}

/** A character the face does not have comes from some other face: as wide and as tall as any. */
const FOREIGN: Letter = { advanceEm: 1.3, up: 1.6, down: 0.45 };

const faces: Readonly<Record<Weight, Face>> = { regular: read(regularFace), bold: read(boldFace) };

/**
 * Text fit to print: composed (NFC), control characters and lone surrogates dropped, bidirectional overrides
 * dropped (they could make a number read backwards), white space of any kind one space.
 *
 * @example
 * import { cleanText } from '@runback/drawing';
 * cleanText('Brake\n line\u0007'); // => "Brake line"
 */
export function cleanText(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\s\u0085]/gu, ' ')
    .replace(/[\p{Cc}\p{Cs}\p{Cf}\p{Co}\p{Cn}]/gu, '')
    .replace(/ +/gu, ' ')
    .trim();
}

/** The room a text takes on one line: its advance in em, its reach in cap heights. */
export interface Room extends Reach {
  readonly em: number;
}

/** Every text is given at least the room of a capital. */
const LEAST: Reach = { up: 1.02, down: 0.02 };

/** Room of a text in one weight, by the measured letters of DejaVu Sans Condensed, without kerning. */
export function roomOf(text: string, weight: Weight): Room {
  let em = 0;
  let { up, down } = LEAST;
  for (const character of text) {
    const letter = faces[weight].letters.get(character.codePointAt(0)!) ?? FOREIGN;
    em += letter.advanceEm;
    up = Math.max(up, letter.up);
    down = Math.max(down, letter.down);
  }
  return { em, up, down };
}

/** Whether the typeface has every letter of a text; what it lacks is printed as boxes. */
export const printable = (text: string): boolean =>
  [...cleanText(text)].every((letter) => faces.regular.letters.has(letter.codePointAt(0)!));

/** Cap height of one em, the same in both weights: a font size is cap / CAP_EM. */
export const CAP_EM = faces.regular.capEm;

/**
 * Width of a text in mm at a cap height in mm, by the measured advances of DejaVu Sans Condensed (no kerning).
 *
 * @throws RangeError when the cap height is not above 0
 * @example
 * import { textWidth } from '@runback/drawing';
 * Math.round(textWidth('MARK 311.5', 6, 'bold')); // => 51
 */
export function textWidth(text: string, cap: number, weight: Weight): number {
  if (!(cap > 0)) throw new RangeError(`textWidth: cap height must be > 0 mm, got ${cap}`);
  return (roomOf(text, weight).em * cap) / CAP_EM;
}
