import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FLOW, PRESSURE, readFlow, readPressure, readSlope, SLOPE_PATTERN } from './quantities.ts';

const numberOf = (read: ReturnType<typeof readSlope>): number => (read.ok ? read.value : Number.NaN);
const hintOf = (read: ReturnType<typeof readSlope>): string => (read.ok ? '' : read.hint);

describe('falls', () => {
  test.each([
    ['1/4 in/ft', 1, 48],
    ['1/4"/ft', 1, 48],
    ['1/4 in per ft', 1, 48],
    ['1/8 in per 12 in', 1, 96],
    ['1/8 in 12', 1, 96],
    ['1 1/2 in/ft', 1, 8],
    ['6 in/100 ft', 1, 200],
    ['1/4 in per 15 ft', 1, 720],
    ['2 %', 1, 50],
    ['2%', 1, 50],
    ['1 1/2 %', 3, 200],
    ['0.1 %', 1, 1000],
    ['1:48', 1, 48],
    ['1 : 48', 1, 48],
    ['1 in 48', 1, 48],
    ['1:57.29', 100, 5729],
    ['20 mm/m', 1, 50],
    ['2 cm/m', 1, 50],
    [' 5 mm per m ', 1, 200],
    ['0 %', 0, 1],
  ])('%s is the very fraction %d:%d', (text, rise, run) => {
    expect(numberOf(readSlope(text))).toBe(Math.atan(rise / run));
    expect(new RegExp(SLOPE_PATTERN, 'u').test(text)).toBe(true);
  });

  test('a rise is a fall below level, and level is never −0', () => {
    expect(numberOf(readSlope('-2 %'))).toBe(-Math.atan(0.02));
    expect(numberOf(readSlope('−1:48'))).toBe(-Math.atan(1 / 48));
    expect(Object.is(numberOf(readSlope('-0 %')), 0)).toBe(true);
  });

  test.each([
    ['2,5 %', 'a comma is not used'],
    ['1:0', '0 below its line'],
    ['1/0 in/ft', '0 below its line'],
    ['1 in/0 ft', '0 below its line'],
    ['12', 'not a fall'],
    ['12°', 'not a fall'],
    ['1/4 in', 'not a fall'],
    ['1in48', 'not a fall'],
    ['1:1/2', 'not a fall'],
    ['2 % %', 'not a fall'],
    ['', 'not a fall'],
    [`1:${'4'.repeat(60)}`, 'not a fall'],
  ])('%s is refused: %s', (text, hint) => {
    expect(hintOf(readSlope(text))).toContain(hint);
  });

  test('the same fall written four ways is one number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), (mm) => {
        const ways = [`${mm} mm/m`, `${mm}:1000`, `${mm} in 1000`, `${mm}/10 %`];
        expect(new Set(ways.map((way) => numberOf(readSlope(way)))).size).toBe(1);
      }),
      { seed: 42, numRuns: 200 },
    );
  });
});

describe('pressures', () => {
  test.each([
    ['0.4 MPa', 0.4],
    ['4 bar', 0.4],
    ['350 kPa', 0.35],
    ['350kPa', 0.35],
    ['2 1/2 bar', 0.25],
    ['3000 psi', 20.684271879505083],
  ])('%s is %d MPa', (text, mpa) => {
    expect(numberOf(readPressure(text))).toBeCloseTo(mpa, 12);
    expect(new RegExp(PRESSURE.pattern, 'u').test(text)).toBe(true);
  });

  test.each([
    ['3,000 psi', 'a comma is not used'],
    ['60', 'not understood: write MPa, or a pressure'],
    ['60 PSI', 'not understood'],
    ['-4 bar', 'not understood'],
    ['1/0 bar', '0 below its line'],
    ['constructor', 'not understood'],
  ])('%s is refused: %s', (text, hint) => {
    expect(hintOf(readPressure(text))).toContain(hint);
  });
});

describe('flows', () => {
  test.each([
    ['8 L/min', 8],
    ['8 l/min', 8],
    ['90 L/h', 1.5],
    ['0.2 l/s', 12],
    ['2 gal/min', 7.570823568],
    ['2 gpm', 7.570823568],
    ['60 gal/h', 3.785411784],
  ])('%s is %d litres per minute', (text, litres) => {
    expect(numberOf(readFlow(text))).toBeCloseTo(litres, 12);
    expect(new RegExp(FLOW.pattern, 'u').test(text)).toBe(true);
  });

  test('a flow without its unit is refused', () => {
    expect(hintOf(readFlow('8'))).toContain('litres per minute');
  });
});
