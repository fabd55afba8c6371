/** What must hold of any trapped volume: closed forms of rings, monotone tilts and lips, floods over steps, air as liquid. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flooded } from '../test-kit/flood.ts';
import { lines, lipOn, spanOf, straightSpan } from '../test-kit/runs.ts';
import { patchOf, upIn } from './attitude.ts';
import { trapped } from './pockets.ts';
import { fromRows } from './rows.ts';
import { moved } from './transform.ts';
import type { AttitudeSet, DrainEnd, MachineAxes, Vec3 } from './types.ts';
import { negate } from './vec.ts';
import { worstTrapped } from './worst-trapped.ts';

const UP: Vec3 = [0, 0, 1];
const axes: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: UP };
const DEGREE = Math.PI / 180;
const outletsOf: fc.Arbitrary<DrainEnd> = fc.constantFrom('A', 'Z', 'both');

/** Area of a disc of radius r up to a depth. */
const segmentOf = (r: number, depth: number): number =>
  r * r * Math.acos((r - depth) / r) - (r - depth) * Math.sqrt(2 * r * depth - depth * depth);

describe('rings in closed form', () => {
  // A level ring's segment has its centroid over the middle of the bore, so Pappus: R·θ times its area.
  it.each([
    [30, 8, 3, Math.PI],
    [30, 8, 7, Math.PI / 2],
    [12, 10, 6, 2.5],
    [200, 2, 1, 1],
  ])('R %d, r %d, level, filled %d deep behind a lip, over %f rad', (R, r, depth, angle) => {
    const ring = fromRows([{ straightBefore: 0, turn: null, angle, radius: R }], 0, {
      origin: [0, 0, 0],
      direction: [1, 0, 0],
      normal: UP,
    });
    const span = spanOf(ring, 2 * r);
    const hole = 2 * (r - depth);
    const found = trapped([span, lipOn(span, 'Z', hole)], { up: UP, outlets: 'Z' });
    const exact = R * angle * segmentOf(r, depth);
    expect(Math.abs(found.volume - exact)).toBeLessThan(1);
    expect(Math.abs(found.volume - exact)).toBeLessThan(0.005 * exact);
    expect(Math.abs(found.volume - exact)).toBeLessThanOrEqual(found.bound + 1e-9 * exact);
  });

  it('a standing ring whose bottom half is full: 2π²Rr²/2 over half a turn, to the quadrature’s own bound', () => {
    for (const [R, r] of [
      [20, 5],
      [60, 8],
      [15, 14],
    ] as const) {
      const cup = fromRows([{ straightBefore: 40, turn: null, angle: Math.PI, radius: R }], 40, {
        origin: [0, 0, 0],
        direction: [0, 0, -1],
        normal: [0, 1, 0],
      });
      const found = trapped([spanOf(cup, 2 * r)], { up: UP, outlets: 'both' });
      const exact = Math.PI * r * r * (Math.PI * R + 80);
      expect(Math.abs(found.volume - exact)).toBeLessThanOrEqual(found.bound + 1e-9 * exact);
      expect(found.bound).toBeLessThan(1);
    }
  });
});

describe('monotone', () => {
  it('more tilt towards the outlet of a straight line never holds more, with a lip or without', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(null, 4, 9, 11),
        fc.integer({ min: 30, max: 300 }),
        fc.array(fc.double({ min: -Math.PI / 2, max: Math.PI / 2, noNaN: true }), {
          minLength: 6,
          maxLength: 6,
        }),
        (hole, length, tilts) => {
          const kept = tilts
            .toSorted((a, b) => a - b)
            .map((tilt) => {
              const along: Vec3 = [Math.cos(tilt), 0, -Math.sin(tilt)];
              const tube = straightSpan({ from: [0, 0, 0], along, length, bore: 12 });
              const run = hole === null ? [tube] : [tube, lipOn(tube, 'Z', hole)];
              return trapped(run, { up: UP, outlets: 'Z' }).volume;
            });
          for (const [i, volume] of kept.slice(1).entries())
            expect(volume).toBeLessThanOrEqual(kept[i]! + 1e-6);
        },
      ),
      { seed: 61, numRuns: 80 },
    );
  });
});

describe('floods over steps', () => {
  /** Wide, narrow and wide again, on a slope, with a disc in one joint. */
  const stepped = (along: Vec3, hole: number | null) => {
    const one = straightSpan({ from: [0.13, 0.21, 0.17], along, length: 50, bore: 18 });
    const two = straightSpan({ from: one.pieces[0]!.to, along, length: 40, bore: 10 });
    const three = straightSpan({ from: two.pieces[0]!.to, along, length: 50, bore: 16 });
    return hole === null ? [one, two, three] : [one, two, lipOn(two, 'Z', hole), three];
  };

  it.each([
    ['level', [1, 0, 0], null],
    ['falling', [9, 0, -1], null],
    ['rising', [9, 2, 1], null],
    ['falling, with a disc', [12, 0, -1], 6],
  ] as const)('%s: stays as cubes do, and with what drains it is the bore', (_, along, hole) => {
    const cell = 1.25;
    const run = stepped(along, hole);
    for (const outlets of ['Z', 'both'] as const) {
      const found = trapped(run, { up: UP, outlets });
      const { stays, drains } = flooded(run, { up: UP, outlets, cell });
      const wet = found.pockets.reduce((sum, { from, to }) => sum + to - from, 0);
      expect(Math.abs(found.volume - stays)).toBeLessThan((cell / 2) * 18 * wet + 2 * cell * Math.PI * 81);
      expect(Math.abs(stays + drains - found.capacity)).toBeLessThan(0.05 * found.capacity);
      if (found.volume > 1500) expect(stays).toBeGreaterThan(0.7 * found.volume);
    }
  });

  it('never find more in any attitude than is certain of the worst', () => {
    const attitudes: AttitudeSet = {
      kind: 'box',
      pitch: [-20 * DEGREE, 25 * DEGREE],
      roll: [-15 * DEGREE, 0],
    };
    const patch = patchOf(axes, attitudes);
    const cell = 1.5;
    for (const run of [stepped([9, 1, -1], null), stepped([9, 1, -1], 7)]) {
      const { atMost } = worstTrapped(run, { axes, attitudes, outlets: 'Z', of: 'liquid' });
      const most = Math.max(
        ...[0, 0.5, 1].flatMap((p) =>
          [0, 1].map((r) => {
            const up = upIn(
              patch.axes,
              patch.p0 + p * (patch.p1 - patch.p0),
              patch.r0 + r * (patch.r1 - patch.r0),
            );
            return flooded(run, { up, outlets: 'Z', cell }).stays;
          }),
        ),
      );
      // A flood knows a level to half a cube, and counts whole cubes.
      expect(most).toBeLessThan(1.03 * atMost + (cell / 2) * 18 * 140);
      expect(most).toBeGreaterThan(0.8 * atMost);
    }
  });
});

describe('air', () => {
  it('in the worst attitude is liquid in the same line turned over about the way it looks', () => {
    const rotation = [
      [1, 0, 0],
      [0, -1, 0],
      [0, 0, -1],
    ] as const;
    fc.assert(
      fc.property(lines, outletsOf, fc.integer({ min: 2, max: 20 }), (line, outlets, tilt) => {
        const attitudes: AttitudeSet = { kind: 'cone', tilt: tilt * DEGREE };
        const ask = { axes, attitudes, outlets, tries: 60 };
        const air = worstTrapped([spanOf(line, 12)], { ...ask, of: 'air' });
        const over = moved(line, { rotation, shift: [0, 0, 0] });
        const liquid = worstTrapped([spanOf(over, 12)], { ...ask, of: 'liquid' });
        expect(liquid.trapped.volume).toBeLessThanOrEqual(air.atMost + 0.1);
        expect(air.trapped.volume).toBeLessThanOrEqual(liquid.atMost + 0.1);
        const rest = { ...ask, attitudes: { kind: 'rest' } } as const;
        expect(worstTrapped([spanOf(line, 12)], { ...rest, of: 'air' }).trapped.volume).toBeCloseTo(
          trapped([spanOf(line, 12)], { up: negate(UP), outlets }).volume,
          6,
        );
      }),
      { seed: 62, numRuns: 12 },
    );
  });
});
