/** Legs and bends of a line by their places along it. */
import {
  type Centreline,
  dot,
  type Line,
  type Piece,
  pointAt,
  type Straight,
  sub,
  subPath,
  type WorkedLine,
} from 'runback';
import type { Selection } from '../../store/types.ts';
import type { Stretch } from './stops.ts';

/** The bend a place lies in, else the leg. */
export function partAt(line: Line, centreline: Centreline, at: number): Selection {
  const bend = centreline.bends.findIndex(({ start, end }) => at >= start && at <= end);
  if (bend >= 0) return { kind: 'bend', index: bend };
  const legs = line.corners.slice(1).map((_, index) => ({ index, span: legSpan(line, centreline, index) }));
  const leg = legs.find(({ span }) => span !== null && at >= span.from && at <= span.to);
  return { kind: 'leg', index: leg?.index ?? 0 };
}

/** The straight part of the leg from point `index` to the next, mm from end A; `null` when its bends leave none. */
export function legSpan({ corners }: Line, { bends, pieces }: Centreline, index: number): Stretch | null {
  if (bends.some(({ points }) => points.includes(index) && points.includes(index + 1))) return null;
  const before = bends.findLastIndex(({ points }) => points[0]! <= index);
  const straight = pieces[2 * (before + 1)] as Straight;
  const bent = (point: number): boolean => bends.some(({ points }) => points.includes(point));
  // A point without a bend lies on the straight.
  const place = (point: number): number =>
    straight.start + dot(sub(corners[point]!.at, straight.from), straight.direction);
  const last = index + 1 === corners.length - 1;
  const from = index === 0 || bent(index) ? straight.start : place(index);
  const to = last || bent(index + 1) ? straight.end : place(index + 1);
  return from < to ? { from, to } : null;
}

/** Pieces of the tube that a selection means; none when it means no stretch of it. */
export function selectedPieces(
  { line, centreline, findings }: WorkedLine,
  selection: Selection | null,
): readonly Piece[] {
  if (!centreline || selection === null) return [];
  const bendPieces = (index: number): readonly Piece[] => {
    const bend = centreline.bends[index];
    return bend ? [centreline.pieces[bend.piece]!] : [];
  };
  if (selection.kind === 'bend') return bendPieces(selection.index);
  if (selection.kind === 'finding') return bendPieces((findings[selection.index]?.bend ?? 0) - 1);
  if (selection.kind !== 'leg' || selection.index + 1 >= line.corners.length) return [];
  const span = legSpan(line, centreline, selection.index);
  return span === null ? [] : subPath(centreline, span.from, span.to);
}

/** The end point of a line, and the unit vector that leads out of the tube there. */
export function endOf(centreline: Centreline, end: 'A' | 'Z') {
  const piece = centreline.pieces.at(end === 'A' ? 0 : -1) as Straight;
  const [x, y, z] = piece.direction;
  return end === 'A'
    ? { point: piece.from, out: [-x, -y, -z] as const }
    : { point: pointAt(centreline, centreline.length), out: piece.direction };
}
