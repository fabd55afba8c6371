/** Divides the box into rows and finds the scales. */
import { lineHeight } from './measure.ts';
import type { Frame, Row, Rows, Size } from './types.ts';

/** Heights are drawn so many times lengths: round numbers, so that a dragged corner does not make the scale swim. */
const EXAGGERATIONS = [
  0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20,
];

/** Narrower than this, in parts of the lettering, the read-out takes two rows. */
const NARROW = 48;
const PLOT_LEAST = 56;

export const isNarrow = ({ width, text }: Size): boolean => width < NARROW * text;

/** Small lettering: axes and names. */
export const small = ({ text }: Size): number => text - 1;

interface Heights {
  readonly length: number;
  readonly low: number;
  readonly high: number;
}

export function frameOf(size: Size, { length, low, high }: Heights): Frame {
  const rows = rowsOf(size);
  const left = Math.round(22 + size.text * (isNarrow(size) ? 2.5 : 3.8));
  const right = size.width - 26;
  const perMm = Math.max(1, right - left) / length;
  const foot = rows.plot.bottom - size.text * 0.75;
  const room = foot - rows.plot.top - size.text * 1.1;
  const rise = (high - low) * perMm;
  const exaggeration = exaggerationFor(rise, room);
  // A line that hardly rises is not left lying at the foot.
  const ground = foot - Math.max(0, room / 2 - rise * exaggeration) * 0.7;
  return { size, rows, left, right, length, perMm, exaggeration, low, high, ground };
}

/** Less rise than this shows nothing, however it is drawn out. Pixels. */
const NO_RISE = 0.2;

/** The largest round one that fits. */
function exaggerationFor(rise: number, room: number): number {
  if (rise < NO_RISE) return 1;
  const fits = EXAGGERATIONS.filter((times) => rise * times <= room);
  return fits.at(-1) ?? room / rise;
}

/** Kept free round the drawing, for the ring of the focus. Pixels. */
export const MARGIN = 4;

export const xOf = ({ left, perMm }: Frame, at: number): number => left + at * perMm;
export const yOf = ({ ground, perMm, exaggeration, low }: Frame, height: number): number =>
  ground - (height - low) * perMm * exaggeration;
/** The place along the line under a pixel, held to the line. */
export const atOf = ({ left, perMm, length }: Frame, x: number): number =>
  Math.min(Math.max((x - left) / perMm, 0), length);

/** "×2.0", or "to scale". */
export const scaleWords = ({ exaggeration }: Frame): string =>
  exaggeration === 1 ? 'to scale' : `×${timesText(exaggeration)}`;

/** Always a decimal, so that it reads as a scale: 2.0, 0.25. */
const timesText = (times: number): string =>
  Number.isInteger(times * 10) || times >= 1 ? times.toFixed(1) : times.toFixed(2);

type Wish = readonly [name: keyof Rows, height: number];

/** Rows that may be left out, the first to go first. */
const SPARE: readonly (keyof Rows)[] = ['marks', 'straights', 'lane'];

function rowsOf(size: Size): Rows {
  let wishes = wishesOf(size);
  const left = (): number => size.height - wishes.reduce((sum, [, height]) => sum + height, 0);
  for (const name of SPARE) if (left() < PLOT_LEAST) wishes = wishes.filter(([row]) => row !== name);
  return stacked(wishes, Math.max(PLOT_LEAST / 2, left()));
}

function wishesOf(size: Size): readonly Wish[] {
  const line = lineHeight(size.text);
  return [
    ['head', (isNarrow(size) ? 2 : 1) * (line + 2) + 6],
    ['bends', 2 * (line + 1) + 5],
    ['plot', 0],
    ['straights', line + 5],
    ['marks', line + 5],
    ['lane', line + Math.max(17, size.height * 0.09)],
    ['axis', line + 6],
  ];
}

function stacked(wishes: readonly Wish[], plot: number): Rows {
  let top = 0;
  const rows: Partial<Record<keyof Rows, Row>> = {};
  for (const [name, height] of wishes) {
    const bottom = top + (name === 'plot' ? plot : height);
    rows[name] = { top, bottom };
    top = bottom;
  }
  const need = (name: keyof Rows): Row => rows[name] ?? { top, bottom: top };
  return {
    head: need('head'),
    bends: need('bends'),
    plot: need('plot'),
    straights: rows.straights ?? null,
    marks: rows.marks ?? null,
    lane: rows.lane ?? null,
    axis: need('axis'),
  };
}
