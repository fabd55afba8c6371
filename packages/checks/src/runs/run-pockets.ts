/** What stays in a whole run, over all its bores and lips: figures, findings on its lines, and words. */
import { type DrainEnd, pointAt } from '@runback/geometry';
import type { Run } from '@runback/job';
import { finding } from '../finding.ts';
import type { Fact, Kept, Pockets, WorstKept } from '../fluid-types.ts';
import { onlyLevel } from '../only-level.ts';
import { say } from '../words.ts';
import { pocketFacts } from '../worked/facts-pockets.ts';
import { inMl } from '../worked/facts-say.ts';
import {
  largestOf,
  type PlaceWords,
  POCKET_MODEL,
  type Staying,
  saidAtRest,
  saidAtWorst,
  WORST_MODEL,
} from '../worked/pocket-words.ts';
import { type Bored, pocketsAlong } from '../worked/pockets.ts';
import { boreSpans, type Placed, partAt, placed, placeOf, type Way, whereOn } from './way.ts';

export interface RunPockets {
  readonly pockets: Pockets;
  readonly placed: readonly Placed[];
  readonly facts: readonly Fact[];
  /** Checks of a line by itself that the run knows better. */
  readonly instead: readonly string[];
}

/** Judged as liquid when it drains, as air when all its lines are bled. `search`: look for the worst attitude. */
export function runPockets(run: Run, way: Way, search: boolean): RunPockets {
  const bored = boredOf(run, way);
  const pockets = pocketsAlong(bored, { search });
  const { outlets, liquid, worst, air } = pockets;
  const { attitudes, axes } = bored;
  const shared = { attitudes, axes, place: placeWords(way), run: run.name };
  return {
    pockets,
    placed: [
      ...(bored.drains
        ? stays(way, { ...shared, check: 'pockets', what: 'liquid', outlets, kept: liquid, worst })
        : []),
      ...(air ? stays(way, { ...shared, ...air, check: 'air', what: 'air', kept: air }) : []),
    ],
    facts: pocketFacts({ pockets, bored, place: shared.place, units: way.units }),
    instead: [...(bored.drains ? ['pockets'] : []), ...(air ? ['air'] : [])],
  };
}

/** One bore through all the lines; axes and attitudes are those of the first. */
function boredOf(run: Run, way: Way): Bored {
  const { axes, attitudes } = way.parts[0]!.line;
  const drain = run.drain ?? openEnds(way.parts.map(({ line }) => line.drain));
  return {
    spans: boreSpans(way),
    outlets: drain ?? 'both',
    drains: drain !== null,
    bleed: bleedOf(way),
    fluid: way.parts.find(({ line }) => line.fluid !== null)?.line.fluid ?? null,
    axes,
    attitudes,
    pointAt: (along) => {
      const { part, at } = placeOf(way, along);
      return pointAt(way.parts[part]!.centreline, at);
    },
  };
}

/** All its lines are bled, and air leaves it where the lines at its ends let it. */
function bleedOf(way: Way): Bored['bleed'] {
  const bleeds = way.parts.flatMap(({ line }) => line.bleed ?? []);
  if (bleeds.length < way.parts.length) return null;
  const to = openEnds(bleeds);
  return to && { to, tilted: bleeds.some(({ tilted }) => tilted) };
}

/** The ends of a run that are open, from those of its lines: only A of the first and Z of the last are its own. */
function openEnds(ends: readonly ({ readonly to: DrainEnd } | null)[]): DrainEnd | null {
  const [first, last] = [ends[0] ?? null, ends.at(-1) ?? null];
  const [a, z] = [first !== null && first.to !== 'Z', last !== null && last.to !== 'A'];
  return a && z ? 'both' : a ? 'A' : z ? 'Z' : null;
}

/** 'in bend B1 of "dipstick", 54 mm from its end A' */
const placeWords =
  (way: Way): PlaceWords =>
  ({ lowest }) => {
    const { part, at } = placeOf(way, lowest);
    return `${whereOn(way, part, at)}, ${say(at, way.units)} from its end A`;
  };

interface Stays extends Staying {
  readonly check: 'pockets' | 'air';
  readonly kept: Kept;
  readonly worst: WorstKept | null;
}

/** At rest one finding on each line; in the worst attitude one, where most of it stays. */
function stays(way: Way, asked: Stays): Placed[] {
  const { kept, worst, attitudes, outlets } = asked;
  const atRest = way.parts.map((_, part): Placed => {
    const here = inPart(way, kept, part);
    return placedIn(way, part, {
      kept: here,
      check: asked.check,
      ...saidAtRest(here, asked),
      basis: POCKET_MODEL,
    });
  });
  if (worst === null || onlyLevel(attitudes)) return atRest;
  const most = largestOf(worst);
  const part = most ? placeOf(way, most.lowest).part : partAt(way, outlets === 'Z' ? 'Z' : 'A');
  const basis = `${POCKET_MODEL}; ${WORST_MODEL}`;
  return [
    ...atRest,
    placedIn(way, part, { kept: worst, check: asked.check, ...saidAtWorst(worst, asked), basis }),
  ];
}

/** A pocket counts on the line where it is deepest. */
function inPart(way: Way, kept: Kept, part: number): Kept {
  const pockets = kept.pockets.filter(({ lowest }) => placeOf(way, lowest).part === part);
  return { ...kept, pockets, volume: pockets.reduce((sum, { volume }) => sum + volume, 0) };
}

interface SaidHere extends Pick<Parameters<typeof finding>[0], 'check' | 'verdict' | 'message' | 'basis'> {
  readonly kept: Kept;
}

function placedIn(way: Way, part: number, { kept, ...said }: SaidHere): Placed {
  const most = largestOf(kept);
  const place = most ? placed(way, part, placeOf(way, most.lowest).at) : {};
  const figures = { found: inMl(kept.volume), limit: 0, unit: 'ml' as const };
  return { part, finding: finding({ ...said, ...figures, ...place }) };
}
