/**
 * The smallest slope against searches that share nothing with it but the definition: dense sampling, a descent from
 * the best samples, and branch and bound with the one fact that an elevation changes by at most the angle that the
 * tangent or up turns (1 rad per rad).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { upIn } from './attitude.ts';
import { frameAt } from './path.ts';
import { fromRows } from './rows.ts';
import { slopeAt, smallestSlope } from './slope.ts';
import { lowerBound } from './slope-search.ts';
import { prepareCrests } from './slope-sines.ts';
import { mirrored, moved, reversed } from './transform.ts';
import type { AttitudeSet, Centreline, DrainEnd, MachineAxes, Mat3, Row, Vec3 } from './types.ts';
import { cross, dot, norm, rotate, unit } from './vec.ts';

const axes: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
type Box = AttitudeSet & { kind: 'box' };

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const vector = fc.tuple(real(-1, 1), real(-1, 1), real(-1, 1));
const direction = vector.filter((v) => norm(v) > 0.1).map((v): Vec3 => unit(v));
const frame = fc.tuple(direction, direction).filter(([a, b]) => norm(cross(a, b)) > 0.1);

const rowArbitrary = (most: number) =>
  fc.record({
    straightBefore: fc.oneof(fc.constant(0), real(5, 80)),
    turn: fc.oneof(fc.constantFrom(0, Math.PI, Math.PI / 2), real(-3, 3)),
    angle: fc.oneof(fc.constantFrom(Math.PI / 2, Math.PI / 4), real(0.05, most)),
    radius: real(15, 60),
  });
const lines = (bends: number, most: number) =>
  fc
    .tuple(fc.array(rowArbitrary(most), { maxLength: bends }), frame, real(5, 60))
    .map(([rows, [along, normal], last]) => {
      const list: Row[] = rows.map((row, i) => ({ ...row, turn: i === 0 ? null : row.turn }));
      return fromRows(list, last, { origin: [100, -50, 30], direction: along, normal });
    });
const range = (most: number) =>
  fc.oneof(
    fc.tuple(real(-most, most), real(-most, most)).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const),
    real(0, most).map((a) => [-a, a] as const),
    real(-most, most).map((a) => [a, a] as const),
  );
const boxes = (pitch: number, roll: number) =>
  fc.record({ kind: fc.constant('box' as const), pitch: range(pitch), roll: range(roll) });
const wide = boxes(Math.PI / 2, Math.PI);
const narrow = boxes(0.3, 0.3);
const anyBox = fc.oneof(narrow, wide);
const drains = fc.constantFrom<'A' | 'Z'>('A', 'Z');

/** `n` equal steps from low to high (one when they coincide). */
function steps([low, high]: readonly [number, number], n: number): number[] {
  return low === high ? [low] : Array.from({ length: n + 1 }, (_, i) => low + ((high - low) * i) / n);
}

/** Downhill by trying neighbours at ever smaller steps, held to the bounds. */
function descend(
  f: (x: number[]) => number,
  start: number[],
  bounds: readonly (readonly [number, number])[],
) {
  let best = [...start];
  let value = f(best);
  const size = bounds.map(([a, b]) => (b - a) / 8);
  for (let halvings = 0; halvings < 34; ) {
    let improved = false;
    for (let i = 0; i < best.length; i++)
      for (const sign of [-1, 1]) {
        const tried = [...best];
        tried[i] = Math.min(
          bounds[i]![1],
          Math.max(bounds[i]![0], tried[i]! + sign * size[i]! * 0.5 ** halvings),
        );
        const v = f(tried);
        if (v < value) [best, value, improved] = [tried, v, true];
      }
    if (!improved) halvings++;
  }
  return value;
}

const attained = (c: Centreline, drain: 'A' | 'Z', attitudes: AttitudeSet, within = axes): void => {
  const worst = smallestSlope(c, { drain, axes: within, attitudes });
  expect(Math.abs(slopeAt(c, worst.at, { up: worst.up, drain }) - worst.slope)).toBeLessThan(1e-11);
};

describe('towards one end', () => {
  let missed = 0;
  it('is attained, by an attitude of the set', () => {
    fc.assert(
      fc.property(lines(6, 6.2), anyBox, drains, (c, box, drain) => {
        attained(c, drain, box);
        const { attitude } = smallestSlope(c, { drain, axes, attitudes: box });
        expect(attitude!.pitch >= box.pitch[0] && attitude!.pitch <= box.pitch[1]).toBe(true);
        expect(attitude!.roll >= box.roll[0] && attitude!.roll <= box.roll[1]).toBe(true);
      }),
      { seed: 42, numRuns: 120 },
    );
  });
  it('is not beaten by samples nor by a descent from the best of them, and is no further below than their spacing', () => {
    fc.assert(
      fc.property(lines(3, 6.2), anyBox, drains, (c, box, drain) => {
        const { slope } = smallestSlope(c, { drain, axes, attitudes: box });
        const at = ([s, p, r]: number[]) => slopeAt(c, s!, { up: upIn(axes, p!, r!), drain });
        const samples = steps([0, c.length], 60).flatMap((s) =>
          steps(box.pitch, 8).flatMap((p) => steps(box.roll, 8).map((r) => [s, p, r])),
        );
        const tried = samples.map((x) => ({ x, value: at(x) })).sort((a, b) => a.value - b.value);
        expect(tried[0]!.value).toBeGreaterThanOrEqual(slope - 1e-12);
        const smallestRadius = Math.min(...c.bends.map((b) => b.radius), 1e9);
        const spacing =
          c.length / 120 / smallestRadius +
          (box.pitch[1] - box.pitch[0]) / 16 +
          (box.roll[1] - box.roll[0]) / 16;
        expect(tried[0]!.value - slope).toBeLessThanOrEqual(spacing + 1e-12);
        const bounds = [[0, c.length], box.pitch, box.roll] as const;
        for (const start of [tried[0]!, tried[1] ?? tried[0]!])
          expect(descend(at, start.x, bounds)).toBeGreaterThanOrEqual(slope - 1e-12);
      }),
      { seed: 42, numRuns: 40 },
    );
  });
  it('along an arc is the least of what straights with its tangents give', () => {
    fc.assert(
      fc.property(lines(1, 6.2), anyBox, drains, (c, box, drain) => {
        const { slope } = smallestSlope(c, { drain, axes, attitudes: box });
        const at = ([s]: number[]) => {
          const { tangent, normal } = frameAt(c, s!);
          const straight = fromRows([], 1, { origin: [0, 0, 0], direction: tangent, normal });
          return smallestSlope(straight, { drain, axes, attitudes: box }).slope;
        };
        const bends = c.bends[0] ? ([c.bends[0].start, c.bends[0].end] as const) : ([0, c.length] as const);
        const tried = steps(bends, 40).map((s) => ({ s, value: at([s]) }));
        const least = tried.reduce((a, b) => (b.value < a.value ? b : a));
        expect(least.value).toBeGreaterThanOrEqual(slope - 1e-12);
        const low = Math.max(bends[0], least.s - (bends[1] - bends[0]) / 40);
        const high = Math.min(bends[1], least.s + (bends[1] - bends[0]) / 40);
        const found = descend(at, [least.s], [[low, high]]);
        expect(found).toBeGreaterThanOrEqual(slope - 1e-12);
        // The least sample lies beside the least place, but where two dips are all but equally deep.
        expect(found - slope).toBeLessThan(0.05);
        if (found - slope > 1e-6) missed++;
      }),
      { seed: 42, numRuns: 150 },
    );
    expect(missed).toBeLessThan(12);
  });
  it('agrees with branch and bound', () => {
    fc.assert(
      fc.property(lines(1, 6.2), anyBox, drains, (c, box, drain) => {
        const { slope } = smallestSlope(c, { drain, axes, attitudes: box });
        expect(Math.abs(slope - branchAndBound(c, drain, box, 5e-3))).toBeLessThanOrEqual(5e-3);
      }),
      { seed: 42, numRuns: 40 },
    );
  });
  it('in a cone is rest − tilt, floor −90°, and is not beaten on its rim', () => {
    fc.assert(
      fc.property(lines(5, 6.2), real(0, Math.PI), drains, (c, tilt, drain) => {
        const still = smallestSlope(c, { drain, axes, attitudes: { kind: 'rest' } });
        const worst = smallestSlope(c, { drain, axes, attitudes: { kind: 'cone', tilt } });
        expect(worst.slope).toBeCloseTo(Math.max(still.slope - tilt, -Math.PI / 2), 7);
        // Away from plumb, where a cosine tells no more, to the last digits.
        if (still.slope - tilt > -1.5)
          expect(Math.abs(worst.slope - (still.slope - tilt))).toBeLessThan(1e-12);
        attained(c, drain, { kind: 'cone', tilt });
        expect(Math.atan2(norm(cross(worst.up, axes.up)), dot(worst.up, axes.up))).toBeLessThanOrEqual(
          tilt + 1e-12,
        );
      }),
      { seed: 42, numRuns: 300 },
    );
  });
});

/** Smallest slope to within `gap`, from the definition and the Lipschitz constant alone. */
function branchAndBound(c: Centreline, drain: 'A' | 'Z', box: Box, gap: number): number {
  type Cell = { middle: number[]; half: number[]; bound: number };
  let best = Number.POSITIVE_INFINITY;
  let open: Cell[] = [];
  for (const piece of c.pieces) {
    const radius = piece.kind === 'arc' ? piece.radius : Number.POSITIVE_INFINITY;
    const offer = (middle: number[], half: number[]): void => {
      const value = slopeAt(c, middle[0]!, { up: upIn(axes, middle[1]!, middle[2]!), drain });
      best = Math.min(best, value);
      const bound = value - half[0]! / radius - half[1]! - half[2]!;
      if (bound < best - gap) open.push({ middle, half, bound });
    };
    const ranges = [[piece.start, piece.end] as const, box.pitch, box.roll];
    offer(
      ranges.map(([a, b]) => (a + b) / 2),
      ranges.map(([a, b]) => (b - a) / 2),
    );
    while (open.length > 0) {
      const cells = open.filter((cell) => cell.bound < best - gap);
      open = [];
      for (const { middle, half } of cells) {
        const turn = [half[0]! / radius, half[1]!, half[2]!];
        const i = turn.indexOf(Math.max(...turn));
        for (const sign of [-0.5, 0.5])
          offer(middle.with(i, middle[i]! + sign * half[i]!), half.with(i, half[i]! / 2));
      }
    }
  }
  return best;
}

/** What a drain to both ends is worth in one attitude, by sampling: best crest, its arc left out. */
function crestBySampling(c: Centreline, up: Vec3): number {
  const rises = c.pieces.map((piece) =>
    steps([piece.start, piece.end], piece.kind === 'arc' ? 400 : 1).map((s, i, all) => {
      // Just inside the piece, so that the tangent is of this piece also where its neighbour has no length.
      const inside = i === 0 ? s + piece.length * 1e-9 : i === all.length - 1 ? s - piece.length * 1e-9 : s;
      const t = piece.kind === 'straight' ? piece.direction : frameAt(c, inside).tangent;
      return Math.atan2(dot(t, up), norm(cross(t, up)));
    }),
  );
  const least = (from: number, to: number, sign: number) =>
    Math.min(...rises.slice(from, to).flatMap((list) => list.map((x) => sign * x)), Number.POSITIVE_INFINITY);
  const n = c.pieces.length;
  const choices = [least(0, n, -1), least(0, n, 1)];
  c.pieces.forEach((piece, k) => {
    if (piece.kind !== 'arc') return;
    const signs = rises[k]!.map(Math.sign);
    const changes = signs.slice(1).filter((sign, i) => sign !== signs[i]!).length;
    const oneCrest = changes === 1 && signs[0] === 1 && signs.at(-1) === -1;
    if (oneCrest || piece.angle <= Math.PI) choices.push(Math.min(least(0, k, 1), least(k + 1, n, -1)));
  });
  return Math.max(...choices);
}

/** A line with one crest at rest: climbs, turns over, falls, wavering by small bends. */
const crestLines = fc
  .tuple(
    fc.array(rowArbitrary(0.25), { maxLength: 2 }),
    fc.array(rowArbitrary(0.25), { maxLength: 2 }),
    real(0.2, 0.7),
    real(0.4, 1.6),
  )
  .map(([before, after, rise, over]) => {
    const rows: Row[] = [...before, { straightBefore: 30, turn: 0, angle: over, radius: 40 }, ...after];
    const list = rows.map((row, i) => ({ ...row, turn: i === 0 ? null : row.turn }));
    return fromRows(list, 40, {
      origin: [0, 0, 0],
      direction: [Math.cos(rise), 0, Math.sin(rise)],
      normal: [0, 1, 0],
    });
  });

describe('towards both ends', () => {
  const both = (c: Centreline, attitudes: AttitudeSet) =>
    smallestSlope(c, { drain: 'both', axes, attitudes });
  it('at one attitude is what sampling the definition gives', () => {
    fc.assert(
      fc.property(fc.oneof(crestLines, lines(5, 3.1)), real(-0.5, 0.5), real(-0.5, 0.5), (c, p, r) => {
        const exact = both(c, { kind: 'box', pitch: [p, p], roll: [r, r] });
        const sampled = crestBySampling(c, upIn(axes, p, r));
        expect(Math.abs(sampled - exact.slope)).toBeLessThan(8e-3);
        const here = slopeAt(c, exact.at, { up: exact.up, drain: 'A' });
        expect(Math.abs(Math.abs(here) - Math.abs(exact.slope))).toBeLessThan(1e-11);
      }),
      { seed: 42, numRuns: 40 },
    );
  });
  it('over a set is not beaten by samples or a descent from them, and is attained', () => {
    let searched = 0;
    fc.assert(
      fc.property(fc.oneof(crestLines, lines(5, 3.1)), fc.oneof(narrow, narrow, wide), (c, box) => {
        const worst = both(c, box);
        const { pitch, roll } = worst.attitude!;
        const at = ([p, r]: number[]) => both(c, { kind: 'box', pitch: [p!, p!], roll: [r!, r!] }).slope;
        expect(Math.abs(at([pitch, roll]) - worst.slope)).toBeLessThan(2e-9);
        const tried = steps(box.pitch, 6)
          .flatMap((p) => steps(box.roll, 6).map((r) => ({ x: [p, r], value: at([p, r]) })))
          .sort((a, b) => a.value - b.value);
        expect(tried[0]!.value).toBeGreaterThanOrEqual(worst.slope - 1.1e-9);
        const spacing = (box.pitch[1] - box.pitch[0] + box.roll[1] - box.roll[0]) / 12;
        expect(tried[0]!.value - worst.slope).toBeLessThanOrEqual(spacing + 1e-9);
        expect(descend(at, tried[0]!.x, [box.pitch, box.roll])).toBeGreaterThanOrEqual(worst.slope - 1.1e-9);
        if (worst.slope <= 0) searched++;
      }),
      { seed: 42, numRuns: 40 },
    );
    expect(searched).toBeGreaterThan(10);
  });
  it('has lower bounds that hold all over their cell', () => {
    const bounded = fc.oneof(lines(0, 1), lines(0, 1), crestLines, lines(4, 6.2));
    const places = fc.array(fc.tuple(real(0, 1), real(0, 1)), { minLength: 12, maxLength: 12 });
    const low = fc.tuple(real(-1.5, 1.5), real(-3, 3), real(0, 0.7), real(0, 0.7));
    fc.assert(
      fc.property(bounded, low, places, (c, [p, r, dp, dr], inside) => {
        const cell = { p0: p, p1: Math.min(p + dp, Math.PI / 2), r0: r, r1: Math.min(r + dr, Math.PI) };
        const bound = lowerBound(prepareCrests(c.pieces, axes), cell);
        for (const [x, y] of [...inside, [0, 0.5], [1, 0.5]] as const) {
          const pitch = cell.p0 + x * (cell.p1 - cell.p0);
          const roll = cell.r0 + y * (cell.r1 - cell.r0);
          const here = both(c, { kind: 'box', pitch: [pitch, pitch], roll: [roll, roll] });
          // A sine within 1e-7 rad of plumb holds the angle no better than that.
          expect(here.slope).toBeGreaterThanOrEqual(bound - (Math.abs(bound) > 1.57 ? 1e-7 : 1e-9));
        }
      }),
      { seed: 42, numRuns: 250 },
    );
  });
  it('with arcs over 180° is not beaten by samples', () => {
    fc.assert(
      fc.property(lines(4, 6.2), narrow, (c, box) => {
        const worst = both(c, box);
        const { pitch: p, roll: r } = worst.attitude!;
        const there = both(c, { kind: 'box', pitch: [p, p], roll: [r, r] });
        expect(Math.abs(there.slope - worst.slope)).toBeLessThan(2e-9);
        for (const pitch of steps(box.pitch, 6))
          for (const roll of steps(box.roll, 6)) {
            const here = both(c, { kind: 'box', pitch: [pitch, pitch], roll: [roll, roll] });
            expect(here.slope).toBeGreaterThanOrEqual(worst.slope - 1.1e-9);
          }
      }),
      { seed: 42, numRuns: 80 },
    );
  });
  it('in a cone is not beaten on its rim or inside', () => {
    fc.assert(
      fc.property(fc.oneof(crestLines, lines(4, 3.1)), real(0.01, 0.6), (c, tilt) => {
        const worst = both(c, { kind: 'cone', tilt });
        for (const part of [0.5, 1])
          for (let i = 0; i < 24; i++) {
            const hinge: Vec3 = [Math.cos((i * Math.PI) / 12), Math.sin((i * Math.PI) / 12), 0];
            const up = rotate([0, 0, 1], hinge, tilt * part);
            const tipped = { up, left: hinge, forward: cross(hinge, up) };
            const { slope } = smallestSlope(c, { drain: 'both', axes: tipped, attitudes: { kind: 'rest' } });
            expect(slope).toBeGreaterThanOrEqual(worst.slope - 1.1e-9);
          }
      }),
      { seed: 42, numRuns: 60 },
    );
  });
});

describe('metamorphic', () => {
  const drainsAll = fc.constantFrom<DrainEnd>('A', 'Z', 'both');
  const sets = fc.oneof(narrow, fc.record({ kind: fc.constant('cone' as const), tilt: real(0, 0.4) }));
  it('a rigid motion of line and machine changes nothing', () => {
    fc.assert(
      fc.property(
        lines(4, 3),
        sets,
        drainsAll,
        direction,
        real(-3, 3),
        (c, attitudes, drain, axis, angle) => {
          const turn = (v: Vec3) => rotate(v, axis, angle);
          const columns = [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])] as const;
          const row = (i: 0 | 1 | 2): Vec3 => [columns[0][i], columns[1][i], columns[2][i]];
          const rotation: Mat3 = [row(0), row(1), row(2)];
          const there = moved(c, { rotation, shift: [300, -20, 7] });
          const turned = { forward: columns[0], left: columns[1], up: columns[2] };
          const a = smallestSlope(c, { drain, axes, attitudes });
          const b = smallestSlope(there, { drain, axes: turned, attitudes });
          expect(Math.abs(a.slope - b.slope)).toBeLessThan(drain === 'both' ? 2.1e-9 : 1e-9);
        },
      ),
      { seed: 42, numRuns: 80 },
    );
  });
  it('mirroring left and right and the roll range changes nothing', () => {
    fc.assert(
      fc.property(lines(4, 3), narrow, drainsAll, (c, box, drain) => {
        const other: Box = { ...box, roll: [-box.roll[1], -box.roll[0]] };
        const a = smallestSlope(c, { drain, axes, attitudes: box });
        const b = smallestSlope(mirrored(c, 1, 12), { drain, axes, attitudes: other });
        expect(Math.abs(a.slope - b.slope)).toBeLessThan(drain === 'both' ? 2.1e-9 : 1e-9);
      }),
      { seed: 42, numRuns: 150 },
    );
  });
  it('read from the other end it drains to the other end', () => {
    fc.assert(
      fc.property(lines(4, 3), narrow, drainsAll, (c, box, drain) => {
        const other = drain === 'A' ? 'Z' : drain === 'Z' ? 'A' : 'both';
        const a = smallestSlope(c, { drain, axes, attitudes: box });
        const b = smallestSlope(reversed(c), { drain: other, axes, attitudes: box });
        expect(Math.abs(a.slope - b.slope)).toBeLessThan(drain === 'both' ? 2.1e-9 : 1e-9);
      }),
      { seed: 42, numRuns: 150 },
    );
  });
  it('a cone holds the box of its half width, and a set holds its parts', () => {
    fc.assert(
      fc.property(lines(4, 3), real(0, 0.3), drainsAll, (c, t, drain) => {
        const worst = (attitudes: AttitudeSet) => smallestSlope(c, { drain, axes, attitudes }).slope;
        const box = (a: number): AttitudeSet => ({ kind: 'box', pitch: [-a, a], roll: [-a, a] });
        expect(worst(box(t))).toBeLessThanOrEqual(worst(box(t / 2)) + 1.1e-9);
        expect(worst({ kind: 'cone', tilt: t })).toBeLessThanOrEqual(worst(box(t / 2)) + 1.1e-9);
        expect(worst({ kind: 'cone', tilt: 2 * t })).toBeLessThanOrEqual(worst(box(t)) + 1.1e-9);
        expect(worst({ kind: 'rest' })).toBeGreaterThanOrEqual(worst(box(t)) - 1e-9);
      }),
      { seed: 42, numRuns: 60 },
    );
  });
});
