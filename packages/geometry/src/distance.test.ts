import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Course } from './closest-course.ts';
import { bodyOfPiece } from './closest-pieces.ts';
import { pointToPiece } from './closest-point.ts';
import { BodyGap, leastOf } from './closest-search.ts';
import {
  type Arc,
  add,
  cross,
  distance,
  fillet,
  type Nearest,
  type Piece,
  pathToPath,
  pathToSolid,
  piecePoint,
  pieceToPiece,
  pointToPath,
  rotate,
  type Solid,
  type Straight,
  scale,
  signedDistance,
  sub,
  unit,
  type Vec3,
} from './index.ts';

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];
const WORLD = [X, Y, Z] as const;
type Axes = readonly [Vec3, Vec3, Vec3];

const straight = (from: Vec3, end: Vec3, start = 0): Straight => {
  const to = distance(from, end) < 1e-6 ? from : end;
  const length = distance(from, to);
  const direction = length > 0 ? unit(sub(to, from)) : X;
  return { kind: 'straight', from, to, direction, length, start, end: start + length };
};

const arc = (centre: Vec3, [u, v]: readonly Vec3[], radius: number, angle: number): Arc => {
  const at = (t: number) =>
    add(centre, add(scale(u!, radius * Math.cos(t)), scale(v!, radius * Math.sin(t))));
  const own = { centre, u: u!, v: v!, normal: cross(u!, v!), radius, angle };
  return {
    kind: 'arc',
    ...own,
    from: at(0),
    to: at(angle),
    length: radius * angle,
    start: 0,
    end: radius * angle,
  };
};

const coordinate = (size: number) => fc.double({ min: -size, max: size, noNaN: true });
const point = (size: number): fc.Arbitrary<Vec3> =>
  fc.tuple(coordinate(size), coordinate(size), coordinate(size));
const direction = point(1)
  .filter((v) => distance(v, [0, 0, 0]) > 0.1)
  .map(unit);
const turn = fc.double({ min: 0, max: 6.28, noNaN: true });
const axes: fc.Arbitrary<Axes> = fc.tuple(direction, turn).map(([axis, angle]) => {
  const t = (v: Vec3) => rotate(v, axis, angle);
  return [t(X), t(Y), t(Z)];
});
const size = fc.double({ min: 1, max: 120, noNaN: true });
const pieceArb: fc.Arbitrary<Piece> = fc.oneof(
  fc.tuple(point(200), point(200)).map(([a, b]) => straight(a, b)),
  fc
    .tuple(point(200), axes, size, fc.double({ min: 0.01, max: 6.2, noNaN: true }))
    .map(([c, a, r, angle]) => arc(c, a, r, angle)),
);
const convexArb: fc.Arbitrary<Solid> = fc.oneof(
  fc.record({ kind: fc.constant('sphere' as const), centre: point(200), radius: size }),
  fc.tuple(point(200), direction, size, size).map(([from, d, l, radius]) => ({
    kind: 'cylinder' as const,
    from,
    to: add(from, scale(d, 2 * l)),
    radius,
  })),
  fc.record({
    kind: fc.constant('box' as const),
    centre: point(200),
    half: fc.tuple(size, size, size),
    axes,
  }),
  fc.record({ kind: fc.constant('half-space' as const), point: point(200), normal: direction }),
);
const solidArb: fc.Arbitrary<Solid> = fc.oneof(
  { weight: 4, arbitrary: convexArb },
  {
    weight: 1,
    arbitrary: fc.tuple(pieceArb, size).map(([p, radius]) => ({ kind: 'tube' as const, path: [p], radius })),
  },
);

/** Least of f over evenly spaced places of a piece. */
function sampled(piece: Piece, f: (p: Vec3) => number, steps: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const s = piece.start + (piece.length * i) / steps;
    least = Math.min(least, f(piecePoint(piece, s)));
  }
  return least;
}

const gapOf = (n: Nearest) => distance(n.point, n.other);

/** Distance of a point to a solid from its definition, by other means than the code: faces, discs, lines. */
function byDefinition(solid: Solid, p: Vec3): number {
  const along = (v: Vec3, a: Vec3) => v[0] * a[0] + v[1] * a[1] + v[2] * a[2];
  if (solid.kind === 'sphere') return distance(p, solid.centre) - solid.radius;
  if (solid.kind === 'half-space') return along(sub(p, solid.point), solid.normal);
  if (solid.kind === 'cylinder') {
    const axis = unit(sub(solid.to, solid.from));
    const z = along(sub(p, solid.from), axis);
    const rho = distance(p, add(solid.from, scale(axis, z)));
    const length = distance(solid.from, solid.to);
    const inside = z >= 0 && z <= length && rho <= solid.radius;
    if (inside) return -Math.min(solid.radius - rho, z, length - z);
    return Math.hypot(Math.max(0, rho - solid.radius), Math.max(0, -z, z - length));
  }
  if (solid.kind === 'box') {
    const local = solid.axes.map((a) => along(sub(p, solid.centre), a));
    const held = local.map((v, k) => Math.max(-solid.half[k]!, Math.min(solid.half[k]!, v)));
    if (local.some((v, k) => v !== held[k])) return Math.hypot(...local.map((v, k) => v - held[k]!));
    return -Math.min(...local.map((v, k) => solid.half[k]! - Math.abs(v)));
  }
  return pointToPath(p, solid.path).distance - solid.radius;
}

describe('signedDistance', () => {
  const box: Solid = { kind: 'box', centre: [10, 0, 0], half: [5, 20, 30], axes: WORLD };
  const cylinder: Solid = { kind: 'cylinder', from: [0, 0, 0], to: [0, 0, 100], radius: 30 };
  test.each([
    ['box, facing a face', box, [18, 0, 0], 3],
    ['box, facing an edge', box, [18, 24, 0], 5],
    ['box, facing a vertex', box, [17, 23, 36], 7],
    ['box, inside: minus the distance to the nearest face', box, [12, 18, 0], -2],
    ['box, at the centre', box, [10, 0, 0], -5],
    ['cylinder, beside', cylinder, [50, 0, 50], 20],
    ['cylinder, above', cylinder, [0, 10, 107], 7],
    ['cylinder, off the rim', cylinder, [33, 0, 104], 5],
    ['cylinder, inside near the side', cylinder, [28, 0, 50], -2],
    ['cylinder, inside near an end', cylinder, [0, 0, 1], -1],
    ['cylinder, on the axis in the middle', cylinder, [0, 0, 50], -30],
    ['sphere, at its centre', { kind: 'sphere', centre: [1, 2, 3], radius: 4 }, [1, 2, 3], -4],
    ['half-space, beneath', { kind: 'half-space', point: [0, 0, 5], normal: Z }, [9, 9, 2], -3],
    [
      'tube, beyond its round end',
      { kind: 'tube', path: [straight([0, 0, 0], [10, 0, 0])], radius: 2 },
      [15, 0, 0],
      3,
    ],
  ] as [string, Solid, Vec3, number][])('%s', (_name, solid, p, expected) => {
    expect(signedDistance(solid, p)).toBeCloseTo(expected, 12);
  });

  test('is what the solid is defined to be, inside and out', () => {
    const property = fc.property(convexArb, point(300), (solid, p) => {
      expect(Math.abs(signedDistance(solid, p) - byDefinition(solid, p))).toBeLessThan(1e-9);
    });
    fc.assert(property, { seed: 42, numRuns: 2000 });
  });
});

describe('pieceToPiece, worked by hand', () => {
  const ring = arc([0, 0, 0], [X, Y], 60, 6);
  test.each([
    ['crossing straights that touch', straight([-5, 0, 0], [5, 0, 0]), straight([0, -5, 0], [0, 5, 0]), 0, 5],
    ['crossing straights', straight([-5, 0, 0], [5, 0, 0]), straight([0, -5, 7], [0, 5, 7]), 7, 5],
    [
      'parallel straights: the first place of many',
      straight([0, 0, 0], [100, 0, 0]),
      straight([50, 10, 0], [150, 10, 0]),
      10,
      50,
    ],
    [
      'parallel, the other way round',
      straight([0, 0, 0], [100, 0, 0]),
      straight([150, 10, 0], [50, 10, 0]),
      10,
      50,
    ],
    ['end to end in line', straight([0, 0, 0], [10, 0, 0]), straight([13, 0, 0], [20, 0, 0]), 3, 10],
    ['a straight of no length', straight([0, 3, 4], [0, 3, 4]), straight([-9, 0, 0], [9, 0, 0]), 5, 0],
    ['along the axis of an arc', straight([0, 0, -50], [0, 0, 50]), ring, 60, 50],
    ['an arc round a straight: its start', ring, straight([0, 0, -50], [0, 0, 50]), 60, 0],
    ['coaxial arcs of one radius', ring, arc([0, 0, 25], [X, Y], 60, 6), 25, 0],
    ['coaxial arcs, one wider', ring, arc([0, 0, 40], [X, Y], 90, 6), 50, 0],
    ['coaxial arcs that overlap later', ring, arc([0, 0, 40], [Y, scale(X, -1)], 90, 2), 50, 30 * Math.PI],
    ['concentric arcs in one plane', arc([0, 0, 0], [X, Y], 20, 6), ring, 40, 0],
    ['linked rings, one centred on the other', arc([60, 0, 0], [X, Z], 20, 6), ring, 20, 0],
    [
      'an arc touching a straight',
      arc([0, 0, 0], [X, Y], 10, 3),
      straight([-50, 10, 0], [50, 10, 0]),
      0,
      5 * Math.PI,
    ],
    [
      'an arc over a straight',
      arc([0, 0, 0], [X, Y], 10, 3),
      straight([-50, 14, 3], [50, 14, 3]),
      5,
      5 * Math.PI,
    ],
  ] as [string, Piece, Piece, number, number][])('%s', (_name, a, b, expected, at) => {
    const near = pieceToPiece(a, b);
    expect(near.distance).toBeCloseTo(expected, 10);
    expect(near.at).toBeCloseTo(at, 4);
    expect(gapOf(near)).toBeCloseTo(near.distance, 10);
    expect(pieceToPiece(b, a).distance).toBeCloseTo(expected, 10);
  });

  test('of two equal dips the first along A', () => {
    const bow = arc([0, 0, 0], [X, Y], 50, Math.PI);
    const through = straight([-80, 30, 0], [80, 30, 0]);
    expect(pieceToPiece(through, bow).at).toBeCloseTo(40, 5);
    expect(pieceToPiece(bow, through).at).toBeCloseTo(50 * Math.atan2(30, 40), 5);
  });

  test('rings of constant distance about a ring (on a torus) keep it', () => {
    const [R, r] = [60, 20];
    for (const lean of [-1, 1]) {
      const v: Vec3 = [0, (lean * Math.sqrt(R * R - r * r)) / R, r / R];
      const near = pieceToPiece(arc([r, 0, 0], [X, v], R, 6.28), arc([0, 0, 0], [X, Y], R, 6.28));
      expect(near.distance).toBeCloseTo(20, 9);
      expect(near.at).toBe(0);
    }
  });

  test('straights so nearly parallel that closed forms fail still meet where they cross', () => {
    for (const tilt of [1e-3, 1e-5, 1e-7, 1e-8]) {
      const a = straight([-500, 0, 0], [500, 0, 0]);
      const b = straight([-500, -500 * tilt, 0], [500, 500 * tilt, 0]);
      expect(pieceToPiece(a, b).distance).toBeLessThan(1e-9);
    }
  });
});

describe('a search', () => {
  const cost = (a: Piece, b: Piece): number => {
    const body = bodyOfPiece(b);
    const course = new Course(a, body);
    const found = leastOf(new BodyGap(course, body), course.to, { cut: 1e9, tolerance: 2.5e-10 });
    return found!.asked;
  };

  test('ends soon, even where the distance is the same, or nearly, all along an arc', () => {
    const ring = arc([0, 0, 0], [X, Y], 80, 6);
    for (const tilt of [0, 1e-10, 1e-8, 1e-6, 1e-4, 1e-2]) {
      const leaning = arc([10 * tilt, 0, 20], [X, unit([0, 1, tilt])], 60, 6);
      expect(cost(leaning, ring)).toBeLessThan(150);
      const through = arc([80 + tilt, 0, tilt], [X, unit([0, tilt, 1])], 20, 6);
      expect(cost(through, ring)).toBeLessThan(10_000);
      expect(cost(ring, through)).toBeLessThan(10_000);
    }
  });
});

describe('pieceToPiece, whatever the pieces', () => {
  test('is never above a sample nor below it by more than a step, and its points lie on both', () => {
    const steps = 400;
    const property = fc.property(pieceArb, pieceArb, (a, b) => {
      const near = pieceToPiece(a, b);
      const sample = sampled(a, (p) => pointToPiece(p, b).distance, steps);
      expect(near.distance).toBeLessThanOrEqual(sample + 1e-9);
      expect(near.distance).toBeGreaterThanOrEqual(sample - a.length / steps - 1e-9);
      expect(Math.abs(gapOf(near) - near.distance)).toBeLessThan(1e-9);
      expect(distance(piecePoint(a, near.at), near.point)).toBeLessThan(1e-9);
      expect(distance(piecePoint(b, near.otherAt!), near.other)).toBeLessThan(1e-9);
      expect(Math.abs(pieceToPiece(b, a).distance - near.distance)).toBeLessThan(1e-9);
    });
    fc.assert(property, { seed: 42, numRuns: 400 });
  });

  test('a point to a piece is never above a sample of it', () => {
    const property = fc.property(pieceArb, point(200), (piece, p) => {
      const foot = pointToPiece(p, piece);
      const sample = sampled(piece, (q) => distance(p, q), 500);
      expect(foot.distance).toBeLessThanOrEqual(sample + 1e-9);
      expect(foot.distance).toBeGreaterThanOrEqual(sample - piece.length / 500);
      expect(Math.abs(distance(p, foot.point) - foot.distance)).toBeLessThan(1e-9);
    });
    fc.assert(property, { seed: 42, numRuns: 500 });
  });
});

const moveBy = (axis: Vec3, angle: number, shift: Vec3) => {
  const place = (p: Vec3) => add(rotate(p, axis, angle), shift);
  const turned = (v: Vec3) => rotate(v, axis, angle);
  const piece = (p: Piece): Piece =>
    p.kind === 'straight'
      ? { ...p, from: place(p.from), to: place(p.to), direction: turned(p.direction) }
      : {
          ...p,
          from: place(p.from),
          to: place(p.to),
          centre: place(p.centre),
          u: turned(p.u),
          v: turned(p.v),
          normal: turned(p.normal),
        };
  const solid = (s: Solid): Solid => {
    if (s.kind === 'sphere') return { ...s, centre: place(s.centre) };
    if (s.kind === 'cylinder') return { ...s, from: place(s.from), to: place(s.to) };
    if (s.kind === 'half-space') return { ...s, point: place(s.point), normal: turned(s.normal) };
    if (s.kind === 'tube') return { ...s, path: s.path.map(piece) };
    return { ...s, centre: place(s.centre), axes: [turned(s.axes[0]), turned(s.axes[1]), turned(s.axes[2])] };
  };
  return { piece, solid };
};

describe('pathToSolid', () => {
  const box: Solid = { kind: 'box', centre: [0, 0, 0], half: [50, 50, 50], axes: WORLD };
  const drum: Solid = { kind: 'cylinder', from: [0, 0, -50], to: [0, 0, 50], radius: 70 };
  const ground: Solid = { kind: 'half-space', point: [0, 0, 0], normal: Z };
  test.each([
    ['along a face: the first place over it', straight([-200, 60, 0], [200, 60, 0]), box, 10, 150],
    ['past an edge', straight([53, 54, -200], [53, 54, 200]), box, 5, 150],
    ['through the middle', straight([-200, 0, 0], [200, 0, 0]), box, -50, 200],
    ['round a drum, coaxial', arc([0, 0, 0], [X, Y], 80, 6), drum, 10, 0],
    ['round a drum in the plane of its end', arc([0, 0, 50], [X, Y], 80, 6), drum, 10, 0],
    ['round above a rim', arc([0, 0, 54], [X, Y], 73, 6), drum, 5, 0],
    ['round inside a drum', arc([0, 0, 0], [X, Y], 60, 6), drum, -10, 0],
    ['round the rim itself', arc([70, 0, 50], [X, Z], 20, 1.5), drum, 20, 0],
    ['round an edge of a box', arc([50, 50, 0], [X, Y], 30, 1.5), box, 30, 0],
    ['level over the ground', arc([0, 0, 12], [X, Y], 30, 4), ground, 12, 0],
    ['dipping to the ground', arc([0, 0, 50], [X, scale(Z, -1)], 30, 3), ground, 20, 15 * Math.PI],
    [
      'beside a sphere',
      straight([-9, 8, 0], [9, 8, 0]),
      { kind: 'sphere', centre: [0, 0, 0], radius: 5 },
      3,
      9,
    ],
    [
      'beside a tube',
      straight([-9, 8, 0], [9, 8, 0]),
      { kind: 'tube', path: [straight([0, 0, -9], [0, 0, 9])], radius: 5 },
      3,
      9,
    ],
    [
      'on the very path of a tube',
      straight([-9, 0, 0], [9, 0, 0]),
      { kind: 'tube', path: [straight([0, 0, -9], [0, 0, 9])], radius: 5 },
      -5,
      9,
    ],
  ] as [string, Piece, Solid, number, number][])('%s', (_name, piece, solid, expected, at) => {
    const near = pathToSolid([piece], solid);
    expect(near.distance).toBeCloseTo(expected, 10);
    expect(near.at).toBeCloseTo(at, 4);
    expect(signedDistance(solid, near.other)).toBeCloseTo(0, 10);
    expect(gapOf(near)).toBeCloseTo(Math.abs(expected), 10);
  });

  test('is never above a sample nor below it by more than a step, and its point is on the surface', () => {
    const steps = 400;
    const property = fc.property(pieceArb, solidArb, (piece, solid) => {
      const near = pathToSolid([piece], solid);
      const sample = sampled(piece, (p) => byDefinition(solid, p), steps);
      expect(near.distance).toBeLessThanOrEqual(sample + 1e-9);
      expect(near.distance).toBeGreaterThanOrEqual(sample - piece.length / steps - 1e-9);
      expect(Math.abs(signedDistance(solid, near.point) - near.distance)).toBeLessThan(1e-9);
      // Inside a tube that overlaps itself the surface of one piece may lie within another.
      if (solid.kind !== 'tube' || near.distance > 0)
        expect(Math.abs(signedDistance(solid, near.other))).toBeLessThan(1e-9);
      expect(Math.abs(gapOf(near) - Math.abs(near.distance))).toBeLessThan(2e-9);
      expect(near.otherAt === null).toBe(solid.kind !== 'tube');
    });
    fc.assert(property, { seed: 42, numRuns: 600 });
  });

  test('does not change when everything is moved, a kilometre away too', () => {
    const property = fc.property(pieceArb, solidArb, direction, turn, (piece, solid, axis, angle) => {
      for (const [shift, allowed] of [
        [[70, -30, 20], 2e-9],
        [[1e6, -1e6, 5e5], 4e-9],
      ] as [Vec3, number][]) {
        const move = moveBy(axis, angle, shift);
        const there = pathToSolid([move.piece(piece)], move.solid(solid));
        expect(Math.abs(there.distance - pathToSolid([piece], solid).distance)).toBeLessThan(allowed);
      }
    });
    fc.assert(property, { seed: 42, numRuns: 200 });
  });

  test('grows with the scale of everything', () => {
    const property = fc.property(pieceArb, pieceArb, fc.constantFrom(0.01, 25.4), (a, b, k) => {
      const grow = (p: Piece): Piece => {
        const own = {
          from: scale(p.from, k),
          to: scale(p.to, k),
          length: p.length * k,
          start: p.start * k,
          end: p.end * k,
        };
        return p.kind === 'straight'
          ? { ...p, ...own }
          : { ...p, ...own, centre: scale(p.centre, k), radius: p.radius * k };
      };
      expect(
        Math.abs(pieceToPiece(grow(a), grow(b)).distance - k * pieceToPiece(a, b).distance),
      ).toBeLessThan(3e-8);
    });
    fc.assert(property, { seed: 42, numRuns: 200 });
  });
});

/** A line of many corners, never sharper than 60° and with legs long enough for its radius. */
const lineArb = (bends: number): fc.Arbitrary<readonly Piece[]> =>
  fc
    .tuple(
      point(150),
      fc.array(fc.tuple(coordinate(1), coordinate(1)), { minLength: bends + 1, maxLength: bends + 1 }),
    )
    .map(([start, steps]) => {
      let at = start;
      const corners = [{ at, radius: 20 }];
      for (const [i, [y, z]] of steps.entries()) {
        at = add(at, i % 2 === 0 ? [20 * y, 80, 30 * z] : [80, 20 * y, 30 * z]);
        corners.push({ at, radius: 20 });
      }
      const made = fillet(corners);
      if (!made.ok) throw new Error('the line must fit');
      return made.centreline.pieces;
    });

describe('whole paths', () => {
  test('give what all pairs of their pieces give', () => {
    const property = fc.property(lineArb(12), lineArb(9), solidArb, (a, b, solid) => {
      const pairs = a.flatMap((p) => b.map((q) => pieceToPiece(p, q).distance));
      const near = pathToPath(a, b);
      expect(Math.abs(near.distance - Math.min(...pairs))).toBeLessThan(1e-9);
      expect(Math.abs(gapOf(near) - near.distance)).toBeLessThan(1e-9);
      expect(Math.abs(pathToPath(b, a).distance - near.distance)).toBeLessThan(1e-9);
      const singles = a.map((p) => pathToSolid([p], solid).distance);
      expect(Math.abs(pathToSolid(a, solid).distance - Math.min(...singles))).toBeLessThan(1e-9);
      const feet = a.map((p) => pointToPiece(b[3]!.from, p).distance);
      expect(pointToPath(b[3]!.from, a).distance).toBe(Math.min(...feet));
    });
    fc.assert(property, { seed: 42, numRuns: 40 });
  });

  test('of equal places name the one nearest A, whichever half of the path is looked at first', () => {
    const comb = fillet([0, 100, 200, 300].map((x) => ({ at: [x, 0, 0] as Vec3, radius: 20 })));
    const pieces = comb.ok ? comb.centreline.pieces : [];
    expect(pathToSolid(pieces, { kind: 'half-space', point: [0, 0, -5], normal: Z }).at).toBe(0);
    const posts = [250, 50].map((x) => straight([x, 10, -9], [x, 10, 9]));
    expect(pathToPath(pieces, posts).at).toBeCloseTo(50, 9);
  });

  test('may be exchanged piece by piece in one array', () => {
    const path = [straight([0, 0, 0], [10, 0, 0])];
    expect(pointToPath([5, 3, 0], path).distance).toBe(3);
    path[0] = straight([0, 1, 0], [10, 1, 0]);
    expect(pointToPath([5, 3, 0], path).distance).toBe(2);
  });

  test('a wrong call says what is wrong', () => {
    expect(() => pathToPath([], [])).toThrow(/pathToPath: path must have at least one piece/);
    expect(() => pointToPath([Number.NaN, 0, 0], [straight([0, 0, 0], X)])).toThrow(/must be finite/);
    const odd: Solid = { kind: 'sphere', centre: [0, 0, 0], radius: Number.NaN };
    expect(() => pathToSolid([straight([0, 0, 0], X)], odd)).toThrow(/must be a finite number/);
  });
});
