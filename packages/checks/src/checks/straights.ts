import { type Centreline, POINT_MM } from '@runback/geometry';
import type { Figure } from '@runback/job';
import { lengthen } from '../cures/lengthen.ts';
import { finding, unjudged } from '../finding.ts';
import { between, middleOfStraight, placeAt } from '../place.ts';
import { type Judged, straightsBetween } from '../straights-of.ts';
import type { Finding } from '../types.ts';
import { say, sayBoth } from '../words.ts';
import type { Work } from '../work.ts';
import { formed, tail } from './straights-ends.ts';

const CHECK = 'straights';
const TOOL = 'the die: what its clamp must hold';

/**
 * Straights long enough for the tool between bends, for its tail at both ends, and behind formed ends.
 * The tail is measured from the sawn end, so spare and flare use count; an end bent long and trimmed is a note.
 */
export function straights(work: Work): Finding[] {
  return [
    ...betweenBends(work),
    ...tail(work, 'A'),
    ...tail(work, 'Z'),
    ...formed(work, 'A'),
    ...formed(work, 'Z'),
  ];
}

function betweenBends(work: Work): Finding[] {
  const { line, centreline } = work;
  const all = straightsBetween(line, centreline);
  if (all.length === 0) {
    const message = 'No straight lies between two bends.';
    return [finding({ check: CHECK, verdict: 'pass', message, found: 0, unit: 'count', basis: TOOL })];
  }
  const judged = all.filter((s): s is Judged & { limit: Figure } => s.limit !== null);
  const bad = judged.filter((s) => s.found < s.limit.value - POINT_MM);
  const findings = bad.map((s) => tooShort(work, s));
  const [tightest] = [...judged].sort((a, b) => a.found - a.limit.value - (b.found - b.limit.value));
  if (bad.length === 0 && tightest) findings.push(longEnough(work, tightest));
  if (judged.length < all.length) {
    const message = 'Straights between bends are not judged: the die names no least straight (minStraight).';
    findings.push(unjudged(CHECK, message, { basis: TOOL }));
  }
  return findings;
}

function longEnough({ line, centreline }: Work, s: Judged & { limit: Figure }): Finding {
  return finding({
    ...measured(centreline, s),
    verdict: 'pass',
    message:
      `Straights between bends are long enough; the tightest, ${between(centreline, s.before)}, is ` +
      `${say(s.found, line.units)} (${say(s.limit.value, line.units)} wanted).`,
  });
}

function tooShort(work: Work, s: Judged & { limit: Figure }): Finding {
  const { line, centreline } = work;
  const [found, wanted] = sayBoth(s.found, s.limit.value, line.units);
  return finding({
    ...measured(centreline, s),
    verdict: 'fail',
    message: `The straight ${between(centreline, s.before)} is ${found}; the tool needs ${wanted}.`,
    cure: lengthen(work, s.before, s.limit.value),
  });
}

const measured = (centreline: Centreline, s: Judged & { limit: Figure }) => ({
  check: CHECK,
  found: s.found,
  limit: s.limit.value,
  unit: 'mm' as const,
  ...placeAt(centreline, middleOfStraight(centreline, s.before)),
  bend: s.before,
  path: s.limit.path,
  basis: `${TOOL} (${s.limit.source})`,
});
