import type { Bench } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AskAid, byName, inked, lineOf, workedAid } from '../test/aids.ts';
import { withStick } from '../test/stick.ts';
import { named, texts, words } from '../test/texts.ts';
import { dipstick, finding, stairs, worked } from '../test/worked.ts';
import { AIDS, type AidOptions } from './aid-context.ts';
import { aidPages } from './aid-pages.ts';
import { bendNames, fine } from './aid-words.ts';
import { layoutFaults } from './boxes.ts';
import type { Page } from './types.ts';

const options: AidOptions = { checksum: 'a1b2c3d4' };

describe('aidPages', () => {
  it('makes each aid asked for, in their order', () => {
    const titles = (aids: AidOptions['aids']): string[] =>
      aidPages(workedAid({ points: dipstick }), { ...options, ...(aids ? { aids } : {}) }).map(
        (page) => page.title,
      );
    expect(titles(['cards', 'tape']).map((t) => /: (\w+ \w+)/.exec(t)![1])).toEqual([
      'marking tape',
      'angle cards',
    ]);
    expect(titles(undefined).map((t) => /: (\w+ \w+)/.exec(t)![1])).toEqual([
      'marking tape',
      'turn wheel',
      'wrap strip',
      'angle cards',
      'side views',
    ]);
    const stick = aidPages(withStick(workedAid({ points: dipstick })), options).at(-1)!;
    expect(stick.title).toContain('stick strip');
    expect(titles([])).toEqual([]);
  });

  it('has a bar of exactly 100 mm, or 4 in, across and up every page', () => {
    for (const [units, long] of [
      ['mm', 100],
      ['in', 101.6],
    ] as const)
      for (const paper of ['a4', 'letter'] as const)
        for (const page of aidPages(workedAid({ points: stairs(9), radius: 36, units }), {
          ...options,
          paper,
        })) {
          const [across, up] = [lineOf(page.items, 'check-bar'), lineOf(page.items, 'check-bar-y')];
          expect(across.to[0] - across.from[0]).toBeCloseTo(long, 9);
          expect(across.to[1]).toBe(across.from[1]);
          expect(up.from[1] - up.to[1]).toBeCloseTo(long, 9);
          expect(up.to[0]).toBe(up.from[0]);
          expect(words(page)).toContain('MEASURE BOTH BARS FIRST');
        }
  });

  it('is on A4 or Letter, the tape across', () => {
    const size = (paper: AidOptions['paper'], aid: 'tape' | 'wheel'): number[] => {
      const [page] = aidPages(workedAid({ points: dipstick }), {
        ...options,
        aids: [aid],
        ...(paper ? { paper } : {}),
      });
      return [page!.width, page!.height];
    };
    expect(size(undefined, 'wheel')).toEqual([210, 297]);
    expect(size('letter', 'wheel')).toEqual([215.9, 279.4]);
    expect(size('letter', 'tape')).toEqual([279.4, 215.9]);
  });

  it('stamps a failing line on every page, draws none for an impossible one', () => {
    const failing = workedAid({ points: dipstick, findings: [finding('fail', 'too near')] });
    for (const page of aidPages(failing, options)) expect(named(page.items, 'do-not-bend')).toHaveLength(1);
    for (const page of aidPages(workedAid({ points: dipstick }), options))
      expect(named(page.items, 'do-not-bend')).toEqual([]);
    expect(aidPages({ ...worked({ points: dipstick }), centreline: null, plan: null }, options)).toEqual([]);
  });

  it('says on the first page what is not made and why', () => {
    const [first, second] = aidPages(workedAid({ points: dipstick, od: 8 }), options);
    expect(words(first!)).toContain('Not made: wrap strip: on 8 mm tube');
    expect(words(second!)).not.toContain('Not made');
    const straight = aidPages(
      workedAid({
        points: [
          [0, 0, 0],
          [90, 0, 0],
        ],
      }),
      options,
    );
    expect(straight).toHaveLength(1);
    for (const what of ['turn wheel', 'wrap strip', 'angle cards', 'side views'])
      expect(words(straight[0]!)).toMatch(new RegExp(`Not made: .*${what}: `));
  });

  it('refuses what it does not know', () => {
    const line = workedAid({ points: dipstick });
    expect(() => aidPages(line, { ...options, aids: ['ruler' as 'tape'] })).toThrow(
      'aids must be of tape, wheel',
    );
    expect(() => aidPages(line, { ...options, paper: 'a5' as 'a4' })).toThrow(
      'paper must be a4 or letter, got a5',
    );
  });

  it('says on each aid how exact it is', () => {
    for (const aid of AIDS)
      for (const page of aidPages(withStick(workedAid({ points: dipstick })), { ...options, aids: [aid] }))
        expect(words(page)).toMatch(/Accuracy: .*no source/);
  });
});

describe('words', () => {
  it('gathers bends and says small lengths', () => {
    expect(bendNames([1, 2, 3, 5, 7, 8])).toBe('bends 1–3, 5, 7, 8');
    expect(bendNames([4])).toBe('bend 4');
    expect([fine(1.0472, 'mm'), fine(30, 'mm'), fine(0.5, 'in')]).toEqual(['1.05 mm', '30 mm', '0.02 in']);
  });
});

/** Legs of at least 60 mm along one axis with a shift across: corners always fit on 15 mm; some turns are none or half. */
function path(steps: readonly (readonly [number, number, number])[]): AskAid['points'] {
  let at: readonly [number, number, number] = [0, 0, 0];
  return [
    at,
    ...steps.map(([length, a, b], i) => {
      const step = [
        [length, a * 40, b * 40],
        [a * 40, length, b * 40],
        [b * 40, a * 40, length],
      ][i % 3]!;
      at = [at[0] + step[0]!, at[1] + step[1]!, at[2] + step[2]!];
      return at;
    }),
  ];
}

const stands: fc.Arbitrary<Bench | null> = fc.oneof(
  fc.constant(null),
  fc
    .record({
      stand: fc.constantFrom('side', 'behind-free', 'at-start'),
      startOn: fc.constantFrom('left', 'right'),
      former: fc.constantFrom('near', 'far', 'above', 'below'),
      moves: fc.constantFrom('tube', 'bender'),
    })
    .map((b): Bench => ({ ...b, plane: b.former === 'near' || b.former === 'far' ? 'flat' : 'upright' })),
);

const ask: fc.Arbitrary<AskAid> = fc.record({
  points: fc
    .array(
      fc.tuple(
        fc.integer({ min: 60, max: 400 }),
        fc.integer({ min: -1, max: 1 }),
        fc.integer({ min: -1, max: 1 }),
      ),
      {
        minLength: 1,
        maxLength: 26,
      },
    )
    .map(path),
  radius: fc.constant(15),
  od: fc.constantFrom(2, 4.76, 12, 18, 25.4, 28),
  name: fc.oneof(fc.string({ unit: 'grapheme', maxLength: 90 }), fc.constant('W'.repeat(80))),
  title: fc.string({ maxLength: 60 }),
  bench: stands,
  flared: fc.boolean(),
  opposite: fc.boolean(),
  units: fc.constantFrom('mm', 'in'),
  clips: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 14 }),
});

const within = (page: Page): boolean =>
  inked(page).every(
    ({ x, y, width, height }) =>
      x >= 4 && y >= 4 && x + width <= page.width - 4 && y + height <= page.height - 4,
  );

describe('every page', () => {
  it('keeps its words in their zones and off each other, and all ink on the paper', () => {
    fc.assert(
      fc.property(ask, fc.constantFrom('A', 'Z'), fc.constantFrom('a4', 'letter'), (asked, from, paper) => {
        for (const page of aidPages(workedAid(asked), { ...options, from, paper })) {
          expect(layoutFaults(page), page.title).toEqual([]);
          expect(within(page), page.title).toBe(true);
          expect(words(page)).toContain('MEASURE BOTH BARS FIRST');
          if (page.title.includes('turn wheel'))
            expect(words(page)).toContain('end-to-end will not show it.');
          if (!page.title.includes(': aids ')) expect(words(page)).toMatch(/Accuracy: .*no source/);
          for (const { text, zone } of texts(page))
            if (/^(how|notice|ways|stops|unit|hand)$/.test(zone)) expect(text).not.toContain('…');
        }
      }),
      { seed: 42, numRuns: 25 },
    );
  });

  it('names every mark on the tape, or says which have no room', () => {
    fc.assert(
      fc.property(ask, (asked) => {
        const work = workedAid(asked);
        const all = aidPages(work, { ...options, aids: ['tape'] });
        const said = all.map(words).join(' ');
        for (let bend = 1; bend <= work.plan!.rows.length; bend++)
          expect(said).toMatch(new RegExp(`\\bB${bend}\\b`));
        expect(all.flatMap((page) => byName(page.items, 'tape-zero'))).toHaveLength(
          /Not made: marking/.test(said) ? 0 : 1,
        );
      }),
      { seed: 42, numRuns: 25 },
    );
  });
});
