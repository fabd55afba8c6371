/** The check between lines: every two lines of a job that exist, once. */
import { type Centreline, type Nearest, type Piece, POINT_MM, pathToPath, subPath } from '@runback/geometry';
import type { Figure, Line, LineEnd } from '@runback/job';
import { row } from './clearance-rows.ts';
import { finding, unjudged } from './finding.ts';
import { bendAt, where } from './place.ts';
import type { FindJoined, Joined } from './runs/joined.ts';
import type { ClearanceRow, Finding, WorkedLine } from './types.ts';
import { say, sayBoth } from './words.ts';

const CHECK = 'line-to-line';
const MODEL =
  'exact distance between two centrelines less half of each OD; the larger limit of the two holds';

/** What the comparison with the other lines adds to one line. */
export interface Beside {
  readonly rows: readonly ClearanceRow[];
  readonly findings: readonly Finding[];
}

/** How two lines lie to each other: worked out, or known from before while they are joined as they were. */
export type Recall = (
  line: Line,
  other: Line,
  ask: { readonly joined: Joined | null; readonly work: () => Pair | null },
) => Pair | null;

/** What is known of a job besides its lines. */
export interface Around {
  readonly recall: Recall;
  readonly joined: FindJoined;
}

/** Compares one line with all others of the job. A single line has nothing to compare with and says nothing. */
export function beside(worked: WorkedLine, all: readonly WorkedLine[], around: Around): Beside {
  const { centreline } = worked;
  const others = all.filter((other) => other !== worked);
  if (centreline === null || others.length === 0) return { rows: [], findings: [] };
  const real = others.filter((other) => other.centreline !== null);
  const pairs = real.flatMap((other) => {
    const joined = around.joined(worked.line, other.line);
    const work = () =>
      pair({ line: worked.line, centreline }, { line: other.line, centreline: other.centreline! }, joined);
    return around.recall(worked.line, other.line, { joined, work }) ?? [];
  });
  const bad = pairs.filter(({ row }) => row.distance < row.keepOff - POINT_MM);
  const findings = bad.map((p) => near(worked.line, centreline, p));
  if (bad.length === 0 && pairs.length > 0) findings.push(tightest(worked.line, centreline, pairs));
  for (const other of others.filter((o) => o.centreline === null)) {
    const message = `Distance to line "${other.line.id}" is not judged: it does not fit as it is drawn.`;
    findings.push(unjudged(CHECK, message, { to: other.line.id, path: other.line.path, basis: MODEL }));
  }
  return { rows: pairs.map((p) => p.row), findings };
}

/** How one line lies to another. */
export interface Pair {
  readonly row: ClearanceRow;
  readonly limit: Figure;
}

type Course = Pick<WorkedLine, 'line'> & { readonly centreline: Centreline };

/** `null` for two lines of one run that are so near their joint all along that nothing of them is judged. */
function pair(ours: Course, theirs: Course, joined: Joined | null): Pair | null {
  const { parts, limit, metal } = judgedBetween(ours, theirs, joined);
  if (parts.length === 0) return null;
  return { row: row(nearestOf(parts), { kind: 'line', to: theirs.line.id }, [metal, limit]), limit };
}

/** What two lines must keep off each other, and the parts of them that are judged: none of two that are all joint. */
export interface Between {
  readonly limit: Figure;
  readonly metal: number;
  readonly parts: readonly (readonly [Portion, Portion])[];
}

/**
 * Two lines of one run touch where they are joined: as in one tube, places are judged that are at least
 * π/2 × (mean OD + limit) apart along the run, taken as all but the parts of both within that of the joint.
 */
export function judgedBetween(ours: Course, theirs: Course, joined: Joined | null): Between {
  const { limit, metal } = apart(ours.line, theirs.line);
  const near = joined === null ? 0 : Math.max(0, (Math.PI / 2) * (metal + limit.value) - joined.between);
  const [a, b] = [
    portions(ours.line, ours.centreline, joined && { end: joined.ours, near }),
    portions(theirs.line, theirs.centreline, joined && { end: joined.theirs, near }),
  ];
  const parts = a.every(atJoint) && b.every(atJoint) ? [] : judgedPairs(a, b);
  return { limit, metal, parts };
}

/** What two lines must keep off each other, and the metal between their centrelines, mm. */
export function apart(a: Line, b: Line): { readonly limit: Figure; readonly metal: number } {
  const [one, two] = [a.clearance.lines, b.clearance.lines];
  return { limit: two.value > one.value ? two : one, metal: (a.tube.od + b.tube.od) / 2 };
}

/** A part of a line, and what its end joins when it is the free part of that end. */
export interface Portion {
  readonly path: readonly Piece[];
  readonly joins: readonly string[];
}

/** What the ends of two lines of one run join: each other. No surrounding has this for its id, for it has no letters. */
const EACH_OTHER = '';

const atJoint = ({ joins }: Portion): boolean => joins.includes(EACH_OTHER);

/** The end of a line that faces another of its run, and how far from there it may be as near as a tube is to itself. */
export interface JointPart {
  readonly end: 'A' | 'Z';
  readonly near: number;
}

/**
 * The free parts of the ends that join something, the part near a joint with another line of the run, and the rest.
 * Two ends that join the same thing may come as close as their ports are: their free parts are not compared with each
 * other, but with everything else.
 */
export function portions(line: Line, centreline: Centreline, joint: JointPart | null = null): Portion[] {
  const { length } = centreline;
  const from = Math.min(freeOf(line.endA), length);
  const to = Math.max(length - freeOf(line.endZ), from);
  const near = joint === null ? 0 : Math.min(joint.near, length);
  const [bare, beyond] = joint?.end === 'Z' ? [0, length - near] : [near, length];
  const cuts = [0, from, to, bare, beyond, length].toSorted((a, b) => a - b);
  const all = cuts.slice(1).flatMap((b, i): Portion[] => {
    const a = cuts[i]!;
    if (b - a <= POINT_MM) return [];
    const middle = (a + b) / 2;
    const joins = [
      ...(middle < from ? line.endA.joins : []),
      ...(middle > to ? line.endZ.joins : []),
      ...(middle < bare || middle > beyond ? [EACH_OTHER] : []),
    ];
    return [{ path: subPath(centreline, a, b), joins }];
  });
  return all.length > 1 ? all : [{ path: centreline.pieces, joins: all[0]?.joins ?? [] }];
}

const freeOf = (end: LineEnd): number => (end.joins.length > 0 ? end.free : 0);

/**
 * The parts of two lines that are judged against each other. Where all parts join the same things, the first of each:
 * two lines that exist always have a distance.
 */
export function judgedPairs(
  ours: readonly Portion[],
  theirs: readonly Portion[],
): readonly (readonly [Portion, Portion])[] {
  const pairs = ours.flatMap((a) => theirs.map((b) => [a, b] as const));
  const judged = pairs.filter(([a, b]) => !a.joins.some((id) => b.joins.includes(id)));
  return judged.length > 0 ? judged : pairs.slice(0, 1);
}

function nearestOf(parts: Between['parts']): Nearest {
  const found = parts.map(([a, b]) => pathToPath(a.path, b.path));
  return found.reduce((best, next) => (next.distance < best.distance ? next : best));
}

function near(line: Line, centreline: Centreline, { row, limit }: Pair): Finding {
  const [found, wanted] = sayBoth(row.distance, row.keepOff, line.units);
  const how =
    row.distance < 0
      ? `runs into line "${row.to}" by ${say(-row.distance, line.units)}`
      : `passes line "${row.to}" at ${found}`;
  return finding({
    ...measured(centreline, row, limit),
    verdict: 'fail',
    message: `The tube ${how} ${where(centreline, row.at)} (${wanted} wanted).`,
  });
}

function tightest(line: Line, centreline: Centreline, pairs: readonly Pair[]): Finding {
  const margin = ({ row }: Pair): number => row.distance - row.keepOff;
  const { row, limit } = [...pairs].sort((a, b) => margin(a) - margin(b))[0]!;
  return finding({
    ...measured(centreline, row, limit),
    verdict: 'pass',
    message:
      `Clears the other lines; the tightest is "${row.to}" at ${say(row.distance, line.units)}, ` +
      `${where(centreline, row.at)} (${say(row.keepOff, line.units)} wanted).`,
  });
}

const measured = (centreline: Centreline, row: ClearanceRow, limit: Figure) => ({
  check: CHECK,
  found: row.distance,
  limit: row.keepOff,
  unit: 'mm' as const,
  at: row.at,
  point: row.point,
  bend: bendAt(centreline, row.at),
  to: row.to,
  path: limit.path,
  basis: `${MODEL}; limit: ${limit.source}`,
});
