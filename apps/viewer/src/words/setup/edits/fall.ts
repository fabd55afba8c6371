/** Falls as people say them and as the job has them: "1 in 12" and degrees. */

/** What was typed, read; or what is wrong with it and what was expected. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly expected: string };

const NUMBER = String.raw`(\d+\.?\d*|\.\d+)`;
const RATIO = new RegExp(String.raw`^([-−]?)\s*${NUMBER}\s*(?:in|:|/)\s*${NUMBER}$`, 'u');
const PERCENT = new RegExp(String.raw`^([-−]?)\s*${NUMBER}\s*%$`, 'u');
const DEGREES = new RegExp(String.raw`^([-−]?)\s*${NUMBER}\s*(?:°|deg|degrees)?$`, 'u');
const STEEPEST = 90;
const EXPECTED = 'degrees like 12, or a fall like 1 in 12';

/** Degrees, rounded down, so that a tube laid at exactly that fall still holds it. */
const MILLION = 1_000_000;

/** Degrees of a fall of `rise` on a level length of `run`. */
export function degreesOfFall(rise: number, run: number): number {
  return Math.floor((Math.atan2(rise, run) * 180 * MILLION) / Math.PI) / MILLION;
}

/** Reads a fall: "1 in 12", "1:12", "2 %", "4.76" or "4.76°". Degrees. */
export function readFall(typed: string): Answer<number> {
  const text = typed.trim();
  const ratio = RATIO.exec(text);
  const percent = PERCENT.exec(text);
  const degrees = DEGREES.exec(text);
  const [, sign, top, below = '100'] = ratio ?? percent ?? degrees ?? [];
  if (top === undefined)
    return {
      ok: false,
      message: text.includes(',') ? 'a comma is not used in a fall' : 'not a fall',
      expected: EXPECTED,
    };
  if (degrees === null && Number(below) === 0 && Number(top) === 0)
    return { ok: false, message: 'not a fall', expected: EXPECTED };
  const size = degrees ? Number(top) : degreesOfFall(Number(top), Number(below));
  if (size > STEEPEST) return { ok: false, message: 'steeper than plumb', expected: 'at most 90 degrees' };
  return { ok: true, value: sign === '' ? size : -size + 0 };
}

/** A fall is said as "1 in n" up to here; steeper or flatter ones are degrees for everybody. */
const STEEPEST_SAID = 30;
const FLATTEST_SAID = 0.05;
/** Written with four decimals or more, it was meant as a whole n. */
const MEANT = 5e-5;

/** "1 in 12" of degrees; an empty text where nobody says it like that. */
export function sayFall(degrees: number): string {
  if (degrees === 0) return 'level';
  if (degrees < FLATTEST_SAID || degrees > STEEPEST_SAID) return '';
  const n = 1 / Math.tan((degrees * Math.PI) / 180);
  const whole = Math.round(n);
  if (Math.abs(degrees - degreesOfFall(1, whole)) < MEANT) return `1 in ${whole}`;
  return `about 1 in ${n < 10 ? n.toFixed(1) : whole}`;
}

/** Falls to choose from, the flattest first. Degrees. */
export const FALLS: readonly { readonly label: string; readonly degrees: number }[] = [
  { label: 'level (0°)', degrees: 0 },
  { label: '1 in 100', degrees: degreesOfFall(1, 100) },
  { label: '1 in 60', degrees: degreesOfFall(1, 60) },
  { label: '1 in 48 (1/4 in a foot)', degrees: degreesOfFall(1, 48) },
  { label: '1 in 24 (1/2 in a foot)', degrees: degreesOfFall(1, 24) },
  { label: '1 in 12 (1 in a foot)', degrees: degreesOfFall(1, 12) },
  { label: '1 in 6', degrees: degreesOfFall(1, 6) },
  { label: '1 in 4', degrees: degreesOfFall(1, 4) },
];
