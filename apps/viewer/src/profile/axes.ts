/** The two axes: distance from end A and height. */
import { formatLength } from 'runback';
import { isNarrow, MARGIN, scaleWords, small, xOf, yOf } from './frame.ts';
import { baseline, isFree, label, textWidth } from './measure.ts';
import { bare, multiples, roundStep, unitOf } from './ticks.ts';
import type { Frame, Label, ProfileInput, Tick } from './types.ts';

/** Least distance between ticks, in parts of the lettering. */
const HEIGHTS_APART = 2.1;

interface Axis {
  readonly ticks: readonly Tick[];
  readonly labels: readonly Label[];
}

/** Distances from A, the whole length at Z with its unit. */
export function alongAxis(frame: Frame, { style, profile }: ProfileInput): Axis {
  const size = small(frame.size);
  const y = baseline((frame.rows.axis.top + frame.rows.axis.bottom) / 2 + 2, size);
  const whole = label({
    key: 'along-end',
    text: formatLength(profile.length, style),
    x: frame.size.width - MARGIN,
    y,
    size,
    anchor: 'end',
    ink: 'ink',
  });
  const widest = textWidth(bare(profile.length, style), size);
  const step = roundStep((widest + size * 1.8) / frame.perMm, style);
  const labels: Label[] = [whole];
  const ticks = multiples(0, profile.length, step).map((at): Tick => {
    const text = bare(at, style);
    const made = label({ key: `along-${text}`, text, x: xOf(frame, at), y, size, ink: 'muted' });
    if (!isFree(made.box, [whole.box], size)) return { at, text: null };
    labels.push(made);
    return { at, text };
  });
  return { ticks: [...ticks, { at: profile.length, text: whole.text }], labels };
}

/** Heights over the drain end, where there is a line for them to stand at. */
export function heightAxis(frame: Frame, { style }: ProfileInput): Axis {
  const size = small(frame.size);
  const perMm = frame.perMm * frame.exaggeration;
  const step = roundStep((frame.size.text * HEIGHTS_APART) / perMm, style);
  const top = frame.low + (frame.ground - frame.rows.plot.top - size * 0.6) / perMm;
  const heights = multiples(frame.low, Math.min(top, frame.high + step * 0.6), step);
  const ticks = heights.map((at): Tick => ({ at, text: bare(at, style).replace('-', '−') }));
  const labels = ticks.map(({ at, text }) =>
    label({
      key: `height-${text}`,
      text: text!,
      x: frame.left - frame.size.text * 2.15,
      y: baseline(yOf(frame, at), size),
      size,
      anchor: 'end',
      ink: 'muted',
    }),
  );
  return { ticks, labels };
}

/** Over the axis of heights: how much they are drawn out, and their unit. */
export function heightCaption(frame: Frame, { style }: ProfileInput): readonly Label[] {
  const size = small(frame.size);
  const { top, bottom } = frame.rows.bends;
  const quarter = (bottom - top - 5) / 4;
  const line = (key: string, text: string, middle: number): Label =>
    label({ key, text, x: MARGIN, y: baseline(middle, size), size, anchor: 'start', ink: 'muted' });
  const words = scaleWords(frame);
  // The unit stands at the end of the other axis too: where room is short that will do.
  const [first, second] = isNarrow(frame.size) ? ['height', words] : [`height ${words}`, unitOf(style)];
  return [line('height-scale', first, top + quarter), line('height-unit', second, top + 3 * quarter)];
}

/** Names of the rows, where the margin has room for them. */
export function rowNames(frame: Frame, anyMarks: boolean): readonly Label[] {
  const size = small(frame.size);
  const { straights, marks, lane } = frame.rows;
  const most = frame.left - 3;
  const named = [
    ['straights', straights],
    ['marks', anyMarks ? marks : null],
    ['clear', lane],
  ] as const;
  return named.flatMap(([text, row]) => {
    if (row === null || textWidth(text, size) > most) return [];
    const y = baseline((row.top + row.bottom) / 2, size);
    return [label({ key: `row-${text}`, text, x: MARGIN, y, size, anchor: 'start', ink: 'muted' })];
  });
}
