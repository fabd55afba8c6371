/** Where the lines of a run meet. */
import { angleBetween, distance, POINT_MM, pieceTangent, type Vec3 } from '@runback/geometry';
import { type Line, toRadians } from '@runback/job';
import { cureTools } from '../cures/seek.ts';
import { pointEdit, pointFromJob, pointInJob, withCorner } from '../edits.ts';
import { finding } from '../finding.ts';
import { judgeLine } from '../judge.ts';
import type { Cure } from '../types.ts';
import { degrees } from '../units.ts';
import { say, sayAngle, sayBoth } from '../words.ts';
import type { Course, Placed } from './way.ts';

export const JOINT = 'run-joint';
export const MEET = 'end Z of each line of a run lies on end A of the next';
const KINK = 'a joint that turns less than 1° is taken as straight: our judgement';
const KINK_DEG = 1;

const endZ = ({ centreline }: Course): Vec3 => centreline.pieces.at(-1)!.to;
const endA = ({ centreline }: Course): Vec3 => centreline.pieces[0]!.from;

/** How far apart two lines of a run are where they should meet, mm. */
export const gapOf = (before: Course, after: Course): number => distance(endZ(before), endA(after));

/** A finding on every later line of a run; `cures`: look for the cure of a gap. */
export function joints(courses: readonly Course[], cures: boolean): readonly Placed[] {
  return courses.slice(1).map((after, i) => {
    const before = courses[i]!;
    const gap = gapOf(before, after);
    const said = gap > POINT_MM ? apart(before, after, cures) : meets(before, after);
    return { part: i + 1, finding: said };
  });
}

function apart(before: Course, after: Course, cures: boolean) {
  const { line } = after;
  const gap = gapOf(before, after);
  const turned = distance(endZ(before), endZ(after)) <= POINT_MM;
  const message =
    `End A lies ${sayBoth(gap, 0, line.units)[0]} from end Z of line "${before.line.id}", which it follows in the run` +
    `${turned ? '; its end Z lies there: turn the line round' : ''}. Nothing else of the run is worked.`;
  return finding({
    check: JOINT,
    verdict: 'fail',
    message,
    found: gap,
    limit: 0,
    unit: 'mm',
    at: 0,
    point: endA(after),
    path: line.corners[0]!.path,
    cure: cures && !turned ? broughtTo(line, endZ(before)) : null,
    basis: MEET,
  });
}

/** Point 0 put where the line before ends, when the line fits and fails nothing more for it. */
function broughtTo(line: Line, at: Vec3): Cure | null {
  if (line.mirror !== null) return null;
  const value = pointInJob(line, at);
  const written = pointFromJob(line, value);
  const cure: Cure = {
    text: `Move point 0 by ${say(distance(line.corners[0]!.at, at), line.units)}, onto the end of the line before it.`,
    edits: [pointEdit(line, 0, value)],
  };
  const now = [...(judgeLine(line) ?? [])];
  const cured = () => distance(written, at) <= POINT_MM;
  return cureTools(line, now, judgeLine).attempt(withCorner(line, 0, { at: written }), cure, cured);
}

function meets(before: Course, after: Course) {
  const [out, into] = [before.centreline.pieces.at(-1)!, after.centreline.pieces[0]!];
  const kink = angleBetween(pieceTangent(out, out.end), pieceTangent(into, into.start));
  const bent = kink > toRadians(KINK_DEG);
  const name = `"${before.line.id}"`;
  return finding({
    check: JOINT,
    verdict: bent ? 'note' : 'pass',
    message: bent
      ? `The run turns ${sayAngle(kink)} in the joint with ${name}: no bend is worked there. Line it up, or bend it.`
      : `End A meets end Z of ${name} and runs on straight.`,
    found: degrees(kink),
    limit: KINK_DEG,
    unit: 'deg',
    at: 0,
    point: endA(after),
    path: after.line.corners[0]!.path,
    basis: `${MEET}; ${KINK}`,
  });
}
