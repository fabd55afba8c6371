import { blockHeight, broken, type Line, shortened, wordsOf } from './lines.ts';
import { CAP_EM } from './measure.ts';
import type { Weight } from './types.ts';

/** What a text may become when its place is too small: shrunk to `minCap`, broken over `lines`, then cut. */
export interface FitOptions {
  /** mm */
  readonly width: number;
  /** mm; default: no limit but `lines`. */
  readonly height?: number;
  readonly cap: number;
  /** mm; default: `cap`, which is never shrunk. */
  readonly minCap?: number;
  readonly weight?: Weight;
  /** Lines allowed; default 1. */
  readonly lines?: number;
  /** `shrink` keeps to the fewest lines, `wrap` to the largest letters. Default `shrink`. */
  readonly first?: 'shrink' | 'wrap';
}

export interface Fitted {
  readonly cap: number;
  readonly lines: readonly string[];
  /** True when words were lost. */
  readonly cut: boolean;
}

/**
 * Fits a text into a width (and height): as asked if it can, else shrunk down to the smallest cap height allowed,
 * else broken over the lines allowed, else cut with an ellipsis. Never wider than asked. Breaks at spaces, and in
 * scripts without spaces between letters; inside a word only where it would else be cut.
 *
 * @throws RangeError when width, cap height or lines are not above 0, or `minCap` is above `cap`
 * @example
 * import { fitText } from '@runback/drawing';
 * fitText('leans toward you', { width: 30, cap: 4, minCap: 3, lines: 2 }).lines; // => ["leans", "toward you"]
 */
export function fitText(text: string, options: FitOptions): Fitted {
  const { cap, lines, cut } = fitLines(text, options);
  return { cap, lines: lines.map((line) => line.text), cut };
}

/** The same with the room each line takes. */
export function fitLines(text: string, options: FitOptions): Fitting {
  const asked = checked(options);
  const words = wordsOf(text, asked.weight);
  for (const [cap, allowed] of trials(asked)) {
    const widthEm = (asked.width * CAP_EM) / cap;
    const lines = broken(words, widthEm);
    const fits = lines.length <= allowed && lines.every((line) => line.em <= widthEm);
    if (fits && blockHeight(lines) * cap <= asked.height) return { cap, lines, cut: false };
  }
  const { minCap } = asked;
  const forced = broken(words, (asked.width * CAP_EM) / minCap, { anywhere: true });
  const fits = forced.length <= asked.lines && blockHeight(forced) * minCap <= asked.height;
  return fits && forced.every((line) => line.em <= (asked.width * CAP_EM) / minCap)
    ? { cap: minCap, lines: forced, cut: false }
    : { cap: minCap, lines: cutDown(forced, asked), cut: true };
}

export interface Fitting extends Omit<Fitted, 'lines'> {
  readonly lines: readonly Line[];
}

function checked(options: FitOptions): Required<FitOptions> {
  const { width, cap, minCap = cap, lines = 1 } = options;
  if (!(width > 0)) throw new RangeError(`fitText: width must be > 0 mm, got ${width}`);
  if (!(lines >= 1)) throw new RangeError(`fitText: lines must be 1 or more, got ${lines}`);
  if (!(minCap > 0 && minCap <= cap))
    throw new RangeError(`fitText: minCap must be > 0 and at most ${cap} mm, got ${minCap}`);
  return { height: Number.POSITIVE_INFINITY, weight: 'regular', first: 'shrink', ...options, minCap, lines };
}

const SHRINK_STEP = 0.1;

/** Sizes from the largest to the least, in steps of a tenth of a millimetre. */
export function sizes(cap: number, minCap: number): readonly number[] {
  const steps = Math.ceil((cap - minCap) / SHRINK_STEP - SHRINK_STEP);
  return Array.from({ length: steps + 1 }, (_, i) => (i === steps ? minCap : cap - i * SHRINK_STEP));
}

/** The sizes and line counts to try, best first. */
function trials({ cap, minCap, lines, first }: Required<FitOptions>): (readonly [number, number])[] {
  if (first === 'wrap') return sizes(cap, minCap).map((size) => [size, lines]);
  return Array.from({ length: lines }, (_, i) =>
    sizes(cap, minCap).map((size) => [size, i + 1] as const),
  ).flat();
}

/** At the least size, as many lines as there is room for (one at least), the last ending in an ellipsis. */
function cutDown(
  all: readonly Line[],
  { width, height, minCap, lines: allowed, weight }: Required<FitOptions>,
): Line[] {
  const widthEm = (width * CAP_EM) / minCap;
  let lines: Line[] = [];
  for (let count = Math.min(allowed, all.length); count >= 1; count--) {
    lines = all
      .slice(0, count)
      .map((line, i) => shortened(line, weight, { widthEm, always: i === count - 1 && count < all.length }));
    if (blockHeight(lines) * minCap <= height) return lines;
  }
  return lines;
}
