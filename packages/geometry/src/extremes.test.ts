import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lowsAndHighs } from './extremes.ts';
import { fromRows } from './rows.ts';
import { smallestSlope } from './slope.ts';
import type { Centreline, Row, Vec3 } from './types.ts';

const DEG = Math.PI / 180;
const up: Vec3 = [0, 0, 1];
/** In the X-Z plane: starts at `rise` degrees, each bend turns down by so many (up when negative). R 40, straights 50. */
const wave = (rise: number, bends: readonly number[], straights: readonly number[] = []): Centreline => {
  const rows: Row[] = bends.map((bend, i) => ({
    straightBefore: straights[i] ?? 50,
    turn: i === 0 ? null : Math.sign(bend) === Math.sign(bends[i - 1]!) ? 0 : Math.PI,
    angle: Math.abs(bend) * DEG,
    radius: 40,
  }));
  const direction: Vec3 = [Math.cos(rise * DEG), 0, Math.sin(rise * DEG)];
  return fromRows(rows, 50, { origin: [0, 0, 0], direction, normal: [0, Math.sign(bends[0] ?? 1), 0] });
};
const places = (c: Centreline) => {
  const { lows, highs } = lowsAndHighs(c, up);
  return { lows: lows.map(({ at }) => at), highs: highs.map(({ at }) => at) };
};

describe('lowsAndHighs', () => {
  it('finds the top of a hump and the bottom of a sag', () => {
    const hump = places(wave(30, [70]));
    expect(hump.lows).toEqual([]);
    expect(hump.highs).toHaveLength(1);
    expect(hump.highs[0]).toBeCloseTo(50 + 40 * 30 * DEG, 9);
    expect(places(wave(-30, [-70])).lows[0]).toBeCloseTo(50 + 40 * 30 * DEG, 9);
    expect(places(wave(-30, [-70])).highs).toEqual([]);
  });
  it('gives the point of the place', () => {
    const [high] = lowsAndHighs(wave(90, [180]), up).highs;
    expect(high!.point[0]).toBeCloseTo(40, 9);
    expect(high!.point[2]).toBeCloseTo(90, 9);
  });
  it('leaves the ends out', () => {
    expect(places(wave(30, []))).toEqual({ lows: [], highs: [] });
    expect(places(wave(30, [20]))).toEqual({ lows: [], highs: [] });
    // Level at an end is no extreme either: rises, then level to Z.
    expect(places(wave(30, [30]))).toEqual({ lows: [], highs: [] });
    expect(places(wave(0, [30]))).toEqual({ lows: [], highs: [] });
  });
  it('counts a level straight once, at its middle', () => {
    const level = places(wave(30, [30, 30], [50, 80]));
    expect(level.lows).toEqual([]);
    expect(level.highs).toHaveLength(1);
    expect(level.highs[0]).toBeCloseTo(50 + 1200 * DEG + 40, 9);
    const sunk = places(wave(-30, [-30, -30], [50, 80]));
    expect(sunk.lows[0]).toBeCloseTo(50 + 1200 * DEG + 40, 9);
  });
  it('passes over a level shoulder between two rises', () => {
    expect(places(wave(30, [30, -30]))).toEqual({ lows: [], highs: [] });
  });
  it('finds a low and a high in one arc', () => {
    // 10° down, 300° round over the bottom: low at 10° of it, high at 190°.
    const loop = places(wave(-10, [-300]));
    expect(loop.lows[0]).toBeCloseTo(50 + 400 * DEG, 9);
    expect(loop.highs[0]).toBeCloseTo(50 + 40 * 190 * DEG, 9);
  });
  it('finds nothing on a level coil, and takes a line of no bends', () => {
    const coil = fromRows([{ straightBefore: 20, turn: null, angle: 6, radius: 60 }], 20);
    expect(places(coil)).toEqual({ lows: [], highs: [] });
    expect(places(fromRows([], 100))).toEqual({ lows: [], highs: [] });
  });
  it('alternates along the line, and is empty where the line drains to one end', () => {
    const bends = fc.array(
      fc.integer({ min: -120, max: 120 }).filter((b) => Math.abs(b) > 2),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(fc.double({ min: -80, max: 80, noNaN: true }), bends, (rise, turns) => {
        const line = wave(rise, turns);
        const { lows, highs } = places(line);
        expect(Math.abs(lows.length - highs.length)).toBeLessThanOrEqual(1);
        const order = [...lows.map((at) => ({ at, low: true })), ...highs.map((at) => ({ at, low: false }))];
        order.sort((a, b) => a.at - b.at);
        for (let i = 1; i < order.length; i++) expect(order[i]!.low).toBe(!order[i - 1]!.low);
        const axes = { forward: [1, 0, 0], left: [0, 1, 0], up } as const;
        const drains = (['A', 'Z'] as const).some(
          (drain) => smallestSlope(line, { drain, axes, attitudes: { kind: 'rest' } }).slope > 1e-6,
        );
        if (drains) expect(order).toEqual([]);
      }),
      { seed: 42, numRuns: 300 },
    );
  });
});
