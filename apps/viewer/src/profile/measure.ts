/** How much room lettering takes, without asking a browser: rather too much than too little. */
import type { Box, Ink, Label } from './types.ts';

/** Widths in parts of the size, of a wide interface face; narrower ones leave a little air. */
const NARROW = new Set([...' .,:;·’\'!|ijlI/()"']);
const WIDE = new Set([...'mwMWGOQ×%+−✕✓…@']);
const NARROW_EM = 0.4;
const WIDE_EM = 0.92;
const CAPITAL_EM = 0.72;
const OTHER_EM = 0.64;
const BOLD = 1.1;

function em(character: string): number {
  if (NARROW.has(character)) return NARROW_EM;
  if (WIDE.has(character)) return WIDE_EM;
  return character >= 'A' && character <= 'Z' ? CAPITAL_EM : OTHER_EM;
}

/** Width of a text, pixels. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const character of text) sum += em(character);
  return sum * size * (bold ? BOLD : 1);
}

/** Height of capitals and of what hangs below the baseline, in parts of the size. */
const ABOVE = 0.8;
const BELOW = 0.22;

/** Height of a line of lettering. */
export const lineHeight = (size: number): number => size * (ABOVE + BELOW);

export interface Lettering {
  readonly key: string;
  readonly text: string;
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly size: number;
  readonly anchor?: Label['anchor'];
  readonly ink?: Ink;
  readonly bold?: boolean;
  readonly halo?: boolean;
  /** Room for a sign before the text. */
  readonly before?: number;
}

/** A label and its box. With a sign before it, `x` places the two together. */
export function label(lettering: Lettering): Label {
  const {
    key,
    text,
    x,
    y,
    size,
    anchor = 'middle',
    ink = 'ink',
    bold = false,
    before = 0,
    halo = false,
  } = lettering;
  const width = textWidth(text, size, bold) + before;
  const start = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  const box = { x: start, y: y - size * ABOVE, width, height: lineHeight(size) };
  if (before === 0) return { key, text, x, y, anchor, size, ink, bold, halo, box };
  return { key, text, x: start + before, y, anchor: 'start', size, ink, bold, halo, box };
}

/** Baseline of lettering in the middle of a row. */
export const baseline = (middle: number, size: number): number => middle + (size * (ABOVE - BELOW)) / 2;

export const overlap = (a: Box, b: Box, gap = 0): boolean =>
  a.x < b.x + b.width + gap &&
  b.x < a.x + a.width + gap &&
  a.y < b.y + b.height + gap &&
  b.y < a.y + a.height + gap;

/** True when a box keeps `gap` from all others. */
export const isFree = (box: Box, others: readonly Box[], gap = 0): boolean =>
  !others.some((other) => overlap(box, other, gap));

/** A long name cut to so many characters. */
export const shortened = (name: string, most: number): string =>
  name.length <= most ? name : `${name.slice(0, most - 1)}…`;

/** A tenth of a pixel is finer than any screen. */
export const tidy = (pixels: number): number => Math.round(pixels * 10) / 10 + 0;
