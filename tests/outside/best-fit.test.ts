/**
 * Best rigid fit against examples published elsewhere. Some of them fit a scale as well, which ours does not: the
 * rotation that fits best does not depend on the scale, and the shift then follows from the two middles by hand.
 */
import { rigidFit, type Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';

type Point2 = readonly [number, number];

/**
 * Flat points as space points that may turn about Z only: two pins far above and below the middle hold Z. They fit
 * exactly, so they change neither the rotation about Z nor the shift nor the sum of squares.
 */
function pinned(points: readonly Point2[]): Vec3[] {
  const middle = [0, 1].map((i) => points.reduce((sum, p) => sum + p[i]!, 0) / points.length);
  const pin = (z: number): Vec3 => [middle[0]!, middle[1]!, z];
  return [...points.map(([x, y]): Vec3 => [x, y, 0]), pin(100), pin(-100)];
}

describe('Umeyama 1991: the mirrored triangle', () => {
  // S. Umeyama, Least-squares estimation of transformation parameters between two point patterns, IEEE Trans. Pattern
  // Analysis and Machine Intelligence 13(4), 1991, example of section 3: R = (.832, .555; −.555, .832), c = .721.
  const fit = rigidFit(
    pinned([
      [0, 0],
      [1, 0],
      [0, 2],
    ]),
    pinned([
      [0, 0],
      [-1, 0],
      [0, 2],
    ]),
  );

  it('turns as published, and does not mirror', () => {
    expect(fit.rotation[0][0]).toBeCloseTo(0.8320502943, 9);
    expect(fit.rotation[0][1]).toBeCloseTo(0.5547001962, 9);
    expect(fit.rotation[1][0]).toBeCloseTo(-0.5547001962, 9);
    expect(fit.rotation[1][1]).toBeCloseTo(0.8320502943, 9);
    expect(fit.rotation[2][2]).toBeCloseTo(1, 12);
  });
  it('without scale shifts and leaves what a recomputation gives', () => {
    // Recomputed independently for scale 1 (no published figure): the mean square over the three points.
    expect(fit.shift[0]).toBeCloseTo(-0.98048356, 7);
    expect(fit.shift[1]).toBeCloseTo(0.29686654, 7);
    expect((fit.rms ** 2 * 5) / 3).toBeCloseTo(0.6197549887, 9);
  });
});

describe('six points turned 30° about Z and shifted by (−1, −1, −1)', () => {
  // Public test script tests/test_procrustes_dummy.m of the repository ErnestF22/TPGO-RS; its results have 6 decimals.
  const from: Vec3[] = [
    [1, 1, 1],
    [3, 4, 5],
    [10, 8, 6],
    [2, 4, 7],
    [7, 1, 2],
    [-14, -5, 16],
  ];
  const to: Vec3[] = [
    [-0.633975, 0.366025, 0],
    [-0.401924, 3.964102, 4],
    [3.660254, 10.928203, 5],
    [-1.267949, 3.464102, 6],
    [4.562178, 3.366025, 1],
    [-10.624356, -12.330127, 15],
  ];
  const [c, s] = [Math.sqrt(3) / 2, 0.5];
  const expectMotion = (targets: readonly Vec3[], digits: number): void => {
    const { rotation, shift } = rigidFit(from, targets);
    const wanted = [
      [c, -s, 0],
      [s, c, 0],
      [0, 0, 1],
    ];
    wanted.forEach((row, i) => {
      row.forEach((x, j) => {
        expect(rotation[i]![j]).toBeCloseTo(x, digits);
      });
      expect(shift[i]).toBeCloseTo(-1, digits);
    });
  };

  it('is found from the printed points as far as their decimals go', () => {
    expectMotion(to, 6);
    expect(rigidFit(from, to).rms).toBeLessThan(1e-6);
  });
  it('is found to 9 decimals from the same points unrounded', () => {
    expectMotion(
      from.map(([x, y, z]): Vec3 => [c * x - s * y - 1, s * x + c * y - 1, z - 1]),
      9,
    );
  });
});

describe('five points turned 180° about Y, four times as large', () => {
  // Public test of the repository 2AiBAIT/SmartHealthPhoneScanner: R = diag(−1, 1, −1), scale 4, shift (3, 3, 3).
  const from: Vec3[] = [
    [0, 0, -1],
    [0, 0, 0],
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 0],
  ];
  const to: Vec3[] = [
    [3, 3, 7],
    [3, 3, 3],
    [3, 3, -1],
    [3, 7, 3],
    [-1, 3, 3],
  ];

  it('turn as published', () => {
    const { rotation, shift, rms } = rigidFit(from, to);
    [
      [-1, 0, 0],
      [0, 1, 0],
      [0, 0, -1],
    ].forEach((row, i) => {
      row.forEach((x, j) => {
        expect(rotation[i]![j]).toBeCloseTo(x, 12);
      });
    });
    // The middles are (0.2, 0.2, 0) and (2.2, 3.8, 3); each point stays 3 times its distance from the middle away.
    expect(shift[0]).toBeCloseTo(2.4, 12);
    expect(shift[1]).toBeCloseTo(3.6, 12);
    expect(shift[2]).toBeCloseTo(3, 12);
    expect(rms).toBeCloseTo(3 * Math.sqrt((1 + 0 + 1 + 1 + 1) / 5 - 0.08), 12);
  });
});

describe('five measured points in a plane', () => {
  // Public test of the Rust package ml_rust (umeyama): scale times rotation [[.7000762, .1236691], [−.1236691, .7000762]].
  const from: Point2[] = [
    [491.7426, 321.8467],
    [541.7967, 332.23264],
    [507.47015, 366.4012],
    [485.72678, 369.63214],
    [533.7206, 378.40567],
  ];
  const to: Point2[] = [
    [38.2946, 51.6963],
    [73.5318, 51.5014],
    [56.0252, 71.7366],
    [41.5493, 92.3655],
    [70.7299, 92.2041],
  ];

  it('turn as published', () => {
    const { rotation } = rigidFit(
      from.map(([x, y]): Vec3 => [x, y, 0]),
      to.map(([x, y]): Vec3 => [x, y, 0]),
    );
    const scale = Math.hypot(0.7000762, 0.1236691);
    expect(rotation[0][0]).toBeCloseTo(0.7000762 / scale, 5);
    expect(rotation[0][1]).toBeCloseTo(0.1236691 / scale, 5);
    expect(rotation[1][0]).toBeCloseTo(-0.1236691 / scale, 5);
    expect(rotation[2][2]).toBeCloseTo(1, 12);
  });
});
