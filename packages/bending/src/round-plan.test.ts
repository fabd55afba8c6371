import { cross, fillet, pointAt, type Row, rowsOf, type Vec3 } from '@runback/geometry';
import type { Die, JobUnit, Line } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bench, DEG, die, end, figure, flare, type Made, make, plain } from '../test-kit/lines.ts';
import { bendPlan } from './plan.ts';
import { roundPlan } from './round-plan.ts';
import type { BenchPlan, EndName } from './types.ts';

const row = (straightBefore: number, turn: number | null, angle: number, radius = 36): Row => ({
  straightBefore,
  turn: turn === null ? null : turn * DEG,
  angle: angle * DEG,
  radius,
});

/** Where the FREE end comes by walking: each printed number in turn, on three hand-carried axes. */
function walk(
  steps: readonly { straight: number; turn: number; angle: number; radius: number }[],
  last: number,
): Vec3 {
  let [x, y, z]: [Vec3, Vec3, Vec3] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  let at: Vec3 = [0, 0, 0];
  const go = (along: number, aside: number): void => {
    at = [0, 1, 2].map((k) => at[k]! + along * x[k]! + aside * y[k]!) as unknown as Vec3;
  };
  for (const { straight, turn, angle, radius } of steps) {
    go(straight, 0);
    const roll = mix(y, z, turn);
    [y, z] = [roll, cross(x, roll)];
    go(radius * Math.sin(angle), radius * (1 - Math.cos(angle)));
    const ahead = mix(x, y, angle);
    [x, y] = [ahead, cross(z, ahead)];
  }
  go(last, 0);
  return at;
}
const mix = (a: Vec3, b: Vec3, t: number): Vec3 =>
  [0, 1, 2].map((k) => a[k]! * Math.cos(t) + b[k]! * Math.sin(t)) as unknown as Vec3;

/** What a tape and a dial give who reads only what is printed, by hand. */
function asPrinted(printed: BenchPlan, line: Line, worn: Die | null): Vec3 {
  const [start, free] = printed.from === 'A' ? [line.endA, line.endZ] : [line.endZ, line.endA];
  const extra = start.spare.value + start.fitting.uses.value;
  let [used, grown] = [0, 0];
  const steps = printed.rows.map(({ mark, dialDeg, turnDeg, exact }) => {
    const spring = worn?.springBack;
    const angle = spring ? (dialDeg * DEG - spring.fixed) / spring.factor : dialDeg * DEG;
    const from = printed.hook.face === 'finished' ? 0 : extra;
    const begins = mark + (worn?.markOffset ?? 0) + grown - from;
    const straight = begins - used;
    used = begins + exact.radius * angle;
    grown += (worn?.stretch ?? 0) * angle;
    return { straight, turn: (turnDeg ?? 0) * DEG, angle, radius: exact.radius };
  });
  const tail = printed.cutLength + grown - extra - free.spare.value - free.fitting.uses.value - used;
  const last = printed.order.trim === null ? tail : printed.order.trim - free.fitting.uses.value;
  return walk(steps, last);
}

const worn = die({
  stretch: 0.02 / DEG,
  markOffset: 3.3,
  springBack: { factor: 1.028, fixed: 0.4 * DEG, path: '' },
});
const part = fc.record({
  straight: fc.double({ min: 5, max: 200, noNaN: true }),
  turn: fc.double({ min: -180, max: 180, noNaN: true }),
  angle: fc.double({ min: 2, max: 175, noNaN: true }),
});
const parts = fc.array(part, { minLength: 1, maxLength: 6 });
const rowsFrom = (list: readonly { straight: number; turn: number; angle: number }[]): Row[] =>
  list.map(({ straight, turn, angle }, i) => row(straight, i === 0 ? null : turn, angle));
const anyEnd = fc
  .record({
    fitting: fc.constantFrom(plain, flare),
    flareWhen: fc.constantFrom('before' as const, 'after' as const),
    spare: fc.constantFrom(0, 25, 40.3).map(figure),
  })
  .map(end);

describe('the line worked again from what is printed', () => {
  it('is what walking the printed numbers by hand gives, and so is the miss', () => {
    const tool = fc.constantFrom(null, worn, die());
    const from = fc.constantFrom<EndName>('A', 'Z');
    const units = fc.constantFrom<JobUnit>('mm', 'in');
    fc.assert(
      fc.property(
        parts,
        tool,
        fc.tuple(anyEnd, anyEnd, from, units),
        (list, how, [endA, endZ, first, unit]) => {
          const { line, centreline } = make({
            rows: rowsFrom(list),
            lastStraight: 77.7,
            die: how,
            changes: { endA, endZ, units: unit },
          });
          const plan = bendPlan(line, centreline, first);
          const printed = roundPlan(line, plan);
          const by = asPrinted(printed, line, how);
          const at = pointAt(printed.centreline, printed.centreline.length);
          expect(Math.hypot(by[0] - at[0], by[1] - at[1], by[2] - at[2])).toBeLessThan(0.000001);
          const steps = plan.rows.map((r) => ({ ...r, straight: r.straightBefore, turn: r.turn ?? 0 }));
          const wanted = walk(steps, plan.lastStraight);
          const off: Vec3 = [by[0] - wanted[0], by[1] - wanted[1], by[2] - wanted[2]];
          for (const k of [0, 1, 2] as const) expect(printed.miss.vector[k]).toBeCloseTo(off[k], 6);
          expect(printed.miss.distance).toBeCloseTo(Math.hypot(...off), 6);
          for (const { mark } of printed.rows)
            expect(mark / printed.step).toBeCloseTo(Math.round(mark / printed.step), 6);
        },
      ),
      { seed: 42, numRuns: 400 },
    );
  });

  it('misses nothing when rounding changes nothing', () => {
    const whole = 0.5 / DEG;
    const rows = [row(100, null, 60, whole), row(50.5, 40, 33, whole), row(70, 180, 90, whole)];
    const { line, centreline } = make({ rows, lastStraight: 80 });
    for (const from of ['A', 'Z'] as const) {
      const { miss } = roundPlan(line, bendPlan(line, centreline, from));
      expect(miss.distance).toBeLessThan(0.000001);
      expect(miss.direction).toBeLessThan(0.000001);
    }
  });

  it('moves the free end by what the walk says for one rounded turn', () => {
    // Turn 0.4° too far about the straight before bend 2, the end 36 + 64 off that straight: 100·2·sin 0.2°.
    const whole = 0.5 / DEG;
    const rows = [row(100, null, 90, whole), row(100, 30.4, 90, whole)];
    const { line, centreline } = make({ rows, lastStraight: 100 - whole });
    const { miss } = roundPlan(line, bendPlan(line, centreline));
    // The sawn length 100 + 45 + 100 + 45 + 71.352 is 361.5 and 0.148 is left on.
    expect(Math.hypot(miss.vector[0], miss.vector[1], miss.vector[2])).toBeCloseTo(miss.distance, 9);
    expect(Math.sqrt(miss.distance ** 2 - 0.148 ** 2)).toBeCloseTo(200 * Math.sin(0.2 * DEG), 2);
  });
});

describe('rounding', () => {
  const first = (rows: Row[], unit: JobUnit = 'mm', how: Die | null = null): BenchPlan => {
    const { line, centreline } = make({ rows, lastStraight: 80, die: how, changes: { units: unit } });
    return roundPlan(line, bendPlan(line, centreline));
  };

  it('takes marks to 0.5 mm or 1/32 in, the dial to 0.5°', () => {
    const mm = first([row(100.26, null, 60.3)]);
    expect([mm.rows[0]!.mark, mm.rows[0]!.dialDeg]).toEqual([100.5, 60.5]);
    const inch = first([row(100.26, null, 60.3)], 'in');
    // 100.26 mm is 126.3 thirty-seconds, 63.2 sixteenths, 394.7 hundredths.
    expect(inch.rows[0]!.mark).toBeCloseTo((126 / 32) * 25.4, 9);
    const { line, centreline } = make({ rows: [row(100.26, null, 60.3)], lastStraight: 80 });
    const mark = (unit: 'in-16' | 'in-decimal'): number =>
      roundPlan(line, bendPlan(line, centreline), { unit }).rows[0]!.mark;
    expect(mark('in-16')).toBeCloseTo((63 / 16) * 25.4, 9);
    expect(mark('in-decimal')).toBeCloseTo(3.95 * 25.4, 9);
  });

  it('takes turns to 1°, to 5° after a bend under 20° where that costs the far end little', () => {
    const long = [row(100, null, 19.9), row(100, 58.7, 60), row(400, 58.7, 60)];
    expect(first(long).rows.map((r) => r.turnDeg)).toEqual([null, 59, 59]);
    const rows = [row(100, null, 19.9), row(100, 59.7, 60), row(20, 58.7, 10)];
    expect(first(rows).rows.map((r) => r.turnDeg)).toEqual([null, 60, 59]);
  });

  it('takes a turn after a shallow bend to 5° or to 1° when told so', () => {
    const rows = [row(100, null, 19.9), row(100, 58.7, 60), row(100, 58.7, 60)];
    const { line, centreline } = make({ rows, lastStraight: 80 });
    const plan = bendPlan(line, centreline);
    expect(roundPlan(line, plan, { fineTurns: true }).rows.map((r) => r.turnDeg)).toEqual([null, 59, 59]);
    expect(roundPlan(line, plan, { fineTurns: false }).rows.map((r) => r.turnDeg)).toEqual([null, 60, 59]);
  });

  it('makes a half turn after rounding +180', () => {
    const rows = [row(100, null, 60), row(100, -179.6, 19), row(100, -178, 60)];
    expect(first(rows).rows.map((r) => r.turnDeg)).toEqual([null, 180, 180]);
  });

  it('never rounds a bend away, nor its start into the bend before', () => {
    expect(first([row(100, null, 0.1)]).rows[0]!.dialDeg).toBe(0.5);
    // Bend 1 ends at 100 + 36·60° = 137.699; bend 2 at once: 137.5 would be too early.
    const close = first([row(100, null, 60), row(0.001, 40, 60)]);
    expect(close.rows[1]!.mark).toBe(138);
    expect(close.rows[1]!.straightBefore).toBeCloseTo(0.301, 3);
  });

  it('does the dial again when spring-back eats the rounded one', () => {
    const stiff = die({ springBack: { factor: 1, fixed: 3 * DEG, path: '' } });
    const printed = first([row(100, null, 0.1)], 'mm', stiff);
    expect(printed.rows[0]!.dialDeg).toBe(3.5);
    expect(printed.rows[0]!.angle / DEG).toBeCloseTo(0.5, 9);
  });
});

describe('the flat jog', () => {
  const rows = [row(100, null, 60), row(100, 172, 60), row(100, 40, 60)];
  const { line, centreline } = make({ rows, lastStraight: 80, bench: bench() });
  const plan = bendPlan(line, centreline);
  const printed = roundPlan(line, plan);

  it('is offered near half with the miss it makes, which is that of the plan made so', () => {
    expect(printed.rows.map((r) => r.flatJog !== null)).toEqual([false, true, false]);
    const snapped = roundPlan(line, plan, { snap: [2] });
    expect(snapped.rows[1]!.turnDeg).toBe(180);
    expect(snapped.rows[1]!.flatJog).toBeNull();
    expect(printed.rows[1]!.flatJog).toEqual(snapped.miss);
    expect(snapped.miss.distance).toBeGreaterThan(5);
    expect(() => roundPlan(line, plan, { snap: [1] })).toThrow(
      'roundPlan: snap must name bends with a turn, got 1',
    );
  });

  it('the pencil line goes round against the turns, seen from START', () => {
    expect(
      printed.rows.map(({ pencil }) => [pencil.before / DEG, pencil.after / DEG].map(Math.round)),
    ).toEqual([
      [0, 0],
      [0, 188],
      [188, 148],
    ]);
  });
});

describe('a dipstick tube, START on the left, upright tool, former above', () => {
  const filleted = fillet([
    { at: [60, 130, 0], radius: 0 },
    { at: [60, 130, 110], radius: 60 },
    { at: [90, 190, 340], radius: 60 },
    { at: [430, 250, 440], radius: 0 },
  ]);
  if (!filleted.ok) throw new Error('does not fit');
  const made: Made = make({
    ...rowsOf(filleted.centreline),
    die: die({ radius: 60, springBack: { factor: 1.028, fixed: 0.4 * DEG, path: '' } }),
    bench: bench({ plane: 'upright', former: 'above' }),
    changes: { endZ: end({ spare: figure(40) }) },
  });
  const plan = bendPlan(made.line, made.centreline);

  it('reads as it should', () => {
    const { rows, order } = roundPlan(made.line, plan, { fineTurns: true });
    const second = rows[1]!;
    expect([second.mark, second.turnDeg, second.dialDeg]).toEqual([311.5, -59, 67]);
    expect(second.words.line).toBe('TURN TUBE: TOP TOWARD YOU 59° (finished leg leans toward you)');
    expect(second.turnCheck?.flagWords).toBe('flag 59°');
    expect(second.turnCheck?.flagOnly).toBe(true);
    expect(second.check.words).toBe('end A 26 off the tool plane, toward you');
    expect(order.steps[0]!.words).toBe('SAW 740.5 (finished 700.5)');
  });

  it('ends 554 mm off with its end-to-end unchanged when bend 2 is turned the wrong way', () => {
    const right = made.centreline;
    const wrongRows = plan.rows.map((r) => ({ ...r, turn: r.turn === null ? null : -r.turn }));
    const wrong = make({ rows: wrongRows, lastStraight: plan.lastStraight }).centreline;
    const [is, should] = [pointAt(wrong, wrong.length), pointAt(right, right.length)];
    expect(Math.hypot(...is)).toBeCloseTo(Math.hypot(...should), 6);
    expect(Math.hypot(is[0] - should[0], is[1] - should[1], is[2] - should[2])).toBeCloseTo(554.5, 0);
    expect(roundPlan(made.line, plan).rows[1]!.check.tells).toBe(true);
  });
});
