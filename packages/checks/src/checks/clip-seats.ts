import { POINT_MM } from '@runback/geometry';
import { fromMm, toMm } from '@runback/job';
import { CLIP_STEP, nearestPlace } from '../cures/clip-places.ts';
import { sourcePath } from '../edits.ts';
import { finding } from '../finding.ts';
import { bendAt, placeAt } from '../place.ts';
import type { Finding } from '../types.ts';
import { say } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'clips';
const SEAT = 'common practice, no source: a clip sits on straight tube, not on a bend';

const path = (work: Work): string => `${sourcePath(work.line)}.clips`;

/** Each clip on the line, and on a straight. */
export function seated(work: Work, places: readonly number[]): Finding[] {
  const { line, centreline } = work;
  const findings = places.flatMap((at, i) => {
    if (at < -POINT_MM || at > centreline.length + POINT_MM) return [offTheLine(work, at, i)];
    const bend = bendAt(centreline, at);
    return bend === null ? [] : [onBend(work, { at, index: i, bend })];
  });
  if (findings.length > 0 || places.length === 0) return findings;
  const message =
    places.length === 1
      ? 'The clip sits on straight tube.'
      : `All ${places.length} clips sit on straight tube.`;
  return [
    finding({
      check: CHECK,
      verdict: 'pass',
      message,
      found: places.length,
      unit: 'count',
      path: `${sourcePath(line)}.clips`,
      basis: SEAT,
    }),
  ];
}

function offTheLine(work: Work, at: number, index: number): Finding {
  const { line, centreline } = work;
  return finding({
    check: CHECK,
    verdict: 'fail',
    message: `The clip at ${say(at, line.units)} is off the line, which is ${say(centreline.length, line.units)} long.`,
    found: at,
    limit: centreline.length,
    unit: 'mm',
    path: `${path(work)}[${index}]`,
    basis: SEAT,
  });
}

function onBend(work: Work, { at, index, bend }: { at: number; index: number; bend: number }): Finding {
  const { line, centreline } = work;
  const seat = nearestPlace(centreline, at, toMm(CLIP_STEP[line.units], line.units));
  const limit = Math.abs(seat - at) > POINT_MM ? seat : at;
  return finding({
    check: CHECK,
    verdict: 'fail',
    message: `The clip at ${say(at, line.units)} is on bend B${bend}; the nearest straight is at ${say(seat, line.units)}.`,
    found: at,
    limit,
    unit: 'mm',
    ...placeAt(centreline, at),
    bend,
    path: `${path(work)}[${index}]`,
    cure: {
      text: `Move the clip by ${say(Math.abs(seat - at), line.units)}, to ${say(seat, line.units)} from end A.`,
      edits: [{ path: `${path(work)}[${index}]`, value: fromMm(seat, line.units) }],
    },
    basis: SEAT,
  });
}
