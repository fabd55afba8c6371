import { type SlopeExtreme, scale } from '@runback/geometry';
import type { Drain, Figure, Line } from '@runback/job';
import { farthestMove } from '../cures/farthest.ts';
import { finding, unjudged } from '../finding.ts';
import { restSlope, worstSlope } from '../line-slope.ts';
import { onlyLevel } from '../only-level.ts';
import { bendAt, where } from '../place.ts';
import { enoughAtRest, enoughTilted, SLOPE, SLOPE_TILTED } from '../slope-limits.ts';
import { softened, takenAsNote } from '../soften.ts';
import type { Cure, Finding, LineSlope, Place } from '../types.ts';
import { degrees } from '../units.ts';
import { restOnly, say, sayAngle, sayAttitude } from '../words.ts';
import type { Cured, Move, Work } from '../work.ts';
import { sayAngleAtLeast, sayBothFalls } from '../worked/facts-say.ts';

/** What the source of a figure is called that the job gives in its own units. */
const THE_JOB = 'the job';

const MODEL = 'smallest fall of the tangent toward the drain end over the whole line, bends included';

/** Falls enough toward its drain end at rest, and still falls in every attitude. */
export function slope(work: Work): Finding[] {
  const { line } = work;
  if (line.drain === null || work.slope === null) {
    // Without a drain end nothing says which way is down.
    if (!line.service.drains) return [];
    const message = `No drain is given: whether this ${line.service.name} drains is not judged.`;
    return [unjudged(SLOPE, message, { path: line.path, basis: MODEL })];
  }
  const [sag] = line.drain.to === 'both' ? work.slope.lows : [];
  if (sag) return [sags(work, line.drain, sag)];
  const rest = atRest(work, line.drain, work.slope);
  if (saidAtRest(work, line.drain, work.slope)) return [rest];
  return [rest, softened(line.service, tilted(work, line.drain, work.slope), SLOPE_TILTED)];
}

/** A low point between two open ends: told once, for which of its sides rises the most helps nobody to find it. */
function sags(work: Work, drain: Drain, sag: Place): Finding {
  const falls = fallsAtRest(work.line, drain);
  return finding({
    ...measured(work, { ...sag, slope: 0 }, drain.minSlope),
    verdict: 'fail',
    message:
      `At rest${restOnly(work.line.attitudes)} it sags at a low point ${place(work, sag)}: drained to both ends it needs ` +
      `one crest and no low point; a fall of ${wantedWords(drain.minSlope)} wanted.`,
    cure: raise(
      work,
      sag,
      (line, c) => falls(line, c) && enoughTilted(worstSlope(line, drain, c).slope, drain),
    ),
  });
}

/** A line that is only ever level is told once, unless it is enough at rest and too little for an attitude. */
const saidAtRest = ({ line }: Work, drain: Drain, { rest, worst }: LineSlope): boolean =>
  onlyLevel(line.attitudes) && (enoughTilted(worst.slope, drain) || !enoughAtRest(rest.slope, drain));

function atRest(work: Work, drain: Drain, { rest }: LineSlope): Finding {
  const ok = enoughAtRest(rest.slope, drain);
  const { fall, wanted, rise } = fallWords(rest, drain, drain.minSlope);
  return finding({
    ...measured(work, rest, drain.minSlope),
    verdict: ok ? 'pass' : 'fail',
    message: `At rest${restOnly(work.line.attitudes)} ${fall}, ${place(work, rest)}; ${rise ? 'a fall of ' : ''}${wanted} wanted.`,
    cure: ok ? null : raise(work, rest, fallsAtRest(work.line, drain)),
  });
}

/** Where nothing more is said of attitudes, this is enough for them too. */
function fallsAtRest({ service, attitudes }: Line, drain: Drain): Cured {
  const both = onlyLevel(attitudes) && !takenAsNote(service, SLOPE, SLOPE_TILTED);
  return (line, c) => {
    const { slope: fall } = restSlope(line, drain, c);
    return enoughAtRest(fall, drain) && (!both || enoughTilted(fall, drain));
  };
}

function tilted(work: Work, drain: Drain, { worst }: LineSlope): Finding {
  const ok = enoughTilted(worst.slope, drain);
  const { attitudes, axes, service } = work.line;
  const opening = onlyLevel(attitudes)
    ? `Level, its only attitude${restOnly(attitudes)}`
    : `In the worst attitude, ${sayAttitude(worst, axes)}`;
  const { fall, wanted, rise } = fallWords(worst, drain, drain.minSlopeTilted);
  return finding({
    ...measured(work, worst, drain.minSlopeTilted),
    verdict: ok ? 'pass' : 'fail',
    message: `${opening}, ${fall}, ${place(work, worst)}; ${rise ? 'a fall of ' : ''}more than ${wanted} wanted.`,
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
  const toward = to === 'both' ? 'one of its two ends' : `end ${to}`;
  if (found.slope < 0) {
    const fall = `it rises ${sayAngle(-found.slope)} toward ${toward}`;
    return { fall, wanted: wantedWords(limit), rise: true };
  }
  const [size, wanted] = sayBothFalls(found.slope, limit.value);
  return {
    fall: `the least fall toward ${toward} is ${size}`,
    wanted: `${wanted}${namedBy(limit)}`,
    rise: false,
  };
}

const wantedWords = (limit: Figure): string => `${sayAngleAtLeast(limit.value)}${namedBy(limit)}`;

/** A limit that is not plain degrees of the job or of its service says what it was: a rule, or a fall as written. */
const namedBy = ({ source, path }: Figure): string =>
  path === null || source === THE_JOB ? '' : ` (${source})`;

interface FallWords {
  readonly fall: string;
  readonly wanted: string;
  readonly rise: boolean;
}

const place = ({ line, centreline }: Work, { at }: Place): string =>
  `${where(centreline, at)}, ${say(at, line.units)} from end A`;

const measured = ({ centreline }: Work, extreme: Place & Pick<SlopeExtreme, 'slope'>, limit: Figure) => ({
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
const raise = (work: Work, { at }: Place, cured: Cured): Cure | null =>
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
