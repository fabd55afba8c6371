import { type Centreline, frameAt, fromRows, mirrored, type Row, reversed } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelShift, pullOutSpace, type Run, stickLength } from './index.ts';

const RIGHT = Math.PI / 2;
const row = (straightBefore: number, angle: number, turn: number | null = null): Row => ({
  straightBefore,
  turn,
  angle,
  radius: 60,
});
const run = (centreline: Centreline, bore = 10): Run => [{ centreline, bore }];

describe('stickLength', () => {
  it('is the centreline where nothing bends', () => {
    const { shortest, longest } = stickLength(run(fromRows([], 300)), 1);
    expect([shortest.low, shortest.high, longest]).toEqual([300, 300, 300]);
  });

  it('hugs the inside exactly in one plane and the outside at most', () => {
    const line = fromRows([row(80, RIGHT), row(40, 0.7, 0)], 90);
    const { centreline, shortest, longest } = stickLength(run(line), 1);
    expect(shortest.low).toBe(shortest.high);
    expect(centreline - shortest.low).toBeCloseTo(4.5 * (RIGHT + 0.7), 9);
    expect(longest - centreline).toBeCloseTo(4.5 * (RIGHT + 0.7), 9);
  });

  it('crosses an S as the inner common tangent of its two inner walls does', () => {
    for (const [s, angle] of [
      [50, 1],
      [0, 0.8],
      [120, RIGHT],
    ] as const) {
      const line = fromRows([row(70, angle), row(s, angle, Math.PI)], 60);
      const { shortest } = stickLength(run(line), 1);
      const [apart, inner] = [Math.hypot(s, 120), 60 - 4.5];
      const less = Math.asin(120 / apart) - Math.asin((2 * inner) / apart);
      const exact = 130 + 2 * inner * (angle - less) + Math.sqrt(apart ** 2 - (2 * inner) ** 2);
      expect(shortest.low).toBeLessThanOrEqual(exact + 1e-9);
      expect(shortest.high).toBeGreaterThanOrEqual(exact - 1e-6);
      expect(shortest.high - shortest.low).toBeLessThan(0.05);
    }
  });

  const twisty = fromRows([row(60, 0.9), row(50, 1.2, 2), row(70, 0.8, -1.3)], 80);

  it('brackets a way in several planes closely, between the closed forms', () => {
    const { centreline, shortest, longest } = stickLength(run(twisty), 1);
    expect(shortest.low).toBeGreaterThan(centreline - 4.5 * 2.9);
    expect(shortest.high).toBeLessThan(centreline);
    expect(shortest.high - shortest.low).toBeGreaterThanOrEqual(0);
    expect(shortest.high - shortest.low).toBeLessThan(0.05);
    expect(longest).toBeGreaterThan(centreline + 4.5 * 2.9);
  });

  it('is the same from either end, in the mirror and cut in two', () => {
    const whole = stickLength(run(twisty), 1);
    const { point, tangent, normal } = frameAt(fromRows([row(60, 0.9)], 20), 60 + 54 + 20);
    const cut: Run = [
      { centreline: fromRows([row(60, 0.9)], 20), bore: 10 },
      {
        centreline: fromRows([row(30, 1.2), row(70, 0.8, -1.3)], 80, {
          origin: point,
          direction: tangent,
          normal: turned(normal, tangent, 2),
        }),
        bore: 10,
      },
    ];
    for (const other of [run(reversed(twisty)), run(mirrored(twisty, 1, 5)), cut]) {
      const found = stickLength(other, 1);
      expect(found.shortest.low).toBeCloseTo(whole.shortest.low, 3);
      expect(found.shortest.high).toBeCloseTo(whole.shortest.high, 3);
      expect(found.longest).toBeCloseTo(whole.longest, 6);
    }
  });

  it('spreads with the bore and closes with the thickness', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 20, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (bore, thickness) => {
          const here = stickLength(run(twisty, bore), thickness);
          const wider = stickLength(run(twisty, bore + 1), thickness);
          const thicker = stickLength(run(twisty, bore), thickness + 0.5);
          expect(wider.shortest.low).toBeLessThan(here.shortest.high);
          expect(wider.longest).toBeGreaterThan(here.longest);
          expect(thicker.shortest.high).toBeGreaterThan(here.shortest.low);
          expect(thicker.longest).toBeLessThan(here.longest);
          expect(here.shortest.high - here.shortest.low).toBeLessThan(0.1);
        },
      ),
      { seed: 42, numRuns: 20 },
    );
  });

  it('counts a kink at a joint both ways', () => {
    const kinked: Run = [
      { centreline: fromRows([], 100), bore: 9 },
      {
        centreline: fromRows([], 100, {
          origin: [100, 0, 0],
          direction: [Math.cos(0.2), Math.sin(0.2), 0],
          normal: [0, 0, 1],
        }),
        bore: 9,
      },
    ];
    const { shortest, longest } = stickLength(kinked, 1);
    expect(200 - shortest.low).toBeCloseTo(8 * Math.tan(0.1), 9);
    expect(longest - 200).toBeCloseTo(8 * Math.tan(0.1), 9);
  });

  it('refuses a blade that fills the bore, naming it', () => {
    expect(() => stickLength(run(twisty), 10)).toThrow('got 10 in 10 mm');
    expect(() => stickLength(run(twisty), 0)).toThrow('got 0');
    expect(() => stickLength([], 1)).toThrow('got 0');
    expect(() => stickLength(run(twisty, 0), 1)).toThrow('bore must be > 0 mm, got 0');
    expect(() => stickLength(run(twisty, 130), 1)).toThrow('got 60 with bore 130');
    const apart: Run = [...run(fromRows([], 10)), ...run(fromRows([], 10))];
    expect(() => stickLength(apart, 1)).toThrow('got 10 mm apart');
  });
});

type V = readonly [number, number, number];
function turned(n: V, t: V, a: number): V {
  const side: V = [t[1] * n[2] - t[2] * n[1], t[2] * n[0] - t[0] * n[2], t[0] * n[1] - t[1] * n[0]];
  return [0, 1, 2].map((i) => Math.cos(a) * n[i]! + Math.sin(a) * side[i]!) as unknown as V;
}

describe('levelShift', () => {
  const level = { tip: [30, 40, 5], middle: [0, 0, 50], up: [0, 0, 1], tilt: 0.1 } as const;
  it('is the horizontal distance times the tangent, and longer along a leaning stick', () => {
    const plumb = levelShift({ ...level, stick: [0, 0, -1] });
    expect(plumb.plumb).toBeCloseTo(50 * Math.tan(0.1), 12);
    expect(plumb.along).toBeCloseTo(plumb.plumb, 12);
    expect(levelShift({ ...level, stick: [1, 0, 1] }).along).toBeCloseTo(plumb.plumb * Math.SQRT2, 9);
    expect(levelShift({ ...level, stick: [1, 0, 0] }).along).toBe(Number.POSITIVE_INFINITY);
  });
  it('is nothing over the middle, and refuses a tilt out of range', () => {
    expect(levelShift({ ...level, tip: [0, 0, 1], stick: [1, 0, 1] })).toEqual({ plumb: 0, along: 0 });
    expect(() => levelShift({ ...level, stick: [0, 0, 1], tilt: 2 })).toThrow('got 2');
  });
});

describe('pullOutSpace', () => {
  const line = fromRows([row(50, RIGHT)], 70);
  const near = (found: V, said: V) => {
    for (const i of [0, 1, 2] as const) expect(found[i]).toBeCloseTo(said[i], 9);
  };
  it('leaves along the tangent at the cap, at either end', () => {
    const z = pullOutSpace(run(line), { cap: 'Z', stick: 300 });
    near(z.to, [110, 430, 0]);
    const a = pullOutSpace(run(line), { cap: 'A', stick: 300, stiff: 40 });
    near(a.to, [-40, 0, 0]);
    const back = pullOutSpace(run(reversed(line)), { cap: 'A', stick: 300 });
    near(back.to, z.to);
  });
  it('refuses a stiff part longer than the stick', () => {
    expect(() => pullOutSpace(run(line), { cap: 'A', stick: 30, stiff: 40 })).toThrow('got 40');
    expect(() => pullOutSpace(run(line), { cap: 'A', stick: 0 })).toThrow('got 0');
  });
});
