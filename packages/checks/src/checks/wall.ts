import { bendFactors, wallOutside } from '@runback/bending';
import type { Bend } from '@runback/geometry';
import { finding, unjudged } from '../finding.ts';
import { placeAt } from '../place.ts';
import type { Finding } from '../types.ts';
import { thickness } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'wall';
const RATIO = 'centreline radius over OD of the tightest bend';
const THINNING =
  'estimate: the metal on the outside of the bend stretches with its length, wall × R / (R + OD/2)';
const FACTORS =
  'ASME B31.3-2016 para 304.2.1 equations (3d) and (3e): inside (4R/D − 1)/(4R/D − 2), outside (4R/D + 1)/(4R/D + 2)';
const FLATTENING =
  'estimate: 20 × OD / R per cent, the allowance of boiler-tube practice, from memory; a good die does better, measure a test bend';
const FLAT_LIMIT = 'training texts on aircraft tube: the small diameter of a bend at least 75 % of the OD';
const FLATTENING_FACTOR = 20;
const MOST_FLATTENING_PERCENT = 25;

/** How much the tightest bend asks of the wall: estimates, so a note at most. */
export function wall(work: Work): Finding[] {
  const { centreline } = work;
  if (centreline.bends.length === 0) {
    const message = 'No bend: the wall stays as it is.';
    return [finding({ check: CHECK, verdict: 'pass', message, found: 0, unit: 'count', basis: RATIO })];
  }
  const radius = Math.min(...centreline.bends.map((bend) => bend.radius));
  const index = centreline.bends.findIndex((bend) => bend.radius === radius);
  return [ratio(work, index), thinning(work, index), flattening(work, index)];
}

const bendOf = (work: Work, index: number): Bend => work.centreline.bends[index]!;

const place = (work: Work, index: number) => {
  const { start, end } = bendOf(work, index);
  return { check: CHECK, bend: index + 1, ...placeAt(work.centreline, (start + end) / 2) };
};

function ratio(work: Work, index: number): Finding {
  const limit = work.line.bendLimits.minRadiusOverOd;
  const found = bendOf(work, index).radius / work.line.tube.od;
  const says = `The tightest bend, B${index + 1}, has a radius of ${found.toFixed(2)} × OD`;
  if (limit === null)
    return unjudged(CHECK, `${says}; no least ratio is known.`, {
      ...place(work, index),
      found,
      unit: 'ratio',
      basis: RATIO,
    });
  const ok = found >= limit.value;
  return finding({
    ...place(work, index),
    verdict: ok ? 'pass' : 'note',
    message: ok
      ? `${says} (at least ${limit.value} is good practice).`
      : `${says}, under the ${limit.value} of good practice: look for flattening and wrinkles.`,
    found,
    limit: limit.value,
    unit: 'ratio',
    path: limit.path,
    basis: `${RATIO}; limit: ${limit.source}`,
  });
}

function thinning(work: Work, index: number): Finding {
  const { tube, units } = work.line;
  const { radius } = bendOf(work, index);
  const found = wallOutside({ od: tube.od, wall: tube.wall, radius });
  const factors = bendFactors(tube.od, radius);
  const inside =
    factors.inside === null ? 'none inside at so tight a radius' : `${factors.inside.toFixed(3)} inside`;
  const outside = `${factors.outside.toFixed(3)} outside`;
  return finding({
    ...place(work, index),
    verdict: 'pass',
    message:
      `Estimate: the wall outside B${index + 1} thins from ${thickness(tube.wall, units)} to about ${thickness(found, units)}; ` +
      `pressure factors ${outside}, ${inside}.`,
    found,
    unit: 'mm',
    basis: `${THINNING}; factors: ${FACTORS}`,
  });
}

function flattening(work: Work, index: number): Finding {
  const found = (FLATTENING_FACTOR * work.line.tube.od) / bendOf(work, index).radius;
  const ok = found <= MOST_FLATTENING_PERCENT;
  return finding({
    ...place(work, index),
    verdict: ok ? 'pass' : 'note',
    message:
      `Estimate: B${index + 1} flattens by up to about ${found.toFixed(1)} % of the OD; ` +
      `${MOST_FLATTENING_PERCENT} % is the most.${ok ? '' : ' Bend a test piece first.'}`,
    found,
    limit: MOST_FLATTENING_PERCENT,
    unit: 'percent',
    basis: `${FLATTENING}; limit: ${FLAT_LIMIT}`,
  });
}
