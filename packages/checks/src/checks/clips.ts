import { type Bend, POINT_MM } from '@runback/geometry';
import { type Figure, fromMm, toMm } from '@runback/job';
import { CLIP_STEP, clipPlaces, clipsWanted, gaps } from '../cures/clip-places.ts';
import { roundTo, sourcePath } from '../edits.ts';
import { finding, unjudged } from '../finding.ts';
import { placeAt } from '../place.ts';
import type { Cure, Finding } from '../types.ts';
import { list, say, sayBoth } from '../words.ts';
import type { Work } from '../work.ts';
import { seated } from './clip-seats.ts';

const CHECK = 'clips';
const SEAT = 'common practice, no source: a clip sits on straight tube, not on a bend';
const BOTH_SIDES =
  'common practice, no source: clips near each bend on both sides; near is taken as half the spacing';

/** Clips on straight tube, no farther apart than the tube allows, and near both sides of each bend. */
export function clips(work: Work): Finding[] {
  const { line } = work;
  if (line.clips === null) return [notGiven(work)];
  return [...seated(work, line.clips), ...apart(work, line.clips), ...besideBends(work, line.clips)];
}

const path = (work: Work): string => `${sourcePath(work.line)}.clips`;

function notGiven(work: Work): Finding {
  const { line, centreline } = work;
  const limit = line.clipSpacing;
  if (limit === null)
    return unjudged(CHECK, 'No clips are given and no spacing is known for this tube.', {
      path: path(work),
      basis: SEAT,
    });
  const wanted = clipsWanted(centreline.length, limit.value);
  const [long, apartAtMost] = sayBoth(centreline.length, limit.value, line.units);
  const shared = {
    check: CHECK,
    found: 0,
    limit: wanted,
    unit: 'count' as const,
    path: path(work),
    basis: limit.source,
  };
  if (wanted === 0) {
    const message = `Held at its ends the line needs no clip: it is ${long} long, up to ${apartAtMost} may go without.`;
    return finding({ ...shared, verdict: 'pass', message });
  }
  const message = `No clips are given; ${long} of line wants ${wanted === 1 ? 'one' : `at least ${wanted}`} (at most ${apartAtMost} apart).`;
  return finding({ ...shared, verdict: 'note', message, cure: propose(work, limit.value) });
}

/** A whole new set of places. */
function propose(work: Work, spacing: number): Cure | null {
  const { line, centreline, tools } = work;
  if (tools === null) return null;
  const step = toMm(CLIP_STEP[line.units], line.units);
  const places = clipPlaces(centreline, spacing, step);
  if (places === null) return null;
  const says = list(places.map((at) => say(at, line.units)));
  return {
    text: `Put ${places.length === 1 ? 'a clip' : 'clips'} at ${says} from end A.`,
    edits: [{ path: path(work), value: places.map((at) => readable(at, work)) }],
  };
}

/** The place in job units: a rounded value where that is the same place, else the exact one. */
function readable(at: number, { line }: Work): number {
  const exact = fromMm(at, line.units);
  const round = roundTo(exact, line.units);
  return Math.abs(round - exact) < POINT_MM ? round : exact;
}

function apart(work: Work, places: readonly number[]): Finding[] {
  const { line, centreline } = work;
  const limit = line.clipSpacing;
  if (limit === null)
    return [
      unjudged(CHECK, 'How far apart clips may be is not known for this tube.', {
        path: path(work),
        basis: SEAT,
      }),
    ];
  const inside = places.filter((at) => at >= 0 && at <= centreline.length);
  const [widest] = gaps(centreline.length, inside).sort((a, b) => b.to - b.from - (a.to - a.from));
  return [widestFinding(work, widest!, limit)];
}

function widestFinding(work: Work, gap: { from: number; to: number }, limit: Figure): Finding {
  const { line, centreline } = work;
  const found = gap.to - gap.from;
  const ok = found <= limit.value + POINT_MM;
  const [wide, most] = sayBoth(found, limit.value, line.units);
  return finding({
    check: CHECK,
    verdict: ok ? 'pass' : 'fail',
    message:
      `The widest gap between clips, ends counted as held, is ${wide}, from ${say(gap.from, line.units)} to ` +
      `${say(gap.to, line.units)}; at most ${most} may hang free.`,
    found,
    limit: limit.value,
    unit: 'mm',
    ...placeAt(centreline, (gap.from + gap.to) / 2),
    path: path(work),
    cure: ok ? null : propose(work, limit.value),
    basis: limit.source,
  });
}

function besideBends(work: Work, places: readonly number[]): Finding[] {
  const { line, centreline } = work;
  if (line.clipSpacing === null || centreline.bends.length === 0) return [];
  const reach = line.clipSpacing.value / 2;
  const held = [0, ...places, centreline.length];
  const heldBefore = (b: Bend): boolean =>
    held.some((at) => at <= b.start + POINT_MM && at >= b.start - reach);
  const heldAfter = (b: Bend): boolean => held.some((at) => at >= b.end - POINT_MM && at <= b.end + reach);
  const loose = centreline.bends.flatMap((b, i) => (heldBefore(b) && heldAfter(b) ? [] : [i + 1]));
  if (loose.length === 0) return [];
  const bends = list(loose.map((n) => `B${n}`));
  const message = `Nothing holds the tube within ${say(reach, line.units)} on both sides of ${bends}.`;
  return [
    finding({
      check: CHECK,
      verdict: 'note',
      message,
      found: loose.length,
      limit: 0,
      unit: 'count',
      bend: loose[0]!,
      path: path(work),
      basis: BOTH_SIDES,
    }),
  ];
}
