/** Volumes by Pappus: section times the path of its centre, so the centreline's developed length is put to the test. */
import { fromRows } from '@runback/geometry';
import { expect, it } from 'vitest';

const lengthOf = (radius: number, angle: number): number =>
  fromRows([{ straightBefore: 0, turn: null, angle, radius }], 0).length;
const section = (bore: number): number => (Math.PI * bore * bore) / 4;

it('bore of a 90° bend: R 20, bore 6 holds 888.2644 mm³ (Pappus, exact)', () =>
  expect(section(6) * lengthOf(20, Math.PI / 2)).toBeCloseTo(888.264396098, 8));

it('a ring of outer radius 13 and inner 7: 2π²Rr² (torus page of a geometry reference; Spiegel 4.45 gives the same)', () => {
  const half = section(6) * lengthOf(10, Math.PI);
  expect(2 * half).toBeCloseTo(1776.5288, 4);
  expect(2 * half).toBeCloseTo((Math.PI ** 2 * (7 + 13) * (13 - 7) ** 2) / 4, 9);
});

it('two quarters make a half', () =>
  expect(2 * lengthOf(36, Math.PI / 2)).toBeCloseTo(lengthOf(36, Math.PI), 12));
