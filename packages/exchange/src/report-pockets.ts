import type { Kept, PocketPlace, Pockets, WorstKept } from '@runback/checks';
import { deg, ml, orNull, plain, triple } from './plain.ts';
import type { ReportKept, ReportPocket, ReportPockets, ReportWorstKept } from './report-fluid-types.ts';

/** What stays in the bore, volumes in ml. */
export const pocketsReport = ({ outlets, capacity, liquid, worst, air, cling }: Pockets): ReportPockets => ({
  outlets,
  capacity_ml: ml(capacity),
  liquid: kept(liquid),
  worst: orNull(worst, worstKept),
  air: orNull(air, (stays) => ({
    outlets: stays.outlets,
    ...kept(stays),
    worst: orNull(stays.worst, worstKept),
  })),
  cling: orNull(cling, ({ capillaryLength, holds }) => ({
    capillaryLength_mm: plain(capillaryLength),
    holds,
  })),
});

const kept = ({ volume, bound, pockets }: Kept): ReportKept => ({
  volume_ml: ml(volume),
  bound_ml: ml(bound),
  pockets: pockets.map(pocket),
});

const worstKept = (worst: WorstKept): ReportWorstKept => ({
  ...kept(worst),
  atMost_ml: ml(worst.atMost),
  up: triple(worst.up),
  attitude: orNull(worst.attitude, ({ pitch, roll }) => ({ pitch_deg: deg(pitch), roll_deg: deg(roll) })),
  tries: worst.tries,
});

const pocket = (place: PocketPlace): ReportPocket => ({
  from_mm: plain(place.from),
  to_mm: plain(place.to),
  lowest_mm: plain(place.lowest),
  level_mm: plain(place.level),
  depth_mm: plain(place.depth),
  volume_ml: ml(place.volume),
  point_mm: triple(place.point),
});
