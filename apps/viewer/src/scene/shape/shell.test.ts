import { fillet, type Solid, signedDistance, unit, type Vec3 } from 'runback';
import { describe, expect, it } from 'vitest';
import { ballRound, reachOf, solidCloud, tubeCloud } from './extent.ts';
import type { MeshData } from './mesh.ts';
import { type ClosedSolid, plateCorners, shellOf } from './shell.ts';

const path = (() => {
  const made = fillet([
    { at: [0, 0, 0], radius: 0 },
    { at: [200, 0, 0], radius: 90 },
    { at: [200, 150, 90], radius: 0 },
  ]);
  if (!made.ok) throw new Error('the path of a test has to exist');
  return made.centreline.pieces;
})();

const a = unit([1, 1, 0]);
const SOLIDS: readonly ClosedSolid[] = [
  { kind: 'sphere', centre: [50, 20, 10], radius: 45 },
  {
    kind: 'box',
    centre: [5, 6, 7],
    half: [100, 40, 25],
    axes: [a, [-a[1], a[0], 0], [0, 0, 1]],
  },
  { kind: 'cylinder', from: [-600, 0, 330], to: [100, 0, 300], radius: 45 },
  { kind: 'tube', path, radius: 21 },
];

const OFF = 40;

const vertices = ({ positions, origin }: MeshData): Vec3[] =>
  Array.from(
    { length: positions.length / 3 },
    (_, i): Vec3 => [
      positions[3 * i]! + origin[0],
      positions[3 * i + 1]! + origin[1],
      positions[3 * i + 2]! + origin[2],
    ],
  );

describe('a shell', () => {
  for (const solid of SOLIDS) {
    const mesh = shellOf(solid, OFF);
    it(`round a ${solid.kind} lies at its distance everywhere`, () => {
      for (const point of vertices(mesh))
        expect(Math.abs(signedDistance(solid, point) - OFF)).toBeLessThan(1e-3);
    });

    it(`round a ${solid.kind}: between its vertices it lies within its chord, and faces outwards`, () => {
      const points = vertices(mesh);
      let volume = 0;
      for (let i = 0; i < mesh.indices.length; i += 3) {
        const [p, q, r] = [0, 1, 2].map((k) => points[mesh.indices[i + k]!]!) as [Vec3, Vec3, Vec3];
        const middle: Vec3 = [(p[0] + q[0] + r[0]) / 3, (p[1] + q[1] + r[1]) / 3, (p[2] + q[2] + r[2]) / 3];
        const off = signedDistance(solid, middle);
        expect(off).toBeLessThan(OFF + 1e-3);
        expect(off).toBeGreaterThan(OFF - 2);
        volume +=
          (p[0] * (q[1] * r[2] - q[2] * r[1]) +
            p[1] * (q[2] * r[0] - q[0] * r[2]) +
            p[2] * (q[0] * r[1] - q[1] * r[0])) /
          6;
      }
      expect(volume).toBeGreaterThan(0);
    });
  }
});

describe('how far things reach', () => {
  it('is at least as far as any of their vertices, and no farther than what lies on them', () => {
    for (const solid of SOLIDS)
      for (const direction of [unit([1, 2, 3]), unit([-3, 1, 0]), [0, 0, 1] as Vec3]) {
        const cloud = solidCloud(solid)!;
        const surface = vertices(shellOf(solid, 0));
        const farthest = Math.max(
          ...surface.map((p) => p[0] * direction[0] + p[1] * direction[1] + p[2] * direction[2]),
        );
        expect(reachOf(cloud, direction)).toBeGreaterThan(farthest - 0.5);
        expect(reachOf(cloud, direction)).toBeLessThan(farthest + 1);
      }
  });

  it('a half-space has no size of its own', () => {
    const plane: Solid = { kind: 'half-space', point: [0, 0, 0], normal: [0, 0, 1] };
    expect(solidCloud(plane)).toBeNull();
    const corners = plateCorners([10, 0, 0], [0, 0, 1], 50);
    expect(corners).toHaveLength(4);
    for (const corner of corners) expect(corner[2]).toBe(0);
  });

  it('a ball holds everything', () => {
    const ball = ballRound([tubeCloud(path, 6), solidCloud(SOLIDS[2]!)!])!;
    expect(ball.radius).toBeGreaterThan(400);
    expect(ballRound([])).toBeNull();
  });
});
