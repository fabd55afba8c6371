import type { Passage, StickMark, StickSheet } from '@runback/checks';
import { deg, finite, orNull, plain, triple } from './plain.ts';
import type { ReportBlade, ReportMark, ReportPassage, ReportStick } from './report-fluid-types.ts';

/** How a stick passes; `ids` are those of the lines it goes through, from end A. */
export function passageReport(passage: Passage, ids: readonly string[]): ReportPassage {
  const place = bendPlace(ids);
  return {
    enters: passage.enters,
    stiff_mm: orNull(passage.stiff, plain),
    tips: passage.tips.map((tip) => ({
      ...place(tip),
      longest_mm: plain(tip.longest),
      alone: tip.alone,
    })),
    blade: orNull(passage.blade, (blade) => bladeReport(blade, place)),
    steps: passage.steps.map(({ line, at, step, catches, lead }) => ({
      line: ids[line]!,
      at_mm: plain(at),
      step_mm: plain(step),
      catches,
      lead: { length_mm: plain(lead.length), push: finite(lead.push) },
    })),
    push: {
      angle_deg: deg(passage.push.angle),
      low: plain(passage.push.low),
      high: plain(passage.push.high),
    },
  };
}

interface BendPlace {
  readonly line: number;
  readonly bend: number;
  readonly at: number;
}

/** Lines by id and bends counted from 1, as everywhere else in the report. */
const bendPlace =
  (ids: readonly string[]) =>
  ({ line, bend, at }: BendPlace) => ({ line: ids[line]!, bend: bend + 1, at_mm: plain(at) });

const bladeReport = (
  { play, bends, twists }: NonNullable<Passage['blade']>,
  place: ReturnType<typeof bendPlace>,
): ReportBlade => ({
  play_mm: plain(play),
  bends: bends.map((bend) => ({
    ...place(bend),
    radius_mm: plain(bend.radius),
    strain: plain(bend.strain),
    takesSet: bend.takesSet,
  })),
  twists: twists.map(({ from, twist, straight, needs, enough }) => ({
    fromBend: from + 1,
    twist_deg: deg(twist),
    straight_mm: plain(straight),
    needs_mm: plain(needs),
    enough,
  })),
});

/** How long the stick is, its marks, and the room to pull it out. */
export const stickReport = ({ way, seatToTip, marks, pullOut, tip }: StickSheet): ReportStick => ({
  way: {
    centreline_mm: plain(way.centreline),
    shortestLow_mm: plain(way.shortest.low),
    shortestHigh_mm: plain(way.shortest.high),
    longest_mm: plain(way.longest),
    uncertainty_mm: plain(way.uncertainty),
  },
  seatToTip: {
    shortest_mm: plain(seatToTip.shortest),
    middle_mm: plain(seatToTip.middle),
    longest_mm: plain(seatToTip.longest),
  },
  marks: marks.map(mark),
  pullOut: {
    from_mm: triple(pullOut.from),
    to_mm: triple(pullOut.to),
    direction: triple(pullOut.direction),
    length_mm: plain(pullOut.length),
  },
  tip_mm: triple(tip),
});

const mark = ({ name, litres, at, doubt, perDegree, from }: StickMark): ReportMark => ({
  name,
  litres: plain(litres),
  at_mm: plain(at),
  doubt_mm: plain(doubt),
  perDegree_mm: orNull(perDegree, finite),
  from,
});
