import { describe, expect, it } from 'vitest';
import { type Centreline, type CornerPoint, fillet, rowsOf, type Vec3, validate } from './index.ts';

type Numbers = readonly [x: number, y: number, z: number, radius?: number];
const DEG = Math.PI / 180;
const corners = (...all: readonly Numbers[]): readonly CornerPoint[] =>
  all.map(([x, y, z, radius]) => ({ at: [x, y, z], radius: radius ?? 0 }));

function rounded(...all: readonly Numbers[]): Centreline {
  return sound(corners(...all));
}

function sound(points: readonly CornerPoint[]): Centreline {
  const filleted = fillet(points);
  if (!filleted.ok) throw new Error(`does not fit: ${JSON.stringify(filleted.misfits)}`);
  expect(validate(filleted.centreline)).toEqual([]);
  return filleted.centreline;
}

const turnsOf = (c: Centreline) => c.bends.map(({ turn }) => turn);

describe('fillet: one bend by hand', () => {
  it('90° of radius 60: set back by 60, exact', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 60], [100, 100, 0]);
    expect(c.pieces).toEqual([
      {
        kind: 'straight',
        from: [0, 0, 0],
        to: [40, 0, 0],
        direction: [1, 0, 0],
        length: 40,
        start: 0,
        end: 40,
      },
      {
        kind: 'arc',
        from: [40, 0, 0],
        to: [100, 60, 0],
        centre: [40, 60, 0],
        normal: [0, 0, 1],
        u: [0, -1, 0],
        v: [1, 0, 0],
        radius: 60,
        angle: Math.PI / 2,
        length: 30 * Math.PI,
        start: 40,
        end: 40 + 30 * Math.PI,
      },
      {
        kind: 'straight',
        from: [100, 60, 0],
        to: [100, 100, 0],
        direction: [0, 1, 0],
        length: 40,
        start: 40 + 30 * Math.PI,
        end: 80 + 30 * Math.PI,
      },
    ]);
    expect(c.bends[0]).toMatchObject({ piece: 1, points: [1], straightBefore: 40, turn: null, clock: 0 });
  });

  it('60°: set back by R·tan 30°, length R·60°', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 30], [100 + 50, 50 * Math.sqrt(3), 0]);
    expect(c.bends[0]!.straightBefore).toBeCloseTo(100 - 30 / Math.sqrt(3), 12);
    expect(c.bends[0]!.angle).toBeCloseTo(60 * DEG, 14);
    expect(c.length).toBeCloseTo(200 - (2 * 30) / Math.sqrt(3) + 30 * 60 * DEG, 12);
  });
});

describe('fillet: the sign of a turn', () => {
  // Travel on the middle leg is +Y. The first bend goes from +X to +Y: n1 = X × Y = +Z. A right-hand turn of +90°
  // about +Y takes Z to X (Y × Z = X). With n2 = +X the tube leaves along n2 × Y = X × Y = +Z.
  // Seen from A, looking along +Y with the first bend's inside (n1 × Y = −X) at 12 o'clock: +Z is Y × (−X), the
  // right hand side, so 3 o'clock: clockwise.
  it('up after a left bend is +90° and 3 o’clock', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 20], [100, 100, 0, 20], [100, 100, 100]);
    expect(turnsOf(c)).toEqual([null, Math.PI / 2]);
    expect(c.bends[1]!.normal).toEqual([1, 0, 0]);
    expect(c.bends[1]!.clock).toBe(Math.PI / 2);
  });

  it('down after a left bend is −90° and 9 o’clock', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 20], [100, 100, 0, 20], [100, 100, -100]);
    expect(turnsOf(c)).toEqual([null, -Math.PI / 2]);
    expect(c.bends[1]!.normal).toEqual([-1, 0, 0]);
    expect(c.bends[1]!.clock).toBe(1.5 * Math.PI);
  });

  it('a U in one plane turns by exactly 0, a Z by exactly a half turn, from either side', () => {
    const u = rounded([0, 0, 0], [100, 0, 0, 20], [100, 100, 0, 20], [0, 100, 0]);
    expect(Object.is(u.bends[1]!.turn, 0)).toBe(true);
    for (const y of [100, -100]) {
      const z = rounded([0, 0, 0], [100, 0, 0, 20], [100, y, 0, 20], [200, y, 0]);
      expect(z.bends[1]!.turn).toBe(Math.PI);
    }
  });

  it('within 1e-6° of 0 and of 180° counts as that, beyond it does not', () => {
    const last = (degrees: number) => {
      const a = degrees * DEG;
      return rounded(
        [0, 0, 0],
        [100, 0, 0, 20],
        [100, 100, 0, 20],
        [100 - 100 * Math.cos(a), 100, 100 * Math.sin(a)],
      ).bends[1]!.turn!;
    };
    for (const off of [0.9e-6, -0.9e-6]) {
      expect(Object.is(last(off), 0)).toBe(true);
      expect(last(180 + off)).toBe(Math.PI);
    }
    expect(last(1.1e-6)).toBeCloseTo(1.1e-6 * DEG, 12);
    expect(last(-1.1e-6)).toBeLessThan(0);
    expect(last(180 + 1.1e-6)).toBeLessThan(0);
  });

  // Signed dihedrals of four points, degrees. Rows 1–4: a chemistry data set (Stack Overflow question 20305272)
  // repeated in public test suites; the rest simple cases from public test suites. The turn between the bends at
  // the two inner points is that dihedral.
  const published: readonly (readonly [readonly Vec3[], number])[] = [
    [
      [
        [24.969, 13.428, 30.692],
        [24.044, 12.661, 29.808],
        [22.785, 13.482, 29.543],
        [21.951, 13.67, 30.431],
      ],
      -71.21515114671394,
    ],
    [
      [
        [24.969, 13.428, 30.692],
        [24.044, 12.661, 29.808],
        [23.672, 11.328, 30.466],
        [22.881, 10.326, 29.62],
      ],
      -171.94319947953642,
    ],
    [
      [
        [24.044, 12.661, 29.808],
        [23.672, 11.328, 30.466],
        [22.881, 10.326, 29.62],
        [23.691, 9.935, 28.389],
      ],
      60.82226735264638,
    ],
    [
      [
        [24.044, 12.661, 29.808],
        [23.672, 11.328, 30.466],
        [22.881, 10.326, 29.62],
        [22.557, 9.096, 30.459],
      ],
      -177.63641151521261,
    ],
    [
      [
        [1, 0, 0],
        [0, 0, 0],
        [0, 1, 0],
        [1, 1, 0],
      ],
      0,
    ],
    [
      [
        [1, 0, 0],
        [0, 0, 0],
        [0, 1, 0],
        [-1, 1, 0],
      ],
      180,
    ],
    [
      [
        [1, 0, 0],
        [0, 0, 0],
        [0, 1, 0],
        [0, 1, -1],
      ],
      90,
    ],
    [
      [
        [1, 0, 0],
        [0, 0, 0],
        [0, 1, 0],
        [0, 1, 1],
      ],
      -90,
    ],
    [
      [
        [3.2, 5.3, 2.5],
        [3.2, 3.3, 2.5],
        [1.2, 3.3, 2.5],
        [1.2, 4.3, 3.5],
      ],
      -45,
    ],
    [
      [
        [3.2, 5.3, 2.5],
        [3.2, 3.3, 2.5],
        [1.2, 3.3, 2.5],
        [1.2, 4.3, 1.5],
      ],
      45,
    ],
  ];
  it.each(published)('published dihedral %#', (points, degrees) => {
    const c = sound(points.map((at) => ({ at, radius: 0.1 })));
    expect(c.bends[1]!.turn! / DEG).toBeCloseTo(degrees, 9);
  });
});

describe('fillet: corners that are none', () => {
  it('two points are one straight', () => {
    const c = rounded([1, 2, 3], [1, 2, 8]);
    expect(c.pieces).toHaveLength(1);
    expect(c).toMatchObject({ bends: [], length: 5 });
  });

  it('collinear points are one straight', () => {
    const c = rounded([0, 0, 0], [10, 10, 10, 50], [30, 30, 30, 50], [40, 40, 40]);
    expect(c.pieces).toHaveLength(1);
    expect(c.length).toBeCloseTo(40 * Math.sqrt(3), 12);
  });

  it('a collinear corner passes the last plane on and its two straights merge', () => {
    const plain = rounded([0, 0, 0], [100, 0, 0, 20], [100, 100, 0, 20], [100, 100, 100]);
    const withOne = rounded(
      [0, 0, 0],
      [100, 0, 0, 20],
      [100, 30, 0, 500],
      [100, 100, 0, 20],
      [100, 100, 100],
    );
    expect(rowsOf(withOne)).toEqual(rowsOf(plain));
    expect(withOne.bends.map(({ points }) => points)).toEqual([[1], [3]]);
  });

  it.each([
    [0.9e-6, 0],
    [1.1e-6, 1],
  ])('a corner of %d° gives %d bends', (degrees, bends) => {
    const c = rounded([0, 0, 0], [1000, 0, 0, 1000], [2000, 1000 * Math.sin(degrees * DEG), 0]);
    expect(c.bends).toHaveLength(bends);
    for (const bend of c.bends) expect(bend.angle / DEG).toBeCloseTo(degrees, 12);
  });

  it('many corners too small to count do not add up unseen', () => {
    const step = 0.6e-6 * DEG;
    const points: CornerPoint[] = [{ at: [0, 0, 0], radius: 1 }];
    for (let i = 0; i < 100; i++) {
      const [x, y] = points.at(-1)!.at;
      points.push({ at: [x + 100, y + 100 * Math.sin(i * step), 0], radius: 1 });
    }
    const c = sound(points);
    const sum = c.bends.reduce((total, { angle }) => total + angle, 0);
    expect(sum / (99 * step)).toBeGreaterThan(0.95);
    for (const { angle } of c.bends) expect(angle).toBeGreaterThan(1e-6 * DEG);
  });
});

describe('fillet: straights of no length', () => {
  it('a bend that starts and ends in the end points', () => {
    const c = rounded([0, 0, 0], [60, 0, 0, 60], [60, 60, 0]);
    expect(c.pieces.map(({ length }) => length)).toEqual([0, 30 * Math.PI, 0]);
    expect(c.pieces.map(({ from }) => from)).toEqual([
      [0, 0, 0],
      [0, 0, 0],
      [60, 60, 0],
    ]);
    expect((c.pieces[0] as { direction: Vec3 }).direction).toEqual([1, 0, 0]);
  });

  it('two arcs with a turn between them share a point', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 60], [100, 120, 0, 60], [100, 120, 100]);
    expect(c.bends).toHaveLength(2);
    expect(c.pieces[1]!.to).toEqual([100, 60, 0]);
    expect(c.pieces[3]!.from).toEqual([100, 60, 0]);
    expect(c.bends[1]).toMatchObject({ straightBefore: 0, turn: Math.PI / 2 });
  });

  it.each([
    [0.9e-6, true],
    [1.1e-6, false],
  ])('short by %d mm: fits %s', (short, fits) => {
    for (const points of [
      corners([0, 0, 0], [100, 0, 0, 60], [100, 120 - short, 0, 60], [100, 120 - short, 100]),
      corners([0, 0, 0], [60 - short, 0, 0, 60], [60 - short, 100, 0]),
      corners([0, 0, 0], [100, 0, 0, 60], [100, 60 - short, 0]),
    ]) {
      expect(fillet(points).ok).toBe(fits);
      if (fits)
        expect(sound(points).pieces.some(({ kind, length }) => kind === 'straight' && length === 0)).toBe(
          true,
        );
    }
  });

  it('what is missing at a shared point is shared by both arcs', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 60], [100, 120 - 0.8e-6, 0, 60], [100, 120 - 0.8e-6, 100]);
    expect(c.pieces[2]!.from[1]).toBeCloseTo(60 - 0.4e-6, 9);
    expect(c.pieces[2]!.from).toEqual(c.pieces[2]!.to);
  });

  it('no straight, no turn, one radius: one bend that names both points', () => {
    const c = rounded([0, 0, 0], [100, 0, 0, 60], [100, 120, 0, 60], [0, 120, 0]);
    expect(c.pieces).toHaveLength(3);
    expect(c.bends[0]).toMatchObject({
      points: [1, 2],
      angle: Math.PI,
      radius: 60,
      straightBefore: 40,
      turn: null,
    });
    expect(c.pieces[1]).toMatchObject({ from: [40, 0, 0], to: [40, 120, 0], centre: [40, 60, 0] });
  });

  it('another radius, a straight or a turn keeps them two', () => {
    expect(rounded([0, 0, 0], [100, 0, 0, 60], [100, 110, 0, 50], [0, 110, 0]).bends).toHaveLength(2);
    expect(rounded([0, 0, 0], [100, 0, 0, 60], [100, 120.001, 0, 60], [0, 120.001, 0]).bends).toHaveLength(2);
    expect(rounded([0, 0, 0], [100, 0, 0, 60], [100, 120, 0, 60], [200, 120, 0]).bends).toHaveLength(2);
  });

  it('corners stop being one bend before a whole turn', () => {
    const c = rounded(
      [60, 0, 0],
      [120, 0, 0, 60],
      [120, 120, 0, 60],
      [0, 120, 0, 60],
      [0, 0, 0, 60],
      [60, 0, 0],
    );
    expect(c.bends.map(({ angle, points }) => [Math.round(angle / DEG), points])).toEqual([
      [270, [1, 2, 3]],
      [90, [4]],
    ]);
    expect(c.bends[1]).toMatchObject({ turn: 0, straightBefore: 0 });
  });
});

describe('fillet: hard places', () => {
  it('nearly 180° with room for it', () => {
    const a = 179.9 * DEG;
    const c = rounded([0, 0, 0], [2000, 0, 0, 1], [2000 + 2000 * Math.cos(a), 2000 * Math.sin(a), 0]);
    expect(c.bends[0]!.angle).toBeCloseTo(a, 12);
    expect(c.bends[0]!.straightBefore).toBeCloseTo(2000 - 1 / Math.tan(0.05 * DEG), 8);
  });

  it('a kilometre from the origin, and a part of 5 mm there', () => {
    const part: readonly Numbers[] = [
      [0, 0, 0],
      [2, 0, 0, 0.4],
      [2, 1.5, 0.5, 0.4],
      [0.5, 1.5, 1, 0.4],
      [0.5, 3, 3],
    ];
    const near = rowsOf(rounded(...part));
    const far = rowsOf(rounded(...part.map(([x, y, z, r]): Numbers => [x + 1e6, y - 1e6, z + 1e6, r ?? 0])));
    near.rows.forEach((row, i) => {
      for (const key of ['straightBefore', 'angle', 'radius', 'turn'] as const)
        expect(far.rows[i]![key] ?? 0).toBeCloseTo(row[key] ?? 0, 8);
    });
    expect(far.lastStraight).toBeCloseTo(near.lastStraight, 8);
  });

  it.each([2e-6, 1e-4, 179.99, 179.9999])(
    'a skew corner of %d° has a normal square to both its legs',
    (degrees) => {
      const a = degrees * DEG;
      const [x, y] = [[0.36, 0.48, 0.8] as const, [0.8, -0.6, 0] as const];
      const after = x.map(
        (along, k) => 1000 * (Math.cos(a) * along + Math.sin(a) * y[k]!),
      ) as unknown as Vec3;
      const before = x.map((along) => -1000 * along) as unknown as Vec3;
      const radius = Math.min(1e3, 900 / Math.tan(a / 2));
      const c = sound([
        { at: before, radius: 0 },
        { at: [0, 0, 0], radius },
        { at: after, radius: 0 },
      ]);
      const { normal } = c.bends[0]!;
      for (const leg of [before, after])
        expect(Math.abs(normal[0] * leg[0] + normal[1] * leg[1] + normal[2] * leg[2])).toBeLessThan(1e-9);
    },
  );

  it('leaves its input alone', () => {
    const points = corners([0, 0, 0], [100, 0, 0, 60], [100, 100, 0]);
    for (const point of points) Object.freeze(Object.freeze(point).at);
    expect(fillet(Object.freeze(points)).ok).toBe(true);
  });

  it('a thousand corners: sound, and each point is looked at a fixed number of times', () => {
    let looks = 0;
    const line = (count: number) =>
      Array.from(
        { length: count },
        (_, i): CornerPoint => ({
          get at(): Vec3 {
            looks++;
            return [i * 100, (i % 2) * 100, (i % 3) * 50];
          },
          radius: 10,
        }),
      );
    const looksAt = (count: number) => {
      looks = 0;
      expect(fillet(line(count)).ok).toBe(true);
      return looks / count;
    };
    sound(line(1000));
    expect(looksAt(10_000)).toBeLessThan(looksAt(1000) + 0.1);
  });
});

describe('fillet: wrong calls', () => {
  it.each([
    ['at least 2 points', corners([0, 0, 0])],
    ['points 0 and 1 coincide', corners([0, 0, 0], [0.9e-6, 0, 0, 5], [9, 9, 9])],
    ['radius of point 1 must be > 0 mm, got 0', corners([0, 0, 0], [50, 0, 0], [50, 50, 0])],
    ['radius of point 1 must be > 0 mm, got -3', corners([0, 0, 0], [50, 0, 0, -3], [50, 50, 0])],
    ['radius of point 1 must be > 0 mm, got NaN', corners([0, 0, 0], [50, 0, 0, Number.NaN], [50, 50, 0])],
    ['point 2 must be finite', corners([0, 0, 0], [50, 0, 0, 5], [50, Number.POSITIVE_INFINITY, 0])],
  ])('%s', (message, points) => {
    expect(() => fillet(points)).toThrow(RangeError);
    expect(() => fillet(points)).toThrow(message);
  });

  it('the radius of an end does not matter', () => {
    const line = fillet([
      { at: [0, 0, 0], radius: Number.NaN },
      { at: [1, 0, 0], radius: -1 },
    ]);
    expect(line.ok).toBe(true);
  });
});
