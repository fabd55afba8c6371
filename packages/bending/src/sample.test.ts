import { cross, dot, fillet, rotate, sub, unit, type Vec3 } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnFromHeight } from './sample.ts';

/** Four corners with a given last bend and turn, and what a person would read with the bend before on a plate. */
function readOff(
  bend: number,
  turn: number,
): { height: number; curves: 'left' | 'right'; goes: 'on' | 'back' } {
  const a: Vec3 = [0, 0, 0];
  const b: Vec3 = [200, 0, 0];
  const into: Vec3 = [0, 1, 0];
  const c: Vec3 = [200, 200, 0];
  const normal = rotate([0, 0, 1], into, turn);
  const out = rotate(into, normal, bend);
  const d: Vec3 = [c[0] + out[0] * 200, c[1] + out[1] * 200, c[2] + out[2] * 200];
  // Laid so that the last leg rises: seen from the side it rises to, the first bend curves left or right.
  const above: Vec3 = d[2] >= 0 ? [0, 0, 1] : [0, 0, -1];
  const firstTurns = dot(cross(unit(sub(b, a)), unit(sub(c, b))), above);
  const nextTurns = dot(cross(unit(sub(c, b)), unit(sub(d, c))), above);
  return {
    height: Math.abs(d[2]),
    curves: firstTurns > 0 ? 'left' : 'right',
    goes: firstTurns * nextTurns > 0 ? 'on' : 'back',
  };
}

describe('turnFromHeight', () => {
  it('agrees with the turn that fillet finds, whichever way the sample lies', () => {
    const angle = fc.double({ min: 0.2, max: 2.9, noNaN: true });
    const turn = fc
      .double({ min: -3, max: 3, noNaN: true })
      .filter((t) => Math.abs(Math.abs(t) - Math.PI / 2) > 0.01);
    fc.assert(
      fc.property(angle, turn, (bend, wanted) => {
        const found = turnFromHeight({ angle: bend, along: 200, ...readOff(bend, wanted) });
        expect(found).toBeCloseTo(wanted, 6);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('has the sign that fillet gives a hand-worked line', () => {
    // Along +X, then +Y, then up: travelling +Y the first normal is +Z; the last plane's normal is +Y × +Z = +X.
    // Turning +Z to +X is right-handed about +Y: a turn of +90°.
    const corners = [
      { at: [0, 0, 0], radius: 0 },
      { at: [100, 0, 0], radius: 20 },
      { at: [100, 100, 0], radius: 20 },
      { at: [100, 100, 100], radius: 0 },
    ] as const;
    const filleted = fillet(corners);
    expect(filleted.ok && filleted.centreline.bends[1]?.turn).toBeCloseTo(Math.PI / 2, 12);
    const read = turnFromHeight({ angle: Math.PI / 2, along: 100, height: 100, curves: 'left', goes: 'on' });
    expect(read).toBeCloseTo(Math.PI / 2, 12);
  });

  it('gives flat and half turns no sign', () => {
    const flat = { angle: 1, along: 100, height: 0, curves: 'right' } as const;
    expect(Object.is(turnFromHeight({ ...flat, goes: 'on' }), 0)).toBe(true);
    expect(turnFromHeight({ ...flat, goes: 'back' })).toBe(Math.PI);
  });

  it('refuses a height the leg cannot reach', () => {
    const high = { angle: Math.PI / 6, along: 100, height: 51, curves: 'left', goes: 'on' } as const;
    expect(() => turnFromHeight(high)).toThrow(/rises at most 50.0 mm, got 51/);
  });
});
