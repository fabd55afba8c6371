import { cross, dot, type MachineAxes, type Vec3 } from 'runback';
import { describe, expect, it } from 'vitest';
import type { ViewName } from '../types.ts';
import { basisOf, framed } from './fit.ts';
import { gridStepFor } from './grid.ts';
import { tiltMatrix, turnedBy } from './tilt.ts';
import { eased, nearestAzimuth, standOf, towardCamera } from './views.ts';

const AXES: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
const LEVEL = tiltMatrix(AXES, { pitch: 0, roll: 0 });
const ask = { landscape: true, lineForward: true, lineLeft: true };
const close = (a: Vec3, b: Vec3): void => {
  for (const k of [0, 1, 2] as const) expect(a[k]).toBeCloseTo(b[k], 12);
};

describe('standard views', () => {
  const from: readonly (readonly [ViewName, Vec3])[] = [
    ['forward', [1, 0, 0]],
    ['rear', [-1, 0, 0]],
    ['left', [0, 1, 0]],
    ['right', [0, -1, 0]],
    ['above', [0, 0, 1]],
    ['below', [0, 0, -1]],
  ];
  for (const [name, side] of from)
    it(`${name}: the camera stands on that side of the machine`, () => {
      close(towardCamera(standOf(name, ask)), turnedBy(LEVEL, side));
    });

  it('from above, forward is to the right of a wide canvas and to the top of a high one', () => {
    close(basisOf(standOf('above', ask)).right, turnedBy(LEVEL, AXES.forward));
    close(basisOf(standOf('above', { ...ask, landscape: false })).up, turnedBy(LEVEL, AXES.forward));
  });

  it('from below, forward is to the right as well, so left is down', () => {
    const { right, up } = basisOf(standOf('below', ask));
    close(right, turnedBy(LEVEL, AXES.forward));
    close(up, turnedBy(LEVEL, [0, -1, 0]));
  });

  it('the corner is that of the side the line is on, and above', () => {
    for (const lineForward of [true, false])
      for (const lineLeft of [true, false]) {
        const toward = towardCamera(standOf('corner', { landscape: true, lineForward, lineLeft }));
        expect(dot(toward, turnedBy(LEVEL, AXES.forward)) > 0).toBe(lineForward);
        expect(dot(toward, turnedBy(LEVEL, AXES.left)) > 0).toBe(lineLeft);
        expect(toward[1]).toBeGreaterThan(0.3);
      }
  });

  it("the camera's directions are square and right-handed", () => {
    const { right, up, back } = basisOf({ azimuth: 0.7, polar: 1.1 });
    close(cross(right, up), back);
  });
});

describe('moves', () => {
  it('start and end where they should, and go the shorter way round', () => {
    expect([eased(0), eased(0.5), eased(1)]).toEqual([0, 0.5, 1]);
    expect(nearestAzimuth(3, -3)).toBeCloseTo(2 * Math.PI - 3);
    expect(nearestAzimuth(0.1, 0.4)).toBeCloseTo(0.4);
  });
});

describe('fitting', () => {
  const points: Vec3[] = [
    [-400, -50, 20],
    [400, 80, -300],
    [100, 300, 200],
  ];
  const canvas = { width: 1000, height: 600, inset: { top: 60, right: 0, bottom: 40, left: 100 }, margin: 0 };
  const stand = { azimuth: 0.6, polar: 1.1 };

  for (const focal of [null, 1200])
    it(`${focal === null ? 'parallel' : 'perspective'}: everything is within the free part, and touches its edge`, () => {
      const { target, mmPerPx } = framed({ points, stand, focal, ...canvas });
      const { right, up, back } = basisOf(stand);
      const far = focal === null ? 0 : focal * mmPerPx;
      const seen = points.map((p) => {
        const d: Vec3 = [p[0] - target[0], p[1] - target[1], p[2] - target[2]];
        const px = focal === null ? 1 / mmPerPx : focal / (far - dot(d, back));
        return { x: 500 + dot(d, right) * px, y: 300 - dot(d, up) * px };
      });
      const [xs, ys] = [seen.map(({ x }) => x), seen.map(({ y }) => y)];
      const gaps = [
        Math.min(...xs) - 100,
        1000 - Math.max(...xs),
        Math.min(...ys) - 60,
        560 - Math.max(...ys),
      ];
      for (const gap of gaps) expect(gap).toBeGreaterThan(-2);
      expect(Math.min(...gaps)).toBeLessThan(2);
      expect(gaps[0]! - gaps[1]!).toBeCloseTo(0, 0);
    });
});

describe('the grid', () => {
  it('has lines at 1, 2 or 5 of the unit with noughts', () => {
    expect([90, 400, 1200, 9000].map((radius) => gridStepFor(radius, 'mm'))).toEqual([10, 50, 100, 1000]);
    expect(gridStepFor(1200, 'in') / 25.4).toBeCloseTo(5);
  });
});
