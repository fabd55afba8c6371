import { addScaled, cornersOf, dot, fillet, frameAt, pointAt, type Row, scale, sub } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEG, die, end, figure, flare, make } from '../test-kit/lines.ts';
import { nutPassesRadius } from './nut.ts';
import { bendPlan } from './plan.ts';
import { angleFor, dialFor } from './spring-back.ts';

const row = (straightBefore: number, turn: number | null, angle: number): Row => ({
  straightBefore,
  turn: turn === null ? null : turn * DEG,
  angle: angle * DEG,
  radius: 36,
});

/** 0.02 mm of growth per degree, pencil mark 5 mm before the bend, dial = 1.03·bend + 1°. */
const worn = die({
  stretch: 0.02 / DEG,
  markOffset: 5,
  springBack: { factor: 1.03, fixed: DEG, path: 'benders.bench' },
});
const handWorked = make({
  rows: [row(100, null, 90), row(50, 90, 45)],
  lastStraight: 80,
  die: worn,
  changes: {
    endA: end({ fitting: flare, flareWhen: 'before' }),
    endZ: end({ fitting: flare, spare: figure(40) }),
  },
});

describe('a plan worked by hand', () => {
  const plan = bendPlan(handWorked.line, handWorked.centreline);

  it('has its lengths', () => {
    // 100 + 36·π/2 + 50 + 36·π/4 + 80 = 314.823; grows 0.02·(90 + 45) = 2.7; A uses 4, Z 4 and 40 to spare.
    expect(plan.developedLength).toBeCloseTo(314.823, 3);
    expect(plan.stretch).toBeCloseTo(2.7, 9);
    expect(plan.cutLength).toBeCloseTo(360.123, 3);
    expect([plan.startExtra, plan.freeExtra, plan.lastStraight]).toEqual([4, 44, 80]);
  });

  it('has its marks', () => {
    // B1: 100 − 5; B2: 206.549 − 1.8 − 5; sawn: 4 more.
    expect(plan.rows.map((r) => r.markFinished)[0]).toBeCloseTo(95, 9);
    expect(plan.rows.map((r) => r.markFinished)[1]).toBeCloseTo(199.7487, 4);
    expect(plan.rows[1]!.mark - plan.rows[1]!.markFinished).toBeCloseTo(4, 9);
    // First from the finished end; after 90° from the back: 36 + 6 + 50 − 5.
    expect(plan.rows[0]!.measured.from).toBe('end');
    expect(plan.rows[0]!.measured.distance).toBeCloseTo(95, 9);
    expect(plan.rows[1]!.measured.from).toBe('back');
    expect(plan.rows[1]!.measured.distance).toBeCloseTo(87, 9);
  });

  it('has its dial', () => {
    expect(plan.rows.map((r) => r.dial / DEG)[0]).toBeCloseTo(93.7, 9);
    expect(plan.rows.map((r) => r.dial / DEG)[1]).toBeCloseTo(47.35, 9);
    expect(plan.rows.every((r) => r.calibrated)).toBe(true);
  });

  it('from Z: rows reversed, turn kept, starts and marks from Z', () => {
    const fromZ = bendPlan(handWorked.line, handWorked.centreline, 'Z');
    expect(fromZ.rows.map((r) => [r.bend, r.bendFromA, r.points])).toEqual([
      [1, 2, [2]],
      [2, 1, [1]],
    ]);
    expect(fromZ.rows[0]!.turn).toBeNull();
    expect(fromZ.rows[1]!.turn).toBeCloseTo(Math.PI / 2, 12);
    expect(fromZ.rows.map((r) => r.straightBefore)[0]).toBeCloseTo(80, 9);
    expect(fromZ.rows.map((r) => r.start)[1]).toBeCloseTo(158.2743, 4);
    // Sawn end of Z: 44 to the finished one. B2 first: 80 + 44 − 5; then 158.274 − 0.9 + 44 − 5.
    expect(fromZ.rows[0]!.mark).toBeCloseTo(119, 9);
    expect(fromZ.rows[1]!.mark).toBeCloseTo(196.3743, 4);
    // After the 45° bend, from its corner: 36·tan 22.5° + 50 − 5.
    expect(fromZ.rows[1]!.measured.from).toBe('corner');
    expect(fromZ.rows[1]!.measured.distance).toBeCloseTo(59.9117, 4);
    expect(fromZ.cutLength).toBeCloseTo(plan.cutLength, 9);
    expect([fromZ.startExtra, fromZ.freeExtra, fromZ.lastStraight]).toEqual([44, 4, 100]);
  });

  it('changes nothing it was given', () => {
    const frozen = deepFreeze(structuredClone(handWorked));
    expect(bendPlan(frozen.line, frozen.centreline)).toEqual(plan);
  });
});

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.values(value).forEach(deepFreeze);
    Object.freeze(value);
  }
  return value;
}

const parts = fc.array(
  fc.record({
    straight: fc.double({ min: 0, max: 200, noNaN: true }),
    turn: fc.double({ min: -180, max: 180, noNaN: true }),
    angle: fc.double({ min: 1, max: 175, noNaN: true }),
  }),
  { minLength: 1, maxLength: 6 },
);
const rowsFrom = (list: readonly { straight: number; turn: number; angle: number }[]): Row[] =>
  list.map(({ straight, turn, angle }, i) => row(straight + 0.01, i === 0 ? null : turn, angle));

describe('any plan', () => {
  it('from Z is from A of the reversed line', () => {
    fc.assert(
      fc.property(parts, (list) => {
        const { line, centreline } = make({ rows: rowsFrom(list), lastStraight: 60, die: worn });
        const back = fillet([...cornersOf(centreline)].reverse());
        if (!back.ok) throw new Error('does not fit');
        const fromZ = bendPlan(line, centreline, 'Z');
        expect(fromZ.rows.length).toBe(back.centreline.bends.length);
        fromZ.rows.forEach((r, i) => {
          const bend = back.centreline.bends[i]!;
          expect(r.start).toBeCloseTo(bend.start, 6);
          expect(r.angle).toBeCloseTo(bend.angle, 9);
          expect(r.straightBefore).toBeCloseTo(bend.straightBefore, 6);
          if (r.turn !== null) expect(Math.cos(r.turn - bend.turn!)).toBeCloseTo(1, 9);
          expect(Math.cos(r.clock - bend.clock)).toBeCloseTo(1, 9);
        });
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it('measured marks lie where the tape says in space', () => {
    const AROUND = 720;
    fc.assert(
      fc.property(parts, (list) => {
        const { line, centreline } = make({ rows: rowsFrom(list), lastStraight: 60, die: worn });
        const plan = bendPlan(line, centreline);
        plan.rows.forEach((r, i) => {
          const straight = frameAt(centreline, i === 0 ? 0 : plan.rows[i - 1]!.end);
          // The pencil mark in space: along the next straight, 5 before its bend.
          const mark = addScaled(pointAt(centreline, r.start), straight.tangent, -5);
          if (i === 0) {
            expect(dot(sub(mark, straight.point), straight.tangent)).toBeCloseTo(r.measured.distance, 6);
            return;
          }
          const arc = centreline.pieces[centreline.bends[i - 1]!.piece]!;
          if (arc.kind !== 'arc') throw new Error('not a bend');
          if (r.measured.from === 'corner') {
            const corner = cornersOf(centreline)[plan.rows[i - 1]!.points[0]!]!.at;
            expect(arc.angle).toBeLessThan(Math.PI / 2);
            expect(dot(sub(mark, corner), straight.tangent)).toBeCloseTo(r.measured.distance, 6);
            return;
          }
          // The back: the farthest back of the outside of the bend, looking along the straight that follows.
          const outside = Array.from({ length: AROUND + 1 }, (_, k) => {
            const t = arc.angle - (Math.PI / 2) * (k / AROUND);
            const spoke = addScaled(scale(arc.u, Math.cos(t)), arc.v, Math.sin(t));
            return dot(addScaled(arc.centre, spoke, arc.radius + line.tube.od / 2), straight.tangent);
          });
          const back = Math.min(...outside);
          expect(dot(mark, straight.tangent) - back).toBeCloseTo(r.measured.distance, 6);
        });
      }),
      { seed: 42, numRuns: 100 },
    );
  });
});

describe('spring-back', () => {
  it('is the bend itself when nobody measured it', () => {
    expect([dialFor(1, null), dialFor(1, die()), angleFor(1, die())]).toEqual([1, 1, 1]);
    const { line, centreline } = make({ rows: [row(50, null, 90)], lastStraight: 50, die: die() });
    expect(bendPlan(line, centreline).rows[0]!.calibrated).toBe(false);
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 3, noNaN: true }), (angle) => {
        expect(angleFor(dialFor(angle, worn), worn)).toBeCloseTo(angle, 12);
      }),
      { seed: 42 },
    );
    expect(() => dialFor(0, worn)).toThrow('dialFor: angle must be > 0, got 0');
  });
});

describe('nutPassesRadius', () => {
  it('is about L²/(8·slack)', () => {
    expect(nutPassesRadius({ length: 18, bore: 12.3, acrossFlats: 22 }, 12)).toBeCloseTo(135, 9);
    expect(nutPassesRadius({ length: 18, bore: null, acrossFlats: 22 }, 12)).toBeNull();
    expect(nutPassesRadius({ length: 18, bore: 12, acrossFlats: 22 }, 12)).toBe(Number.POSITIVE_INFINITY);
    expect(() => nutPassesRadius({ length: 18, bore: 12, acrossFlats: 22 }, 0)).toThrow(RangeError);
  });

  it('is near the exact radius of a bent tube in a straight bore', () => {
    // A straight nut of length L holds a band R ± od/2: bore = R + od/2 − √((R − od/2)² − L²/4).
    const [length, od, radius] = [18, 12, 135];
    const bore = radius + od / 2 - Math.sqrt((radius - od / 2) ** 2 - length ** 2 / 4);
    const found = nutPassesRadius({ length, bore, acrossFlats: null }, od)!;
    expect(Math.abs(found / radius - 1)).toBeLessThan(0.06);
  });
});
