import type { Bench } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { named, texts, words, wordsIn } from '../test/texts.ts';
import { type Ask, bench, dipstick, finding, stairs, worked } from '../test/worked.ts';
import { layoutFaults } from './boxes.ts';
import { sheetPages } from './sheet.ts';
import type { Page } from './types.ts';

const options = { checksum: 'a1b2c3d4', pages: ['bench'] } as const;
const sheet = (ask: Ask, from: 'A' | 'Z' = 'A'): readonly Page[] =>
  sheetPages(worked(ask), { ...options, from });
const first = (ask: Ask, from: 'A' | 'Z' = 'A'): Page => sheet(ask, from)[0]!;

describe('page 1', () => {
  const page = first({ points: dipstick, clips: [150, 320] });

  it('says what to saw, how to stand and what the tape hooks on', () => {
    expect(wordsIn(page, 'saw')).toBe('SAW 740.5');
    expect(wordsIn(page, 'finished')).toBe('finished 700.5');
    expect(wordsIn(page, 'stand words')).toContain('START on your LEFT');
    expect(wordsIn(page, 'stand words')).toContain('If yours differs: STOP, print again.');
    const hook = texts(page).filter((t) => t.zone === 'steps' && t.weight === 'bold');
    expect(hook.map((t) => t.text).join(' ')).toMatch(
      /^3\. hook tape on SAWN END of A 4\. mark ALL bends now/,
    );
  });

  it('gives no length to saw for a line that fails', () => {
    const failing = first({
      points: dipstick,
      findings: [finding('fail', 'too near'), finding('fail', 'too flat')],
    });
    expect(wordsIn(failing, 'saw')).toBe('DO NOT BEND');
    expect(wordsIn(failing, 'finished')).toBe('2 checks fail: do not saw, do not bend');
  });

  it('has its rows in the order of the hands, with the turn in words', () => {
    expect(wordsIn(page, 'row 1 turn')).toBe('Pencil line at the former; no turn');
    expect(wordsIn(page, 'row 2 mark')).toBe('311.5');
    expect(wordsIn(page, 'row 2 turn')).toBe('TURN TUBE: TOP TOWARD YOU 59°');
    expect(wordsIn(page, 'row 2 turn seen')).toBe('finished leg leans toward you');
    expect(wordsIn(page, 'row 2 flag')).toBe('flag 59°');
    expect(wordsIn(page, 'row 2 dial')).toBe('67');
    expect(wordsIn(page, 'row 2 dial wanted')).toBe('bend wanted 64.5°');
    expect(wordsIn(page, 'row 2 check')).toMatch(/^end A \d+ off the tool plane, toward you$/);
    const xs = ['mark', 'turn', 'flag', 'dial', 'check'].map(
      (c) => page.zones.find((z) => z.name === `row 2 ${c}`)!.x,
    );
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
  });

  it('keeps the cap heights asked for where there is room', () => {
    const capOf = (zone: string): number => texts(page).find((t) => t.zone === zone)!.cap;
    expect({
      name: capOf('name'),
      hand: capOf('hand'),
      unit: capOf('unit'),
      saw: capOf('saw'),
      finished: capOf('finished'),
      mark: capOf('row 2 mark'),
      dial: capOf('row 2 dial'),
      turn: capOf('row 2 turn'),
      flag: capOf('row 2 flag'),
      steps: capOf('steps'),
    }).toEqual({
      name: 7,
      hand: 6,
      unit: 8,
      saw: 8,
      finished: 4,
      mark: 6,
      dial: 6,
      turn: 4.5,
      flag: 4,
      // Four steps in two columns: the last is long, and no step is cut.
      steps: 3.3,
    });
  });

  it('has what comes after the bending, and leaves the date to be written', () => {
    expect(wordsIn(page, 'after')).toMatch(
      /1\. trim END Z.* 2\. End to end when finished, centre to centre: \d+/,
    );
    // The first bend is too shallow to lie flat, so one signed height serves.
    expect(wordsIn(page, 'after').match(/flat, curving LEFT/g)).toHaveLength(1);
    expect(wordsIn(page, 'after')).toContain('Clips from finished END A: 150 · 320');
    expect(wordsIn(page, 'date')).toBe('date, by');
    expect(wordsIn(page, 'foot')).toBe('page 1 of 1 · job a1b2c3d4');
  });

  it('on Letter has a shorter table and its foot on the paper', () => {
    const pages = sheetPages(worked({ points: stairs(7), radius: 36 }), { ...options, paper: 'letter' });
    expect(pages.map(({ width, height }) => [width, height])).toEqual([
      [215.9, 279.4],
      [215.9, 279.4],
    ]);
    expect(sheet({ points: stairs(7), radius: 36 })).toHaveLength(1);
    expect(wordsIn(pages[0]!, 'foot')).toContain('page 1 of 2');
  });

  it('in inches has a check bar of exactly 4 in', () => {
    const [page] = sheetPages(worked({ points: dipstick }), { ...options, units: 'in' });
    const [bar] = named(page!.items, 'check-bar');
    if (bar?.kind !== 'line') throw new Error('no check bar');
    expect(bar.to[0] - bar.from[0]).toBeCloseTo(101.6, 9);
    expect(wordsIn(page!, 'bar words')).toContain('4 in between');
  });

  it('prints inches in sixteenths or decimals by setting, rounded to what it prints', () => {
    const of = (units: 'in' | 'in-16' | 'in-decimal'): string =>
      words(sheetPages(worked({ points: dipstick }), { ...options, units })[0]!);
    expect(of('in')).toMatch(/SAW \d+( \d+\/(2|4|8|16|32))?\b/);
    expect(of('in-16')).not.toMatch(/\d\/32/);
    expect(of('in-decimal')).toMatch(/SAW \d+\.\d{1,2}\b/);
    expect(of('in-decimal')).not.toMatch(/SAW [\d ]+\//);
    const [page] = sheetPages(worked({ points: dipstick }), { ...options, units: 'in-decimal' });
    expect(wordsIn(page!, 'unit')).toBe('in');
  });

  it('prints the check of the turn that the bench asks for where it serves, else the flag', () => {
    const ask = (turnCheck: 'flag' | 'gauge' | 'height'): string => {
      const steep = { points: stairs(3), radius: 36, bench: { ...bench, turnCheck } };
      return wordsIn(first(steep), 'row 2 flag');
    };
    expect(ask('flag')).toMatch(/^flag \d+°$/);
    expect(ask('gauge')).toMatch(/gauge/);
    expect(ask('height')).toMatch(/END A \d+ off the tool plane, away from you/);
    // After a bend of under 20° nothing but the flag serves.
    const shallow = first({ points: dipstick, bench: { ...bench, turnCheck: 'gauge' } });
    expect(wordsIn(shallow, 'row 2 flag')).toMatch(/^flag \d+°$/);
  });

  it('has all pages unless told otherwise, the bench first, numbered through', () => {
    const all = sheetPages(worked({ points: dipstick }), { checksum: 'a1b2c3d4' });
    expect(all.length).toBeGreaterThanOrEqual(4);
    expect(wordsIn(all[0]!, 'foot')).toBe(`page 1 of ${all.length} · job a1b2c3d4`);
    expect(wordsIn(all.at(-1)!, 'foot')).toBe(`page ${all.length} of ${all.length} · job a1b2c3d4`);
    const some = sheetPages(worked({ points: dipstick }), {
      checksum: 'a1b2c3d4',
      pages: ['views', 'bench'],
    });
    expect(some).toHaveLength(2);
    expect(some[0]!.title).toContain('bend sheet');
  });

  it('has a check bar of exactly 100 mm between its end ticks', () => {
    const [bar] = named(page.items, 'check-bar');
    if (bar?.kind !== 'line') throw new Error('no check bar');
    expect(bar.to[0] - bar.from[0]).toBeCloseTo(100, 9);
    expect(bar.to[1]).toBe(bar.from[1]);
    const ticks = page.items.flatMap((i) =>
      i.kind === 'line' && i.to[1] === bar.from[1] && i !== bar ? [i.to[0]] : [],
    );
    expect(Math.min(...ticks)).toBe(bar.from[0]);
    expect(Math.max(...ticks)).toBe(bar.to[0]);
  });
});

describe('what changes the page', () => {
  it('worked from Z: START is Z, rows reversed, turns keep their number', () => {
    const page = first({ points: dipstick }, 'Z');
    expect(wordsIn(page, 'stand words')).toContain('START is END Z.');
    expect(wordsIn(page, 'stand picture')).toContain('START Z');
    expect(words(page)).not.toContain('from END A,');
    expect(wordsIn(page, 'row 2 turn')).toBe('TURN TUBE: TOP TOWARD YOU 59°');
    expect(wordsIn(page, 'row 1 dial wanted')).toBe('bend wanted 64.5°');
  });

  it('the opposite hand: every turn word flips, and the header says so', () => {
    const page = first({ points: dipstick, opposite: true });
    expect(wordsIn(page, 'hand')).toBe('OPPOSITE HAND');
    expect(wordsIn(page, 'row 2 turn')).toBe('TURN TUBE: TOP AWAY FROM YOU 59°');
    expect(wordsIn(first({ points: dipstick }), 'hand')).toBe('HAND AS DRAWN');
  });

  it('START on the right flips the words, and the picture with them', () => {
    const page = first({ points: dipstick, bench: { ...bench, startOn: 'right' } });
    expect(wordsIn(page, 'row 2 turn')).toBe('TURN TUBE: TOP AWAY FROM YOU 59°');
    const tag = (p: Page): number => texts(p).find((t) => t.text === 'START A')!.x;
    expect(tag(page)).toBeGreaterThan(tag(first({ points: dipstick })));
  });

  it('without a bench never says AWAY or TOWARD', () => {
    for (const page of sheet({ points: stairs(5), radius: 36, bench: null })) {
      expect(words(page)).not.toMatch(/\baway\b|\btoward\b/i);
      expect(wordsIn(page, 'stand words')).toContain('does not say how you stand');
      expect(wordsIn(page, 'row 2 turn')).toMatch(/CLOCKWISE seen from END A/);
    }
  });

  it('no spring-back: NOT CALIBRATED', () => {
    expect(wordsIn(first({ points: dipstick, calibrated: false }), 'spring-back')).toBe('NOT CALIBRATED');
    expect(wordsIn(first({ points: dipstick }), 'spring-back')).toBe(
      'Spring-back set: dial = 1.028 × bend + 0.4°',
    );
  });

  it('inches: fractions, and the big in', () => {
    const page = first({ points: dipstick, units: 'in' });
    expect(wordsIn(page, 'unit')).toBe('in');
    expect(wordsIn(page, 'row 2 mark')).toBe('12 1/4');
    expect(wordsIn(sheetPages(worked({ points: dipstick }), { ...options, units: 'in' })[0]!, 'unit')).toBe(
      'in',
    );
  });

  it('flared before bending: the tape hooks on the flared face and the nut goes on first', () => {
    const page = first({ points: dipstick, flared: true });
    const steps = wordsIn(page, 'steps');
    expect(steps).toMatch(/NUT A on, thread to END A.*FLARE A.*hook tape on FLARED FACE/);
    expect(wordsIn(page, 'below table')).toContain('NUT A and SLEEVE A: up against END A');
  });

  it('a straight tube: sawn length, no rows, no stand', () => {
    const page = first({
      points: [
        [0, 0, 0],
        [180, 0, 0],
      ],
    });
    expect(wordsIn(page, 'straight')).toBe('STRAIGHT TUBE: no bends');
    expect(wordsIn(page, 'saw')).toBe('SAW 220');
    expect(words(page)).not.toContain('TURN');
    expect(layoutFaults(page)).toEqual([]);
  });

  it('speaks of no bend that the line does not have', () => {
    const hold = (bends: number): string => words(first({ points: stairs(bends), radius: 36 }));
    expect(hold(1)).not.toContain('hold the tube');
    expect(hold(2)).toContain('After bend 2, hold the tube to picture 2 before you go on.');
    expect(hold(2)).not.toContain('bend 3');
    expect(hold(3)).toContain('After bend 2, hold the tube to picture 2 before bend 3.');
  });

  it('more than seven bends: on, with stand, SAW and flag again', () => {
    const pages = sheet({ points: stairs(12), radius: 36 });
    expect(pages).toHaveLength(2);
    expect(wordsIn(pages[0]!, 'below table')).toContain('Bends 8 to 12 follow on page 2.');
    for (const page of pages) {
      expect(wordsIn(page, 'saw')).toMatch(/^SAW /);
      expect(wordsIn(page, 'steps')).toContain('flag END A');
      expect(named(page.items, 'stand')).toHaveLength(1);
    }
    expect(wordsIn(pages[1]!, 'row 8 turn')).not.toBe('');
    expect(wordsIn(pages[1]!, 'row 12 bend')).toBe('12');
    expect(wordsIn(pages[1]!, 'foot')).toContain('page 2 of 2');
  });
});

describe('findings', () => {
  const fail = finding('fail', 'Tube is 28.0 mm from exhaust-1; 40 mm wanted.');
  const note = finding('note', 'No port direction is given.');
  const passes = Array.from({ length: 11 }, () => finding('pass', 'clear of the block'));

  it('prints what fails and notes, counts what passes', () => {
    const said = words(first({ points: dipstick, findings: [...passes, note, fail] }));
    expect(said).toContain('11 checks pass.');
    expect(said).toContain('FAIL: Tube is 28.0 mm from exhaust-1; 40 mm wanted.');
    expect(said).toContain('NOTE: No port direction is given.');
    expect(said).not.toContain('clear of the block');
  });

  it('stamps every page of a failing line, and no other', () => {
    const pages = sheet({ points: stairs(8), radius: 36, findings: [fail] });
    expect(pages.map((p) => named(p.items, 'do-not-bend').length)).toEqual([1, 1]);
    expect(named(first({ points: dipstick, findings: [note] }).items, 'do-not-bend')).toEqual([]);
  });

  it('loses no word when there are too many: the rest is on a later page, and page 1 says so', () => {
    const many = Array.from({ length: 60 }, (_, i) =>
      finding('note', `Note number ${i} says something of some length here.`),
    );
    const pages = sheet({ points: stairs(7), radius: 36, findings: many });
    expect(wordsIn(pages[0]!, 'cautions')).toContain('MORE on a later page.');
    const all = pages.map(words).join(' ');
    for (let i = 0; i < 60; i++) expect(all).toContain(`Note number ${i} says`);
    expect(wordsIn(pages.at(-1)!, 'foot')).toContain(`page ${pages.length} of ${pages.length}`);
  });

  it('an impossible line has no sheet', () => {
    expect(sheetPages({ ...worked({ points: dipstick }), centreline: null, plan: null }, options)).toEqual(
      [],
    );
  });
});

describe('every page', () => {
  const name = fc.oneof(
    fc.string({ unit: 'grapheme', maxLength: 90 }),
    fc.constantFrom(
      'Трубка щупа масла, правая',
      'Σωλήνας λαδιού',
      'Ống dẫn dầu phanh sau',
      'W'.repeat(80),
      '',
    ),
  );
  const stands: fc.Arbitrary<Bench> = fc
    .record({
      stand: fc.constantFrom('side', 'behind-free', 'at-start'),
      startOn: fc.constantFrom('left', 'right'),
      former: fc.constantFrom('near', 'far', 'above', 'below'),
      moves: fc.constantFrom('tube', 'bender'),
    })
    .map((b) => ({ ...b, plane: b.former === 'near' || b.former === 'far' ? 'flat' : 'upright' }));
  const ask: fc.Arbitrary<Ask> = fc.record({
    points: fc
      .array(
        fc.tuple(
          fc.integer({ min: 90, max: 260 }),
          fc.integer({ min: -1, max: 1 }),
          fc.integer({ min: -1, max: 1 }),
        ),
        { minLength: 1, maxLength: 13 },
      )
      .map(path),
    radius: fc.constant(20),
    name,
    title: name,
    bench: fc.oneof(stands, fc.constant(null)),
    calibrated: fc.boolean(),
    flared: fc.boolean(),
    opposite: fc.boolean(),
    units: fc.constantFrom('mm', 'in'),
    clips: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 14 }),
    cautions: fc.array(fc.string({ maxLength: 120 }), { maxLength: 5 }),
    findings: fc.array(
      fc
        .tuple(fc.constantFrom('pass', 'note', 'fail'), fc.string({ maxLength: 140 }))
        .map(([v, m]) => finding(v, m)),
      { maxLength: 12 },
    ),
  });

  it('keeps every text in its zone and off every other, whatever the job, on A4 and Letter', () => {
    fc.assert(
      fc.property(ask, fc.constantFrom('A', 'Z'), fc.constantFrom('a4', 'letter'), (asked, from, paper) => {
        for (const page of sheetPages(worked(asked), { ...options, from, paper }))
          expect(layoutFaults(page)).toEqual([]);
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  it('never cuts what tells how to turn, and never prints a bare sign', () => {
    fc.assert(
      fc.property(ask, fc.constantFrom('A', 'Z'), (asked, from) => {
        for (const page of sheet({ ...asked, findings: [], cautions: [], name: 'x', title: 'y' }, from))
          for (const { text, zone } of texts(page)) {
            if (/^row|^stand|^saw|^hand/.test(zone)) expect(text).not.toContain('…');
            expect(text).not.toMatch(/(^|[\s(])[-+−]\d/);
          }
      }),
      { seed: 42, numRuns: 60 },
    );
  });
});

/** Points whose corners always fit: each leg at least 90 mm along one axis, with a shift across. */
function path(steps: readonly (readonly [number, number, number])[]): Ask['points'] {
  let at: readonly [number, number, number] = [0, 0, 0];
  return [
    at,
    ...steps.map(([length, a, b], i) => {
      const [x, y, z] = [length, a * 60, b * 60];
      const step = [
        [x, y, z],
        [y, x, z],
        [z, y, x],
      ][i % 3]!;
      at = [at[0] + step[0]!, at[1] + step[1]!, at[2] + step[2]!];
      return at;
    }),
  ];
}
