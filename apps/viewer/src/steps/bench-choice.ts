/** How the operator stands: what can be chosen, and the line worked for that choice. */
import { type BenchPlan, type Line, type Side, sideOf, stanceOf } from 'runback';

export type Bench = NonNullable<BenchPlan['bench']>;
export type Standing = Pick<Bench, 'stand' | 'startOn'>;

/** In line with the tube the hand of START only names the sides of the tool, so one of the two is enough. */
export const STANDINGS: readonly Standing[] = [
  { stand: 'side', startOn: 'left' },
  { stand: 'side', startOn: 'right' },
  { stand: 'at-start', startOn: 'left' },
  { stand: 'behind-free', startOn: 'left' },
];

export const sameStanding = (a: Standing, b: Standing): boolean =>
  a.stand === b.stand && (a.stand !== 'side' || a.startOn === b.startOn);

const TOOLS = [
  { plane: 'flat', former: 'far', moves: 'tube' },
  { plane: 'flat', former: 'near', moves: 'tube' },
  { plane: 'upright', former: 'above', moves: 'tube' },
  { plane: 'upright', former: 'below', moves: 'tube' },
  { plane: 'upright', former: 'above', moves: 'bender' },
] as const;

/** Every tool there can be for somebody who stands so. */
export const toolsFor = ({ stand, startOn }: Standing): readonly Bench[] =>
  TOOLS.map((tool) => ({ stand, startOn, ...tool }));

/** The side of the tube that the former is on, as the operator sees it. */
export const formerSide = (bench: Bench): Side => sideOf(stanceOf(bench).former);

/** True when both give the same words: the same tool, tube and operator, however they are named. */
export function sameBench(a: Bench | null, b: Bench | null): boolean {
  if (a === null || b === null) return a === b;
  if (a.moves !== b.moves) return false;
  if (a.moves === 'bender') return true;
  return a.plane === b.plane && sameStanding(a, b) && formerSide(a) === formerSide(b);
}

/** The line with another bench for its bender: what the plan is worked from. */
export const withBench = (line: Line, bench: Bench | null): Line =>
  line.bender === null ? line : { ...line, bender: { ...line.bender, bench } };

/** The check of the turn that the job asks for stays when only the standing changes. */
export function choiceOf(tool: Bench, job: Bench | null): Bench {
  return job?.turnCheck === undefined ? tool : { ...tool, turnCheck: job.turnCheck };
}

/** The tool of another bench for somebody who stands so: upright tools and carried benders are the same from anywhere. */
export function toolFor(standing: Standing, last: Bench | null): Bench | null {
  if (last === null) return null;
  if (last.plane === 'flat' && last.moves === 'tube' && !sameStanding(standing, last)) return null;
  return { ...last, ...standing };
}

/** False for a bench whose former is where its tool cannot have it. */
export const canBe = (bench: Bench): boolean => stanceOf({ ...bench, moves: 'tube' }).view !== 'start';
