/** The straights at the two ends: for the tool's tail, and behind what is formed there. */
import { POINT_MM } from '@runback/geometry';
import type { Line, LineEnd } from '@runback/job';
import { lengthen } from '../cures/lengthen.ts';
import { finding, unjudged } from '../finding.ts';
import { middleOfStraight, placeAt } from '../place.ts';
import { behindForm, beyondEnd, dieOf, endStraight, isFormed } from '../straights-of.ts';
import type { Finding } from '../types.ts';
import { say, sayBoth } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'straights';
const TOOL = 'the die: what the tool needs from the sawn end to the nearest bend';
const FORM = 'common practice, no source: nut, sleeve and forming bar need straight tube behind a formed end';

type End = 'A' | 'Z';

/** From the sawn end to the nearest bend. */
export function tail(work: Work, name: End): Finding[] {
  const { line, centreline } = work;
  const bends = centreline.bends.length;
  if (bends === 0) return [];
  const end = endOf(line, name);
  const limit = dieOf(line, centreline, name === 'A' ? 0 : bends - 1)?.minTail ?? null;
  const straight = endStraight(centreline, name);
  const found = straight + beyondEnd(end);
  if (limit === null) {
    const message = `The tail at end ${name} is not judged: the die names no least tail (minTail).`;
    return [unjudged(CHECK, message, { found, unit: 'mm', basis: TOOL })];
  }
  const verdict =
    found < limit.value - POINT_MM ? 'fail' : straight < limit.value - POINT_MM ? 'note' : 'pass';
  const before = name === 'A' ? 0 : bends;
  const wanted = limit.value - beyondEnd(end);
  return [
    finding({
      check: CHECK,
      verdict,
      message: tailWords(line, { name, verdict, straight, found, limit: limit.value }),
      found,
      limit: limit.value,
      unit: 'mm',
      ...placeAt(centreline, middleOfStraight(centreline, before)),
      bend: name === 'A' ? 1 : bends,
      path: limit.path,
      cure: verdict === 'fail' ? lengthen(work, before, wanted) : null,
      basis: `${TOOL} (${limit.source})`,
    }),
  ];
}

interface Tail {
  readonly name: End;
  readonly verdict: 'pass' | 'note' | 'fail';
  readonly straight: number;
  readonly found: number;
  readonly limit: number;
}

function tailWords({ units }: Line, { name, verdict, straight, found, limit }: Tail): string {
  const [has, wanted] = sayBoth(found, limit, units);
  const leaves = `End ${name} leaves ${has} of tube from the sawn end to the nearest bend`;
  if (verdict === 'fail') return `${leaves}; the tool needs ${wanted}.`;
  if (verdict === 'pass') return `${leaves}, enough for the tool (${wanted} wanted).`;
  return (
    `End ${name} finishes ${say(straight, units)} past its bend, less than the ${say(limit, units)} the tool needs: ` +
    `bend it ${say(found - straight, units)} long and trim it.`
  );
}

/** Behind a flare or bead. */
export function formed(work: Work, name: End): Finding[] {
  const { line, centreline } = work;
  const end = endOf(line, name);
  if (!isFormed(end)) return [];
  const found = endStraight(centreline, name);
  const limit = behindForm(end);
  const short = found < limit - POINT_MM;
  const guess = end.nut === null && end.fitting.traps;
  const before = name === 'A' ? 0 : centreline.bends.length;
  const [has, wanted] = sayBoth(found, limit, line.units);
  const unknown = guess ? ' The nut is not given and not counted.' : '';
  return [
    finding({
      check: CHECK,
      verdict: short ? 'fail' : guess ? 'note' : 'pass',
      message:
        `The straight behind the ${end.fitting.name} at end ${name} is ${has}; ` +
        `${wanted} ${short ? 'is needed' : 'is enough'} (${partsOf(line, end)}).${unknown}`,
      found,
      limit,
      unit: 'mm',
      ...placeAt(centreline, name === 'A' ? 0 : centreline.length),
      path: `${end.path}.fitting`,
      cure: short && centreline.bends.length > 0 ? lengthen(work, before, limit) : null,
      basis: `${FORM}; bar: ${end.fitting.bar.source}`,
    }),
  ];
}

/** What the straight behind a formed end is for, in words. */
function partsOf({ units }: Line, { fitting, nut, sleeve }: LineEnd): string {
  const parts = [`bar ${say(fitting.bar.value, units)}`];
  if (nut !== null) parts.push(`nut ${say(nut.length, units)}`);
  if (sleeve !== null) parts.push(`sleeve ${say(sleeve.length, units)}`);
  return parts.join(', ');
}

const endOf = (line: Line, name: End): LineEnd => (name === 'A' ? line.endA : line.endZ);
