/** What is said of liquid or air that stays, of one line or of a run. */
import type { AttitudeSet, Centreline, DrainEnd, MachineAxes } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { Kept, PocketPlace, WorstKept } from '../fluid-types.ts';
import { where } from '../place.ts';
import type { Verdict } from '../types.ts';
import { list, say, sayAttitude } from '../words.ts';
import { isNone, LEAST_ML, sayMl, sayMlAtMost } from './facts-say.ts';

export const POCKET_MODEL =
  'a place stays wet below the lowest sill on its way out; round bore, gas moves freely; no film, no foam, no surface tension';
export const WORST_MODEL =
  'worst attitude by branch and bound, with a bound for those that were not looked at';

/** Where a pocket sits, in words. */
export type PlaceWords = (pocket: Pick<PocketPlace, 'lowest'>) => string;

/** "in bend B3, 312 mm from end A" */
export const linePlace =
  ({
    line,
    centreline,
  }: {
    readonly line: Pick<Line, 'units'>;
    readonly centreline: Centreline;
  }): PlaceWords =>
  ({ lowest }) =>
    `${where(centreline, lowest)}, ${say(lowest, line.units)} from end A`;

/** More places than this are not listed one by one. */
const MOST_PLACES = 4;

/** The largest pockets, each with its place, in the order of the line: "3.4 ml in bend B3, 312 mm from end A". */
export function spots(pockets: readonly PocketPlace[], place: PlaceWords): readonly string[] {
  const large = pockets.toSorted((a, b) => b.volume - a.volume).slice(0, MOST_PLACES);
  const listed = pockets.filter((pocket) => large.includes(pocket));
  const more = pockets.length - listed.length;
  return [
    ...listed.map((pocket) => `${little(pocket.volume)} ${place(pocket)}`),
    ...(more > 0 ? [`less in ${more} more`] : []),
  ];
}

const little = (volume: number): string => (isNone(volume) ? `less than ${LEAST_ML} ml` : sayMl(volume));

/** The pocket that holds most, where there is enough of it to speak of. */
export const largestOf = ({ volume, pockets }: Kept): PocketPlace | null =>
  isNone(volume)
    ? null
    : pockets.reduce<PocketPlace | null>(
        (most, next) => (most && most.volume >= next.volume ? most : next),
        null,
      );

/** What is judged: liquid of what drains, or air of what is bled. */
export interface Staying {
  readonly what: 'liquid' | 'air';
  readonly outlets: DrainEnd;
  readonly attitudes: AttitudeSet;
  readonly axes: MachineAxes;
  readonly place: PlaceWords;
  /** Name of the run; `null` for a line by itself. */
  readonly run: string | null;
}

export interface SaidOfPockets {
  readonly verdict: Verdict;
  readonly message: string;
}

const OUT: Readonly<Record<DrainEnd, string>> = { A: 'at end A', Z: 'at end Z', both: 'at its ends' };
const SHUT: Readonly<Record<DrainEnd, string>> = { A: 'at end A', Z: 'at end Z', both: 'at either end' };

const ofRun = (run: string | null): string => (run === null ? '' : ' of the run');

/** 'At rest', or 'In run "dip" at rest'. */
const opened = (run: string | null, words: string): string =>
  run === null ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : `In run "${run}" ${words}`;

/** "3.4 ml of liquid stays in bend B3, 312 mm from end A", or so much in so many places. */
function keptWords({ volume, pockets }: Kept, { what, place }: Staying): string {
  const [only] = pockets;
  const stays = `${sayMl(volume)} of ${what} stays`;
  return pockets.length === 1
    ? `${stays} ${place(only!)}`
    : `${stays} in ${pockets.length} places: ${list(spots(pockets, place))}`;
}

/** What stays at rest: in a line, or in one line of a run. Never a failure: the fall is what fails. */
export function saidAtRest(kept: Kept, staying: Staying): SaidOfPockets {
  const { what, outlets, run } = staying;
  const atRest = opened(run, 'at rest');
  const here = run === null ? '' : ' in this line';
  if (!isNone(kept.volume)) {
    const message = `${atRest} ${keptWords(kept, staying)}; it cannot leave ${SHUT[outlets]}${ofRun(run)}.`;
    return { verdict: 'note', message };
  }
  return {
    verdict: 'pass',
    message:
      kept.volume > 0
        ? `${atRest} less than ${LEAST_ML} ml of ${what} stays${here}.`
        : `${atRest} no ${what} stays${here}: all of it leaves ${OUT[outlets]}${ofRun(run)}.`,
  };
}

/** What stays in the worst attitude, and how sure that is. */
export function saidAtWorst(worst: WorstKept, staying: Staying): SaidOfPockets {
  const { what, outlets, axes, run } = staying;
  const never = opened(run, 'in no attitude');
  if (worst.tries === 0) {
    const message = `${never} does ${what} stay: its fall proves that all of it leaves ${OUT[outlets]}${ofRun(run)}.`;
    return { verdict: 'pass', message };
  }
  const tries = worst.tries === 1 ? '1 try' : `${worst.tries} tries`;
  const sure = `${tries}, certainly no more than ${sayMlAtMost(worst.atMost)}`;
  if (!isNone(worst.volume)) {
    const found = `${opened(run, 'in the worst attitude found')}, ${sayAttitude(worst, axes)},`;
    return { verdict: 'note', message: `${found} ${keptWords(worst, staying)}: found in ${sure}.` };
  }
  const much = `${LEAST_ML} ml or more of ${what}`;
  // Not found is not the same as not there.
  return isNone(worst.atMost)
    ? { verdict: 'pass', message: `${never} does ${much} stay.` }
    : {
        verdict: 'note',
        message: `${opened(run, 'no attitude was found')} in which ${much} stays: ${sure}.`,
      };
}
