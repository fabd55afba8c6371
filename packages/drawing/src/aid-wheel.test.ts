import { toDegrees } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { type AskAid, byName, lineOf, plansOf, workedAid } from '../test/aids.ts';
import { words, wordsIn } from '../test/texts.ts';
import { bench, dipstick, stairs } from '../test/worked.ts';
import { aidPages } from './aid-pages.ts';
import { wrapLength } from './aid-strip.ts';
import { POINTER } from './aid-wheel-pointer.ts';
import type { GroupItem, Page } from './types.ts';

const page = (ask: AskAid, aid: 'wheel' | 'strip', from: 'A' | 'Z' = 'A'): Page =>
  aidPages(workedAid(ask), { checksum: 'a1b2c3d4', aids: [aid], from })[0]!;

const behind = { ...bench, stand: 'behind-free' } as const;
const carried = { ...bench, moves: 'bender' } as const;
const wrapped = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** Degrees clockwise on the page of what leads from the rim to a place. */
function angleOf(of: Page, name: string): number {
  const rim = byName(of.items, 'wheel-rim')[0];
  if (rim?.kind !== 'circle') throw new Error('no rim');
  const [x, y] = lineOf(of.items, name).from;
  return wrapped(toDegrees(Math.atan2(x - rim.centre[0], rim.centre[1] - y)));
}

const stopNames = (of: Page): string[] => byName(of.items, /^wheel-stop-/).map((item) => item.name!);
const stopOf = (of: Page, bend: number): string =>
  stopNames(of).find((name) => name.replace('wheel-stop-', '').split('-').includes(String(bend)))!;

describe('the turn wheel', () => {
  it('has a hole of exactly the OD, and a slit from the hole to the rim', () => {
    for (const od of [3, 4.76, 12, 25.4, 50]) {
      const one = page({ points: stairs(9), radius: 36, od }, 'wheel');
      const [hole, rim] = [byName(one.items, 'wheel-hole')[0], byName(one.items, 'wheel-rim')[0]];
      if (hole?.kind !== 'circle' || rim?.kind !== 'circle') throw new Error('no wheel');
      expect(2 * hole.radius).toBe(od);
      expect(2 * rim.radius).toBeGreaterThanOrEqual(80);
      expect(2 * rim.radius).toBeLessThanOrEqual(120);
      const slit = lineOf(one.items, 'wheel-slit');
      const out = (p: readonly [number, number]): number =>
        Math.hypot(p[0] - rim.centre[0], p[1] - rim.centre[1]);
      expect(out(slit.from)).toBeCloseTo(od / 2, 9);
      expect(out(slit.to)).toBeCloseTo(rim.radius, 9);
    }
  });

  it('seen from START: a stop at the pointer puts the pencil line where the sheet has it', () => {
    for (const from of ['A', 'Z'] as const)
      for (const opposite of [false, true]) {
        const ask: AskAid = { points: stairs(12), radius: 36, opposite };
        const one = page(ask, 'wheel', from);
        expect(words(one)).toContain(`TO START ${from}`);
        // The disc is turned back by the angle of the stop; its 0, the pencil line, goes with it.
        for (const row of plansOf(workedAid(ask), from).plan.rows)
          expect(wrapped(-angleOf(one, stopOf(one, row.bend)) + 1e-9)).toBeCloseTo(
            toDegrees(row.pencil.after),
            6,
          );
      }
  });

  it('behind the stock it faces FREE, and the pencil line is as far the other way', () => {
    const ask: AskAid = { points: stairs(12), radius: 36, bench: behind };
    const one = page(ask, 'wheel');
    expect(words(one)).toContain('TO FREE Z');
    for (const row of plansOf(workedAid(ask)).plan.rows)
      expect(wrapped(angleOf(one, stopOf(one, row.bend)) + 1e-9)).toBeCloseTo(toDegrees(row.pencil.after), 6);
  });

  it('says for right and left of the pointer what the sheet says for each turn', () => {
    let seen = 0;
    for (const stand of [
      bench,
      { ...bench, startOn: 'right' } as const,
      behind,
      { ...bench, stand: 'at-start' } as const,
      carried,
      null,
    ]) {
      const ask: AskAid = { points: stairs(12), radius: 36, bench: stand };
      const one = page(ask, 'wheel');
      const [, right, left] = /RIGHT of the pointer: (.+?)\. .+LEFT of the pointer: (.+?)\. /.exec(
        `${wordsIn(one, 'ways')} `,
      )!;
      const rows = plansOf(workedAid(ask)).plan.rows;
      for (const row of rows.filter(({ words: { kind } }) => kind === 'turn')) {
        const way = wrapped(angleOf(one, stopOf(one, row.bend)) - angleOf(one, stopOf(one, row.bend - 1)));
        expect(way < 180 ? right : left).toBe(row.words.head);
        seen += 1;
      }
    }
    expect(seen).toBeGreaterThan(20);
  });

  it('lists every bend with its turn, and labels every stop that has room', () => {
    const one = page({ points: dipstick }, 'wheel');
    expect(wordsIn(one, 'stops')).toBe(
      '1: stop 0°; no turn 2: stop 59° left of 0; TURN TUBE: TOP TOWARD YOU 59°',
    );
    expect(stopNames(one)).toEqual(['wheel-stop-1', 'wheel-stop-2']);
    expect(wordsIn(one, 'wheel')).toMatch(/\b1 .*\b2$|1 2/);
    expect(byName(one.items, 'pointer-cut')).toHaveLength(1);
    expect(POINTER.height).toBeLessThan(40);
  });

  it('is not made for a line without a turn or a tube too large, and says so', () => {
    const single: AskAid['points'] = [
      [0, 0, 0],
      [200, 0, 0],
      [200, 200, 0],
    ];
    expect(words(page({ points: single }, 'wheel'))).toContain(
      'Not made: turn wheel: this line has no turn.',
    );
    expect(words(page({ points: dipstick, od: 60 }, 'wheel'))).toContain(
      'Not made: turn wheel: for tubes up to 50 mm OD',
    );
  });
});

describe('the wrap strip', () => {
  it('is π·(OD + 0.1) long, with its stops in proportion, clockwise to the right of the arrow', () => {
    for (const od of [12, 18, 50]) {
      const ask: AskAid = { points: stairs(9), radius: 36, od };
      const one = page(ask, 'strip');
      const strip = byName(one.items, 'wrap-strip-1')[0] as GroupItem;
      const long = lineOf(strip.items, 'strip-end').from[0] - lineOf(strip.items, 'strip-start').from[0];
      expect(long).toBeCloseTo(Math.PI * (od + 0.1), 9);
      for (const { bend, pencil } of plansOf(workedAid(ask)).plan.rows) {
        const stop = byName(strip.items, /^strip-stop-/).find((item) =>
          item.name!.replace('strip-stop-', '').split('-').includes(String(bend)),
        )!;
        if (stop.kind !== 'line') throw new Error('no stop');
        expect(wrapped(-(stop.from[0] / long) * 360 + 1e-9)).toBeCloseTo(toDegrees(pencil.after), 6);
      }
    }
  });

  it('longer than the page it is joined from pieces that add up', () => {
    const one = page({ points: stairs(9), radius: 36, od: 100 }, 'strip');
    const pieces = byName(one.items, /^wrap-strip-\d$/) as readonly GroupItem[];
    expect(pieces).toHaveLength(2);
    const first = lineOf(pieces[0]!.items, 'strip-to-1').from[0];
    expect(first + lineOf(pieces[1]!.items, 'strip-end').from[0]).toBeCloseTo(wrapLength(100), 9);
  });

  it('says how wide a pen line is, and is not made under 12 mm', () => {
    expect(words(page({ points: dipstick }, 'strip'))).toContain('a pen line of 0.5 mm is 4.7° wide');
    expect(words(page({ points: dipstick, od: 4.76 }, 'strip'))).toContain(
      'Not made: wrap strip: on 4.76 mm tube a pen line of 0.5 mm is 12° wide.',
    );
  });
});
