/** Bends as upright bands, named above with what is bent and how the plane turns. */
import type { Bend } from 'runback';
import { isNarrow, MARGIN, small, xOf } from './frame.ts';
import { baseline, label, lineHeight, textWidth, tidy } from './measure.ts';
import { degrees, turnText } from './say.ts';
import { spread } from './spread.ts';
import type { BendBand, Dial, Frame, Label, ProfileInput, Row } from './types.ts';

/** Narrowest a pointer has to meet, pixels; less where the next bend is nearer. */
const HIT = 28;
/** Farthest that lettering may stand from its band, pixels. */
const FARTHEST = 44;
const GAP = 9;

/** What is written of a bend, the fullest first. */
interface Wording {
  readonly head: (index: number, bend: Bend) => string;
  readonly turn: 'words' | 'angle' | 'none';
  /** The bend angle stands on the second line. */
  readonly angleBelow?: boolean;
}

const name = (index: number): string => `B${index + 1}`;

const WORDINGS: readonly Wording[] = [
  { head: (i, bend) => `${name(i)} · ${degrees(bend.angle)}`, turn: 'words' },
  { head: (i, bend) => `${name(i)} ${degrees(bend.angle)}`, turn: 'angle' },
  { head: name, turn: 'none', angleBelow: true },
  { head: name, turn: 'none' },
];

interface Named {
  readonly index: number;
  readonly bend: Bend;
  readonly head: string;
  readonly below: string;
  readonly dial: boolean;
  readonly width: number;
  readonly centre: number;
}

interface Placed extends Named {
  readonly at: number;
}

export interface Bends {
  readonly bands: readonly BendBand[];
  readonly labels: readonly Label[];
}

/** `from`: lettering begins here at the earliest, pixels. */
export function bendsOf(frame: Frame, input: ProfileInput, from: number): Bends {
  const bends = input.worked.centreline!.bends;
  const selected = selectedBend(input);
  const placed = place(frame, bends, { from, selected });
  const hits = hitsOf(frame, bends);
  const bands = bends.map((bend, index): BendBand => {
    const words = placed.find((one) => one.index === index);
    const x = xOf(frame, bend.start);
    return {
      index,
      bend,
      x,
      width: xOf(frame, bend.end) - x,
      selected: index === selected,
      hit: hits[index]!,
      leader: words ? leaderOf(frame, words) : null,
      dial: words?.dial ? dialOf(frame, words) : null,
    };
  });
  return { bands, labels: placed.flatMap((one) => lettering(frame, one, one.index === selected)) };
}

/** The selected bend: itself, or that of the selected corner. */
export function selectedBend({ selection, worked }: ProfileInput): number | null {
  if (selection?.kind === 'bend') return selection.index;
  if (selection?.kind !== 'point') return null;
  const index = worked.centreline!.bends.findIndex(({ points }) => points.includes(selection.index));
  return index < 0 ? null : index;
}

interface Placing {
  readonly from: number;
  readonly selected: number | null;
}

/** The fullest wording that all bends have room for; in the last, every second, third, … bend is named. */
function place(frame: Frame, bends: readonly Bend[], { from, selected }: Placing): readonly Placed[] {
  for (const wording of WORDINGS) {
    const placed = tried(frame, named(frame, bends, wording), from);
    if (placed) return placed;
  }
  const short = named(frame, bends, WORDINGS.at(-1)!);
  for (let every = 2; every < bends.length; every++) {
    const kept = short.filter(({ index }) => index % every === 0 || index === selected);
    const placed = tried(frame, kept, from);
    if (placed) return placed;
  }
  return (
    tried(
      frame,
      short.filter(({ index }) => index === (selected ?? 0)),
      from,
    ) ?? []
  );
}

function named(frame: Frame, bends: readonly Bend[], wording: Wording): readonly Named[] {
  const { text } = frame.size;
  return bends.map((bend, index) => {
    const head = wording.head(index, bend);
    const below = wording.angleBelow ? degrees(bend.angle) : turnBelow(bend, wording.turn);
    const dial = wording.turn !== 'none' && bend.turn !== null && turnText(bend.turn).dial;
    const second = textWidth(below, small(frame.size)) + (dial ? dialRoom(text) : 0);
    const width = Math.max(textWidth(head, text, true), second);
    return { index, bend, head, below, dial, width, centre: xOf(frame, (bend.start + bend.end) / 2) };
  });
}

function turnBelow({ turn }: Bend, how: Wording['turn']): string {
  if (turn === null || how === 'none') return '';
  return how === 'words' ? turnText(turn).words : turnText(turn).short;
}

function tried(frame: Frame, wanted: readonly Named[], from: number): readonly Placed[] | null {
  const room = { from, to: frame.size.width - MARGIN, gap: isNarrow(frame.size) ? GAP - 2 : GAP };
  const centres = spread(wanted, room);
  if (!centres || wanted.some(({ centre }, i) => Math.abs(centre - centres[i]!) > FARTHEST)) return null;
  return wanted.map((one, i) => ({ ...one, at: centres[i]! }));
}

const dialRadius = (text: number): number => text * 0.46;
const dialRoom = (text: number): number => 2 * dialRadius(text) + 5;

/** Baselines of the two lines of lettering. */
function linesOf({ rows, size }: Frame): readonly [number, number] {
  const line = lineHeight(size.text) + 1;
  return [baseline(rows.bends.top + line / 2, size.text), baseline(rows.bends.top + line * 1.5, size.text)];
}

function lettering(frame: Frame, one: Placed, selected: boolean): readonly Label[] {
  const [first, second] = linesOf(frame);
  const { index, at, head, below, dial } = one;
  const ink = selected ? 'select' : 'ink';
  const { text } = frame.size;
  const top = label({ key: `bend-${index}`, text: head, x: at, y: first, size: text, ink, bold: true });
  if (below === '') return [top];
  const before = dial ? dialRoom(text) : 0;
  const size = small(frame.size);
  return [
    top,
    label({
      key: `turn-${index}`,
      text: below,
      x: at,
      y: second,
      size,
      before,
      ink: selected ? 'select' : 'muted',
    }),
  ];
}

function dialOf(frame: Frame, { at, below, bend }: Placed): Dial {
  const { text } = frame.size;
  const width = textWidth(below, small(frame.size)) + dialRoom(text);
  const radius = dialRadius(text);
  const y = linesOf(frame)[1] - small(frame.size) * 0.34;
  return { x: at - width / 2 + radius + 0.5, y, radius, turn: bend.turn! };
}

function leaderOf({ rows }: Frame, { at, centre, below, width }: Placed): string | null {
  if (Math.abs(at - centre) < Math.min(6, width / 4)) return null;
  const top = below === '' ? (rows.bends.top + rows.bends.bottom) / 2 + 1 : rows.bends.bottom - 5;
  return `M${tidy(at)} ${tidy(top)}L${tidy(centre)} ${tidy(rows.plot.top)}`;
}

/** Wide enough to be met, but no farther than half way to the neighbour. */
function hitsOf(frame: Frame, bends: readonly Bend[]): readonly BendBand['hit'][] {
  const rows: Row = { top: frame.rows.bends.top, bottom: frame.rows.axis.top };
  const spans = bends.map(({ start, end }) => [xOf(frame, start), xOf(frame, end)] as const);
  return spans.map(([x1, x2], i) => {
    const grow = Math.max(0, (HIT - (x2 - x1)) / 2);
    const before = spans[i - 1]?.[1] ?? -Infinity;
    const after = spans[i + 1]?.[0] ?? Infinity;
    const from = Math.max(x1 - grow, (before + x1) / 2);
    const to = Math.min(x2 + grow, (x2 + after) / 2);
    return { ...rows, x: from, width: to - from };
  });
}
