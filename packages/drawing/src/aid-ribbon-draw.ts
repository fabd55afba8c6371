/** What every ribbon in pieces shares: the rule along its top edge, joints with their letters, words inside a piece. */
import { type JobUnit, type LengthStyle, MM_PER_INCH, plainUnit } from '@runback/job';
import { GLUE, jointName, type Segment } from './aid-ribbon.ts';
import { cell, line, pen, rect, type Style } from './set.ts';
import type { Box, Item, Zone } from './types.ts';
import { length } from './words.ts';

/** One piece, in its own mm: x is the distance along the ribbon less where the piece begins. */
export interface RibbonPiece {
  readonly segment: Segment;
  readonly zone: string;
  /** Its share of the ribbon, without glue. */
  readonly net: number;
  /** Of the whole piece, top edge to bottom edge. */
  readonly height: number;
  /** What its items are named after: `tape`. */
  readonly name: string;
}

/** Millimetres (or inches) along the top edge: ticks, and figures where no mark stands in their way. */
const SCALE: Readonly<Record<JobUnit, { readonly tick: number; readonly figure: number }>> = {
  mm: { tick: 10, figure: 5 },
  in: { tick: MM_PER_INCH / 4, figure: 4 },
};

export function ribbonRule(
  { segment, net, zone }: RibbonPiece,
  how: { readonly unit: LengthStyle; readonly end: number; readonly avoid: readonly number[] },
): Item[] {
  const { tick, figure } = SCALE[plainUnit(how.unit)];
  const items: Item[] = [];
  const end = Math.min(segment.to + (segment.number === segment.count ? 0 : GLUE), how.end);
  const clear = (at: number): boolean => how.avoid.every((mark) => Math.abs(mark - at) > 5.5);
  for (let i = Math.ceil(segment.from / tick); i * tick <= end; i++) {
    const x = i * tick - segment.from;
    const long = i % figure === 0;
    items.push(line([x, 0], [x, long ? 3 : 1.6], pen(0.2)));
    if (long && x >= 4 && x <= net - 4 && clear(i * tick))
      items.push({
        kind: 'text',
        x,
        y: 5.6,
        cap: 1.8,
        weight: 'regular',
        anchor: 'middle',
        fill: 0,
        text: length(i * tick, how.unit),
        zone,
      });
  }
  return items;
}

/** The joints of a piece with its neighbours, each at the letter both have. */
export function ribbonJoints(piece: RibbonPiece): Item[] {
  const { segment, net, height } = piece;
  const { number, count } = segment;
  const joint = (name: string, x: number, side: 'left' | 'right'): Item[] => [
    { ...line([x, 0], [x, height], pen(0.35)), name: `${piece.name}-joint-${name}-${side}` },
    ...ribbonWords(
      piece,
      { x: side === 'left' ? x + 0.8 : x, y: height - 4.6, width: 7, height: 4 },
      { text: name, cap: 3, weight: 'bold', anchor: side === 'left' ? 'start' : 'middle' },
    ),
  ];
  const glue = (): Item[] => [
    rect({ x: net, y: 0, width: GLUE, height }, { fill: 0.94 }),
    ...joint(jointName(number), net, 'right'),
    ...ribbonWords(
      piece,
      { x: net + 0.6, y: 9, width: GLUE - 1, height: 8 },
      { text: `glue ${number + 1} on here`, cap: 2.2, lines: 3, first: 'wrap', anchor: 'middle' },
    ),
  ];
  return [...(number > 1 ? joint(jointName(number - 1), 0, 'left') : []), ...(number < count ? glue() : [])];
}

/** A text in a box of the piece, in the piece's zone. */
export function ribbonWords(
  { zone }: Pick<RibbonPiece, 'zone'>,
  box: Box,
  { text, ...style }: Style & { readonly text: string },
): Item[] {
  const own: Zone = { ...box, name: zone };
  return [...cell(own, text, { minCap: Math.min(1.2, style.cap), ...style }).items];
}

/** A small arrow along the ribbon, its tip 4 mm right of `x`. */
export const ribbonArrow = (x: number, y: number): Item => ({
  kind: 'path',
  fill: 0,
  steps: [['M', x, y - 1.2], ['L', x + 4, y], ['L', x, y + 1.2], ['Z']],
});
