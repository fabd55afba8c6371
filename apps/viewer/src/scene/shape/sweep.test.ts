import fc from 'fast-check';
import { type Centreline, dot, fillet, fromRows, pointToPath, sub, type Vec3 } from 'runback';
import { describe, expect, it } from 'vitest';
import type { MeshData } from './mesh.ts';
import { ringsAlong, stepWithin } from './rings.ts';
import { sweptTube } from './sweep.ts';
import { pocketDepth } from './sweep-end.ts';

const CHORD = 0.05;
const DEG = Math.PI / 180;

const lineOf = (points: readonly Vec3[], radius: number): Centreline => {
  const made = fillet(
    points.map((at, i) => ({ at, radius: i === 0 || i === points.length - 1 ? 0 : radius })),
  );
  if (!made.ok) throw new Error('the line of a test has to exist');
  return made.centreline;
};

const DIPSTICK = lineOf(
  [
    [60, 130, 0],
    [60, 130, 110],
    [90, 190, 340],
    [430, 250, 440],
  ],
  60,
);

const vertices = ({ positions, origin }: MeshData): Vec3[] =>
  Array.from(
    { length: positions.length / 3 },
    (_, i): Vec3 => [
      positions[3 * i]! + origin[0],
      positions[3 * i + 1]! + origin[1],
      positions[3 * i + 2]! + origin[2],
    ],
  );

const at = (array: Float32Array, i: number): Vec3 => [array[3 * i]!, array[3 * i + 1]!, array[3 * i + 2]!];

/** By the divergence theorem; positive only when the triangles face outwards. */
function volume({ positions, indices }: MeshData): number {
  let six = 0;
  for (let i = 0; i < indices.length; i += 3) {
    const [a, b, c] = [indices[i]!, indices[i + 1]!, indices[i + 2]!].map((k) => at(positions, k)) as [
      Vec3,
      Vec3,
      Vec3,
    ];
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** Edges that are not shared by exactly two triangles, points taken as equal when they lie together. */
function openEdges(mesh: MeshData): number {
  const name = (i: number): string =>
    at(mesh.positions, i)
      .map((x) => Math.round(x * 1e3))
      .join();
  const count = new Map<string, number>();
  for (let i = 0; i < mesh.indices.length; i += 3)
    for (const [p, q] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const ends = [name(mesh.indices[i + p]!), name(mesh.indices[i + q]!)];
      if (ends[0] === ends[1]) continue;
      const key = ends.sort().join(' ');
      count.set(key, (count.get(key) ?? 0) + 1);
    }
  return [...count.values()].filter((n) => n !== 2).length;
}

const walls = (mesh: MeshData): number[] => [...mesh.radii.keys()].filter((i) => mesh.radii[i]! > 0);

describe('the surface of a tube', () => {
  const mesh = sweptTube(DIPSTICK.pieces, { outer: 6, chord: CHORD, ends: { kind: 'flat' } });
  const points = vertices(mesh);

  it('has every wall vertex at half the OD from the centreline', () => {
    expect(walls(mesh).length).toBeGreaterThan(400);
    for (const i of walls(mesh))
      expect(Math.abs(pointToPath(points[i]!, DIPSTICK.pieces).distance - 6)).toBeLessThan(1e-4);
  });

  it('has normals that lead straight away from the centreline', () => {
    for (const i of walls(mesh)) {
      const { point } = pointToPath(points[i]!, DIPSTICK.pieces);
      const out = sub(points[i]!, point);
      expect(dot(at(mesh.normals, i), out)).toBeCloseTo(6, 4);
    }
  });

  it('is closed and has the volume of the tube, less what chords cut off', () => {
    expect(openEdges(mesh)).toBe(0);
    const exact = Math.PI * 36 * DIPSTICK.length;
    expect(volume(mesh)).toBeLessThan(exact);
    // A chord cuts off at most the skin that it may lie inside.
    expect(volume(mesh)).toBeGreaterThan(exact - 2 * Math.PI * 6 * CHORD * DIPSTICK.length);
  });

  it('keeps its chord between the rings of a bend', () => {
    const rings = ringsAlong(DIPSTICK.pieces, { outer: 6, chord: CHORD / 2 });
    const { radius } = DIPSTICK.bends[0]!;
    const steps = rings.slice(1).map((ring, i) => [rings[i]!, ring] as const);
    const bent = steps.filter(([a, b]) => a.at >= DIPSTICK.bends[0]!.start && b.at <= DIPSTICK.bends[0]!.end);
    expect(bent.length).toBeGreaterThan(3);
    for (const [a, b] of bent) {
      const half = (b.at - a.at) / radius / 2;
      expect((radius + 6) * (1 - Math.cos(half))).toBeLessThanOrEqual(CHORD / 2 + 1e-9);
    }
  });

  it('has rings only at the ends of a straight', () => {
    const straight = fromRows([], 900);
    expect(ringsAlong(straight.pieces, { outer: 6, chord: CHORD }).map((ring) => ring.at)).toEqual([0, 900]);
  });

  it('shows its bore: a pocket at each end that never leaves the straight behind it', () => {
    const bored = sweptTube(DIPSTICK.pieces, {
      outer: 6,
      chord: CHORD,
      ends: { kind: 'bored', bore: 5, cut: [1, 1, 1], dark: [0, 0, 0] },
    });
    expect(openEdges(bored)).toBe(0);
    const depth = pocketDepth(5, DIPSTICK.pieces[0]!.length);
    expect(depth).toBe(15);
    const pockets = 2 * Math.PI * 25 * depth;
    expect(volume(mesh) - volume(bored)).toBeGreaterThan(0.98 * pockets);
    expect(volume(mesh) - volume(bored)).toBeLessThan(pockets);
    expect(pocketDepth(5, 4)).toBe(4);
    expect(pocketDepth(5, 0)).toBeCloseTo(1.5);
  });

  it('with round ends is the swept ball: every vertex at the radius from the path', () => {
    const round = sweptTube(DIPSTICK.pieces, { outer: 21, chord: 0.1, ends: { kind: 'round' } });
    for (const point of vertices(round))
      expect(Math.abs(pointToPath(point, DIPSTICK.pieces).distance - 21)).toBeLessThan(1e-4);
    expect(openEdges(round)).toBe(0);
  });

  it('is as exact a kilometre away', () => {
    const far = lineOf(
      [
        [1e6, 1e6, 0],
        [1e6 + 200, 1e6, 0],
        [1e6 + 200, 1e6 + 200, 80],
      ],
      40,
    );
    const there = sweptTube(far.pieces, { outer: 3, chord: CHORD, ends: { kind: 'flat' } });
    const seen = vertices(there);
    for (const i of walls(there))
      expect(Math.abs(pointToPath(seen[i]!, far.pieces).distance - 3)).toBeLessThan(1e-4);
  });

  it('holds for any bends', () => {
    const row = fc.record({
      straightBefore: fc.double({ min: 0, max: 300, noNaN: true }),
      turn: fc.double({ min: -3, max: 3, noNaN: true }),
      angle: fc.double({ min: 1 * DEG, max: 175 * DEG, noNaN: true }),
      radius: fc.double({ min: 15, max: 120, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), (rows) => {
        const line = fromRows(
          rows.map((one, i) => (i === 0 ? { ...one, turn: null } : one)),
          40,
        );
        const tube = sweptTube(line.pieces, { outer: 5, chord: CHORD, ends: { kind: 'flat' } });
        expect(volume(tube)).toBeLessThan(Math.PI * 25 * line.length);
        expect(volume(tube)).toBeGreaterThan(Math.PI * 25 * line.length - 10 * Math.PI * CHORD * line.length);
        const there = vertices(tube);
        for (const i of walls(tube)) {
          // Distance to the ring's own middle, since such a line may run through itself.
          const near = pointToPath(there[i]!, line.pieces).distance;
          expect(near).toBeLessThan(5 + 2e-4);
        }
      }),
      { seed: 20260301, numRuns: 40 },
    );
  });
});

describe('steps of a circle', () => {
  it('stay within their chord', () => {
    for (const radius of [2.38, 6, 66, 500])
      expect(radius * (1 - Math.cos(stepWithin(radius, CHORD) / 2))).toBeCloseTo(CHORD, 9);
  });
  it('of a circle smaller than the chord are still steps', () => {
    expect(stepWithin(0.01, CHORD)).toBeGreaterThan(0);
  });
});
