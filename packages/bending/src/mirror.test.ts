import { type Centreline, mirrored, type Row } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bench, DEG, make } from '../test-kit/lines.ts';
import { bendPlan } from './plan.ts';
import { roundPlan } from './round-plan.ts';
import type { BenchPlan } from './types.ts';

const part = fc.record({
  straight: fc.double({ min: 1, max: 200, noNaN: true }),
  turn: fc.oneof(
    fc.double({ min: -179.9, max: 180, noNaN: true }),
    fc.constantFrom(0, 180, 179.6, -179.6, 155, -155, 0.4, 40.5, -40.5),
  ),
  angle: fc.double({ min: 5, max: 170, noNaN: true }),
});
const parts = fc.array(part, { minLength: 2, maxLength: 6 });
const rowsOf = (list: readonly { straight: number; turn: number; angle: number }[]): Row[] =>
  list.map(({ straight, turn, angle }, i) => ({
    straightBefore: straight,
    turn: i === 0 ? null : turn * DEG,
    angle: angle * DEG,
    radius: 36,
  }));

const places = fc.constantFrom(
  bench(),
  bench({ startOn: 'right', plane: 'upright', former: 'below' }),
  bench({ stand: 'behind-free' }),
  bench({ stand: 'at-start' }),
  bench({ moves: 'bender' }),
  null,
);

function pair(rows: Row[], how: ReturnType<typeof bench> | null): { one: BenchPlan; other: BenchPlan } {
  const { line, centreline } = make({ rows, lastStraight: 90, bench: how });
  const twin: Centreline = mirrored(centreline, 1, 0);
  const hand = { ...line, mirror: { of: line.id, axis: 1, offset: 0 } } as const;
  return {
    one: roundPlan(line, bendPlan(line, centreline)),
    other: roundPlan(hand, bendPlan(hand, twin)),
  };
}

const FLIPS: Readonly<Record<string, string>> = {
  'TOP AWAY FROM YOU': 'TOP TOWARD YOU',
  'TOP TOWARD YOU': 'TOP AWAY FROM YOU',
  ANTICLOCKWISE: 'CLOCKWISE',
  CLOCKWISE: 'ANTICLOCKWISE',
  short: 'past',
  past: 'short',
};

/** What the words of the other hand must be, from the words of this one. */
function flipped(order: string): string {
  const near = /short|past/.exec(order)?.[0];
  if (near) return order.replace(near, FLIPS[near]!);
  return order.replace(/TOP AWAY FROM YOU|TOP TOWARD YOU|ANTICLOCKWISE|CLOCKWISE/, (way) => FLIPS[way]!);
}

const order = (line: string): string => line.split(' (')[0]!;

describe('the opposite hand', () => {
  it('flips every turn word but half turns and none, and every signed height, and changes nothing else', () => {
    fc.assert(
      fc.property(parts, places, (list, how) => {
        const { one, other } = pair(rowsOf(list), how);
        expect([one.hand, other.hand]).toEqual(['AS DRAWN', 'OPPOSITE HAND']);
        one.rows.forEach((row, i) => {
          const twin = other.rows[i]!;
          const same = row.turnDeg === null || row.turnDeg === 0 || row.turnDeg === 180;
          expect(order(twin.words.line)).toBe(same ? order(row.words.line) : flipped(order(row.words.line)));
          if (!same) expect(twin.words.line).not.toBe(row.words.line);
          expect([twin.mark, twin.dialDeg]).toEqual([row.mark, row.dialDeg]);
          if (row.check.over !== null) expect(twin.check.over).toBeCloseTo(-row.check.over, 6);
        });
        one.final.heights.forEach((height, i) => {
          expect(other.final.heights[i]!.height).toBeCloseTo(-height.height, 6);
        });
        expect(other.final.endToEnd).toBeCloseTo(one.final.endToEnd, 6);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('is said in the notes of the order', () => {
    const rows = rowsOf([
      { straight: 50, turn: 0, angle: 60 },
      { straight: 50, turn: 40, angle: 60 },
    ]);
    const { one, other } = pair(rows, bench());
    expect(one.order.notes).toEqual([]);
    expect(other.order.notes).toEqual(['OPPOSITE HAND of line.']);
  });
});
