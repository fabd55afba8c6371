import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type AskAid, workedAid } from '../test/aids.ts';
import { bench, dipstick, finding, stairs } from '../test/worked.ts';
import type { AidOptions } from './aid-context.ts';
import { aidPages } from './aid-pages.ts';
import type { Page } from './types.ts';

/** Numbers in whole micrometres, one item a line: a change can be read in a diff. */
function readable(pages: readonly Page[]): string {
  const short = (_: string, value: unknown): unknown =>
    typeof value === 'number' ? Math.round(value * 1000) / 1000 + 0 : value;
  return pages
    .map(({ items, zones, ...rest }) =>
      [rest, ...zones, ...items].map((part) => JSON.stringify(part, short)).join('\n'),
    )
    .join('\n\n')
    .concat('\n');
}

const cases: Readonly<Record<string, readonly [AskAid, Partial<AidOptions>]>> = {
  'aids-dipstick-from-a': [{ points: dipstick, clips: [150, 320] }, {}],
  'aids-failing-from-z-letter': [
    {
      points: dipstick,
      opposite: true,
      bench: { ...bench, stand: 'behind-free' },
      findings: [finding('fail', 'Tube is 28.0 mm from exhaust-1; 40 mm wanted.')],
    },
    { from: 'Z', paper: 'letter' },
  ],
  'aids-nine-bends-in-inches': [
    { points: stairs(9), radius: 36, flared: true, bench: null, units: 'in' },
    { aids: ['tape', 'wheel', 'cards'] },
  ],
};

describe('the display list of the aids', () => {
  it.each(Object.entries(cases))('%s', (name, [ask, options]) => {
    const file = new URL(`goldens/${name}.txt`, import.meta.url);
    const found = readable(aidPages(workedAid(ask), { checksum: 'a1b2c3d4', ...options }));
    if (process.env.UPDATE === '1' && !process.env.CI) writeFileSync(file, found);
    if (!existsSync(file))
      throw new Error(`golden ${name} is missing: run once with UPDATE=1 and read what it wrote`);
    expect(found).toBe(readFileSync(file, 'utf8'));
  });
});
