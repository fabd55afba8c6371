import type { Centreline, Nearest, Piece } from '@runback/geometry';
import { pathToSolid, selfApproach, subPath } from '@runback/geometry';
import type { Figure, Line, Surrounding } from '@runback/job';
import type { ClearanceRow } from './types.ts';

/** What a line must keep off a surrounding: the line's own figure, else the surrounding's. */
export const keepOffOf = (line: Line, surrounding: Surrounding): Figure =>
  line.clearance.to[surrounding.id] ?? surrounding.keepOff;

/** The part of a line judged against a surrounding: not within `free` of an end that joins it. Null when none is left. */
export function judgedPath(line: Line, centreline: Centreline, id: string): readonly Piece[] | null {
  const from = line.endA.joins.includes(id) ? line.endA.free : 0;
  const to = centreline.length - (line.endZ.joins.includes(id) ? line.endZ.free : 0);
  if (from >= to) return null;
  return from === 0 && to === centreline.length ? centreline.pieces : subPath(centreline, from, to);
}

/** One row per surrounding, in the job's order. */
export function surroundingRows(line: Line, centreline: Centreline): ClearanceRow[] {
  return line.surroundings.flatMap((surrounding) => {
    const path = judgedPath(line, centreline, surrounding.id);
    if (path === null) return [];
    const nearest = pathToSolid(path, surrounding.solid);
    return [
      row(nearest, { kind: 'surrounding', to: surrounding.id }, [
        line.tube.od / 2,
        keepOffOf(line, surrounding),
      ]),
    ];
  });
}

/** Distance along the line from which on two places are judged against each other: a U of the tightest kind is. */
export const selfApart = (line: Line): number => (Math.PI / 2) * (line.tube.od + line.clearance.self.value);

/** The line against itself, or null when it is too short to come near itself. */
export function selfRow(line: Line, centreline: Centreline): ClearanceRow | null {
  const nearest = selfApproach(centreline.pieces, selfApart(line));
  return nearest && row(nearest, { kind: 'self', to: line.id }, [line.tube.od, line.clearance.self]);
}

/** A row from a distance between centrelines or to a solid, less the metal in between. */
export function row(
  nearest: Nearest,
  what: Pick<ClearanceRow, 'kind' | 'to'>,
  [metal, keepOff]: readonly [number, Figure],
): ClearanceRow {
  return {
    ...what,
    distance: nearest.distance - metal,
    keepOff: keepOff.value,
    at: nearest.at,
    point: nearest.point,
    other: nearest.other,
  };
}
