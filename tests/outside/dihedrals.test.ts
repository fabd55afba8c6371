/**
 * The turn between planes of bend is the signed dihedral of four corners. These ten values come from one published
 * chemistry data set, re-used in nine public test suites with the sign convention of the chemists (IUPAC), and simple
 * cases from the same suites; 0 is the U (both ends on one side), 180 the Z.
 */
import { fillet, type Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';

const p = {
  a: [24.969, 13.428, 30.692],
  b: [24.044, 12.661, 29.808],
  c: [22.785, 13.482, 29.543],
  d: [21.951, 13.67, 30.431],
  e: [23.672, 11.328, 30.466],
  f: [22.881, 10.326, 29.62],
  g: [23.691, 9.935, 28.389],
  h: [22.557, 9.096, 30.459],
} as const satisfies Record<string, Vec3>;

const published: readonly (readonly [string, readonly Vec3[], number])[] = [
  ['first', [p.a, p.b, p.c, p.d], -71.21515114671394],
  ['second', [p.a, p.b, p.e, p.f], -171.94319947953642],
  ['third', [p.b, p.e, p.f, p.g], 60.82226735264638],
  ['fourth', [p.b, p.e, p.f, p.h], -177.63641151521261],
  [
    'the U',
    [
      [1, 0, 0],
      [0, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
    ],
    0,
  ],
  [
    'the Z',
    [
      [1, 0, 0],
      [0, 0, 0],
      [0, 1, 0],
      [-1, 1, 0],
    ],
    180,
  ],
  [
    'a quarter one way',
    [
      [1, 0, 0],
      [0, 0, 0],
      [0, 1, 0],
      [0, 1, -1],
    ],
    90,
  ],
  [
    'a quarter the other',
    [
      [1, 0, 0],
      [0, 0, 0],
      [0, 1, 0],
      [0, 1, 1],
    ],
    -90,
  ],
  [
    'an eighth one way',
    [
      [3.2, 5.3, 2.5],
      [3.2, 3.3, 2.5],
      [1.2, 3.3, 2.5],
      [1.2, 4.3, 3.5],
    ],
    -45,
  ],
  [
    'an eighth the other',
    [
      [3.2, 5.3, 2.5],
      [3.2, 3.3, 2.5],
      [1.2, 3.3, 2.5],
      [1.2, 4.3, 1.5],
    ],
    45,
  ],
];

function turnOf(points: readonly Vec3[]): number {
  const made = fillet(points.map((at) => ({ at, radius: 0.05 })));
  if (!made.ok) throw new Error('does not fit');
  return (made.centreline.bends[1]!.turn! * 180) / Math.PI;
}

describe('turns against published dihedrals', () => {
  for (const [name, points, wanted] of published) {
    it(`${name}: ${wanted}°`, () => expect(Math.abs(turnOf(points) - wanted)).toBeLessThan(1e-9));
    it(`${name}, read from the other end`, () =>
      expect(Math.abs(turnOf([...points].reverse()) - wanted)).toBeLessThan(1e-9));
    it(`${name}, mirrored`, () => {
      const mirrored = points.map(([x, y, z]): Vec3 => [x, -y, z]);
      const expected = Math.abs(wanted) === 180 || wanted === 0 ? wanted : -wanted;
      expect(Math.abs(turnOf(mirrored) - expected)).toBeLessThan(1e-9);
    });
  }

  it('the judge sees a planted fault: a sign turned round', () =>
    expect(Math.abs(-turnOf(published[0]![1]) - published[0]![2])).toBeGreaterThan(100));
});
