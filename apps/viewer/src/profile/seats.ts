/** Pencil marks and clips: on the tube, and below it with their distances. */

import type { LengthStyle, WorkedLine } from 'runback';
import { roundPlan } from 'runback';
import { selectedBend } from './bends.ts';
import { curveY } from './curve.ts';
import { MARGIN, small, xOf } from './frame.ts';
import { baseline, isFree, type Lettering, label } from './measure.ts';
import { bare } from './ticks.ts';
import type { Box, Frame, Label, PencilMark, ProfileInput, Seat, Spot } from './types.ts';

/** Pencil marks of a line worked from end A, as the sheet prints them. */
export function pencilMarks(
  { line, plan, centreline }: WorkedLine,
  style: LengthStyle,
): readonly PencilMark[] {
  if (plan === null || centreline === null) return [];
  return roundPlan(line, plan, { unit: style }).rows.map(({ mark, exact }) => ({
    at: Math.max(0, exact.start - (exact.die?.markOffset ?? 0)),
    bend: exact.bendFromA - 1,
    reads: bare(mark, style),
  }));
}

interface Item {
  readonly key: string;
  readonly kind: Seat['kind'];
  readonly at: number;
  readonly reads: string;
  readonly selected: boolean;
}

/** Half the room of a sign, in parts of the lettering. It stands at its place, and the number begins beyond it. */
const HALF_SIGN = 0.62;

export interface Seats {
  readonly seats: readonly Seat[];
  readonly labels: readonly Label[];
}

/** Marks are named before clips: they are what is worked by. */
export function seatsOf(frame: Frame, input: ProfileInput, spots: readonly Spot[]): Seats {
  const items = itemsOf(input);
  const labels = lettered(frame, items);
  const seats = items.map((item): Seat => {
    const x = xOf(frame, item.at);
    const words = labels.find(({ key }) => key === item.key);
    const sign = words ? { x, y: words.box.y + words.box.height / 2 } : null;
    return {
      kind: item.kind,
      at: item.at,
      x,
      y: curveY(spots, x),
      lean: leanAt(spots, x),
      sign,
      selected: item.selected,
    };
  });
  return { seats, labels };
}

/** How the line leans on the screen, degrees. */
const leanAt = (spots: readonly Spot[], x: number): number =>
  (Math.atan2(curveY(spots, x + 1) - curveY(spots, x - 1), 2) * 180) / Math.PI;

function itemsOf(input: ProfileInput): readonly Item[] {
  const { marks, worked, style, profile } = input;
  const bend = selectedBend(input);
  const clips = (worked.line.clips ?? []).filter((at) => at >= 0 && at <= profile.length);
  return [
    ...marks.map(
      (mark): Item => ({
        ...mark,
        key: `mark-${mark.bend}`,
        kind: 'mark',
        selected: mark.bend === bend,
      }),
    ),
    ...clips.map(
      (at, i): Item => ({ key: `clip-${i}`, kind: 'clip', at, reads: bare(at, style), selected: false }),
    ),
  ];
}

function lettered(frame: Frame, items: readonly Item[]): readonly Label[] {
  const row = frame.rows.marks;
  if (row === null) return [];
  const size = small(frame.size);
  const y = baseline((row.top + row.bottom) / 2 + 1, size);
  const labels: Label[] = [];
  const boxes: Box[] = [];
  for (const { key, kind, at, reads, selected } of [...items].sort(bySelected)) {
    const ink = selected ? 'select' : kind === 'mark' ? 'ink' : 'muted';
    const made = beside(frame, xOf(frame, at), { key, text: reads, y, size, ink });
    if (!isFree(made.box, boxes, 5)) continue;
    labels.push(made);
    boxes.push(made.box);
  }
  return labels;
}

/** The number after its sign, or before it where the drawing ends. The box holds both. */
function beside(frame: Frame, x: number, lettering: Omit<Lettering, 'x'>): Label {
  const half = HALF_SIGN * frame.size.text;
  const after = label({ ...lettering, x: x - half, anchor: 'start', before: 2 * half });
  if (after.box.x + after.box.width <= frame.size.width - MARGIN) return after;
  const before = label({ ...lettering, x: x - half, anchor: 'end' });
  return { ...before, box: { ...before.box, width: before.box.width + 2 * half } };
}

const bySelected = (a: Item, b: Item): number => Number(b.selected) - Number(a.selected);
