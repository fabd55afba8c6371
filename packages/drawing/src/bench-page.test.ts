import { describe, expect, it } from 'vitest';
import { texts, words, wordsIn } from '../test/texts.ts';
import { bench, dipstick, stairs, worked } from '../test/worked.ts';
import { READABLE } from './set.ts';
import { sheetPages } from './sheet.ts';
import type { SheetOptions } from './sheet-context.ts';

const pagesOf = (of: ReturnType<typeof worked>, over: Partial<SheetOptions> = {}) =>
  sheetPages(of, { checksum: 'a1b2c3d4', ...over });

describe('what a tired fabricator reads', () => {
  it('names no dial where no spring-back is set, beside the table and beside the picture', () => {
    const pictures = (calibrated: boolean): string =>
      pagesOf(worked({ points: dipstick, calibrated }), { pages: ['pictures'] })
        .map(words)
        .join(' ');
    expect(pictures(true)).toContain('DIAL 67°');
    expect(pictures(true)).not.toContain('NOT SET');
    expect(pictures(false)).toContain('BEND 64.5°, DIAL NOT SET');
    expect(pictures(false)).not.toMatch(/DIAL \d/);
  });

  it('is not told to trim or to measure before the last bend is made', () => {
    const pages = pagesOf(worked({ points: stairs(9), radius: 36, clips: [100] }), { pages: ['bench'] });
    expect(wordsIn(pages[0]!, 'after')).toMatch(/^NOT YET: go on with the bends of page 2\./);
    expect(wordsIn(pages[1]!, 'after')).toMatch(/^1\. trim END Z.*End to end.*Clips from finished END A/);
  });

  it('can tell lines apart whose names the typeface cannot print', () => {
    const nameOf = (name: string): string =>
      wordsIn(pagesOf(worked({ points: dipstick, name }))[0]!, 'name').replaceAll(' ', '');
    expect(nameOf('三番目の管')).toBe('line·三番目の管');
    expect(nameOf('Трубка')).toBe('Трубка');
  });

  it('is sent to what stands under the table, also of a tube without bends', () => {
    const full = {
      points: [
        [0, 0, 0],
        [900, 0, 0],
      ],
      cautions: Array.from({ length: 6 }, (_, i) => `Caution ${i}: ${'mind this well '.repeat(4)}`),
    } as const;
    const [page] = pagesOf(worked(full), { pages: ['bench'] });
    expect(wordsIn(page!, 'cautions')).toContain('MORE above, under STRAIGHT TUBE.');
    expect(wordsIn(page!, 'below table')).toContain('Caution 5');
  });

  it('has nothing under seven points in the rows, on any bench', () => {
    const benches = [
      bench,
      null,
      { ...bench, moves: 'bender', stand: 'at-start' } as const,
      { ...bench, plane: 'flat', former: 'near' } as const,
    ];
    for (const one of benches)
      for (const units of ['mm', 'in'] as const)
        for (const page of pagesOf(worked({ points: stairs(14), radius: 36, bench: one, units }), {
          pages: ['bench'],
        }))
          for (const { zone, cap, text } of texts(page).filter((t) =>
            /^row .* (turn|flag|dial|mark)/.test(t.zone),
          ))
            expect({ zone, text, small: cap < READABLE }).toEqual({ zone, text, small: false });
  });
});
