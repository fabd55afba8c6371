/** Whether the marks can be worked, and whether the stick comes out past what stands around. */
import type { PullOut } from '@runback/bending';
import { addScaled, pathToSolid, type Straight } from '@runback/geometry';
import type { JobUnit, LineEnd, Stick, Surrounding } from '@runback/job';
import { finding, unjudged } from '../finding.ts';
import type { Finding } from '../types.ts';
import { list, say } from '../words.ts';
import { type Marks, marksOf } from './marks.ts';
import { across, sectionsOf } from './section.ts';
import { pullOutOf } from './sheet.ts';
import { ofLine, type Placed, partAt, placed, type Way } from './way.ts';

export const MARKS_BASIS =
  'between two measured fills by even steps, never beyond them; else from a room with upright walls and a level machine. Verify by filling';
export const OUT_BASIS =
  'exact distance from the straight way out of the stiff part, along the tangent at the end it goes in at, less half the stick; the part that bends is not in it';

/** One finding on the marks. */
export function marksSaid(way: Way, stick: Stick): Placed {
  const { marks, refused } = marksOf(way, stick, 0);
  const shared = { path: `${stick.path}.levels`, basis: MARKS_BASIS };
  const part = partAt(way, stick.enters);
  if (stick.levels.length === 0) {
    const message = 'No levels are given: the stick has no marks to work out.';
    return { part, finding: unjudged('stick', message, shared) };
  }
  if (refused.length > 0)
    return { part, finding: unjudged('stick', `${refusal(refused)} Fill it and mark what you see.`, shared) };
  const message = `Marks are worked out for ${list(marks.map(({ name }) => `"${name}"`))}: verify them by filling.`;
  return { part, finding: finding({ check: 'stick', verdict: 'pass', message, unit: '', ...shared }) };
}

const refusal = (refused: Marks['refused']): string =>
  `No mark is worked out for ${list(refused.map(({ name, why }) => `"${name}" (${why})`))}.`;

/** What stands in the straight way out of the stiff part. */
export function comesOut(way: Way, stick: Stick): readonly Placed[] {
  const part = partAt(way, stick.enters);
  const out = pullOutOf(way, stick);
  const { line, centreline } = way.parts[part]!;
  const end = stick.enters === 'A' ? line.endA : line.endZ;
  const half = Math.max(...sectionsOf(stick).map(across)) / 2;
  const rows = line.surroundings.flatMap((surrounding) => rowTo(surrounding, { out, end, half }));
  const place = placed(way, part, stick.enters === 'A' ? 0 : centreline.length);
  const why = notSaid({ stiff: out.length > 0, given: line.surroundings.length > 0, left: rows.length > 0 });
  if (why !== null) return [{ part, finding: unjudged(OUT, why, { ...place, basis: OUT_BASIS }) }];
  const bad = rows.filter(({ distance }) => distance < 0);
  const [nearest] = rows.toSorted((a, b) => a.distance - b.distance);
  const room = `The stick needs ${say(out.length, way.units)} straight out of end ${stick.enters}${ofLine(way, part)}`;
  return (bad.length > 0 ? bad : [nearest!]).map((row) => ({
    part,
    finding: { ...wayOut(row, room, way.units), ...place },
  }));
}

const OUT = 'pull-out';

/** Why nothing is said of the way out. */
function notSaid({
  stiff,
  given,
  left,
}: Readonly<Record<'stiff' | 'given' | 'left', boolean>>): string | null {
  if (!stiff)
    return 'No part of the stick is stiff: leave it room to bend aside as it comes out; that is not judged.';
  if (!given) return 'The job gives no surroundings: the way out of the stick is not judged.';
  if (left) return null;
  return 'Everything given lies within the free part of the end it comes out of: the way out is not judged.';
}

interface Row {
  readonly to: string;
  readonly path: string;
  readonly distance: number;
}

function wayOut({ to, path, distance }: Row, room: string, units: JobUnit): Finding {
  const inWay = distance < 0;
  const message = inWay
    ? `${room}, and "${to}" is in the way by ${say(-distance, units)}.`
    : `${room}; the nearest to it is "${to}", ${say(distance, units)} away.`;
  const figures = { found: distance, limit: 0, unit: 'mm' as const, to, path };
  return finding({ check: OUT, verdict: inWay ? 'fail' : 'pass', message, ...figures, basis: OUT_BASIS });
}

interface WayOut {
  readonly out: PullOut;
  readonly end: LineEnd;
  readonly half: number;
}

/** Nothing when the whole way out lies within the free part of an end that joins the thing. */
function rowTo({ id, solid, path }: Surrounding, { out, end, half }: WayOut): Row[] {
  const from = end.joins.includes(id) ? end.free : 0;
  if (from >= out.length) return [];
  const length = out.length - from;
  const piece: Straight = {
    kind: 'straight',
    from: addScaled(out.from, out.direction, from),
    to: out.to,
    direction: out.direction,
    length,
    start: 0,
    end: length,
  };
  return [{ to: id, path, distance: pathToSolid([piece], solid).distance - half }];
}
