import { fillet, type Vec3 } from '@runback/geometry';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { aLine } from '../../../../tests/helpers/a-line.ts';
import { fits } from './fits.ts';

const coordinate = fc.integer({ min: -20, max: 20 }).map((n) => n * 10);
const point = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const apart = (a: Vec3, b: Vec3 | undefined): boolean => b === undefined || a.some((x, i) => x !== b[i]);

it('says of every line what fillet says', () => {
  const lines = fc
    .array(point, { minLength: 3, maxLength: 3 })
    .filter((points) => points.every((p, i) => apart(p, points[i + 1])));
  const seen = { yes: 0, no: 0 };
  fc.assert(
    fc.property(lines, fc.integer({ min: 5, max: 120 }), (points, radius) => {
      const { corners } = aLine({ points, radius });
      expect(fits(corners)).toBe(fillet(corners).ok);
      seen[fits(corners) ? 'yes' : 'no']++;
    }),
    { seed: 42, numRuns: 60 },
  );
  expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(10);
});

it('does not fit where points coincide', () => {
  expect(
    fits(
      aLine({
        points: [
          [0, 0, 0],
          [0, 0, 0],
          [100, 0, 0],
        ],
      }).corners,
    ),
  ).toBe(false);
});
