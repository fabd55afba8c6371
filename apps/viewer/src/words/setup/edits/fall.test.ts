import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreesOfFall, FALLS, readFall, sayFall } from './fall.ts';

const degrees = (typed: string): number => {
  const answer = readFall(typed);
  if (!answer.ok) throw new Error(answer.message);
  return answer.value;
};
const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

describe('falls', () => {
  it.each([
    ['1 in 12', 4.763641],
    ['1:12', 4.763641],
    ['1/12', 4.763641],
    ['2 in 24', 4.763641],
    ['0.25 in 12', 1.193489],
    ['2 %', 1.145762],
    ['12', 12],
    ['4.7636', 4.7636],
    ['4.5°', 4.5],
    ['−3', -3],
    ['0', 0],
    ['1 in 0', 90],
  ])('%j is %d degrees', (typed, wanted) => expect(degrees(typed)).toBe(wanted));

  it.each(['', 'steep', '1 in', '4,76', '91', '0 in 0', '1 in 12 in'])(
    '%j is refused with what was expected',
    (typed) => {
      const answer = readFall(typed);
      expect(answer.ok ? '' : answer.expected).toMatch(/degrees/u);
    },
  );

  it('never asks for more than the fall that was meant, nor for a hair less', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (n) => {
        const fall = tan(degrees(`1 in ${n}`));
        expect(fall).toBeLessThanOrEqual(1 / n);
        expect(fall).toBeGreaterThan(1 / n - 4e-8);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('are said as they were meant', () => {
    for (const n of [4, 6, 12, 24, 48, 60, 100]) expect(sayFall(degreesOfFall(1, n))).toBe(`1 in ${n}`);
    expect(sayFall(4.7636)).toBe('1 in 12');
    expect(sayFall(12)).toBe('about 1 in 4.7');
    expect(sayFall(1)).toBe('about 1 in 57');
    expect(sayFall(0)).toBe('level');
    expect(sayFall(80)).toBe('');
    expect(sayFall(-2)).toBe('');
  });

  it('to choose from say the fall they write', () => {
    for (const { label, degrees: value } of FALLS) expect(label.startsWith(sayFall(value))).toBe(true);
  });
});
