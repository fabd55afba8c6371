import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatDegrees,
  formatInch,
  formatInchFraction,
  formatLength,
  formatMm,
  type InchDenominator,
} from './format.ts';
import { LENGTH_PATTERN, parseLength, toDegrees, toRadians } from './units.ts';

describe('parseLength', () => {
  test.each([
    ['82.5 mm', 'in', 82.5],
    ['82.5mm', 'in', 82.5],
    ['82.5', 'mm', 82.5],
    ['3 7/32 in', 'mm', 81.75625],
    ['3 7/32', 'in', 81.75625],
    ['3 7/32', 'mm', 3.21875],
    ['-3 7/32', 'in', -81.75625],
    ['−3 7/32"', 'mm', -81.75625],
    ['7/32"', 'mm', 5.55625],
    ['4\' 2 1/2"', 'mm', 1282.7],
    ['4′ 2 1/2″', 'mm', 1282.7],
    ['-4\' 2 1/2"', 'mm', -1282.7],
    ['4 ft 2.5 in', 'mm', 1282.7],
    ["4'", 'mm', 1219.2],
    ['1 ft', 'in', 304.8],
    ['.5 in', 'mm', 12.7],
    ['5.', 'mm', 5],
    ['1.5 cm', 'in', 15],
    ['1.5 m', 'in', 1500],
    ['0', 'in', 0],
    ['+2 mm', 'in', 2],
    ['  2   mm  ', 'in', 2],
    ['0.1 in', 'mm', 2.54],
  ] as const)('%s in a job in %s is %d mm', (text, unit, mm) => {
    expect(parseLength(text, unit)).toBe(mm);
  });

  test('never gives −0', () => {
    expect(Object.is(parseLength('-0', 'mm'), 0)).toBe(true);
  });

  test.each([
    ['82,5', 'a comma is not used'],
    ['1,250 mm', 'a comma is not used'],
    ['1/0', 'cannot have 0 below'],
    ['3-7/32', 'not a length'],
    ['3 7', 'not a length'],
    ['3 7/32 1/2', 'not a length'],
    ['3 mm 2', 'not a length'],
    ['2 in 3 ft', 'not a length'],
    ['- - 3', 'not a length'],
    ['1e3', 'not a length'],
    ['12 MM', 'not a length'],
    ['', 'not a length'],
    ['½', 'not a length'],
    ['9'.repeat(41), 'not a length'],
  ])('%s is refused', (text, hint) => {
    expect(() => parseLength(text, 'mm')).toThrow(RangeError);
    expect(() => parseLength(text, 'mm')).toThrow(hint);
  });

  test('the published pattern and the reading agree, but for a 0 below the line and overlong text', () => {
    const pattern = new RegExp(LENGTH_PATTERN, 'u');
    const bit = fc.constantFrom('3', '12', '7/32', '.5', '-', ' ', "'", '"', 'mm', 'in', 'ft', 'm', '/', '.');
    fc.assert(
      fc.property(fc.array(bit, { maxLength: 8 }), (bits) => {
        const text = bits.join('');
        fc.pre(text.length <= 40);
        const reads = (): number => parseLength(text, 'mm');
        if (pattern.test(text)) expect(Number.isFinite(reads())).toBe(true);
        else expect(reads).toThrow(RangeError);
      }),
      { seed: 42, numRuns: 2000 },
    );
  });
});

describe('formats', () => {
  test.each([
    [82.5, 1, '82.5'],
    [82, 1, '82'],
    [100, 1, '100'],
    [82.549, 2, '82.55'],
    [-0.001, 1, '0'],
    [0, 1, '0'],
    [-12.25, 2, '-12.25'],
    [1200, 0, '1200'],
  ])('%d mm with %d decimals is %s', (mm, decimals, text) => {
    expect(formatMm(mm, decimals)).toBe(text);
  });

  test.each([
    [81.75625, 32, '3 7/32'],
    [-81.75625, 32, '-3 7/32'],
    [9.525, 32, '3/8'],
    [76.2, 32, '3'],
    [25.3, 32, '1'],
    [0.1, 32, '0'],
    [-0.1, 32, '0'],
    [0.4, 64, '1/64'],
    [1.5875, 16, '1/16'],
  ] as const)('%d mm to 1/%i in is %s', (mm, denominator, text) => {
    expect(formatInchFraction(mm, denominator)).toBe(text);
  });

  test('a fraction is reduced, within half a step, and reads back to what it says', () => {
    const lengths = fc.double({ min: -20_000, max: 20_000, noNaN: true });
    const steps = fc.constantFrom<InchDenominator>(16, 32, 64);
    fc.assert(
      fc.property(lengths, steps, (mm, denominator) => {
        const text = formatInchFraction(mm, denominator);
        expect(text).not.toMatch(/[02468]\/\d*[02468]$/u);
        const off = Math.abs(parseLength(text, 'in') - mm);
        expect(off).toBeLessThanOrEqual((25.4 / denominator / 2) * (1 + 1e-9));
        expect(formatInchFraction(parseLength(text, 'in'), denominator)).toBe(text);
      }),
      { seed: 42, numRuns: 1000 },
    );
  });

  test("with units, in the job's way", () => {
    expect(formatLength(82.55, 'mm')).toBe('82.5 mm');
    expect(formatLength(82.55, 'in')).toBe('3 1/4 in');
    expect(formatLength(82.55, 'in', { denominator: null })).toBe('3.25 in');
    expect(formatLength(82.55, 'mm', { decimals: 2, bare: true })).toBe('82.55');
    expect(formatInch(25.4)).toBe('1');
    expect(formatDegrees(-0.000001)).toBe('0');
    expect(formatDegrees(Math.PI / 2)).toBe('90');
  });

  test('what is not finite is refused', () => {
    expect(() => formatMm(Number.NaN)).toThrow(RangeError);
    expect(() => formatInchFraction(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

describe('angles', () => {
  test('multiples of 90° are exact, there and back', () => {
    for (let quarters = -8; quarters <= 8; quarters += 1) {
      expect(toRadians(quarters * 90)).toBe(quarters * (Math.PI / 2));
      expect(toDegrees(toRadians(quarters * 90))).toBe(quarters * 90);
    }
  });

  test('there and back is within rounding', () => {
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (degrees) => {
        expect(toDegrees(toRadians(degrees))).toBeCloseTo(degrees, 11);
      }),
      { seed: 42, numRuns: 500 },
    );
  });
});
