/** The straights between the bands, measured as on a drawing: a thin rule with its length in a gap. */
import { formatLength } from 'runback';
import { small, xOf } from './frame.ts';
import { baseline, isFree, label, textWidth } from './measure.ts';
import type { Box, Frame, Label, ProfileInput, StraightRule } from './types.ts';

export interface StraightSpan {
  /** How many bends lie before it. */
  readonly before: number;
  readonly start: number;
  readonly end: number;
}

/** The straights of a line, from end A. Those without length are left out. */
export function spansOf({ worked }: ProfileInput): readonly StraightSpan[] {
  const { bends, length } = worked.centreline!;
  return Array.from({ length: bends.length + 1 }, (_, before) => ({
    before,
    start: bends[before - 1]?.end ?? 0,
    end: bends[before]?.start ?? length,
  })).filter(({ start, end }) => end > start);
}

/** Lengths that a check finds too short are written first, then the longest. */
export function straightsOf(frame: Frame, input: ProfileInput, taken: readonly Box[]): Straights {
  const row = frame.rows.straights;
  if (row === null) return { rules: [], labels: [] };
  const spans = spansOf(input);
  const size = small(frame.size);
  const y = (row.top + row.bottom) / 2 + 1;
  const labels: Label[] = [];
  const boxes: Box[] = [];
  for (const span of [...spans].sort((a, b) => urgency(input, b) - urgency(input, a))) {
    const tight = isTight(input, span);
    const text = formatLength(span.end - span.start, input.style, { bare: true });
    const half = textWidth(text, size, tight) / 2;
    const made = label({
      key: `straight-${span.before}`,
      text,
      x: Math.max(xOf(frame, (span.start + span.end) / 2), frame.left + half - 1),
      y: baseline(y, size),
      size,
      ink: tight ? 'fail' : 'ink',
      bold: tight,
    });
    const room = xOf(frame, span.end) - xOf(frame, span.start);
    if (made.box.width > room + size * 2 || !isFree(made.box, boxes, 5)) continue;
    if (!isFree(made.box, taken)) continue;
    labels.push(made);
    boxes.push(made.box);
  }
  return { labels, rules: spans.map((span) => ruleOf(frame, input, { span, labels, y })) };
}

interface Straights {
  readonly rules: readonly StraightRule[];
  readonly labels: readonly Label[];
}

const urgency = (input: ProfileInput, span: StraightSpan): number =>
  (isTight(input, span) ? input.profile.length : 0) + span.end - span.start;

/** A check of this straight fails. */
const isTight = ({ worked }: ProfileInput, { start, end }: StraightSpan): boolean =>
  worked.findings.some(
    ({ check, verdict, at }) =>
      check === 'straights' && verdict === 'fail' && at !== null && at >= start && at <= end,
  );

interface Ruled {
  readonly span: StraightSpan;
  readonly labels: readonly Label[];
  readonly y: number;
}

function ruleOf(frame: Frame, input: ProfileInput, { span, labels, y }: Ruled): StraightRule {
  const words = labels.find(({ key }) => key === `straight-${span.before}`);
  const [x1, x2] = [xOf(frame, span.start), xOf(frame, span.end)];
  const gap = words ? gapFor(words.box, x1, x2) : null;
  return { x1, x2, y, gap, selected: legOf(input)?.before === span.before };
}

/** Stumps shorter than this say nothing and touch the number, pixels. */
const STUMP = 3;

function gapFor({ x, width }: Box, x1: number, x2: number): readonly [number, number] {
  const [from, to] = [x - STUMP, x + width + STUMP];
  return from < x1 + STUMP || to > x2 - STUMP ? [x1, x2] : [from, to];
}

/** The straight on the selected leg between two points of the job, or null. */
export function legOf(input: ProfileInput): StraightSpan | null {
  const { selection, worked } = input;
  if (selection?.kind !== 'leg') return null;
  const { bends } = worked.centreline!;
  const before = bends.filter(({ points }) => points.at(-1)! <= selection.index).length;
  return spansOf(input).find((span) => span.before === before) ?? null;
}
