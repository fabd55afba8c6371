/** Lips: a disc with a hole, at a mouth and in a joint. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flooded } from '../test-kit/flood.ts';
import { lines, lipOn, spanOf, straightSpan, ups } from '../test-kit/runs.ts';
import { trapped } from './pockets.ts';
import type { Vec3 } from './types.ts';
import { negate } from './vec.ts';

const UP: Vec3 = [0, 0, 1];
const level = (from: number, length: number) =>
  straightSpan({ from: [from, 0, 0], along: [1, 0, 0], length, bore: 16 });

/** Area of a disc of radius r up to a depth. */
const segmentOf = (r: number, depth: number): number =>
  r * r * Math.acos((r - depth) / r) - (r - depth) * Math.sqrt(2 * r * depth - depth * depth);

describe('a lip', () => {
  it.each([
    ['liquid', UP],
    ['air', negate(UP)],
  ] as const)('at the mouth of a level tube keeps %s as deep as it stands in', (_, up) => {
    const tube = level(0, 200);
    const found = trapped([tube, lipOn(tube, 'Z', 10)], { up, outlets: 'Z' });
    expect(found.volume).toBeCloseTo(200 * segmentOf(8, 3), 6);
    expect(found.pockets).toMatchObject([{ from: 0, to: 200 }]);
    expect(found.pockets[0]!.depth).toBeCloseTo(3, 9);
    expect(found.capacity).toBeCloseTo(Math.PI * 64 * 200, 9);
    const other = trapped([lipOn(tube, 'A', 10), tube], { up, outlets: 'A' });
    expect(other.volume).toBeCloseTo(found.volume, 9);
  });

  it('at both mouths lets the lower one decide', () => {
    const tube = level(0, 200);
    const found = trapped([lipOn(tube, 'A', 8), tube, lipOn(tube, 'Z', 12)], { up: UP, outlets: 'both' });
    expect(found.volume).toBeCloseTo(200 * segmentOf(8, 2), 6);
  });

  it('in a joint holds back what is on the shut side of it, and nothing between two open mouths', () => {
    const [one, two] = [level(0, 80), level(80, 120)];
    const run = [one, lipOn(one, 'Z', 10), two];
    const shut = trapped(run, { up: UP, outlets: 'Z' });
    expect(shut.volume).toBeCloseTo(80 * segmentOf(8, 3), 6);
    expect(shut.pockets).toMatchObject([{ from: 0, to: 80 }]);
    expect(trapped(run, { up: UP, outlets: 'A' }).volume).toBeCloseTo(120 * segmentOf(8, 3), 6);
    expect(trapped(run, { up: UP, outlets: 'both' }).volume).toBe(0);
  });

  it('in a joint of a falling tube keeps the wedge a step of the same height keeps', () => {
    const along: Vec3 = [20, 0, -1];
    const wide = straightSpan({ from: [0, 0, 0], along, length: 200, bore: 16 });
    const from = wide.pieces[0]!.to;
    const lip = lipOn(wide, 'Z', 10);
    const [same, narrow] = [16, 10].map((bore) => straightSpan({ from, along, length: 100, bore }));
    const held = trapped([wide, lip, same!], { up: UP, outlets: 'Z' });
    expect(held.volume).toBeCloseTo(trapped([wide, narrow!], { up: UP, outlets: 'Z' }).volume, 6);
    expect(held.pockets).toHaveLength(1);
    // 3 mm of lip over a fall of 1 in 20: wet for 60 mm.
    expect(held.pockets[0]!.from).toBeCloseTo(140, 6);
    expect(held.pockets[0]!.to).toBe(200);
  });

  it('as wide as the bore or wider does nothing', () => {
    const tube = level(0, 200);
    for (const bore of [16, 20])
      expect(trapped([tube, lipOn(tube, 'Z', bore)], { up: UP, outlets: 'Z' }).volume).toBe(0);
  });

  it('is no run by itself', () => {
    const tube = level(0, 200);
    expect(() => trapped([lipOn(tube, 'A', 10)], { up: UP, outlets: 'Z' })).toThrow(/at least one tube/);
    expect(() => trapped([tube, lipOn(tube, 'Z', 0)], { up: UP, outlets: 'Z' })).toThrow(/must be > 0/);
  });

  it('never keeps more when its hole is larger', () => {
    fc.assert(
      fc.property(lines, ups, fc.constantFrom('A', 'Z', 'both'), (line, up, outlets) => {
        const tube = spanOf(line, 12);
        const kept = [4, 7, 10, 12].map(
          (hole) =>
            trapped([lipOn(tube, 'A', hole), tube, lipOn(tube, 'Z', hole)], { up, outlets: outlets as 'A' })
              .volume,
        );
        for (const [i, volume] of kept.slice(1).entries()) expect(volume).toBeLessThanOrEqual(kept[i]! + 0.1);
        const open = trapped([tube], { up, outlets: outlets as 'A' }).volume;
        expect(kept.at(-1)!).toBeCloseTo(open, 2);
      }),
      { seed: 21, numRuns: 25 },
    );
  });

  it.each([
    ['level', [1, 0, 0]],
    ['falling', [8, 0, -1]],
    ['rising', [9, 3, 2]],
  ] as const)(
    'is found by a flood of small cubes too: a %s tube with a disc in its joint and at its mouth',
    (_, along) => {
      const one = straightSpan({ from: [0.13, 0.21, 0.17], along, length: 50, bore: 16 });
      const two = straightSpan({ from: one.pieces[0]!.to, along, length: 40, bore: 16 });
      const cell = 1;
      for (const run of [
        [one, lipOn(one, 'Z', 9), two],
        [one, two, lipOn(two, 'Z', 9)],
      ])
        for (const up of [UP, negate(UP)]) {
          const found = trapped(run, { up, outlets: 'Z' });
          const { stays } = flooded(run, { up, outlets: 'Z', cell });
          // A sill is known to half a cube; the disc takes up almost two cubes of length.
          const wet = found.pockets.reduce((sum, { from, to }) => sum + to - from, 0);
          expect(Math.abs(found.volume - stays)).toBeLessThan(
            (cell / 2) * 16 * wet + 2 * cell * Math.PI * 64,
          );
          const without = trapped([one, two], { up, outlets: 'Z' }).volume;
          expect(found.volume).toBeGreaterThanOrEqual(without - 1e-6);
        }
    },
  );
});
