/** The labels of one strip of the marking tape, in the strip's own mm. */
import type { AidContext } from './aid-context.ts';
import { type Label, placeLabels } from './aid-place.ts';
import type { Segment } from './aid-ribbon.ts';
import { ribbonLabel } from './aid-ribbon-labels.ts';
import type { Tape, TapeMark } from './aid-tape-plan.ts';
import type { Box, Item, Point, Weight } from './types.ts';

export const STRIP_HEIGHT = 25;
/** The edge along the tube with its rule; below it the rows of labels, at the bottom what the strip is. */
export const RULE = 7;
const ROWS = [10.2, 14.5, 18.8] as const;
const UPWARD = [...ROWS].reverse();
const BOTTOM = 23.6;

export interface Strip {
  readonly context: AidContext;
  readonly segment: Segment;
  readonly zone: string;
  /** Drawn from here to there, in the strip's own mm; 0 … `net` is its share of the tape. */
  readonly lo: number;
  readonly net: number;
  readonly hi: number;
}

/** True in the strip that names it: the one it stands on outside the glue. */
const owns = (at: number, { segment }: Strip): boolean =>
  at >= segment.from && (at < segment.to || segment.number === segment.count);

const zeroLabel = ({ plan: { hook } }: AidContext): Pick<TapeMark, 'at' | 'labels'> => ({
  at: 0,
  labels: [`ZERO: hook on ${hook.words}`, `ZERO: ${hook.words}`, 'ZERO'],
});

export function tapeLabels(
  tape: Tape,
  strip: Strip,
): { readonly items: readonly Item[]; readonly left: readonly string[] } {
  const { segment, net, hi, zone, context } = strip;
  const last = segment.number === segment.count;
  const area: Box = { x: 0, y: RULE, width: last ? hi : net, height: BOTTOM - 3 - RULE };
  const mine = tape.marks.filter((mark) => owns(mark.at, strip));
  const named = [...mine, ...tape.spans.map((span) => ({ ...span, at: Math.max(0, span.from) }))].filter(
    (one) => one.kind !== 'end' && one.labels.length > 0 && owns(one.at, strip),
  );
  const weightOf = ({ kind }: { readonly kind: string }): Weight =>
    kind === 'mark' || kind === 'trim' ? 'bold' : 'regular';
  // From right to left: a label then hangs below those to its right, and its leader meets none of them.
  const labels: Label[] = [
    ...named
      .sort((a, b) => b.at - a.at)
      .map((one) => label(one, { strip, weight: weightOf(one), rows: ROWS })),
    ...mine
      .filter((mark) => mark.kind === 'end')
      .map((mark) => label(mark, { strip, weight: 'bold', rows: UPWARD })),
    ...(segment.number === 1 ? [label(zeroLabel(context), { strip, weight: 'bold', rows: UPWARD })] : []),
  ];
  const full = [
    ...(segment.number === 1 ? [0] : []),
    ...mine.filter((m) => m.kind === 'end').map((m) => m.at - segment.from),
  ];
  const lines = full.map((x): readonly [Point, Point] => [
    [x, 0],
    [x, STRIP_HEIGHT],
  ]);
  return placeLabels(labels, { zone, lines, boxes: [], allowed: (box) => insideX(box, area) });
}

const insideX = (box: Box, area: Box): boolean =>
  box.x >= area.x - 0.5 &&
  box.x + box.width <= area.x + area.width &&
  box.y >= area.y - 0.6 &&
  box.y + box.height <= area.y + area.height + 0.9;

const label = (
  { at, labels }: { readonly at: number; readonly labels: readonly string[] },
  { strip, ...how }: { readonly strip: Strip; readonly weight: Weight; readonly rows: readonly number[] },
): Label => ribbonLabel({ x: at - strip.segment.from, labels, top: RULE, ...how });
