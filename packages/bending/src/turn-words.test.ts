import type { Bench } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { bench, DEG, make } from '../test-kit/lines.ts';
import { bendPlan } from './plan.ts';
import { roundPlan } from './round-plan.ts';
import { turnWords } from './turn-words.ts';
import type { EndName } from './types.ts';

const say = (turnDeg: number | null, how: Bench | null, from: EndName = 'A'): string =>
  turnWords(turnDeg, how, { from }).line;

const left = bench();
const right = bench({ startOn: 'right' });

describe('the words for every standing place', () => {
  it.each([
    [40, left, 'TURN TUBE: TOP AWAY FROM YOU 40° (finished leg drops)'],
    [-40, left, 'TURN TUBE: TOP TOWARD YOU 40° (finished leg rises)'],
    [40, right, 'TURN TUBE: TOP TOWARD YOU 40° (finished leg rises)'],
    [-40, right, 'TURN TUBE: TOP AWAY FROM YOU 40° (finished leg drops)'],
    [40, bench({ stand: 'behind-free' }), 'TURN TUBE: CLOCKWISE as you look 40° (finished leg drops)'],
    [-40, bench({ stand: 'behind-free' }), 'TURN TUBE: ANTICLOCKWISE as you look 40° (finished leg rises)'],
    [40, bench({ stand: 'at-start' }), 'TURN TUBE: ANTICLOCKWISE as you look 40° (finished leg drops)'],
    [-40, bench({ stand: 'at-start' }), 'TURN TUBE: CLOCKWISE as you look 40° (finished leg rises)'],
    [
      40,
      bench({ moves: 'bender' }),
      'CARRY BENDER: CLOCKWISE seen from END A 40° (next bend leaves 40° clockwise of the last, seen from END A)',
    ],
    [
      40,
      null,
      'TURN TUBE: ANTICLOCKWISE seen from END A 40° (next bend leaves 40° clockwise of the last, seen from END A)',
    ],
    [
      -40,
      null,
      'TURN TUBE: CLOCKWISE seen from END A 40° (next bend leaves 40° anticlockwise of the last, seen from END A)',
    ],
  ])('%d°', (turn, how, words) => {
    expect(say(turn, how)).toBe(words);
  });

  it('never names A as the looker on a plan from Z', () => {
    for (const how of [null, bench({ moves: 'bender' })])
      for (const turn of [40, -155, 180]) {
        expect(say(turn, how, 'Z')).not.toContain('END A');
        expect(say(turn, how, 'Z')).toContain('END Z');
      }
    expect(say(40, null, 'Z')).toBe(
      'TURN TUBE: ANTICLOCKWISE seen from END Z 40° (next bend leaves 40° clockwise of the last, seen from END Z)',
    );
  });

  it('says why it is seen from START without a bench, or with one that cannot be', () => {
    expect(turnWords(40, null).note).toBe(
      'The job does not say how you stand at the bench: turns are of the TUBE, seen from END A looking along it.',
    );
    const impossible = turnWords(40, bench({ plane: 'flat', former: 'above' }));
    expect(impossible.line).not.toMatch(/AWAY|TOWARD/);
    expect(impossible.note).toContain('a tool bending flat with its former above, which cannot be');
    expect(turnWords(40, left).note).toBeNull();
  });

  it('tells the movement seen from START whoever looks', () => {
    for (const stand of ['side', 'at-start', 'behind-free'] as const)
      for (const startOn of ['left', 'right'] as const) {
        expect(turnWords(40, bench({ stand, startOn })).seenFromStart).toBe('anticlockwise');
        expect(turnWords(-40, bench({ stand, startOn })).seenFromStart).toBe('clockwise');
      }
    expect(turnWords(40, bench({ moves: 'bender' })).seenFromStart).toBe('clockwise');
    expect(turnWords(-40, left).nextLeavesDeg).toBe(320);
  });
});

describe('the size words', () => {
  it.each([
    [null, 'pencil line at the former; no turn'],
    [0, 'no turn'],
    [-0, 'no turn'],
    [150, 'TURN TUBE: TOP AWAY FROM YOU 150° (finished leg ends low, on your side)'],
    [155, 'TURN TUBE: HALF TURN, 25° short, top AWAY (finished leg ends low, on your side)'],
    [-155, 'TURN TUBE: HALF TURN, 25° past, top AWAY (finished leg ends high, on your side)'],
    [180, 'TURN TUBE: half turn, either way (finished leg ends level, on your side)'],
    [-180, 'TURN TUBE: half turn, either way (finished leg ends level, on your side)'],
  ])('%s with START on the left', (turn, words) => {
    expect(say(turn, left)).toBe(words);
  });

  it('keeps one way to turn near half, so that a hair of noise in the sign changes only short to past', () => {
    expect(say(179, left)).toBe(
      'TURN TUBE: HALF TURN, 1° short, top AWAY (finished leg ends low, on your side)',
    );
    expect(say(-179, left)).toBe(
      'TURN TUBE: HALF TURN, 1° past, top AWAY (finished leg ends high, on your side)',
    );
    expect(say(155, right)).toContain('HALF TURN, 25° past, top AWAY');
    expect(say(-155, right)).toContain('HALF TURN, 25° short, top AWAY');
    expect(say(155, bench({ stand: 'behind-free' }))).toContain(
      'HALF TURN, 25° short, CLOCKWISE as you look',
    );
    expect(say(155, bench({ stand: 'at-start' }))).toContain('HALF TURN, 25° past, CLOCKWISE as you look');
    expect(say(155, bench({ moves: 'bender' }))).toContain('HALF TURN, 25° short, CLOCKWISE seen from END A');
    expect([turnWords(155, left).goDeg, turnWords(-155, left).goDeg]).toEqual([155, 205]);
  });

  it('offers the flat jog from 170°, not at half itself', () => {
    const offers = [169, 170, -171, 180, 40].map((turn) => turnWords(turn, left).offerFlat);
    expect(offers).toEqual([false, true, true, false, false]);
  });

  it('refuses what is no turn', () => {
    expect(() => turnWords(181, left)).toThrow(
      'turnWords: turn must be within -180 and 180 degrees, got 181',
    );
    expect(() => turnWords(Number.NaN, left)).toThrow(RangeError);
  });
});

describe('the second confirmation', () => {
  const upright = (former: 'above' | 'below'): Bench => bench({ plane: 'upright', former });
  it.each([
    ['flat, far', bench(), 'finished leg drops', 'finished leg rises'],
    ['flat, near', bench({ former: 'near' }), 'finished leg rises', 'finished leg drops'],
    ['upright, above', upright('above'), 'finished leg leans away', 'finished leg leans toward you'],
    ['upright, below', upright('below'), 'finished leg leans toward you', 'finished leg leans away'],
  ])('%s', (_, how, topAway, topToward) => {
    expect(turnWords(60, how).confirmation).toBe(topAway);
    expect(turnWords(-60, how).confirmation).toBe(topToward);
    expect(turnWords(-60, { ...how, startOn: 'right' }).confirmation).toBe(topAway);
    expect(turnWords(60, { ...how, startOn: 'right' }).confirmation).toBe(topToward);
  });

  it('says where the leg ends beyond 90°, and nothing when there is no leg out of the tube', () => {
    expect(turnWords(120, upright('above')).confirmation).toBe('finished leg ends low, on the far side');
    expect(turnWords(180, upright('above')).confirmation).toBe('finished leg ends straight down');
    expect(turnWords(90, upright('above')).confirmation).toBe('finished leg leans away');
    expect(turnWords(60, left, { legSide: 0 }).confirmation).toBeNull();
    expect(turnWords(60, left, { legSide: -1 }).confirmation).toBe('finished leg rises');
    expect(turnWords(60, bench({ stand: 'at-start', plane: 'upright', former: 'above' })).confirmation).toBe(
      'finished leg leans left',
    );
  });
});

const job = (turns: readonly number[]): Parameters<typeof make>[0] => ({
  rows: [null, ...turns].map((turn) => ({
    straightBefore: 100,
    turn: turn === null ? null : turn * DEG,
    angle: 60 * DEG,
    radius: 36,
  })),
  lastStraight: 100,
  bench: left,
});

function lines(turns: readonly number[], from: EndName = 'A'): string[] {
  const { line, centreline } = make(job(turns));
  return roundPlan(line, bendPlan(line, centreline, from)).rows.map((row) => row.words.line.split(' (')[0]!);
}

describe('whole lines in words', () => {
  it('from A and from Z: the rows reverse, the words stay with START on the same hand', () => {
    expect(lines([40, -115])).toEqual([
      'pencil line at the former; no turn',
      'TURN TUBE: TOP AWAY FROM YOU 40°',
      'TURN TUBE: TOP TOWARD YOU 115°',
    ]);
    expect(lines([40, -115], 'Z')).toEqual([
      'pencil line at the former; no turn',
      'TURN TUBE: TOP TOWARD YOU 115°',
      'TURN TUBE: TOP AWAY FROM YOU 40°',
    ]);
  });

  it('rounds −179.6 and 179.6 to a half turn, and 0.4 to none', () => {
    expect(lines([-179.6, 179.6, 0.4]).slice(1)).toEqual([
      'TURN TUBE: half turn, either way',
      'TURN TUBE: half turn, either way',
      'no turn',
    ]);
    expect(lines([-179.4, 179.4]).slice(1)).toEqual([
      'TURN TUBE: HALF TURN, 1° past, top AWAY',
      'TURN TUBE: HALF TURN, 1° short, top AWAY',
    ]);
  });
});
