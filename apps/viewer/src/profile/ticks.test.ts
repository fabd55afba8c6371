import { describe, expect, it } from 'vitest';
import { multiples, roundStep } from './ticks.ts';

describe('round numbers along an axis', () => {
  it('go by ones, twos and fives in mm, and by parts of an inch and feet in inches', () => {
    expect([3, 12, 60].map((least) => roundStep(least, 'mm'))).toEqual([5, 20, 100]);
    expect([2, 5, 30, 160].map((least) => roundStep(least, 'in'))).toEqual(
      [25.4 / 8, 25.4 / 4, 50.8, 304.8].map((mm) => expect.closeTo(mm, 9)),
    );
    expect(roundStep(30, 'in-decimal') / 25.4).toBe(2);
  });

  it('stand between the ends', () => {
    expect(multiples(-34, 90, 50)).toEqual([0, 50]);
    expect(multiples(0, 100, 25)).toEqual([0, 25, 50, 75, 100]);
    expect(multiples(1, 4, 5)).toEqual([]);
  });
});
