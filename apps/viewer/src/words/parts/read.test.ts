import fc from 'fast-check';
import { parseLength } from 'runback';
import { describe, expect, it } from 'vitest';
import { readAngle, readLength, readText, written } from './read.ts';

describe('readLength', () => {
  it('keeps a plain number as a number', () => {
    for (const [typed, value] of [
      ['82.5', 82.5],
      [' -3 ', -3],
      ['−3', -3],
      ['+.5', 0.5],
      ['82.', 82],
      ['-0', 0],
    ] as const)
      expect(readLength(typed, { units: 'mm' })).toEqual({ ok: true, value });
  });

  it('keeps what has a unit or a fraction as it was typed', () => {
    for (const typed of ['3 7/32 in', '4\' 2"', '82.5 mm', '3 7/32'])
      expect(readLength(`  ${typed} `, { units: 'in' })).toEqual({ ok: true, value: typed });
  });

  it('says what was expected, in the units of the job', () => {
    const no = readLength('abc', { units: 'in' });
    expect(no).toEqual({ ok: false, words: expect.stringContaining('3 7/32') });
    expect(readLength('82,5', { units: 'mm' })).toEqual({
      ok: false,
      words: expect.stringContaining('comma'),
    });
    expect(readLength('1/0', { units: 'mm' })).toEqual({
      ok: false,
      words: expect.stringContaining('fraction'),
    });
    expect(readLength('1e3', { units: 'mm' }).ok).toBe(false);
  });

  it('wants a value unless it is optional, and the sign asked for', () => {
    expect(readLength(' ', { units: 'mm' }).ok).toBe(false);
    expect(readLength(' ', { units: 'mm', optional: true })).toEqual({ ok: true, value: undefined });
    expect(readLength('0', { units: 'mm', sign: 'more than 0' }).ok).toBe(false);
    expect(readLength('-1/2 in', { units: 'mm', sign: 'not negative' }).ok).toBe(false);
    expect(readLength('0', { units: 'mm', sign: 'not negative' })).toEqual({ ok: true, value: 0 });
  });

  it('reads what it shows: any number of a job comes back the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -900_000_000, max: 900_000_000 }),
        fc.integer({ min: 0, max: 9 }),
        (n, places) => {
          const value = n / 10 ** places;
          const read = readLength(written(value), { units: 'mm' });
          expect(read).toEqual({ ok: true, value: value + 0 });
          expect(parseLength(written(value), 'mm')).toBeCloseTo(value, 9);
        },
      ),
      { seed: 4711, numRuns: 500 },
    );
  });
});

describe('readAngle', () => {
  const range = { lowest: -90, highest: 90 };

  it('takes degrees with or without their sign', () => {
    for (const typed of ['12.5', '12.5°', ' 12.5 deg ', '12.5 degrees'])
      expect(readAngle(typed, range)).toEqual({ ok: true, value: 12.5 });
  });

  it('says the range', () => {
    for (const typed of ['91', '-90.1', 'x', ''])
      expect(readAngle(typed, range)).toEqual({
        ok: false,
        words: expect.stringContaining('from -90 to 90'),
      });
    expect(readAngle('', { ...range, optional: true })).toEqual({ ok: true, value: undefined });
    expect(readAngle('1,5', range)).toEqual({ ok: false, words: expect.stringContaining('comma') });
  });
});

describe('readText', () => {
  it('cuts spaces around it and counts', () => {
    expect(readText('  behind no. 2 ')).toEqual({ ok: true, value: 'behind no. 2' });
    expect(readText('   ')).toEqual({ ok: true, value: undefined });
    expect(readText('', { optional: false }).ok).toBe(false);
    expect(readText('x'.repeat(201))).toEqual({ ok: false, words: 'at most 200 characters, this has 201' });
  });
});

it('shows texts as they stand, and numbers without exponents', () => {
  expect(written('1\' 5 1/2"')).toBe('1\' 5 1/2"');
  expect(written(undefined)).toBe('');
  expect(written(0.0000001)).toBe('0.0000001');
  expect(written(-0)).toBe('0');
});
