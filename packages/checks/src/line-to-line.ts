/** The check between lines: every two lines of a job that exist, once. */
import { type Centreline, type Nearest, type Piece, POINT_MM, pathToPath, subPath } from '@runback/geometry';
import type { Figure, Line, LineEnd } from '@runback/job';
import { row } from './clearance-rows.ts';
import { finding, unjudged } from './finding.ts';
import { bendAt, where } from './place.ts';
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

/** How two lines lie to each other: worked out, or known from before. */
export type Recall = (line: Line, other: Line, work: () => Pair) => Pair;

/** Compares one line with all others of the job. A single line has nothing to compare with and says nothing. */
export function beside(worked: WorkedLine, all: readonly WorkedLine[], recall: Recall): Beside {
  const { centreline } = worked;
  const others = all.filter((other) => other !== worked);
  if (centreline === null || others.length === 0) return { rows: [], findings: [] };
  const real = others.filter((other) => other.centreline !== null);
  const pairs = real.map((other) =>
    recall(worked.line, other.line, () => pair(worked.line, centreline, other)),
  );
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

function pair(line: Line, centreline: Centreline, other: WorkedLine): Pair {
  const { limit, metal } = apart(line, other.line);
  const nearest = nearestOf(portions(line, centreline), portions(other.line, other.centreline!));
  return { row: row(nearest, { kind: 'line', to: other.line.id }, [metal, limit]), limit };
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

/**
 * The free parts of the ends that join something, and the rest. Two ends that join the same thing may come as
 * close as their ports are: their free parts are not compared with each other, but with everything else.
 */
export function portions(line: Line, centreline: Centreline): Portion[] {
  const { length } = centreline;
  const from = Math.min(freeOf(line.endA), length);
  const to = Math.max(length - freeOf(line.endZ), from);
  const cut = (a: number, b: number, joins: readonly string[]): Portion[] =>
    b - a > POINT_MM ? [{ path: subPath(centreline, a, b), joins }] : [];
  const all = [...cut(0, from, line.endA.joins), ...cut(from, to, []), ...cut(to, length, line.endZ.joins)];
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

function nearestOf(ours: readonly Portion[], theirs: readonly Portion[]): Nearest {
  const found = judgedPairs(ours, theirs).map(([a, b]) => pathToPath(a.path, b.path));
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
