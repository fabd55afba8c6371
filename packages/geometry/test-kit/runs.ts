/** Runs for tests of what stays in them: straight bores, lips, and random bent lines. */
import fc from 'fast-check';
import { fillet } from '../src/fillet.ts';
import { piecePoint, pieceTangent } from '../src/path.ts';
import type { BoreSpan } from '../src/pockets.ts';
import { fromRows } from '../src/rows.ts';
import type { Centreline, Vec3 } from '../src/types.ts';
import { anyNormal, unit } from '../src/vec.ts';

export function bent(points: readonly Vec3[], radius: number): Centreline {
  const made = fillet(
    points.map((at, i) => ({ at, radius: i === 0 || i === points.length - 1 ? 0 : radius })),
  );
  if (!made.ok) throw new Error('the test line does not fit');
  return made.centreline;
}

export const spanOf = (line: Centreline, bore: number): BoreSpan => ({ pieces: line.pieces, bore });

export function straightSpan({ from, along, length, bore }: StraightSpan): BoreSpan {
  const direction = unit(along);
  const line = fromRows([], length, { origin: from, direction, normal: anyNormal(direction) });
  return spanOf(line, bore);
}

interface StraightSpan {
  readonly from: Vec3;
  readonly along: Vec3;
  readonly length: number;
  readonly bore: number;
}

/** A disc with a hole on the end A or Z of a span. */
export function lipOn({ pieces }: BoreSpan, end: 'A' | 'Z', bore: number): BoreSpan {
  const piece = end === 'A' ? pieces[0]! : pieces.at(-1)!;
  const s = end === 'A' ? piece.start : piece.end;
  const [at, direction] = [piecePoint(piece, s), pieceTangent(piece, s)];
  const lip = { kind: 'straight', from: at, to: at, direction, length: 0, start: s, end: s } as const;
  return { pieces: [lip], bore };
}

const coordinate = fc.integer({ min: -40, max: 40 }).map((n) => n * 5);

/** Lines of two to four legs, bends of radius 20. */
export const lines: fc.Arbitrary<Centreline> = fc
  .array(fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>, { minLength: 3, maxLength: 5 })
  .filter((points) => points.every((p, i) => i === 0 || p.some((x, k) => x !== points[i - 1]![k])))
  .map((points) =>
    fillet(points.map((at, i) => ({ at, radius: i === 0 || i === points.length - 1 ? 0 : 20 }))),
  )
  .filter((made) => made.ok)
  .map((made) => (made as { centreline: Centreline }).centreline);

/** Directions in the upper half. */
export const ups: fc.Arbitrary<Vec3> = fc
  .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 9 }))
  .map((v) => unit(v as Vec3));
