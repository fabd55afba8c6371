import { lowsAndHighs } from '@runback/geometry';
import { finding } from '../finding.ts';
import { bendAt, where } from '../place.ts';
import type { Finding, Place } from '../types.ts';
import { list, say } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'slope';
const BASIS = 'local high and low points of the centreline at rest, ends left out';

interface Pocket {
  readonly kind: string;
  readonly what: string;
}

const LOW: Pocket = { kind: 'Low', what: 'liquid stays there when it drains' };
const HIGH: Pocket = { kind: 'High', what: 'air stays there when it is filled and bled' };

/**
 * Low points that hold liquid of a line that drains, and high points that hold air of one that is bled, at rest.
 * A line that drains to both ends has its one crest by design.
 */
export function airAndLiquid(work: Work): Finding[] {
  const { line, centreline } = work;
  const { lows, highs } = work.slope ?? lowsAndHighs(centreline, line.axes.up);
  const findings: Finding[] = [];
  if (line.drain !== null && lows.length > 0) findings.push(pocket(work, lows, LOW));
  if (!line.service.bleeds) return findings;
  if (highs.length > 0) findings.push(pocket(work, highs, HIGH));
  else findings.push(noAir());
  return findings;
}

const noAir = (): Finding =>
  finding({
    check: CHECK,
    verdict: 'pass',
    message: 'No high point between the ends: at rest air can leave at an end.',
    found: 0,
    limit: 0,
    unit: 'count',
    basis: BASIS,
  });

function pocket({ line, centreline }: Work, places: readonly Place[], { kind, what }: Pocket): Finding {
  const spots = places.map(({ at }) => `${where(centreline, at)} ${say(at, line.units)} from end A`);
  return finding({
    check: CHECK,
    verdict: 'note',
    message: `${kind} point${places.length > 1 ? 's' : ''} ${list(spots)}: ${what}.`,
    found: places.length,
    limit: 0,
    unit: 'count',
    at: places[0]!.at,
    point: places[0]!.point,
    bend: bendAt(centreline, places[0]!.at),
    basis: BASIS,
  });
}
