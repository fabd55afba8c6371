/** A stiff tip and what is near its bend, against walls drawn as two curves and a search over leans. */
import { type Centreline, fromRows, pointAt, reversed } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestTip, type Run, tipPassage } from './index.ts';

const STEP = 0.15;
const LEG = 160;

/** A line in one plane whose bends all turn to the left, with long legs. */
const planar = (
  bends: readonly { readonly before: number; readonly angle: number; readonly radius: number }[],
): Centreline =>
  fromRows(
    bends.map(({ before, ...bend }, i) => ({
      straightBefore: i === 0 ? LEG : before,
      turn: i === 0 ? null : 0,
      ...bend,
    })),
    LEG,
  );

interface Walls {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Both walls as seen by a stick that leans `lean`: how far each lies to the left at every step along the stick. `bore`
 * by distance along the line. To the left is the side the bends turn to, so the left wall is the inner one.
 */
function wallsAt(line: Centreline, bore: (s: number) => number, lean: number): Walls {
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  const at = (place: number): readonly [number, number] => {
    const [x, y] = pointAt(line, place);
    return [x * c + y * s, y * c - x * s];
  };
  const count = Math.floor((1.2 * line.length) / STEP);
  const low = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  const high = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  for (let place = 0.05; place < line.length; place += 0.05) {
    const [[u0, v0], [u1, v1]] = [at(place - 0.05), at(place)];
    const size = Math.hypot(u1 - u0, v1 - v0);
    const half = bore(place) / 2;
    const [x, y] = [(-(v1 - v0) / size) * half, ((u1 - u0) / size) * half];
    const inner = Math.round((u1 + x) / STEP);
    const outer = Math.round((u1 - x) / STEP);
    if (inner >= 0 && inner < count) high[inner] = Math.min(high[inner]!, v1 + y);
    if (outer >= 0 && outer < count) low[outer] = Math.max(low[outer]!, v1 - y);
  }
  return { low, high };
}

/** The longest window in which a stick finds room between the two walls. */
function longestWindow({ low, high }: Walls, thickness: number): number {
  let best = 0;
  for (let from = 0; from < low.length; from++) {
    let [floor, roof, to] = [low[from]!, high[from]!, from];
    if (!Number.isFinite(floor) || !Number.isFinite(roof)) continue;
    while (to + 1 < low.length && Number.isFinite(high[to + 1]!) && Number.isFinite(low[to + 1]!)) {
      floor = Math.max(floor, low[to + 1]!);
      roof = Math.min(roof, high[to + 1]!);
      if (roof - floor < thickness) break;
      to += 1;
    }
    best = Math.max(best, (to - from) * STEP);
  }
  return best;
}

/** A stick must lie at every lean on its way round: no longer than the longest at the worst of them. */
function searched(line: Centreline, bore: (s: number) => number, thickness: number): number {
  const angle = line.bends.reduce((sum, bend) => sum + bend.angle, 0);
  const leans = Array.from({ length: 41 }, (_, i) => (angle * i) / 40);
  return Math.min(...leans.map((lean) => longestWindow(wallsAt(line, bore, lean), thickness)));
}

const least = (run: Run, thickness: number): number =>
  Math.min(...tipPassage(run, { thickness }).map(({ longest }) => longest));

describe('a tip and its neighbours', () => {
  it('one bend alone: the search finds what the formula says', () => {
    const line = planar([{ before: 0, angle: 0.5, radius: 30 }]);
    const found = searched(line, () => 10, 6);
    expect(Math.abs(found - longestTip({ radius: 30, bore: 10, thickness: 6, angle: 0.5 }))).toBeLessThan(
      1.5,
    );
  });

  it('two shallow bends whose straight holds the end of the tip, but not while it leans from one to the other', () => {
    const line = planar([0.1, 0.1].map((angle) => ({ before: 20, angle, radius: 12 })));
    const alone = longestTip({ radius: 12, bore: 10, thickness: 9, angle: 0.1 });
    const found = searched(line, () => 10, 9);
    // Square to the bisector of one bend its end lies 19.6 mm beyond the arc, short of the next; and yet it does not pass.
    expect((alone / 2) * Math.cos(0.05) - 16 * Math.sin(0.05)).toBeLessThan(20);
    expect(found).toBeLessThan(alone - 1.5);
    const [one, two] = tipPassage([{ centreline: line, bore: 10 }], { thickness: 9 });
    expect([one!.alone, two!.alone]).toEqual([false, false]);
    expect(one!.longest).toBeLessThanOrEqual(found + 0.5);
  });

  it('a smaller bore close behind the bend', () => {
    const wide = fromRows([{ straightBefore: LEG, turn: null, angle: 0.3, radius: 40 }], 5);
    const end = wide.pieces.at(-1)!;
    const direction = end.kind === 'straight' ? end.direction : ([1, 0, 0] as const);
    const narrow = fromRows([], LEG, { origin: end.to, direction, normal: [0, 0, 1] });
    const whole = fromRows([{ straightBefore: LEG, turn: null, angle: 0.3, radius: 40 }], 5 + LEG);
    const found = searched(whole, (s) => (s > wide.length ? 7 : 12), 5);
    const alone = longestTip({ radius: 40, bore: 12, thickness: 5, angle: 0.3 });
    const run = [
      { centreline: wide, bore: 12 },
      { centreline: narrow, bore: 7 },
    ];
    expect(found).toBeLessThan(alone - 5);
    expect(least(run, 5)).toBeLessThanOrEqual(found + 0.5);
    expect(least(run, 5)).toBeGreaterThan(longestTip({ radius: 40, bore: 7, thickness: 5 }));
    expect(tipPassage(run, { thickness: 5 })[0]!.alone).toBe(false);
    const lip = [{ centreline: whole, bore: 12, openingZ: 7 }];
    expect(tipPassage(lip, { thickness: 5 })[0]).toMatchObject({
      longest: alone,
      alone: true,
    });
  });

  it('a lip the tip does not enter is something to keep clear of, on either side', () => {
    const line = fromRows([{ straightBefore: 30, turn: null, angle: 0.3, radius: 40 }], 200);
    const run = [{ centreline: line, bore: 12, openingA: 4 }];
    const [tip] = tipPassage(run, { thickness: 5 });
    expect(tip!.alone).toBe(false);
    expect(tip!.longest).toBeGreaterThan(30);
    const back = [{ centreline: reversed(line), bore: 12, openingZ: 4 }];
    expect(tipPassage(back, { thickness: 5 })[0]!.longest).toBeCloseTo(tip!.longest, 9);
  });

  it('never says more than the search finds, of bends that turn one way', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            before: fc.integer({ min: 0, max: 60 }),
            angle: fc.integer({ min: 10, max: 70 }).map((hundredths) => hundredths / 100),
            radius: fc.constantFrom(12, 25, 50),
          }),
          { minLength: 2, maxLength: 3 },
        ),
        fc.constantFrom(5, 7, 8.5),
        (bends, thickness) => {
          const line = planar(bends);
          const says = least([{ centreline: line, bore: 10 }], thickness);
          fc.pre(says < LEG);
          // The search knows its windows to a step at either end, and its walls to half a step each.
          expect(says).toBeLessThanOrEqual(searched(line, () => 10, thickness) + 4 * STEP);
        },
      ),
      { seed: 51, numRuns: 15 },
    );
  });
});
