/** The lane of clearance: what is left of the distance wanted to the nearest thing. */
import type { LengthStyle, ProfilePlace } from 'runback';
import { pathOf } from './curve.ts';
import { MARGIN, small, xOf } from './frame.ts';
import { baseline, isFree, label, lineHeight, textWidth, tidy } from './measure.ts';
import { isShort, marginOf, type Nearest } from './readings.ts';
import { nameOf, nearestWords } from './say.ts';
import { bare } from './ticks.ts';
import type { Box, Frame, Label, Lane, ProfileInput, Row, Spot } from './types.ts';

/** Least that the full height of the lane stands for, mm: what is farther looks alike. */
const FULL_LEAST = 20;

export interface Lanes {
  readonly lane: Lane | null;
  readonly labels: readonly Label[];
}

interface Scale {
  readonly row: Row;
  readonly zero: number;
  /** What is farther than this is drawn alike. */
  readonly full: number;
  readonly y: (margin: number) => number;
}

export function laneOf(frame: Frame, input: ProfileInput): Lanes {
  const row = frame.rows.lane;
  if (row === null) return { lane: null, labels: [] };
  const readings = input.profile.places.filter(({ nearest }) => nearest !== null);
  if (readings.length === 0) return { lane: null, labels: [nothingGiven(frame, row)] };
  const scale = scaleOf({ top: row.top + lineHeight(small(frame.size)), bottom: row.bottom }, readings);
  const runs = runsOf(input.profile.places);
  const clear = areaPath(frame, runs, { y: (m) => scale.y(Math.max(m, 0)), base: scale.zero });
  const short = areaPath(frame, runs, { y: (m) => scale.y(Math.min(m, 0)), base: scale.zero });
  const worst = tightestOf(readings);
  const spot = { x: xOf(frame, worst.at), y: scale.y(marginOf(worst.nearest!)) };
  const anyShort = isShort(worst.nearest!);
  return {
    lane: {
      zero: scale.zero,
      clear,
      clearLine: linePath(frame, runs, { y: scale.y, shown: (m) => m >= 0 && m < scale.full }),
      short: anyShort ? short : '',
      shortLine: linePath(frame, runs, { y: scale.y, shown: (m) => m <= 0 }),
      changes: changesOf(frame, runs),
      chosen: chosenOf(frame, input, runs),
      tightest: spot,
    },
    labels: namesOf(frame, input, { row, runs, worst }),
  };
}

function nothingGiven(frame: Frame, row: Row): Label {
  const size = small(frame.size);
  const y = (row.top + row.bottom) / 2 + size / 3;
  const all = 'clearance is not judged: nothing near is given';
  const fits = textWidth(all, size) < frame.right - frame.left;
  const text = fits ? all : 'clearance is not judged';
  return label({ key: 'lane-none', text, x: frame.left, y, size, anchor: 'start', ink: 'muted' });
}

/** The distance wanted lies at the foot of the lane, or in its middle when something is too near. */
function scaleOf(row: Row, readings: readonly ProfilePlace[]): Scale {
  const least = marginOf(tightestOf(readings).nearest!);
  const height = row.bottom - row.top - 2;
  const shortest = Math.max(0, -least);
  const full = Math.max(FULL_LEAST, 2.5 * Math.abs(least));
  const share = shortest > 0 ? 0.5 : 0;
  const zero = row.bottom - 1 - height * share;
  const down = shortest > 0 ? (height * share) / Math.max(shortest, FULL_LEAST / 4) : 0;
  const up = (height * (1 - share)) / full;
  const y = (margin: number): number =>
    margin >= 0 ? zero - Math.min(margin, full) * up : zero - Math.max(margin, -shortest) * down;
  return { row, zero, full, y };
}

const tightestOf = (places: readonly ProfilePlace[]): ProfilePlace =>
  places.reduce((a, b) => (marginOf(b.nearest!) < marginOf(a.nearest!) ? b : a));

/** Places in a row that have the same nearest thing. */
interface Run {
  readonly nearest: Nearest;
  readonly places: readonly ProfilePlace[];
}

function runsOf(places: readonly ProfilePlace[]): readonly Run[] {
  const runs: { nearest: Nearest; places: ProfilePlace[] }[] = [];
  let before: Nearest | null = null;
  for (const place of places) {
    const { nearest } = place;
    if (nearest !== null && before?.to === nearest.to) runs.at(-1)!.places.push(place);
    else if (nearest !== null) runs.push({ nearest, places: [place] });
    before = nearest;
  }
  return runs;
}

interface Shape {
  readonly y: (margin: number) => number;
  readonly base: number;
}

/** Runs that follow on each other are one shape. */
function areaPath(frame: Frame, runs: readonly Run[], { y, base }: Shape): string {
  const places = runs.flatMap((run) => run.places);
  const spots: Spot[] = places.map(({ at, nearest }) => ({ x: xOf(frame, at), y: y(marginOf(nearest!)) }));
  return `${pathOf(spots)}V${tidy(base)}H${tidy(spots[0]!.x)}Z`;
}

interface Shown {
  readonly y: (margin: number) => number;
  readonly shown: (margin: number) => boolean;
}

/** The edge of the shape where it says something, each part with the place after it. */
function linePath(frame: Frame, runs: readonly Run[], { y, shown }: Shown): string {
  const places = runs.flatMap((run) => run.places);
  const parts: Spot[][] = [[]];
  for (const { at, nearest } of places) {
    const margin = marginOf(nearest!);
    if (shown(margin)) parts.at(-1)!.push({ x: xOf(frame, at), y: y(margin) });
    else if (parts.at(-1)!.length > 0) parts.push([]);
  }
  return parts
    .filter((part) => part.length > 1)
    .map(pathOf)
    .join('');
}

const changesOf = (frame: Frame, runs: readonly Run[]): readonly number[] =>
  runs.slice(1).map((run, i) => xOf(frame, (runs[i]!.places.at(-1)!.at + run.places[0]!.at) / 2));

function spanOf(frame: Frame, { places }: Run): readonly [number, number] {
  return [xOf(frame, places[0]!.at), xOf(frame, places.at(-1)!.at)];
}

function chosenOf(frame: Frame, { selection }: ProfileInput, runs: readonly Run[]): readonly Row[] {
  if (selection?.kind !== 'surrounding') return [];
  return runs
    .filter(({ nearest }) => nearest.to === selection.id)
    .map((run) => {
      const [top, bottom] = spanOf(frame, run);
      return { top, bottom };
    });
}

interface Naming {
  readonly row: Row;
  readonly runs: readonly Run[];
  readonly worst: ProfilePlace;
}

/** The tightest with its numbers, then the others where there is room for their names. */
function namesOf(frame: Frame, input: ProfileInput, { row, runs, worst }: Naming): readonly Label[] {
  const size = small(frame.size);
  const y = baseline(row.top + lineHeight(size) / 2, size);
  const nearest = worst.nearest!;
  const text = tightestWords(input.style, nearest, frame);
  const half = textWidth(text, size, true) / 2;
  const x = Math.min(Math.max(xOf(frame, worst.at), frame.left + half), frame.size.width - half - MARGIN);
  const ink = isShort(nearest) ? 'fail' : 'ink';
  const labels = [label({ key: 'lane-tightest', text, x, y, size, ink, bold: true })];
  const boxes: Box[] = labels.map(({ box }) => box);
  for (const [i, run] of runs.entries()) {
    const [from, to] = spanOf(frame, run);
    const name = label({
      key: `lane-${i}`,
      text: nameOf(run.nearest),
      x: (from + to) / 2,
      y,
      size,
      ink: 'muted',
    });
    if (name.box.width > to - from - 4 || !isFree(name.box, boxes, 6)) continue;
    labels.push(name);
    boxes.push(name.box);
  }
  return labels;
}

function tightestWords(style: LengthStyle, nearest: Nearest, frame: Frame): string {
  if (frame.size.width >= 360) return nearestWords(nearest, style);
  return `${nameOf(nearest)} ${bare(nearest.distance, style)}`;
}
