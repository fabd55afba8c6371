/** Works one run of lines joined end to end. */
import { POINT_MM } from '@runback/geometry';
import type { Run } from '@runback/job';
import { unjudged, verdictOf } from '../finding.ts';
import { softened } from '../soften.ts';
import type { Finding, Worked, WorkedLine, WorkedRun, WorkOptions } from '../types.ts';
import { isOpen } from '../worked/pockets-bore.ts';
import { gapOf, JOINT, joints, MEET } from './joints.ts';
import { stickFindings, stickOn } from './of-line.ts';
import { runPockets } from './run-pockets.ts';
import { type Course, type Placed, wayOf } from './way.ts';

export interface RunWork {
  readonly worked: WorkedRun;
  /** By line: what is shown among its findings. */
  readonly onLines: Readonly<Record<string, readonly Finding[]>>;
  /** Checks of a line that the run knows better, and says instead. */
  readonly instead: readonly string[];
}

interface Said extends Worked {
  readonly placed: readonly Placed[];
  readonly instead: readonly string[];
}

const NOTHING = { pockets: null, passage: null, stick: null, facts: [], instead: [] } as const;

/** A run from its lines in order, each worked by itself. What is wrong for the shop is a finding, never thrown. */
export function workRun(run: Run, lines: readonly WorkedLine[], { cures = true }: WorkOptions): RunWork {
  const { placed, instead, ...worked } = saidOf(run, lines, cures);
  const shown = placed.map(({ part, finding }) => {
    const { line } = lines[part]!;
    return { id: line.id, finding: softened(line.service, finding) };
  });
  const findings = shown.map(({ id, finding }) => ({ ...finding, to: id }));
  const ofRun = (finding: Finding): Finding => ({ ...finding, to: finding.to ?? run.id });
  return {
    worked: { run, verdict: verdictOf(findings), findings, ...worked },
    onLines: Object.fromEntries(
      lines.map(({ line: { id } }) => [
        id,
        shown.filter((said) => said.id === id).map(({ finding }) => ofRun(finding)),
      ]),
    ),
    instead,
  };
}

function saidOf(run: Run, lines: readonly WorkedLine[], cures: boolean): Said {
  const courses = lines.flatMap(({ line, centreline }): Course[] =>
    centreline ? [{ line, centreline }] : [],
  );
  if (courses.length < lines.length) return missing(run, lines);
  const met = joints(courses, cures);
  if (courses.slice(1).some((after, i) => gapOf(courses[i]!, after) > POINT_MM))
    return { ...NOTHING, placed: met };
  if (!courses.every(isOpen)) return { ...NOTHING, placed: [...met, tooTight(run, courses)] };
  const way = wayOf(courses);
  const stick = run.stick && stickOn(way, run.stick);
  const liquid = runPockets(run, way, cures);
  return {
    pockets: liquid.pockets,
    passage: stick?.passage ?? null,
    stick: stick?.stick ?? null,
    facts: [...liquid.facts, ...(stick?.facts ?? [])],
    placed: [...met, ...liquid.placed, ...(run.stick ? stickFindings(way, run.stick) : [])],
    instead: liquid.instead,
  };
}

/** Said on the first line that exists: of one that does not, only why. */
function missing(run: Run, lines: readonly WorkedLine[]): Said {
  const bad = lines.find(({ centreline }) => centreline === null)!;
  const message = `Run "${run.name}" is not judged: line "${bad.line.id}" does not fit as it is drawn.`;
  const finding = unjudged(JOINT, message, { path: run.path, basis: MEET });
  return {
    ...NOTHING,
    placed: [
      {
        part: Math.max(
          0,
          lines.findIndex(({ centreline }) => centreline !== null),
        ),
        finding,
      },
    ],
  };
}

function tooTight(run: Run, courses: readonly Course[]): Placed {
  const part = courses.findIndex((course) => !isOpen(course));
  const message = `Run "${run.name}" is not judged: a bend of this line is tighter than half its bore.`;
  return { part, finding: unjudged(JOINT, message, { path: run.path, basis: MEET }) };
}
