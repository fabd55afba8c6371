import fc from 'fast-check';
import { cross, dot, type MachineAxes, unit, upIn, type Vec3 } from 'runback';
import { describe, expect, it } from 'vitest';
import { tiltMatrix, toMachine, toWorld, turnedBy, upOf } from './tilt.ts';

const ISO: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
const OTHER: MachineAxes = { forward: [0, 0, -1], left: [-1, 0, 0], up: [0, 1, 0] };
const angle = fc.double({ min: -1.5, max: 1.5, noNaN: true });

const close = (a: Vec3, b: Vec3): void => {
  for (const k of [0, 1, 2] as const) expect(a[k]).toBeCloseTo(b[k], 12);
};

describe('the machine in the world', () => {
  it('level: forward is x, up is y, left is −z', () => {
    for (const axes of [ISO, OTHER]) {
      const turn = tiltMatrix(axes, { pitch: 0, roll: 0 });
      close(turnedBy(turn, axes.forward), [1, 0, 0]);
      close(turnedBy(turn, axes.up), [0, 1, 0]);
      close(turnedBy(turn, axes.left), [0, 0, -1]);
    }
  });

  it('tilted: what the package calls up is up', () => {
    fc.assert(
      fc.property(angle, angle, fc.constantFrom(ISO, OTHER), (pitch, roll, axes) => {
        const turn = tiltMatrix(axes, { pitch, roll });
        close(turnedBy(turn, upIn(axes, pitch, roll)), [0, 1, 0]);
        close(upOf({ turn, origin: [0, 0, 0] }), upIn(axes, pitch, roll));
      }),
      { seed: 7 },
    );
  });

  it('positive pitch is nose down, positive roll right side down', () => {
    const nose = turnedBy(tiltMatrix(ISO, { pitch: 0.1, roll: 0 }), ISO.forward);
    expect(nose[1]).toBeLessThan(0);
    const left = turnedBy(tiltMatrix(ISO, { pitch: 0, roll: 0.1 }), ISO.left);
    expect(left[1]).toBeGreaterThan(0);
  });

  it('is a rotation, and the way back is exact', () => {
    fc.assert(
      fc.property(angle, angle, (pitch, roll) => {
        const turn = tiltMatrix(ISO, { pitch, roll });
        close(cross(turn[0], turn[1]), turn[2]);
        expect(dot(turn[0], turn[1])).toBeCloseTo(0, 12);
        const pose = { turn, origin: [10, -20, 30] as Vec3 };
        const point: Vec3 = [321, 45, -6];
        close(toMachine(pose, toWorld(pose, point)), point);
        close(unit(turn[2]), turn[2]);
      }),
      { seed: 8 },
    );
  });
});
