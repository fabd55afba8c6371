import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rigidFit } from './fit.ts';
import { symmetricEigen } from './fit-eigen.ts';
import type { Mat3, Vec3 } from './types.ts';
import { add, cross, distance, dot, norm, rotate, sub, unit } from './vec.ts';

const apply = (m: Mat3, p: Vec3): Vec3 => [dot(m[0], p), dot(m[1], p), dot(m[2], p)];
const real = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const point = (most = 500): fc.Arbitrary<Vec3> => fc.tuple(real(most), real(most), real(most));
const axis = point(1)
  .filter((v) => norm(v) > 0.1)
  .map(unit);

/** Rows orthonormal and right-handed, to rounding. */
function isProper(m: Mat3): void {
  for (const i of [0, 1, 2] as const)
    for (const j of [0, 1, 2] as const) expect(dot(m[i], m[j])).toBeCloseTo(i === j ? 1 : 0, 13);
  expect(dot(cross(m[0], m[1]), m[2])).toBeCloseTo(1, 13);
}
/** Angle a rotation turns by, accurate near 0 and 180°. */
const turnOf = (m: Mat3): number => {
  const s = norm([m[2][1] - m[1][2], m[0][2] - m[2][0], m[1][0] - m[0][1]]);
  return Math.atan2(s, m[0][0] + m[1][1] + m[2][2] - 1);
};
const rmsOf = (m: Mat3, shift: Vec3, from: readonly Vec3[], to: readonly Vec3[]): number =>
  Math.sqrt(
    from.reduce((sum, p, i) => sum + distance(add(apply(m, p), shift), to[i]!) ** 2, 0) / from.length,
  );

describe('rigidFit', () => {
  it('finds a motion again', () => {
    fc.assert(
      fc.property(
        fc.array(point(), { maxLength: 6 }),
        axis,
        real(3.1),
        point(),
        (more, about, angle, shift) => {
          const from: Vec3[] = [[0, 0, 0], [100, 0, 0], [0, 60, 0], [0, 0, 30], ...more];
          const to = from.map((p) => add(rotate(p, about, angle), shift));
          const fit = rigidFit(from, to);
          isProper(fit.rotation);
          expect(fit.rms).toBeLessThan(1e-9);
          from.forEach((p, i) => {
            expect(distance(add(apply(fit.rotation, p), fit.shift), to[i]!)).toBeLessThan(1e-9);
          });
        },
      ),
      { seed: 42, numRuns: 100 },
    );
  });
  it('is not bettered by turning a little further, and its rms is what it leaves', () => {
    const pairs = fc.array(fc.tuple(point(), point()), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(pairs, axis, fc.constantFrom(0.3, 1e-2, 1e-4), (list, about, by) => {
        const [from, to] = [list.map(([p]) => p), list.map(([, q]) => q)];
        const { rotation, shift, rms } = rigidFit(from, to);
        isProper(rotation);
        expect(rms).toBeCloseTo(rmsOf(rotation, shift, from, to), 9);
        const middle = to.reduce(add).map((x) => x / to.length) as unknown as Vec3;
        const further = (p: Vec3) =>
          add(rotate(sub(add(apply(rotation, p), shift), middle), about, by), middle);
        const sum = from.reduce((total, p, i) => total + distance(further(p), to[i]!) ** 2, 0);
        expect(Math.sqrt(sum / from.length)).toBeGreaterThanOrEqual(rms - 1e-9);
      }),
      { seed: 42, numRuns: 100 },
    );
  });
  it('never mirrors: of mirrored points it gives a proper rotation and what is left over', () => {
    const from: Vec3[] = [
      [0, 0, 0],
      [100, 0, 0],
      [0, 50, 0],
      [0, 0, 20],
    ];
    const fit = rigidFit(
      from,
      from.map(([x, y, z]): Vec3 => [-x, y, z]),
    );
    isProper(fit.rotation);
    expect(fit.rms).toBeGreaterThan(1);
  });
  it('leaves equal points where they are, exactly', () => {
    const points: Vec3[] = [
      [1, 2, 3],
      [40, -5, 6],
      [7, 80, 9],
      [-10, 11, 120],
    ];
    const fit = rigidFit(points, points);
    expect(fit.rotation).toEqual([
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
    expect(fit.rms).toBe(0);
  });
  it('gives of one point a shift only', () => {
    const fit = rigidFit([[1, 2, 3]], [[11, 2, 3]]);
    expect(fit).toEqual({
      rotation: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      shift: [10, 0, 0],
      rms: 0,
    });
    expect(
      rigidFit(
        [
          [1, 1, 1],
          [1, 1, 1],
        ],
        [
          [2, 2, 2],
          [2, 2, 2],
        ],
      ).rotation,
    ).toEqual(fit.rotation);
  });
  it('turns two points, and points in a line, no further than their direction asks', () => {
    fc.assert(
      fc.property(
        point(),
        axis,
        axis,
        fc.array(real(300), { minLength: 2, maxLength: 6 }),
        (at, a, b, along) => {
          fc.pre(Math.max(...along) - Math.min(...along) > 10);
          const needed = Math.atan2(norm(cross(a, b)), dot(a, b));
          fc.pre(needed < 3.1);
          const fit = rigidFit(
            along.map((s) => add(at, [a[0] * s, a[1] * s, a[2] * s])),
            along.map((s) => [b[0] * s, b[1] * s, b[2] * s]),
          );
          isProper(fit.rotation);
          expect(fit.rms).toBeLessThan(1e-9);
          expect(turnOf(fit.rotation)).toBeCloseTo(needed, 7);
        },
      ),
      { seed: 42, numRuns: 100 },
    );
  });
  it('turns a line end for end by a half turn', () => {
    const fit = rigidFit(
      [
        [0, 0, 0],
        [10, 0, 0],
      ],
      [
        [10, 0, 0],
        [0, 0, 0],
      ],
    );
    isProper(fit.rotation);
    expect(fit.rms).toBeLessThan(1e-12);
    expect(turnOf(fit.rotation)).toBeCloseTo(Math.PI, 12);
  });
  it('holds a kilometre from the origin', () => {
    const from: Vec3[] = [
      [0, 0, 0],
      [5, 0, 0],
      [0, 3, 0],
      [1, 1, 2],
    ];
    const far: Vec3 = [1e6, -1e6, 1e6];
    const to = from.map((p) => add(rotate(p, [0, 0, 1], Math.PI / 2), far));
    const fit = rigidFit(from, to);
    expect(fit.rms).toBeLessThan(1e-9);
    expect(fit.rotation[0][1]).toBeCloseTo(-1, 9);
  });
  it('refuses no points, unequal counts and what is no number', () => {
    expect(() => rigidFit([], [])).toThrow(RangeError);
    expect(() => rigidFit([[0, 0, 0]], [])).toThrow(RangeError);
    expect(() => rigidFit([[0, 0, Number.NaN]], [[0, 0, 0]])).toThrow(RangeError);
  });
});

describe('symmetricEigen', () => {
  it('gives orthonormal vectors that the matrix only stretches, largest first', () => {
    const entries = fc.array(real(1000), { minLength: 10, maxLength: 10 });
    fc.assert(
      fc.property(entries, (list) => {
        const m = [0, 1, 2, 3].map((i) =>
          [0, 1, 2, 3].map(
            (j) => list[Math.min(i, j) * 4 - (Math.min(i, j) * (Math.min(i, j) - 1)) / 2 + Math.abs(i - j)]!,
          ),
        );
        const pairs = symmetricEigen(m);
        pairs.forEach(({ value, vector }, k) => {
          m.forEach((row, i) => {
            expect(row.reduce((sum, x, j) => sum + x * vector[j]!, 0)).toBeCloseTo(value * vector[i]!, 8);
          });
          if (k > 0) expect(pairs[k - 1]!.value).toBeGreaterThanOrEqual(value);
          pairs.forEach((other, l) => {
            expect(other.vector.reduce((sum, x, i) => sum + x * vector[i]!, 0)).toBeCloseTo(
              k === l ? 1 : 0,
              13,
            );
          });
        });
      }),
      { seed: 42, numRuns: 80 },
    );
  });
});
