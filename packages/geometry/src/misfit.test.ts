import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CornerPoint, fillet, type Misfit, type Vec3, validate } from './index.ts';

type Numbers = readonly [x: number, y: number, z: number, radius?: number];
const corners = (...all: readonly Numbers[]): readonly CornerPoint[] =>
  all.map(([x, y, z, radius]) => ({ at: [x, y, z], radius: radius ?? 0 }));

function misfitsOf(points: readonly CornerPoint[], cures = true): readonly Misfit[] {
  const filleted = fillet(points, { cures });
  return filleted.ok ? [] : filleted.misfits;
}

const withRadius = (points: readonly CornerPoint[], i: number, radius: number) =>
  points.map((point, k) => (k === i ? { ...point, radius } : point));
const withPlace = (points: readonly CornerPoint[], i: number, at: Vec3) =>
  points.map((point, k) => (k === i ? { ...point, at } : point));

const onLeg = ([a, b]: readonly [number, number]) => `${a}–${b}`;

/** Leg less set-backs by the textbook: R·tan(a/2) with a from atan2. Knows nothing of the code under test. */
function slack(points: readonly CornerPoint[], leg: number): number {
  const sub = (a: Vec3, b: Vec3) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]] as const;
  const setback = (i: number): number => {
    if (i === 0 || i === points.length - 1) return 0;
    const [p, q] = [sub(points[i]!.at, points[i - 1]!.at), sub(points[i + 1]!.at, points[i]!.at)];
    const square = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
    const angle = Math.atan2(Math.hypot(...square), p[0] * q[0] + p[1] * q[1] + p[2] * q[2]);
    return points[i]!.radius * Math.tan(angle / 2);
  };
  return Math.hypot(...sub(points[leg + 1]!.at, points[leg]!.at)) - setback(leg) - setback(leg + 1);
}

describe('misfits: what they say', () => {
  it('an end leg needs one set-back', () => {
    const points = corners([0, 0, 0], [40, 0, 0, 60], [40, 100, 0]);
    expect(misfitsOf(points)).toMatchObject([
      { point: 1, reason: 'leg-too-short', radius: 60, largestRadius: 40, found: 40, leg: [0, 1] },
    ]);
    expect(misfitsOf(points)[0]!.needed).toBeCloseTo(60, 12);
  });

  it('an inner leg needs both, and names the corner of the larger one', () => {
    const points = corners([0, 0, 0], [100, 0, 0, 40], [100, 80, 0, 60], [200, 80, 0]);
    const [misfit, ...more] = misfitsOf(points);
    expect(more).toEqual([]);
    expect(misfit).toMatchObject({ point: 2, found: 80, largestRadius: 40, leg: [1, 2] });
    expect(misfit!.needed).toBeCloseTo(100, 12);
  });

  it('every short leg is reported, in order from A', () => {
    const points = corners([0, 0, 0], [50, 0, 0, 60], [50, 100, 0, 60], [0, 100, 0]);
    expect(misfitsOf(points).map(({ leg }) => onLeg(leg))).toEqual(['0–1', '1–2', '2–3']);
  });

  it('no radius fits where the neighbour takes the whole leg', () => {
    const points = corners([0, 0, 0], [100, 0, 0, 90], [100, 80, 0, 95], [300, 80, 0]);
    expect(misfitsOf(points).map(({ largestRadius }) => largestRadius)).toEqual([0]);
  });

  it('indices count the points given, collinear ones too', () => {
    const points = corners([0, 0, 0], [20, 0, 0, 9], [40, 0, 0, 60], [40, 50, 0, 9], [40, 100, 0]);
    expect(misfitsOf(points)).toMatchObject([{ point: 2, leg: [0, 2], found: 40 }]);
  });

  it.each([180, 180 - 0.9e-6])('%d° turns back', (degrees) => {
    const a = (degrees * Math.PI) / 180;
    const points = corners(
      [0, 0, 0],
      [300, 0, 0, 60],
      [300 + 200 * Math.cos(a), 200 * Math.sin(a), 0, 10],
      [100, 300, 0],
    );
    expect(misfitsOf(points)).toMatchObject([
      { point: 1, reason: 'turns-back', radius: 60, largestRadius: 0, found: 0, needed: 120, leg: [1, 2] },
    ]);
  });

  it('1.1e-6° from 180° is a leg far too short', () => {
    const a = Math.PI - (1.1e-6 * Math.PI) / 180;
    const points = corners([0, 0, 0], [300, 0, 0, 60], [300 + 200 * Math.cos(a), 200 * Math.sin(a), 0]);
    const found = misfitsOf(points);
    expect(found.map(({ reason }) => reason)).toEqual(['leg-too-short', 'leg-too-short']);
    expect(found[0]!.needed / (60 / Math.tan((0.55e-6 * Math.PI) / 180))).toBeCloseTo(1, 6);
  });
});

/** The nearest place in the plane z = 0 that satisfies `holds`, by trial: rays every 0.1°, halved. */
function nearestByTrial(from: Vec3, reach: number, holds: (at: Vec3) => boolean): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3600; i++) {
    const [x, y] = [Math.cos((i * Math.PI) / 1800), Math.sin((i * Math.PI) / 1800)];
    const place = (t: number): Vec3 => [from[0] + t * x, from[1] + t * y, from[2]];
    let high = reach / 64;
    while (high < reach && !holds(place(high))) high *= 1.1;
    if (!holds(place(high))) continue;
    let low = high / 1.1;
    for (let k = 0; k < 40; k++) {
      const middle = (low + high) / 2;
      if (holds(place(middle))) high = middle;
      else low = middle;
    }
    best = Math.min(best, high);
  }
  return best;
}

describe('misfits: the cure', () => {
  it('moves the corner, not the port, less than sliding it along its leg, as little as any move found by trial', () => {
    const points = corners([0, 0, 0], [40, 0, 0, 60], [40, 100, 0]);
    const { cure } = misfitsOf(points)[0]!;
    const byTrial = nearestByTrial(points[1]!.at, 100, (at) => {
      const moved = withPlace(points, 1, at);
      return slack(moved, 0) >= 0 && slack(moved, 1) >= 0;
    });
    expect(cure!.point).toBe(1);
    expect(cure!.distance).toBeLessThan(20);
    expect(cure!.distance).toBeLessThan(byTrial + 1e-6);
    expect(cure!.distance).toBeGreaterThan(byTrial - 1e-3);
    expect(misfitsOf(withPlace(points, 1, cure!.to))).toEqual([]);
  });

  it('keeps a collinear point on the leg from spoiling it', () => {
    const points = corners([0, 0, 0], [20, 0, 0, 9], [40, 0, 0, 60], [40, 100, 0]);
    const { cure } = misfitsOf(points)[0]!;
    expect(misfitsOf(withPlace(points, cure!.point, cure!.to))).toEqual([]);
  });

  it('opens a line that turns back', () => {
    const points = corners([0, 0, 0], [300, 0, 0, 60], [100, 0, 0, 60], [100, 100, 0]);
    const { cure } = misfitsOf(points)[0]!;
    expect(misfitsOf(withPlace(points, cure!.point, cure!.to))).toEqual([]);
  });

  it('is left out when not asked for', () => {
    const filleted = fillet(corners([0, 0, 0], [40, 0, 0, 60], [40, 100, 0]), { cures: false });
    expect(filleted.ok ? [] : filleted.misfits).toMatchObject([{ found: 40, cure: null }]);
  });

  it('holds a kilometre from the origin', () => {
    const points = corners([1e6, 1e6, 0], [1e6 + 40, 1e6, 0, 60], [1e6 + 40, 1e6 + 100, 0]);
    const { cure } = misfitsOf(points)[0]!;
    const near = misfitsOf(corners([0, 0, 0], [40, 0, 0, 60], [40, 100, 0]))[0]!.cure!;
    expect(cure!.distance).toBeCloseTo(near.distance, 4);
    expect(misfitsOf(withPlace(points, cure!.point, cure!.to))).toEqual([]);
  });
});

/** Numbers a person would measure, in steps of 0.001: no denormals, no lines that fold exactly onto themselves. */
const between = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const coordinate = between(0, 200);
const somePoint = fc.record({
  at: fc.tuple(coordinate, coordinate, coordinate),
  radius: between(10, 80),
});
const apart = (points: readonly CornerPoint[]) =>
  points.every(({ at }, i) => i === 0 || Math.hypot(...at.map((x, k) => x - points[i - 1]!.at[k]!)) > 1);
const crumpled = fc.array(somePoint, { minLength: 3, maxLength: 6 }).filter(apart);

describe('misfits: any line', () => {
  it('a cure cures its leg and makes no other too short', () => {
    let cures = 0;
    fc.assert(
      fc.property(crumpled, (points) => {
        const misfits = misfitsOf(points);
        const short = misfits.map(({ leg }) => onLeg(leg));
        for (const { leg, cure } of misfits) {
          if (!cure) continue;
          cures++;
          const left = misfitsOf(withPlace(points, cure.point, cure.to), false).map((misfit) =>
            onLeg(misfit.leg),
          );
          expect(left).not.toContain(onLeg(leg));
          for (const other of left) expect(short).toContain(other);
          expect(Math.hypot(...cure.to.map((x, k) => x - points[cure.point]!.at[k]!))).toBeCloseTo(
            cure.distance,
            9,
          );
        }
      }),
      { seed: 42, endOnFailure: true, numRuns: 20 },
    );
    expect(cures).toBeGreaterThan(20);
  });

  it('the largest radius fits its leg, a little more does not', () => {
    fc.assert(
      fc.property(crumpled, (points) => {
        for (const { point, largestRadius, leg } of misfitsOf(points, false)) {
          if (largestRadius === 0) continue;
          const legs = [point - 1, point];
          const worst = (radius: number) =>
            Math.min(...legs.map((i) => slack(withRadius(points, point, radius), i)));
          expect(worst(largestRadius)).toBeGreaterThan(-1e-9);
          expect(worst(largestRadius * 1.0001)).toBeLessThan(0);
          expect(legs).toContain(leg[0]);
        }
      }),
      { seed: 42, endOnFailure: true, numRuns: 100 },
    );
  });

  it('with the largest radius the whole line fits again', () => {
    fc.assert(
      fc.property(between(61, 75), between(20, 60), (radius, turn) => {
        const points = corners([0, 0, 0], [150, 0, 0, radius], [150, 120, 0, 60], [150 - turn, 120, 140]);
        const { point, largestRadius } = misfitsOf(points)[0]!;
        const filleted = fillet(withRadius(points, point, largestRadius));
        expect(filleted.ok && validate(filleted.centreline)).toEqual([]);
      }),
      { seed: 42, endOnFailure: true, numRuns: 40 },
    );
  });

  it('no smaller move found by trial cures a line that is only just too tight', () => {
    const push = fc.tuple(...[0, 1, 2].map(() => between(-1, 1)));
    const pushes = fc.array(
      push.filter((p) => Math.hypot(...p) > 0.01),
      { minLength: 60, maxLength: 60 },
    );
    const tight = fc.tuple(between(61, 75), between(20, 60));
    fc.assert(
      fc.property(tight, pushes, ([radius, turn], all) => {
        const points = corners([0, 0, 0], [150, 0, 0, radius], [150, 120, 0, 60], [150 - turn, 120, 140]);
        const misfit = misfitsOf(points)[0]!;
        expect(misfit.leg).toEqual([1, 2]);
        for (const [x, y, z] of all)
          for (const i of misfit.leg) {
            const t = (0.999 * misfit.cure!.distance) / Math.hypot(x!, y!, z!);
            const [a, b, c] = points[i]!.at;
            const moved = withPlace(points, i, [a + t * x!, b + t * y!, c + t * z!]);
            expect(Math.min(...[0, 1, 2].map((leg) => slack(moved, leg)))).toBeLessThan(0);
          }
      }),
      { seed: 42, endOnFailure: true, numRuns: 25 },
    );
  });
});
