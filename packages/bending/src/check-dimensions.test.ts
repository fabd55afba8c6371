import { fromRows, type Row } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bench, DEG, die, end, figure, flare, make } from '../test-kit/lines.ts';
import { checkDimensions } from './check-dimensions.ts';
import { bendPlan } from './plan.ts';
import type { DimensionChecks, EndName } from './types.ts';

const row = (straightBefore: number, turn: number | null, angle: number): Row => ({
  straightBefore,
  turn: turn === null ? null : turn * DEG,
  angle: angle * DEG,
  radius: 36,
});

function checks(input: Parameters<typeof make>[0], from: EndName = 'A'): DimensionChecks {
  const { line, centreline } = make(input);
  return checkDimensions(line, bendPlan(line, centreline, from));
}

describe('end-to-end while bending', () => {
  it('is between the ends as they are then', () => {
    // A square corner, legs 136 and 116 to it; 40 to spare on Z and 4 for its flare.
    const rows = [row(100, null, 90)];
    const endZ = end({ fitting: flare, spare: figure(40) });
    expect(checks({ rows, lastStraight: 80, changes: { endZ } }).rows[0]!.endToEnd).toBeCloseTo(
      Math.hypot(136, 160),
      9,
    );
    // Flared first, A is finished; flared later it is 4 longer.
    for (const [flareWhen, longer] of [
      ['before', 0],
      ['after', 4],
    ] as const) {
      const endA = end({ fitting: flare, flareWhen });
      const found = checks({ rows, lastStraight: 80, changes: { endA, endZ } });
      expect(found.rows[0]!.endToEnd).toBeCloseTo(Math.hypot(136 + longer, 160), 9);
      expect(found.final.endToEnd).toBeCloseTo(Math.hypot(136, 116), 9);
    }
  });

  it('counts only the growth of the bends made so far', () => {
    // 0.02 mm per degree: sawn 1.8 short for each; after bend 1 the free leg lacks the growth of bend 2.
    const grows = die({ stretch: 0.02 / DEG });
    const found = checks({ rows: [row(100, null, 90), row(50, 0, 90)], lastStraight: 80, die: grows });
    const free = 36 + 50 + 36 * (Math.PI / 2) + 80 - 1.8;
    expect(found.rows[0]!.endToEnd).toBeCloseTo(Math.hypot(136, free), 9);
    expect(found.rows[1]!.endToEnd).toBeCloseTo(found.final.endToEnd, 9);
  });
});

describe('the signed check before a bend', () => {
  it('is 136·sin 90° of the first leg over the tool plane after a square turn, on the right side', () => {
    const rows = [row(100, null, 90), row(50, 90, 45)];
    const flat = checks({ rows, lastStraight: 80, bench: bench() }).rows;
    expect(flat[0]!.words).toBeNull();
    expect(flat[1]!.words).toBe('end A 136 below the tool plane');
    expect(flat[1]!.overIfWrongWay).toBeCloseTo(-flat[1]!.over!, 9);
    const other = checks({ rows, lastStraight: 80, bench: bench({ startOn: 'right' }) }).rows;
    expect(other[1]!.words).toBe('end A 136 above the tool plane');
    const none = checks({ rows, lastStraight: 80 }, 'Z').rows;
    expect(none[1]!.words).toMatch(
      /^end Z \d+ left of the tool plane, seen from END Z with the former at 12$/,
    );
  });

  it('says when it cannot tell', () => {
    // A turn of 180° either way is the same turn; a first leg that ends in line with the second shows nothing.
    const half = checks({ rows: [row(100, null, 90), row(50, 180, 45)], lastStraight: 80, bench: bench() })
      .rows[1]!;
    expect([half.tells, half.side, half.words]).toEqual([false, null, 'end A in the tool plane']);
  });
});

describe('the heights of the finished tube', () => {
  it('are by hand: a square staircase', () => {
    // +X, +Y, +Z: bend 1 curves left with Z up; the free end rises 36 + 80, the start end lies over bend 2's plane.
    const { final } = checks({ rows: [row(100, null, 90), row(50, 90, 90)], lastStraight: 80 });
    expect(final.heights.map((one) => [one.flatBend, one.of, Math.round(one.height * 1000) / 1000])).toEqual([
      [1, { end: 'Z' }, 116],
      [2, { end: 'A' }, -136],
    ]);
    expect(final.heights[0]!.words).toBe('bend 1 flat, curving LEFT as you go from END A: END Z 116 ABOVE');
    expect(final.heights[1]!.words).toBe('bend 2 flat, curving LEFT as you go from END A: END A 136 BELOW');
  });

  it('pass over a bend too shallow to lie flat', () => {
    const { final } = checks({ rows: [row(100, null, 16), row(200, -59, 64)], lastStraight: 300 });
    // Z lies on the leg of bend 2 itself: level whatever was bent, so it is no check.
    expect(final.heights.map(({ flatBend, of }) => ({ flatBend, of }))).toEqual([
      { flatBend: 2, of: { end: 'A' } },
    ]);
  });

  it('are none where nothing can be out of plane: one bend, or a straight tube', () => {
    expect(checks({ rows: [row(100, null, 90)], lastStraight: 80 }).final.heights).toEqual([]);
    expect(checks({ rows: [], lastStraight: 80 }).final).toEqual({ endToEnd: 80, heights: [] });
  });
});

describe('a turn made the wrong way', () => {
  const part = fc.record({
    straight: fc.integer({ min: 30, max: 200 }),
    turn: fc.integer({ min: 25, max: 155 }),
    left: fc.boolean(),
    angle: fc.integer({ min: 25, max: 120 }),
  });

  it('reads differently in a signed check or a height, though often not in the end-to-end', () => {
    let hidden = 0;
    fc.assert(
      fc.property(fc.array(part, { minLength: 2, maxLength: 5 }), fc.nat(), (list, pick) => {
        const rows = list.map(({ straight, turn, left, angle }, i) =>
          row(straight, i === 0 ? null : left ? turn : -turn, angle),
        );
        const wrong = 1 + (pick % (rows.length - 1));
        const wrongRows = rows.map((one, i) => (i === wrong ? { ...one, turn: -one.turn! } : one));
        const how = { lastStraight: 90, bench: bench() };
        const [is, was] = [checks({ ...how, rows: wrongRows }), checks({ ...how, rows })];
        const told = [
          ...was.rows.map((check, i) => Math.abs((check.over ?? 0) - (is.rows[i]!.over ?? 0))),
          ...was.final.heights.map((one, i) => Math.abs(one.height - is.final.heights[i]!.height)),
        ];
        expect(Math.max(...told)).toBeGreaterThan(3);
        expect(is.rows[wrong]!.over).toBeCloseTo(was.rows[wrong]!.overIfWrongWay!, 6);
        if (Math.abs(is.final.endToEnd - was.final.endToEnd) < 0.001) hidden += 1;
      }),
      { seed: 42, numRuns: 300 },
    );
    expect(hidden).toBeGreaterThan(50);
  });

  it('keeps the length of the tube, so that nothing else shows it', () => {
    const rows = [row(100, null, 90), row(50, 60, 45)];
    const [one, two] = [rows, rows.map((r) => ({ ...r, turn: r.turn === null ? null : -r.turn }))];
    expect(fromRows(one, 80).length).toBe(fromRows(two, 80).length);
    expect(checks({ rows: one, lastStraight: 80 }).final.endToEnd).toBeCloseTo(
      checks({ rows: two, lastStraight: 80 }).final.endToEnd,
      9,
    );
  });
});
