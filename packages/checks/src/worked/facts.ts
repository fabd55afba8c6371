/** All figures of one line as rows that every reader prints. */
import type { Fact } from '../fluid-types.ts';
import type { Work } from '../work.ts';
import { flowFacts } from './facts-flow.ts';
import { massFacts } from './facts-mass.ts';
import { pocketFacts } from './facts-pockets.ts';
import { pressureFacts } from './facts-pressure.ts';
import { thermalFacts } from './facts-thermal.ts';
import { linePlace } from './pocket-words.ts';
import { lineBored } from './pockets.ts';

/** Group by group; `stick` are those on its way through the tube, its length and its marks. */
export function factsOf(work: Work, stick: readonly Fact[]): readonly Fact[] {
  const { line, centreline } = work;
  const { pressure, flow, thermal, mass } = work.estimates();
  return [
    ...stays(work),
    ...stick,
    ...(pressure ? pressureFacts(line, pressure) : []),
    ...flowFacts(line, centreline, flow),
    ...(thermal ? thermalFacts(line, thermal) : []),
    ...(mass ? massFacts(line, mass) : []),
  ];
}

function stays({ line, centreline, pockets: ask }: Work): readonly Fact[] {
  const [pockets, bored] = [ask(), lineBored(line, centreline)];
  return pockets && bored
    ? pocketFacts({ pockets, bored, place: linePlace({ line, centreline }), units: line.units })
    : [];
}
