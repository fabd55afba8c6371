/** One strip of the marking tape. Inside its group x is the distance along the tape less where the strip begins. */
import type { AidContext } from './aid-context.ts';
import { GLUE, type Segment } from './aid-ribbon.ts';
import { type RibbonPiece, ribbonArrow, ribbonJoints, ribbonRule, ribbonWords } from './aid-ribbon-draw.ts';
import { RULE, STRIP_HEIGHT, type Strip, tapeLabels } from './aid-tape-labels.ts';
import type { Tape, TapeMark, TapeSpan } from './aid-tape-plan.ts';
import { line, type Part, pen, rect } from './set.ts';
import type { Item, Stroke } from './types.ts';
import { nameWords } from './words.ts';

/** Left of ZERO, to fold over the end of the tube. mm */
export const TAB = 12;
/** Right of the end of the tube: room for labels, waste. mm */
const TAIL = 45;
/** Length of the arrow on a mark, mm. */
const ARROW = 3.2;
const BAND_GREY = 0.88;

export interface DrawnSegment {
  readonly at: (x: number, y: number) => Part;
  /** Labels there was no room for. */
  readonly left: readonly string[];
}

export function drawSegment(
  tape: Tape,
  segment: Segment,
  how: { readonly context: AidContext; readonly width: number },
): DrawnSegment {
  const first = segment.number === 1;
  const last = segment.number === segment.count;
  const net = segment.to - segment.from;
  const lo = first ? -TAB : 0;
  const hi = last ? Math.min(net + TAIL, how.width + lo) : net + GLUE;
  const strip: Strip = { context: how.context, segment, zone: `strip ${segment.number}`, lo, net, hi };
  const labels = tapeLabels(tape, strip);
  const items: Item[] = [
    ...tape.spans.flatMap((span) => spanItems(span, strip)),
    rect({ x: lo, y: 0, width: hi - lo, height: STRIP_HEIGHT }, { stroke: pen(0.2) }),
    ...ruler(tape, strip),
    ...tape.marks
      .filter((mark) => within(mark.at, strip, GLUE - ARROW))
      .flatMap((mark) => markItems(mark, strip)),
    ...ends(strip),
    ...labels.items,
  ];
  return {
    left: labels.left,
    at: (x, y) => ({
      zones: [{ name: strip.zone, x, y, width: hi - lo, height: STRIP_HEIGHT }],
      items: [{ kind: 'group', at: [x - lo, y], name: `tape-strip-${segment.number}`, items }],
    }),
  };
}

const within = (at: number, { segment }: Strip, beyond: number): boolean =>
  at >= segment.from && at <= segment.to + (segment.number === segment.count ? 0 : beyond);

function spanItems({ name, kind, from, to }: TapeSpan, { segment, lo, hi }: Strip): Item[] {
  const x = Math.max(from - segment.from, lo, segment.number === 1 ? 0 : lo);
  const end = Math.min(to - segment.from, hi);
  if (end <= x) return [];
  if (kind === 'bend')
    return [{ ...rect({ x, y: 0, width: end - x, height: STRIP_HEIGHT }, { fill: BAND_GREY }), name }];
  return [
    {
      ...rect({ x, y: 0.6, width: end - x, height: RULE - 1 }, { stroke: { ...pen(0.3), dash: [1.2, 0.8] } }),
      name,
    },
  ];
}

const STROKES: Readonly<Record<TapeMark['kind'], Stroke>> = {
  mark: pen(0.6),
  clip: { ...pen(0.4), dash: [0.8, 0.8] },
  trim: { ...pen(0.5), dash: [2, 1] },
  end: pen(0.6),
};

function markItems({ name, kind, at }: TapeMark, { segment, lo }: Strip): Item[] {
  const x = at - segment.from;
  const foot = kind === 'end' ? STRIP_HEIGHT : RULE;
  const stroke = { ...line([x, 0], [x, foot], STROKES[kind]), name };
  // A mark so near the tab that it stands on it would be folded away: there is none before ZERO.
  if (kind !== 'mark' || x < lo) return [stroke];
  const arrow: Item = {
    kind: 'path',
    fill: 0,
    steps: [['M', x, 3.4], ['L', x + ARROW, 5.2], ['L', x, RULE], ['Z']],
  };
  return [stroke, arrow];
}

function ruler(tape: Tape, strip: Strip): Item[] {
  return ribbonRule(piece(strip), {
    unit: strip.context.plan.unit,
    end: tape.length,
    avoid: [
      0,
      ...tape.marks.map((m) => m.at),
      ...tape.spans.filter((s) => s.kind === 'park').flatMap((s) => [s.from, s.to]),
    ],
  });
}

const piece = ({ segment, net, zone }: Strip): RibbonPiece => ({
  segment,
  net,
  zone,
  height: STRIP_HEIGHT,
  name: 'tape',
});

/** ZERO, the joints with their letters, what this strip is and which way it goes. */
function ends(strip: Strip): Item[] {
  const { segment, context, net } = strip;
  const { number, count } = segment;
  const { plan, worked } = context;
  const zero: Item[] =
    number > 1
      ? []
      : [
          { ...line([0, 0], [0, STRIP_HEIGHT], pen(0.6)), name: 'tape-zero' },
          ...ribbonWords(
            strip,
            { x: -TAB + 0.6, y: 7, width: TAB - 1.2, height: 12 },
            { text: 'FOLD at ZERO', cap: 2.2, lines: 3, first: 'wrap', anchor: 'middle' },
          ),
        ];
  const what = `strip ${number} of ${count} · ${nameWords(worked.line)} · ${plan.hand === 'OPPOSITE HAND' ? 'OPPOSITE HAND · ' : ''}END ${plan.from} to the left`;
  const arrow = Math.max(0, Math.min(net, strip.hi) - 5);
  return [
    ...zero,
    ...ribbonJoints(piece(strip)),
    ...(net > 40
      ? [
          ...ribbonWords(
            strip,
            { x: 8.5, y: 20.6, width: net - 40, height: 4 },
            { text: what, cap: 1.8, minCap: 1.2 },
          ),
          ...ribbonWords(
            strip,
            { x: net - 31, y: 20.6, width: 25, height: 4 },
            { text: `to FREE, END ${plan.free}`, cap: 1.9, weight: 'bold', anchor: 'end' },
          ),
          ribbonArrow(arrow, 22.6),
        ]
      : []),
  ];
}
