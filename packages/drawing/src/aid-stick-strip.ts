/** One piece of a stick strip. Inside its group x is the distance from the end of the stick less where the piece begins. */
import type { StickMark } from '@runback/checks';
import type { LengthStyle } from '@runback/job';
import { placeLabels } from './aid-place.ts';
import { GLUE, type Segment } from './aid-ribbon.ts';
import { type RibbonPiece, ribbonArrow, ribbonJoints, ribbonRule, ribbonWords } from './aid-ribbon-draw.ts';
import { ribbonLabel } from './aid-ribbon-labels.ts';
import {
  doubtWords,
  markLabels,
  type Outline,
  onStick,
  type StickPlan,
  seatDoubt,
  verifyWords,
} from './aid-stick-plan.ts';
import { line, type Part, pen, rect } from './set.ts';
import type { Box, Item, PathStep, Point } from './types.ts';
import { length } from './words.ts';

/** Left of the end of the stick: folded up, it is the stop the stick is pushed against. mm */
export const STOP = 12;
/** Right of the strip: room for labels. mm */
const TAIL = 45;
const RULE = 7;
/** Between the rule, the outlines and the labels. mm */
const AIR = 1.5;
const ROW = 4.3;
const ROWS = 4;
/** For what the strip is, at its bottom edge. mm */
const FOOT = 9.4;
const BAND_GREY = 0.86;

interface Piece extends RibbonPiece {
  readonly plan: StickPlan;
  readonly unit: LengthStyle;
  readonly lo: number;
  readonly hi: number;
}

const tallOf = ({ tall, tip }: Outline): number => Math.max(tall, tip?.tall ?? 0);

/** Where the labels begin: under the rule and the outlines. */
const labelTop = ({ outlines }: StickPlan): number =>
  RULE + AIR + outlines.reduce((sum, one) => sum + tallOf(one) + AIR, 0);

export const stickHeight = (plan: StickPlan): number => labelTop(plan) + ROWS * ROW + FOOT;

export interface DrawnPiece {
  readonly at: (x: number, y: number) => Part;
  /** Labels there was no room for. */
  readonly left: readonly string[];
}

export function drawStick(
  plan: StickPlan,
  segment: Segment,
  { unit, width }: { readonly unit: LengthStyle; readonly width: number },
): DrawnPiece {
  const net = segment.to - segment.from;
  const lo = segment.number === 1 ? -STOP : 0;
  const hi = segment.number === segment.count ? Math.min(net + TAIL, width + lo) : net + GLUE;
  const zone = `stick strip ${segment.number}`;
  const piece: Piece = { plan, unit, segment, zone, net, lo, hi, height: stickHeight(plan), name: 'stick' };
  const labels = labelsOf(piece);
  const items: Item[] = [
    ...numbered(plan).flatMap((mark) => doubtItems(mark, piece)),
    rect({ x: lo, y: 0, width: hi - lo, height: piece.height }, { stroke: pen(0.2) }),
    ...ribbonRule(piece, {
      unit,
      end: plan.length,
      avoid: [0, ...numbered(plan).map(({ mark }) => mark.at)],
    }),
    ...outlineItems(piece),
    ...numbered(plan).flatMap((mark) => markItems(mark, piece)),
    ...stopItems(piece),
    ...ribbonJoints(piece),
    ...footItems(piece),
    ...labels.items,
  ];
  return {
    left: labels.left,
    at: (x, y) => ({
      zones: [{ name: zone, x, y, width: hi - lo, height: piece.height }],
      items: [{ kind: 'group', at: [x - lo, y], name: `stick-strip-${segment.number}`, items }],
    }),
  };
}

interface Numbered {
  readonly mark: StickMark;
  readonly number: number;
}

/** Those that are on the stick, with their numbers in the list. */
const numbered = ({ marks, sheet }: StickPlan): readonly Numbered[] =>
  marks.map((mark, i) => ({ mark, number: i + 1 })).filter(({ mark }) => onStick(mark, sheet));

const owns = (at: number, { from, to, number, count }: Segment): boolean =>
  at >= from && (at < to || number === count);

/** How far the mark may be off, in grey; what reaches over a joint goes on behind it. */
function doubtItems({ mark: { at, doubt }, number }: Numbered, { segment, net, hi, plan }: Piece): Item[] {
  const x = Math.max(0, at - doubt - segment.from);
  const end = Math.min(at + doubt - segment.from, segment.number === segment.count ? hi : net);
  if (end <= x) return [];
  const y = RULE + 0.5;
  return [
    {
      ...rect({ x, y, width: end - x, height: labelTop(plan) - y }, { fill: BAND_GREY }),
      name: `stick-doubt-${number}`,
    },
  ];
}

function markItems({ mark: { at }, number }: Numbered, { segment, plan }: Piece): Item[] {
  if (!owns(at, segment)) return [];
  const x = at - segment.from;
  return [{ ...line([x, 0], [x, labelTop(plan)], pen(0.6)), name: `stick-mark-${number}` }];
}

function outlineItems(piece: Piece): Item[] {
  let y = RULE + AIR;
  return piece.plan.outlines.map((outline): Item => {
    const middle = y + tallOf(outline) / 2;
    y += tallOf(outline) + AIR;
    return outlineItem(outline, middle, piece);
  });
}

/** Open where the stick goes on. */
function outlineItem({ name, tip, tall }: Outline, middle: number, piece: Piece): Item {
  const { segment, net, hi, plan } = piece;
  const last = segment.number === segment.count;
  const stick = plan.sheet.seatToTip.middle - segment.from;
  const end = Math.min(last ? hi : net, stick);
  const shoulder = tip === null ? 0 : Math.min(Math.max(tip.length - segment.from, 0), end);
  const half = (x: number): number => (tip !== null && x < tip.length - segment.from ? tip.tall : tall) / 2;
  const side = (sign: 1 | -1): Point[] => [
    [0, middle + sign * half(0)],
    [shoulder, middle + sign * half(0)],
    [shoulder, middle + (sign * tall) / 2],
    [end, middle + (sign * tall) / 2],
  ];
  const top = side(-1).reverse();
  const steps: PathStep[] = [...top, ...side(1)].map(
    ([x, y], i): PathStep =>
      i === 0 || (i === top.length && segment.number > 1) ? ['M', x, y] : ['L', x, y],
  );
  const closed: readonly PathStep[] = end === stick ? [['L', top[0]![0], top[0]![1]]] : [];
  return { kind: 'path', steps: [...steps, ...closed], stroke: pen(0.35), name: `stick-${name}` };
}

/** The end of the stick, and the tab that is folded up at it. */
function stopItems(piece: Piece): Item[] {
  if (piece.segment.number > 1) return [];
  return [
    { ...line([0, 0], [0, piece.height], pen(0.6)), name: 'stick-end' },
    ...ribbonWords(
      piece,
      { x: -STOP + 0.5, y: 6, width: STOP - 1, height: 14 },
      { text: 'FOLD UP: END of stick', cap: 2.2, lines: 4, first: 'wrap', anchor: 'middle' },
    ),
  ];
}

function footItems(piece: Piece): Item[] {
  const { segment, plan, unit, net, hi, height } = piece;
  const x = segment.number > 1 ? 8.5 : 1.5;
  const right = segment.number === segment.count ? hi : net;
  const { sheet } = plan;
  const what = `piece ${segment.number} of ${segment.count} · seat to end of stick ${length(sheet.seatToTip.middle, unit)} ± ${doubtWords(seatDoubt(sheet), unit)} · goes in at ${plan.mouth}`;
  return [
    ...ribbonWords(
      piece,
      { x, y: height - FOOT + 0.4, width: right - x - 1, height: 4 },
      { text: verifyWords(plan), cap: 2.6, weight: 'bold' },
    ),
    ...ribbonWords(
      piece,
      { x, y: height - 4.6, width: right - x - 28, height: 4 },
      { text: what, cap: 2, minCap: 1.2, lines: 2 },
    ),
    ...ribbonWords(
      piece,
      { x: right - 26, y: height - 4.6, width: 18, height: 4 },
      { text: 'to its cap', cap: 1.9, weight: 'bold', anchor: 'end' },
    ),
    ribbonArrow(right - 7, height - 2.6),
  ];
}

function labelsOf(piece: Piece): ReturnType<typeof placeLabels> {
  const { plan, segment, unit, zone, net, hi, height } = piece;
  const top = labelTop(plan);
  const rows = Array.from({ length: ROWS }, (_, i) => top + (i + 0.8) * ROW);
  const area: Box = {
    x: 0,
    y: top,
    width: segment.number === segment.count ? hi : net,
    height: height - FOOT - top + 0.4,
  };
  // From the cap down: a label hangs below those to its right, and its leader meets none of them.
  const labels = numbered(plan)
    .filter(({ mark }) => owns(mark.at, segment))
    .map(({ mark, number }) =>
      ribbonLabel({
        x: mark.at - segment.from,
        labels: markLabels(mark, number, unit),
        weight: 'bold',
        rows,
        top,
      }),
    );
  const ends: readonly (readonly [Point, Point])[] =
    segment.number === 1
      ? [
          [
            [0, 0],
            [0, height],
          ],
        ]
      : [];
  return placeLabels(labels, {
    zone,
    lines: ends,
    boxes: [],
    allowed: (box) =>
      box.x >= area.x - 0.5 &&
      box.x + box.width <= area.x + area.width &&
      box.y >= area.y &&
      box.y + box.height <= area.y + area.height,
  });
}
