/** A stick in a line of its own, or in a run: what is worked and what is found. */
import type { Centreline } from '@runback/geometry';
import type { Line, Stick } from '@runback/job';
import { unjudged } from '../finding.ts';
import type { Fact, Passage, StickSheet } from '../fluid-types.ts';
import type { Finding } from '../types.ts';
import type { Check } from '../work.ts';
import { isOpen } from '../worked/pockets-bore.ts';
import { bladeTakes, SET_BASIS, steps } from './blade-findings.ts';
import { passageFacts } from './facts-passage.ts';
import { stickFacts } from './facts-stick.ts';
import { passageOf } from './passage.ts';
import { goesThrough } from './passage-findings.ts';
import { sheetOf } from './sheet.ts';
import { comesOut, marksSaid } from './stick-findings.ts';
import { type Placed, type Way, wayOf } from './way.ts';

export interface StickWork {
  readonly passage: Passage | null;
  /** `null` where it does not go in. */
  readonly stick: StickSheet | null;
  readonly facts: readonly Fact[];
}

const NOTHING: StickWork = { passage: null, stick: null, facts: [] };

/** The stick of a line by itself; nothing of a line without one, or whose bends are tighter than its bore. */
export function stickOf(line: Line, centreline: Centreline): StickWork {
  if (line.stick === null || !isOpen({ line, centreline })) return NOTHING;
  return stickOn(wayOf([{ line, centreline }]), line.stick);
}

/** A stick along a way. Costly: the shortest way through the bore is searched for. */
export function stickOn(way: Way, stick: Stick): StickWork {
  const [passage, sheet] = [passageOf(way, stick), sheetOf(way, stick)];
  return {
    passage,
    stick: sheet,
    facts: [...passageFacts(way, stick, passage), ...(sheet === null ? [] : stickFacts(way, stick, sheet))],
  };
}

/** The check of a line's own stick. */
export const stickCheck: Check = ({ line, centreline }) => {
  if (line.stick === null) return [];
  if (!isOpen({ line, centreline })) return [notOpen(line.stick)];
  return stickFindings(wayOf([{ line, centreline }]), line.stick).map((said) => said.finding);
};

const notOpen = ({ path }: Stick): Finding =>
  unjudged('passage', 'The stick is not judged: a bend is tighter than half the bore.', {
    path,
    basis: SET_BASIS,
  });

/** What every check says of a stick along a way. */
export const stickFindings = (way: Way, stick: Stick): readonly Placed[] => {
  const passage = passageOf(way, stick);
  return [
    ...goesThrough(way, stick),
    ...bladeTakes(way, stick, passage),
    ...steps(way, passage),
    marksSaid(way, stick),
    ...comesOut(way, stick),
  ];
};
