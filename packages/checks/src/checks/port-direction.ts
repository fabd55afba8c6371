import type { Centreline } from '@runback/geometry';
import {
  ANGLE_RAD,
  addScaled,
  angleBetween,
  distance,
  dot,
  negate,
  POINT_MM,
  sub,
  type Vec3,
} from '@runback/geometry';
import type { Line, LineEnd } from '@runback/job';
import { moveText } from '../cures/move-text.ts';
import { pointEdit, pointFromJob, pointInJob, withCorner } from '../edits.ts';
import { finding, unjudged } from '../finding.ts';
import { placeAt } from '../place.ts';
import type { Cure, Finding } from '../types.ts';
import { degrees } from '../units.ts';
import { sayAngle, sayBothAngles } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'port-direction';
const BASIS =
  'angle between the end straight and the port; a line must meet its port free, not be pulled in by the nut';

type End = 'A' | 'Z';

/** The end straights leave along their ports, within what the fitting forgives. */
export const portDirection = (work: Work): Finding[] => [...atEnd(work, 'A'), ...atEnd(work, 'Z')];

function atEnd(work: Work, name: End): Finding[] {
  const { line, centreline } = work;
  const end = name === 'A' ? line.endA : line.endZ;
  const place = placeAt(centreline, name === 'A' ? 0 : centreline.length);
  if (end.direction === null) {
    const message = `End ${name}: no port direction is given, so how the tube meets its port is not judged.`;
    return [unjudged(CHECK, message, { ...place, path: end.path, basis: BASIS })];
  }
  const found = angleBetween(outOfPort(centreline, name), end.direction);
  const shared = { check: CHECK, found: degrees(found), unit: 'deg' as const, ...place, basis: BASIS };
  const leaves = `The tube leaves the port at end ${name}`;
  if (end.misfit === null) {
    const message = `${leaves} ${sayAngle(found)} off its direction; what the fitting forgives (misfit) is not given.`;
    return [finding({ ...shared, verdict: 'note', message, path: end.path })];
  }
  const ok = found <= end.misfit.value + ANGLE_RAD;
  const [off, forgiven] = sayBothAngles(found, end.misfit.value);
  return [
    finding({
      ...shared,
      verdict: ok ? 'pass' : 'fail',
      message: `${leaves} ${off} off its direction; the fitting forgives ${forgiven}.`,
      limit: degrees(end.misfit.value),
      path: end.misfit.path ?? `${end.path}.direction`,
      cure: ok ? null : alongPort(work, name, end),
      basis: `${BASIS}; limit: ${end.misfit.source}`,
    }),
  ];
}

/** Direction from the port into the line. */
function outOfPort(centreline: Centreline, name: End): Vec3 {
  const [first, last] = [centreline.pieces[0], centreline.pieces.at(-1)];
  const piece = name === 'A' ? first : last;
  if (piece?.kind !== 'straight')
    throw new RangeError('portDirection: centreline must begin and end with a straight');
  return name === 'A' ? piece.direction : negate(piece.direction);
}

/** The point next to the port moved squarely onto the line of the port. */
function alongPort({ line, tools }: Work, name: End, end: LineEnd): Cure | null {
  const index = name === 'A' ? 1 : line.corners.length - 2;
  if (tools === null || end.direction === null || end.misfit === null || line.corners.length < 3) return null;
  const port = line.corners[name === 'A' ? 0 : line.corners.length - 1]!.at;
  const was = line.corners[index]!.at;
  const reach = dot(sub(was, port), end.direction);
  if (reach <= POINT_MM) return null;
  const at = addScaled(port, end.direction, reach);
  const value = pointInJob(line, at);
  const changed = withCorner(line, index, { at: pointFromJob(line, value) });
  const cure: Cure = {
    text: moveText(line, index, { by: distance(was, at), value }),
    edits: [pointEdit(line, index, value)],
  };
  const misfit = end.misfit.value;
  return tools.attempt(
    changed,
    cure,
    (_: Line, c) => angleBetween(outOfPort(c, name), end.direction!) <= misfit,
  );
}
