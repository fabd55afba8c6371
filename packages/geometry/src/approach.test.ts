import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Centreline,
  distance,
  fillet,
  fromRows,
  type Piece,
  pieceToPiece,
  pointAt,
  selfApproach,
  subPath,
} from './index.ts';

const DEGREE = Math.PI / 180;
const u = (angle: number, radius: number, leg = 200): Centreline =>
  fromRows([{ straightBefore: leg, turn: null, angle, radius }], leg);
/** Self-clearance asks for places this far apart along the line. */
const apartFor = (od: number, limit: number): number => (Math.PI / 2) * (od + limit);

describe('selfApproach', () => {
  test('along a straight the places asked for are as far apart as asked', () => {
    const near = selfApproach(fromRows([], 300).pieces, 35)!;
    expect(near).toMatchObject({ distance: 35, at: 0, otherAt: 35, point: [0, 0, 0], other: [35, 0, 0] });
  });

  test('a line just as long as asked counts, a shorter one has none', () => {
    expect(selfApproach(fromRows([], 35).pieces, 35)!.distance).toBeCloseTo(35, 10);
    const bend = u(Math.PI / 2, 61.7, 33.3);
    for (const from of [0, 0.1, 1 / 3, 7.7]) {
      const part = subPath(bend, from, bend.length - 0.7);
      const length = part[part.length - 1]!.end - part[0]!.start;
      const near = selfApproach(part, length)!;
      expect(near.distance).toBeCloseTo(distance(part[0]!.from, part[part.length - 1]!.to), 9);
    }
    expect(selfApproach(fromRows([], 34.9).pieces, 35)).toBeNull();
  });

  test('within an arc it is the chord', () => {
    const bend = u(Math.PI, 40).pieces;
    expect(selfApproach(bend, 35)!.distance).toBeCloseTo(2 * 40 * Math.sin(35 / 80), 10);
    const arc = [u(1.9 * Math.PI, 40).pieces[1]!];
    const closing = selfApproach(arc, 2.5 * 40)!;
    expect(closing.distance).toBeCloseTo(2 * 40 * Math.sin(0.05 * Math.PI), 9);
    expect(closing.at).toBeCloseTo(arc[0]!.start, 9);
  });

  test('the legs of a U with a far limit are as far apart as the U is wide', () => {
    const near = selfApproach(u(Math.PI, 40).pieces, Math.PI * 40)!;
    expect(near.distance).toBeCloseTo(80, 9);
    expect(near.at).toBe(0);
  });

  test('a plain bend passes its own limit', () => {
    for (const angle of [30, 60, 90, 120]) {
      const near = selfApproach(u(angle * DEGREE, 60).pieces, apartFor(12, 10))!;
      expect(near.distance - 12).toBeGreaterThan(10);
    }
  });

  test('a U tighter than OD and limit is caught', () => {
    const near = selfApproach(u(Math.PI, 10).pieces, apartFor(12, 10))!;
    expect(near.distance).toBeCloseTo(20, 9);
  });

  test('nothing jumps as a hairpin closes', () => {
    const [radius, apart] = [30, apartFor(40, 15)];
    const at = (angle: number) => selfApproach(u(angle * DEGREE, radius).pieces, apart)!.distance;
    const far: number[] = [];
    for (let i = 0; i <= 40; i++) far.push(at(179 + i / 20));
    // Legs of 200 mm: their far ends close by twice 200·sin(0.05°) a step.
    for (let i = 1; i < far.length; i++) expect(Math.abs(far[i]! - far[i - 1]!)).toBeLessThan(0.4);
    for (const angle of [179, 179.5, 180, 180.5, 181])
      expect(Math.abs(at(angle + 1e-7) - at(angle))).toBeLessThan(1e-5);
    expect(far[20]).toBeCloseTo(60 * Math.sin(apart / 60), 9);
    expect(far[40]).toBeLessThan(60);
  });

  test('a line that crosses itself is found', () => {
    const loop = fillet([
      { at: [0, 0, 0], radius: 20 },
      { at: [200, 0, 0], radius: 20 },
      { at: [200, 150, 0], radius: 20 },
      { at: [100, 150, 0], radius: 20 },
      { at: [100, -50, 3], radius: 20 },
    ]);
    const near = selfApproach(loop.ok ? loop.centreline.pieces : [], 60)!;
    expect(near.distance).toBeCloseTo(2.25 * Math.cos(Math.atan2(3, 200)), 1);
    expect(near.at).toBeCloseTo(100, 1);
  });

  test('is the least over pairs of parts that are far enough apart, and counts only such places', () => {
    let worked = 0;
    const side = fc.double({ min: -300, max: 300, noNaN: true });
    const corner = fc.record({
      at: fc.tuple(side, side, side),
      radius: fc.double({ min: 5, max: 40, noNaN: true }),
    });
    const property = fc.property(
      fc.array(corner, { minLength: 3, maxLength: 6 }),
      fc.double({ min: 5, max: 200, noNaN: true }),
      (corners, apart) => {
        fc.pre(corners.every(({ at }, i) => i === 0 || distance(at, corners[i - 1]!.at) > 1));
        const made = fillet(corners);
        if (!made.ok || made.centreline.length < apart) return;
        worked++;
        const line = made.centreline;
        const near = selfApproach(line.pieces, apart)!;
        expect(near.otherAt! - near.at).toBeGreaterThanOrEqual(apart - 1e-9);
        const there = distance(pointAt(line, near.at), pointAt(line, near.otherAt!));
        expect(Math.abs(there - near.distance)).toBeLessThan(1e-9);
        const sample = descended(line, apart);
        expect(near.distance).toBeLessThanOrEqual(sample + 1e-9);
      },
    );
    fc.assert(property, { seed: 42, numRuns: 100 });
    expect(worked).toBeGreaterThan(30);
  });

  test('agrees with all pairs where the limit falls on joints', () => {
    // Straights and quarter bends of 30 mm each, up a square stair that winds: 30 mm steps.
    const rows = Array.from({ length: 12 }, (_, i) => ({
      straightBefore: 30,
      turn: i === 0 ? null : 10 * DEGREE,
      angle: Math.PI / 2,
      radius: 60 / Math.PI,
    }));
    const line = fromRows(rows, 30);
    const near = selfApproach(line.pieces, 90)!;
    const far = allPairs(line, 90);
    expect(near.distance).toBeLessThanOrEqual(far + 1e-9);
    expect(near.distance).toBeLessThanOrEqual(descended(line, 90) + 1e-9);
  });

  test('a wrong call says what is wrong', () => {
    expect(() => selfApproach(fromRows([], 10).pieces, 0)).toThrow(
      'selfApproach: apart must be > 0 mm, got 0',
    );
    expect(() => selfApproach([], 10)).toThrow(/at least one piece/);
  });
});

/** Least over whole pieces far enough apart. */
function allPairs(line: Centreline, apart: number): number {
  const far = (a: Piece, b: Piece) => b.start - a.end >= apart;
  const pairs = line.pieces.flatMap((a) =>
    line.pieces.filter((b) => far(a, b)).map((b) => pieceToPiece(a, b).distance),
  );
  return Math.min(...pairs);
}

/** Least of a grid of allowed pairs, and of the diagonal, run downhill on an ever finer pattern. */
function descended(line: Centreline, apart: number): number {
  const steps = 60;
  const step = line.length / steps;
  const far = (s: number, t: number) => distance(pointAt(line, s), pointAt(line, t));
  const grid: [number, number, number][] = [];
  for (let i = 0; i <= steps; i++) {
    const s = ((line.length - apart) * i) / steps;
    grid.push([far(s, s + apart), s, s + apart]);
    for (let t = s + apart; t <= line.length; t += step) grid.push([far(s, t), s, t]);
  }
  grid.sort((a, b) => a[0] - b[0]);
  let least = Number.POSITIVE_INFINITY;
  for (const start of [grid[0]!, grid[Math.min(50, grid.length - 1)]!])
    least = Math.min(least, downhill(start, { line, apart, step }));
  return least;
}

function downhill(
  [d, s, t]: [number, number, number],
  o: { line: Centreline; apart: number; step: number },
): number {
  const hold = (x: number) => Math.min(Math.max(x, 0), o.line.length);
  for (let h = o.step; h > 1e-9; ) {
    let moved = false;
    for (const [x, y] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
      [1, 1],
      [-1, -1],
    ] as const) {
      const [a, b] = [hold(s + x * h), hold(t + y * h)];
      if (b - a < o.apart) continue;
      const e = distance(pointAt(o.line, a), pointAt(o.line, b));
      if (e < d) [d, s, t, moved] = [e, a, b, true];
    }
    if (!moved) h /= 2;
  }
  return d;
}

test('a clipped path keeps its own distances along the line', () => {
  const line = u(Math.PI, 40);
  const near = selfApproach(subPath(line, 150, 400), 100)!;
  expect(near.at).toBeGreaterThanOrEqual(150);
  expect(distance(pointAt(line, near.at), pointAt(line, near.otherAt!))).toBeCloseTo(near.distance, 9);
});
