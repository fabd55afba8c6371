import { type SlopeExtreme, scale } from '@runback/geometry';
import type { Drain, Figure, Line } from '@runback/job';
import { farthestMove } from '../cures/farthest.ts';
import { finding, unjudged } from '../finding.ts';
import { restSlope, worstSlope } from '../line-slope.ts';
import { bendAt, where } from '../place.ts';
import { enoughAtRest, enoughTilted, SLOPE, SLOPE_TILTED } from '../slope-limits.ts';
import { softened, takenAsNote } from '../soften.ts';
import type { Cure, Finding, LineSlope, Place } from '../types.ts';
import { degrees } from '../units.ts';
import { say, sayAttitude, sayBothAngles } from '../words.ts';
import type { Cured, Move, Work } from '../work.ts';
import { airAndLiquid } from './pockets.ts';

const MODEL = 'smallest fall of the tangent toward the drain end over the whole line, bends included';

/** Falls enough toward its drain end at rest, and still falls in every attitude. Air and liquid that stay are notes. */
export function slope(work: Work): Finding[] {
  const { line } = work;
  const pockets = airAndLiquid(work);
  if (line.drain === null || work.slope === null) {
    // Without a drain end nothing says which way is down.
    if (!line.service.drains) return pockets;
    const message = `No drain is given: whether this ${line.service.name} drains is not judged.`;
    return [unjudged(SLOPE, message, { path: line.path, basis: MODEL }), ...pockets];
  }
  const inAttitude = softened(line.service, tilted(work, line.drain, work.slope), SLOPE_TILTED);
  return [atRest(work, line.drain, work.slope), inAttitude, ...pockets];
}

function atRest(work: Work, drain: Drain, { rest, lows }: LineSlope): Finding {
  const ok = enoughAtRest(rest.slope, drain);
  const { fall, wanted, rise } = fallWords(rest, drain, drain.minSlope);
  return finding({
    ...measured(work, rest, drain.minSlope),
    verdict: ok ? 'pass' : 'fail',
    message:
      drain.to === 'both' && lows.length > 0
        ? `At rest it sags at a low point ${place(work, lows[0]!)}: drained to both ends it needs one crest and no low point; a fall of ${wanted} wanted.`
        : `At rest ${fall}, ${place(work, rest)}; ${rise ? 'a fall of ' : ''}${wanted} wanted.`,
    cure: ok ? null : raise(work, rest, (line, c) => enoughAtRest(restSlope(line, drain, c).slope, drain)),
  });
}

function tilted(work: Work, drain: Drain, { worst }: LineSlope): Finding {
  const ok = enoughTilted(worst.slope, drain);
  const { attitudes, service } = work.line;
  const attitude =
    attitudes.kind === 'rest' ? 'at rest (the job gives no attitudes)' : sayAttitude(worst, attitudes);
  const { fall, wanted, rise } = fallWords(worst, drain, drain.minSlopeTilted);
  return finding({
    ...measured(work, worst, drain.minSlopeTilted),
    verdict: ok ? 'pass' : 'fail',
    message: `In the worst attitude, ${attitude}, ${fall}, ${place(work, worst)}; ${rise ? 'a fall of ' : ''}more than ${wanted} wanted.`,
    cure:
      ok || takenAsNote(service, SLOPE, SLOPE_TILTED) ? null : raise(work, worst, fallsTilted(drain, worst)),
  });
}

/** The cheap question first: what fails in the attitude that was worst needs no search over all the others. */
function fallsTilted(drain: Drain, { attitude }: SlopeExtreme): Cured {
  return (line, c) => {
    if (attitude !== null) {
      const { pitch, roll } = attitude;
      const there: Line = { ...line, attitudes: { kind: 'box', pitch: [pitch, pitch], roll: [roll, roll] } };
      if (!enoughTilted(worstSlope(there, drain, c).slope, drain)) return false;
    }
    return enoughTilted(worstSlope(line, drain, c).slope, drain);
  };
}

/** "the least fall toward end A is 6.4°" or "it rises 15° toward end Z": a bare minus is misread. */
function fallWords(found: SlopeExtreme, { to }: Drain, limit: Figure): FallWords {
  const [size, wanted] = sayBothAngles(Math.abs(found.slope), limit.value);
  const toward = to === 'both' ? 'one of its two ends' : `end ${to}`;
  const fall =
    found.slope < 0 ? `it rises ${size} toward ${toward}` : `the least fall toward ${toward} is ${size}`;
  return { fall, wanted, rise: found.slope < 0 };
}

interface FallWords {
  readonly fall: string;
  readonly wanted: string;
  readonly rise: boolean;
}

const place = ({ line, centreline }: Work, { at }: Place): string =>
  `${where(centreline, at)}, ${say(at, line.units)} from end A`;

const measured = ({ centreline }: Work, extreme: SlopeExtreme, limit: Figure) => ({
  check: SLOPE,
  found: degrees(extreme.slope),
  limit: degrees(limit.value),
  unit: 'deg' as const,
  at: extreme.at,
  point: extreme.point,
  bend: bendAt(centreline, extreme.at),
  path: limit.path,
  basis: `${MODEL}; limit: ${limit.source}`,
});

/** The shortest push of one inner point straight up or down that gives the line its fall. */
const raise = (work: Work, { at }: SlopeExtreme, cured: Cured): Cure | null =>
  work.tools === null ? null : work.tools.seek(upAndDown(work, at), cured);

/** Only a point that shapes the worst place can cure it: the corners of the bends before, at and after it. */
const upAndDown = ({ line, centreline }: Work, at: number): Move[] => {
  const next = centreline.bends.findIndex((bend) => bend.end >= at);
  const i = next < 0 ? centreline.bends.length : next;
  const points = centreline.bends.slice(Math.max(0, i - 1), i + 2).flatMap((bend) => bend.points);
  return points.flatMap((point) => {
    const farthest = farthestMove(line, point);
    return [line.axes.up, scale(line.axes.up, -1)].map((direction) => ({ point, direction, farthest }));
  });
};
