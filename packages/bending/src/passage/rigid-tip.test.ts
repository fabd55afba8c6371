import { fromRows, reversed } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jointSteps, leadIn, longestTip, type Run, runWidths, type TipInBend, tipPassage } from './index.ts';

/** How far a place is from the centreline of straight, arc, straight; its bisector is y, its centre of bend [0, 0]. */
function fromCentreline([x, y]: readonly [number, number], radius: number, half: number): number {
  const at = Math.atan2(Math.abs(x), y);
  if (at <= half) return Math.abs(Math.hypot(x, y) - radius);
  return Math.abs(Math.abs(x) * Math.sin(half) + y * Math.cos(half) - radius);
}

type Stick = TipInBend & { readonly angle: number };

/** Smallest value of a function with one valley, by golden section. */
function least(f: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  for (let k = 0; k < 26; k++) {
    const [c, d] = [b - golden * (b - a), a + golden * (b - a)];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  return f((a + b) / 2);
}

/** How far a stick that leans `lean` stands out of the channel in the best place, found along and across itself. */
function sticksOut(of: Stick, length: number, lean: number): number {
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  const out = (along: number, across: number): number => {
    let worst = -of.bore;
    for (let k = 0; k <= 20; k++)
      for (const side of [-0.5, 0.5]) {
        const [u, v] = [along + (k / 20 - 0.5) * length, of.radius + across + side * of.thickness];
        const place = [u * c - v * s, u * s + v * c] as const;
        worst = Math.max(worst, fromCentreline(place, of.radius, of.angle / 2) - of.bore / 2);
      }
    return worst;
  };
  const best = (along: number) => least((across) => out(along, across), -of.bore, of.bore);
  return least(best, -30, 30);
}

/** The longest that fits at every lean on the way round: it must pass through all of them. */
function bruteLongest(of: Stick): number {
  const leans = [-0.6, 0, 0.3].map((part) => (part * of.angle) / 2);
  let [low, high] = [20, 200];
  while (high - low > 0.02) {
    const middle = (low + high) / 2;
    if (leans.every((lean) => sticksOut(of, middle, lean) <= 1e-4)) low = middle;
    else high = middle;
  }
  return low;
}

describe('longestTip', () => {
  it('is the closed form in a long arc', () => {
    for (const [radius, thickness, whole] of [
      [75, 1, 60],
      [75, 5, 35],
      [50, 5, 29],
      [38, 5, 25],
    ] as const)
      expect(Math.round(longestTip({ radius, bore: 7, thickness }))).toBe(whole);
  });

  for (const of of [
    { radius: 60, bore: 10, thickness: 4, angle: Math.PI / 2 },
    { radius: 60, bore: 10, thickness: 4, angle: 0.5 },
    { radius: 60, bore: 10, thickness: 1, angle: 0.3 },
    { radius: 38, bore: 7, thickness: 5, angle: 0.35 },
    { radius: 38, bore: 7, thickness: 5, angle: 1.2 },
  ])
    it(`agrees with a search over places and leans: ${JSON.stringify(of)}`, () => {
      const longest = longestTip(of);
      expect(Math.abs(bruteLongest(of) - longest)).toBeLessThan(0.05);
    });

  it('grows with bore and radius, shrinks with thickness, width and angle', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(size(20, 200), size(4, 20), size(0.1, 0.9), size(0.05, 3), (radius, bore, part, angle) => {
        const tip = { radius, bore, thickness: part * bore, angle };
        const here = longestTip(tip);
        expect(longestTip({ ...tip, bore: bore * 1.05 })).toBeGreaterThan(here);
        expect(longestTip({ ...tip, radius: radius * 1.05 })).toBeGreaterThan(here);
        expect(longestTip({ ...tip, thickness: part * bore * 1.05 })).toBeLessThan(here);
        expect(longestTip({ ...tip, width: bore / 4 })).toBeLessThan(here);
        expect(longestTip({ ...tip, angle: angle * 1.05 })).toBeLessThanOrEqual(here * (1 + 1e-12));
      }),
      { seed: 42 },
    );
  });

  it('joins its two forms without a jump', () => {
    const tip = { radius: 60, bore: 10, thickness: 4 };
    const half = Math.atan2(longestTip(tip) / 2, 59);
    expect(longestTip({ ...tip, angle: 2 * half - 1e-9 })).toBeCloseTo(longestTip(tip), 6);
  });

  it('is 0 for a tip as thick as the bore, and refuses what is no size', () => {
    expect(longestTip({ radius: 60, bore: 10, thickness: 10, angle: 0.1 })).toBe(0);
    expect(longestTip({ radius: 60, bore: 10, thickness: 1, width: 11 })).toBe(0);
    const tip = { radius: 60, bore: 10, thickness: 4 };
    expect(() => longestTip({ ...tip, radius: 5 })).toThrow('got 5 with bore 10');
    expect(() => longestTip({ ...tip, thickness: -1 })).toThrow('got -1');
    expect(() => longestTip({ ...tip, width: -2 })).toThrow('got -2');
    expect(() => longestTip({ ...tip, angle: 0 })).toThrow('got 0');
  });
});

describe('tipPassage', () => {
  const rows = (gap: number) => [
    { straightBefore: 5, turn: null, angle: 0.3, radius: 60 },
    { straightBefore: gap, turn: 1, angle: 0.4, radius: 60 },
  ];
  const passage = (gap: number) =>
    tipPassage([{ centreline: fromRows(rows(gap), 5), bore: 10 }], { thickness: 4 });

  it('takes each bend alone where the straights hold the tip, else as an endless arc', () => {
    const endless = longestTip({ radius: 60, bore: 10, thickness: 4 });
    expect(passage(60).map((p) => p.alone)).toEqual([true, true]);
    expect(passage(60)[0]!.longest).toBe(longestTip({ radius: 60, bore: 10, thickness: 4, angle: 0.3 }));
    expect(passage(2).map((p) => [p.alone, p.longest])).toEqual([
      [false, endless],
      [false, endless],
    ]);
    expect(passage(60)[0]!.longest).toBeGreaterThan(endless);
  });

  it('is the same from the other end', () => {
    const back = tipPassage([{ centreline: reversed(fromRows(rows(60), 5)), bore: 10 }], { thickness: 4 });
    for (const [i, { longest }] of back.toReversed().entries())
      expect(longest).toBeCloseTo(passage(60)[i]!.longest, 9);
  });
});

describe('joint steps', () => {
  const part = (from: number, bore: number) => ({
    centreline: fromRows([], 100, { origin: [from, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] }),
    bore,
  });
  const run: Run = [part(0, 10), part(100, 8), part(200, 8), part(300, 9)];

  it('name the way they catch', () => {
    expect(jointSteps(run, 'A')).toEqual([
      { line: 0, at: 100, step: 1, catches: 'going in' },
      { line: 2, at: 300, step: 0.5, catches: 'coming out' },
    ]);
    expect(jointSteps(run, 'Z').map((j) => j.catches)).toEqual(['coming out', 'going in']);
  });

  it('count both edges of a lip in a joint, and the inner one at a mouth', () => {
    const lipped: Run = [
      { ...part(0, 10), openingA: 9, openingZ: 6 },
      { ...part(100, 8), openingA: 7, openingZ: 12 },
    ];
    expect(runWidths(lipped)).toEqual([
      { line: 0, at: 0, diameter: 9 },
      { line: 0, at: 0, diameter: 10 },
      { line: 0, at: 100, diameter: 6 },
      { line: 1, at: 100, diameter: 8 },
    ]);
    expect(jointSteps(lipped, 'A').map(({ at, step, catches }) => [at, step, catches])).toEqual([
      [0, 0.5, 'coming out'],
      [100, 2, 'going in'],
      [100, 1, 'coming out'],
    ]);
    expect(runWidths([{ ...part(0, 10), openingZ: 8 }]).at(-1)).toEqual({ line: 0, at: 100, diameter: 8 });
    expect(() => runWidths([{ ...part(0, 10), openingZ: 0 }])).toThrow('opening must be > 0 mm, got 0');
  });

  it('mirror when the run is read from its other end', () => {
    const widths = fc.array(
      fc.record({ bore: fc.integer({ min: 5, max: 12 }), lip: fc.integer({ min: 4, max: 14 }) }),
      {
        minLength: 1,
        maxLength: 5,
      },
    );
    fc.assert(
      fc.property(widths, (list) => {
        const ahead = list.map(({ bore, lip }, i) => ({ ...part(100 * i, bore), openingZ: lip }));
        const back = ahead.toReversed().map(({ centreline, bore, openingZ }) => ({
          centreline: reversed(centreline),
          bore,
          openingA: openingZ,
        }));
        const told = (steps: ReturnType<typeof jointSteps>) =>
          steps.map(({ at, step, catches }) => [at, step, catches]);
        const total = 100 * list.length;
        expect(told(jointSteps(back, 'Z')).reverse()).toEqual(
          told(jointSteps(ahead, 'A')).map(([at, step, catches]) => [total - (at as number), step, catches]),
        );
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('are cured by a cone that the stick slides up', () => {
    const lead = leadIn({ step: 1, angle: Math.PI / 4, friction: 0 });
    expect([lead.length, lead.push].map((v) => v.toFixed(9))).toEqual(['1.000000000', '1.000000000']);
    expect(leadIn({ step: 1, angle: 1.4, friction: 0.25 }).push).toBe(Number.POSITIVE_INFINITY);
    const shallow = leadIn({ step: 1, angle: 0.2, friction: 0.2 });
    const steep = leadIn({ step: 1, angle: 0.3, friction: 0.2 });
    expect(shallow.length).toBeGreaterThan(steep.length);
    expect(shallow.push).toBeLessThan(steep.push);
    expect(() => leadIn({ step: 0, angle: 1, friction: 0 })).toThrow('got 0');
    expect(() => leadIn({ step: 1, angle: 2, friction: 0 })).toThrow('got 2');
    expect(() => leadIn({ step: 1, angle: 1, friction: -1 })).toThrow('got -1');
  });
});
