/** Falls as people say them and as the job has them: "1 in 12" and degrees. */

/** What was typed, read; or what is wrong with it and what was expected. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly expected: string };

const NUMBER = String.raw`(\d+\.?\d*|\.\d+)`;
const DEGREES = new RegExp(String.raw`^([-−]?)\s*${NUMBER}\s*(?:°|deg|degrees)?$`, 'u');
/** One figure over another without a unit: the same as with a colon. */
const SLASHED = new RegExp(String.raw`^${NUMBER}\s*/\s*${NUMBER}$`, 'u');

/** Degrees, rounded down, so that a tube laid at exactly that fall still holds it. */
const MILLION = 1_000_000;

/** Degrees of a fall of `rise` on a level length of `run`. */
export function degreesOfFall(rise: number, run: number): number {
  return Math.floor((Math.atan2(rise, run) * 180 * MILLION) / Math.PI) / MILLION;
}

/** As the job has it: degrees, or a fall as text, which the job reads exactly. */
export type WrittenFall = number | string;

/**
 * Reads a fall: "4.76" or "4.76°" are degrees; "1 in 12", "1:12", "2 %", "1/4 in/ft" and the like stay as they are typed,
 * so that the rule is the very fraction. What is no fall is refused by the job.
 */
export function readFall(typed: string): Answer<WrittenFall> {
  const text = typed.trim();
  const degrees = DEGREES.exec(text);
  if (degrees) {
    const [, sign, size] = degrees;
    return { ok: true, value: sign === '' ? Number(size) : -Number(size) + 0 };
  }
  const slashed = SLASHED.exec(text);
  return { ok: true, value: slashed ? `${slashed[1]}:${slashed[2]}` : text };
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

/** Falls to choose from, the flattest first, as they are written. */
export const FALLS: readonly { readonly label: string; readonly fall: WrittenFall }[] = [
  { label: 'level (0°)', fall: 0 },
  { label: '1 in 100', fall: '1:100' },
  { label: '1 in 60', fall: '1:60' },
  { label: '1 in 48 (1/4 in a foot)', fall: '1:48' },
  { label: '1 in 24 (1/2 in a foot)', fall: '1:24' },
  { label: '1 in 12 (1 in a foot)', fall: '1:12' },
  { label: '1 in 6', fall: '1:6' },
  { label: '1 in 4', fall: '1:4' },
];
