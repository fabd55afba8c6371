import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flooded } from '../test-kit/flood.ts';
import { bent, lines, spanOf, ups } from '../test-kit/runs.ts';
import { trapped } from './pockets.ts';
import { fromRows } from './rows.ts';
import { mirrored, moved, reversed } from './transform.ts';
import type { Vec3 } from './types.ts';
import { negate, unit } from './vec.ts';

const UP: Vec3 = [0, 0, 1];

describe('trapped', () => {
  it('is nothing in a tube that falls all the way, whichever way it is straight', () => {
    const line = bent(
      [
        [0, 0, 100],
        [0, 0, 0],
        [200, 0, -30],
      ],
      36,
    );
    expect(trapped([spanOf(line, 10)], { up: UP, outlets: 'Z' })).toMatchObject({ pockets: [], volume: 0 });
    const level = fromRows([], 100, { origin: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] });
    for (const outlets of ['A', 'Z', 'both'] as const)
      expect(trapped([spanOf(level, 10)], { up: UP, outlets }).volume).toBe(0);
  });

  it('fills a leaning tube, shut below, up to its lip: all but r/tan α of it', () => {
    for (const lean of [20, 45, 70]) {
      const alpha = (lean * Math.PI) / 180;
      const direction: Vec3 = [Math.cos(alpha), 0, Math.sin(alpha)];
      const line = fromRows([], 200, { origin: [0, 0, 0], direction, normal: [0, 1, 0] });
      const found = trapped([spanOf(line, 12)], { up: UP, outlets: 'Z' });
      const exact = Math.PI * 36 * (200 - 6 / Math.tan(alpha));
      expect(found.volume).toBeCloseTo(exact, 3);
      expect(found.capacity).toBeCloseTo(Math.PI * 36 * 200, 6);
    }
  });

  it('fills a U of upright legs whole: Pappus, 2π² of a half torus', () => {
    const line = bent(
      [
        [0, 0, 150],
        [0, 0, 0],
        [120, 0, 0],
        [120, 0, 150],
      ],
      60,
    );
    const found = trapped([spanOf(line, 16)], { up: UP, outlets: 'both' });
    const exact = Math.PI * 64 * (90 * 2 + Math.PI * 60);
    expect(found.volume).toBeCloseTo(exact, 3);
    expect(found.pockets).toHaveLength(1);
    expect(found.pockets[0]!.lowest).toBeCloseTo(line.length / 2, 4);
  });

  it('fills a sag between two ends as a flood of small cubes does', () => {
    const line = bent(
      [
        [-60, 0, 0],
        [-20, 0, -24],
        [20, 0, -24],
        [60, 0, 0],
      ],
      30,
    );
    const found = trapped([spanOf(line, 10)], { up: UP, outlets: 'both' });
    const { stays, drains } = flooded([spanOf(line, 10)], { up: UP, outlets: 'both', cell: 0.75 });
    expect(Math.abs(found.volume - stays) / stays).toBeLessThan(0.03);
    // What drains and what stays are all the bore holds.
    expect(Math.abs(stays + drains - found.capacity) / found.capacity).toBeLessThan(0.02);
    expect(Math.abs(found.capacity - found.volume - drains) / found.capacity).toBeLessThan(0.03);
  });

  it.each([
    ['liquid in a hanging bend', 1],
    ['air in a standing one', -1],
  ] as const)('counts %s by the longer outside and the shorter inside', (_, upward) => {
    // A quarter of a ring, its middle lowest; both ends open, so wet up to the floor of the mouths.
    const [R, r] = [30, 8];
    const direction: Vec3 = unit([1, 0, -upward]);
    const line = fromRows([{ straightBefore: 0, turn: null, angle: Math.PI / 2, radius: R }], 0, {
      origin: [0, 0, 0],
      direction,
      normal: [0, -upward, 0],
    });
    const found = trapped([spanOf(line, 2 * r)], { up: [0, 0, upward], outlets: 'both' });
    expect(found.pockets).toHaveLength(1);
    // The same in the ring's own coordinates: volume ρ·(R + ρ·cos φ) dρ dφ dθ, wet where it lies below the mouths.
    const wet = ringBelow({ R, r, level: -(R + r) * Math.SQRT1_2 });
    expect(Math.abs(found.volume - wet) / wet).toBeLessThan(0.002);
  });

  it('holds liquid behind a step to a smaller bore', () => {
    const alpha = Math.atan(1 / 20);
    const direction: Vec3 = [Math.cos(alpha), 0, -Math.sin(alpha)];
    const wide = fromRows([], 200, { origin: [0, 0, 0], direction, normal: [0, 1, 0] });
    const end: Vec3 = [200 * direction[0], 0, 200 * direction[2]];
    const narrow = fromRows([], 100, { origin: end, direction, normal: [0, 1, 0] });
    const run = [spanOf(wide, 16), spanOf(narrow, 10)];
    const found = trapped(run, { up: UP, outlets: 'Z' });
    expect(found.pockets).toHaveLength(1);
    expect(found.pockets[0]!.to).toBeCloseTo(200, 9);
    // 3 mm of lip over a fall of 1 in 20: wet for 60 mm; V = ∫ segment area with depth from 0 to 3·cos α.
    expect(200 - found.pockets[0]!.from).toBeCloseTo(60, 6);
    let riemann = 0;
    for (let i = 0; i < 60_000; i++) {
      const depth = 3 * ((i + 0.5) / 60_000);
      const d = 8 - depth;
      riemann += (64 * Math.atan2(Math.sqrt(64 - d * d), d) - d * Math.sqrt(64 - d * d)) * (60 / 60_000);
    }
    expect(found.volume).toBeCloseTo(riemann, 3);
    expect(trapped([spanOf(wide, 16), spanOf(narrow, 16)], { up: UP, outlets: 'Z' }).volume).toBe(0);
  });

  it('refuses what is no bore', () => {
    expect(() => trapped([], { up: UP, outlets: 'A' })).toThrow(/at least one tube/);
    const line = bent(
      [
        [0, 0, 0],
        [100, 0, 0],
        [100, 100, 0],
      ],
      20,
    );
    expect(() => trapped([spanOf(line, 0)], { up: UP, outlets: 'A' })).toThrow(/must be > 0/);
    expect(() => trapped([spanOf(line, 41)], { up: UP, outlets: 'A' })).toThrow(/half the bore/);
  });
});

/** Of a ring about y, its lowest quarter: what lies below a level measured from its centre, summed in small pieces. */
function ringBelow({ R, r, level }: { R: number; r: number; level: number }): number {
  const [ways, rounds, quarters] = [80, 160, 200];
  let sum = 0;
  for (let i = 0; i < ways; i++) {
    const rho = ((i + 0.5) / ways) * r;
    for (let j = 0; j < rounds; j++) {
      const reach = R + rho * Math.cos(((j + 0.5) / rounds) * 2 * Math.PI);
      for (let k = 0; k < quarters; k++) {
        const theta = ((k + 0.5) / quarters - 0.5) * (Math.PI / 2);
        if (-reach * Math.cos(theta) < level) sum += rho * reach;
      }
    }
  }
  return sum * (r / ways) * ((2 * Math.PI) / rounds) * (Math.PI / 2 / quarters);
}

describe('trapped, of any line', () => {
  it('is never more with two ends open than with one, never more than the bore holds, and bounded', () => {
    fc.assert(
      fc.property(lines, ups, (line, up) => {
        const run = [spanOf(line, 12)];
        const [a, z, both] = (['A', 'Z', 'both'] as const).map((outlets) => trapped(run, { up, outlets }));
        expect(both!.volume).toBeLessThanOrEqual(Math.min(a!.volume, z!.volume) + 0.1);
        expect(a!.volume).toBeLessThanOrEqual(a!.capacity + 0.1);
        for (const { bound, volume, pockets } of [a!, z!, both!]) {
          expect(bound).toBeLessThan(1);
          expect(bound).toBeLessThan(0.005 * volume + 0.1);
          for (const pocket of pockets) expect(pocket.depth).toBeGreaterThan(-1e-9);
        }
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('is the same read from the other end, in the mirror, and for air with the machine on its head', () => {
    fc.assert(
      fc.property(lines, ups, (line, up) => {
        const there = trapped([spanOf(line, 10)], { up, outlets: 'A' });
        const back = trapped([spanOf(reversed(line), 10)], { up, outlets: 'Z' });
        expect(back.volume).toBeCloseTo(there.volume, 2);
        const flip: Vec3 = [up[0], -up[1], up[2]];
        const hand = trapped([spanOf(mirrored(line, 1, 0), 10)], {
          up: flip,
          outlets: 'A',
        });
        expect(hand.volume).toBeCloseTo(there.volume, 2);
        // Turned over about x: what was up is down, so air there is liquid here.
        const over = moved(line, {
          rotation: [
            [1, 0, 0],
            [0, -1, 0],
            [0, 0, -1],
          ],
          shift: [0, 0, 0],
        });
        const air = trapped([spanOf(line, 10)], { up: negate(up), outlets: 'A' });
        const liquid = trapped([spanOf(over, 10)], { up: [-up[0], up[1], up[2]], outlets: 'A' });
        expect(liquid.volume).toBeCloseTo(air.volume, 2);
        expect(liquid.capacity).toBeCloseTo(there.capacity, 6);
      }),
      { seed: 12, numRuns: 40 },
    );
  });

  it('stays and drains as a flood of small cubes does, which knows no sill and no segment', () => {
    fc.assert(
      fc.property(lines, ups, fc.constantFrom('A', 'Z', 'both'), (line, up, outlets) => {
        const run = [spanOf(line, 12)];
        const found = trapped(run, { up, outlets: outlets as 'A' });
        const cell = 1.5;
        const { stays: cubes, drains } = flooded(run, { up, outlets: outlets as 'A', cell });
        // A sill is known to half a cube, over a surface no larger than the bore is wide and the pockets are long.
        const wet = found.pockets.reduce((sum, { from, to }) => sum + to - from, 0);
        expect(Math.abs(found.volume - cubes)).toBeLessThan(
          0.02 * found.volume + (cell / 2) * 12 * (wet + 12),
        );
        expect(Math.abs(cubes + drains - found.capacity)).toBeLessThan(0.03 * found.capacity);
        if (found.volume > 1000) expect(cubes).toBeGreaterThan(0);
      }),
      { seed: 13, numRuns: 8, endOnFailure: true },
    );
  });
});
