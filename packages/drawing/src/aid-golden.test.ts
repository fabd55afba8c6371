import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type AskAid, workedAid } from '../test/aids.ts';
import { MIN_MAX, mark, runOf, stickSheet, withStick } from '../test/stick.ts';
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

const sticks: Readonly<Record<string, () => readonly Page[]>> = {
  'aids-stick-strip': () =>
    aidPages(withStick(workedAid({ points: dipstick })), { checksum: 'a1b2c3d4', aids: ['stick'] }),
  'aids-stick-strip-of-run-in-inches-letter': () =>
    aidPages(workedAid({ points: dipstick, units: 'in' }), {
      checksum: 'a1b2c3d4',
      aids: ['stick'],
      paper: 'letter',
      runs: [runOf(['line'], { stick: stickSheet({ marks: [...MIN_MAX, mark('OVER', 311.05)] }) })],
    }),
};

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
  const lines = Object.entries(cases).map(
    ([name, [ask, options]]) =>
      [name, () => aidPages(workedAid(ask), { checksum: 'a1b2c3d4', ...options })] as const,
  );
  it.each([...lines, ...Object.entries(sticks)])('%s', (name, make) => {
    const file = new URL(`goldens/${name}.txt`, import.meta.url);
    const found = readable(make());
    if (process.env.UPDATE === '1' && !process.env.CI) writeFileSync(file, found);
    if (!existsSync(file))
      throw new Error(`golden ${name} is missing: run once with UPDATE=1 and read what it wrote`);
    expect(found).toBe(readFileSync(file, 'utf8'));
  });
});
