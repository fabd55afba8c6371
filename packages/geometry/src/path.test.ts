import { describe, expect, it } from 'vitest';
import {
  type Centreline,
  frameAt,
  fromRows,
  piecePoint,
  pieceTangent,
  pointAt,
  subPath,
  type Vec3,
} from './index.ts';

const QUARTER = Math.PI / 2;
/** 40, 90° of 60, 10, +90°, 90° of 60, 0, +90°, 60° of 50, 30. */
const line: Centreline = fromRows(
  [
    { straightBefore: 40, turn: null, angle: QUARTER, radius: 60 },
    { straightBefore: 10, turn: QUARTER, angle: QUARTER, radius: 60 },
    { straightBefore: 0, turn: QUARTER, angle: Math.PI / 3, radius: 50 },
  ],
  30,
);
const bare = fromRows([], 100);
const apart = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('pointAt and frameAt', () => {
  it('gives both ends exactly', () => {
    expect(pointAt(line, 0)).toEqual([0, 0, 0]);
    expect(pointAt(line, line.length)).toEqual(line.pieces.at(-1)!.to);
  });

  it('halfway round a quarter of 60 about (40, 60)', () => {
    const { point, tangent } = frameAt(line, 40 + 15 * Math.PI);
    const h = Math.SQRT1_2;
    expect(apart(point, [40 + 60 * h, 60 - 60 * h, 0])).toBeLessThan(1e-12);
    expect(apart(tangent, [h, h, 0])).toBeLessThan(1e-12);
  });

  it('moves one mm per mm, along its tangent', () => {
    const step = 1e-4;
    for (let i = 1; i < 200; i++) {
      const s = (i * line.length) / 200;
      const [a, b] = [pointAt(line, s - step), pointAt(line, s + step)];
      const along = b.map((x, k) => (x - a[k]!) / (2 * step)) as unknown as Vec3;
      expect(apart(along, frameAt(line, s).tangent)).toBeLessThan(1e-5);
      expect(frameAt(line, s).point).toEqual(pointAt(line, s));
    }
  });

  it('normal: of the next bend before the first, then of the last bend begun', () => {
    const [first, second, third] = line.bends;
    expect(frameAt(line, 0).normal).toEqual(first!.normal);
    expect(frameAt(line, second!.start - 1).normal).toEqual(first!.normal);
    expect(frameAt(line, second!.start).normal).toEqual(second!.normal);
    expect(frameAt(line, third!.start).normal).toEqual(third!.normal);
    expect(frameAt(line, line.length).normal).toEqual(third!.normal);
  });

  it('a line without bends has some normal square to it', () => {
    const { tangent, normal } = frameAt(bare, 50);
    expect(tangent[0] * normal[0] + tangent[1] * normal[1] + tangent[2] * normal[2]).toBe(0);
    expect(Math.hypot(...normal)).toBe(1);
  });

  it('1e-6 mm beyond an end is that end, more is a wrong call', () => {
    expect(pointAt(bare, -0.9e-6)).toEqual([0, 0, 0]);
    expect(pointAt(bare, 100 + 0.9e-6)).toEqual([100, 0, 0]);
    for (const s of [-1.1e-6, 100.1, Number.NaN]) {
      expect(() => pointAt(bare, s)).toThrow('pointAt: distance must be from 0 to 100 mm');
      expect(() => frameAt(bare, s)).toThrow(RangeError);
      expect(() => subPath(bare, s, 100)).toThrow(RangeError);
    }
  });

  it('a piece is asked by distance along the whole line, and held to its ends', () => {
    const [, arc] = line.pieces;
    expect(piecePoint(arc!, 0)).toEqual([40, 0, 0]);
    expect(piecePoint(arc!, 999)).toEqual([100, 60, 0]);
    expect(pieceTangent(arc!, 0)).toEqual([1, 0, 0]);
    expect(pieceTangent(arc!, 999)).toEqual([0, 1, 0]);
  });

  it('a short arc of a huge radius keeps its digits', () => {
    const flat = fromRows([{ straightBefore: 0, turn: null, angle: 1e-6, radius: 1e9 }], 0);
    // Sagitta s²/2R after 500 mm: 0.000125 mm, with a centre 1e9 mm away.
    expect(pointAt(flat, 500)[1]).toBeCloseTo(0.000125, 15);
  });
});

describe('subPath', () => {
  it('clips the first and the last piece and keeps true distances', () => {
    const part = subPath(line, 20, 60);
    expect(part.map(({ kind, start, end }) => [kind, start, end])).toEqual([
      ['straight', 20, 40],
      ['arc', 40, 60],
    ]);
    for (const piece of part)
      for (const s of [piece.start, (piece.start + piece.end) / 2, piece.end]) {
        expect(apart(piecePoint(piece, s), pointAt(line, s))).toBeLessThan(1e-12);
        expect(apart(pieceTangent(piece, s), frameAt(line, s).tangent)).toBeLessThan(1e-12);
      }
  });

  it('an arc clipped at both ends lies on the same circle', () => {
    const [arc] = subPath(line, 60, 100);
    expect(arc).toMatchObject({
      kind: 'arc',
      length: 40,
      radius: 60,
      centre: [40, 60, 0],
      normal: [0, 0, 1],
    });
    expect(apart(piecePoint(arc!, 75), pointAt(line, 75))).toBeLessThan(1e-12);
  });

  it('leaves out pieces of no length', () => {
    const whole = subPath(line, 0, line.length);
    expect(line.pieces).toHaveLength(7);
    expect(whole).toHaveLength(6);
    expect(whole.every(({ length }) => length > 0)).toBe(true);
    expect(whole.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(line.length, 12);
  });

  it('a single place is one straight of no length there', () => {
    for (const s of [0, 60, line.bends[2]!.start, line.length])
      expect(subPath(line, s, s)).toEqual([
        {
          kind: 'straight',
          from: pointAt(line, s),
          to: pointAt(line, s),
          direction: frameAt(line, s).tangent,
          length: 0,
          start: s,
          end: s,
        },
      ]);
  });

  it('backwards is a wrong call', () => {
    expect(() => subPath(line, 60, 20)).toThrow('subPath: from must be <= to, got 60 and 20 mm');
  });
});
