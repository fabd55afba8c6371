/** Length, marks and way out of a stick: the figures. */
import { type PullOut, pullOutSpace, type StickLength, stickLength } from '@runback/bending';
import type { Stick } from '@runback/job';
import type { StickSheet } from '../fluid-types.ts';
import { marksOf, tipOf } from './marks.ts';
import { bodyOf, stiffsOf } from './section.ts';
import type { Way } from './way.ts';

/** `null` where the stick is too thick to go in. */
export function sheetOf(way: Way, stick: Stick): StickSheet | null {
  const { thickness } = bodyOf(stick);
  if (way.run.some(({ bore }) => bore <= thickness)) return null;
  const length = stickLength(way.run, thickness);
  const ends = stick.seat + stick.beyond;
  return {
    way: length,
    seatToTip: {
      shortest: length.shortest.low + ends,
      middle: length.centreline + ends,
      longest: length.longest + ends,
    },
    marks: marksOf(way, stick, spreadOf(length)).marks,
    pullOut: pullOutOf(way, stick),
    tip: tipOf(way, stick),
  };
}

/** How far the end of a stick cut to the middle may stand deeper or higher than meant, mm. */
const spreadOf = ({ centreline, shortest, longest }: StickLength): number =>
  Math.max(longest - centreline, centreline - shortest.low);

/** The straight room it needs to come out: as long as its longest stiff part. */
export function pullOutOf(way: Way, stick: Stick): PullOut {
  const whole = stick.seat + way.laid.length + stick.beyond;
  const stiff = Math.max(0, ...stiffsOf(stick).map(({ length }) => length));
  return pullOutSpace(way.run, { cap: stick.enters, stick: whole, stiff: Math.min(stiff, whole) });
}
