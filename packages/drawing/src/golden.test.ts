import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Ask, bench, dipstick, finding, stairs, worked } from '../test/worked.ts';
import { sheetPages } from './sheet.ts';
import type { Page } from './types.ts';

/** Numbers in whole micrometres, one item a line: a change can be read in a diff. */
function readable(pages: readonly Page[]): string {
  const short = (_: string, value: unknown): unknown =>
    typeof value === 'number' ? Math.round(value * 1000) / 1000 + 0 : value;
  return pages
    .map((page) => {
      const { items, zones, ...rest } = page;
      return [rest, ...zones, ...items].map((part) => JSON.stringify(part, short)).join('\n');
    })
    .join('\n\n')
    .concat('\n');
}

const cases: Readonly<Record<string, readonly [Ask, 'A' | 'Z']>> = {
  'dipstick-from-a': [{ points: dipstick, clips: [150, 320] }, 'A'],
  'opposite-hand-from-z-failing': [
    {
      points: dipstick,
      opposite: true,
      calibrated: false,
      bench: { ...bench, plane: 'flat', former: 'near', startOn: 'right' },
      findings: [finding('fail', 'Tube is 28.0 mm from exhaust-1; 40 mm wanted.'), finding('pass', 'clear')],
    },
    'Z',
  ],
  'nine-bends-in-inches-no-bench': [
    { points: stairs(9), radius: 36, flared: true, bench: null, units: 'in' },
    'A',
  ],
};

describe('the display list', () => {
  it.each(Object.entries(cases))('%s', (name, [ask, from]) => {
    const file = new URL(`goldens/${name}.txt`, import.meta.url);
    const found = readable(sheetPages(worked(ask), { from, checksum: 'a1b2c3d4', pages: ['bench'] }));
    if (process.env.UPDATE === '1' && !process.env.CI) writeFileSync(file, found);
    if (!existsSync(file))
      throw new Error(`golden ${name} is missing: run once with UPDATE=1 and read what it wrote`);
    expect(found).toBe(readFileSync(file, 'utf8'));
  });
});
