import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aDie, aLine } from '../../../../tests/helpers/a-line.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const selfOf = (points: readonly Vec3[], radius = 36): Finding =>
  workLine(aLine({ points, radius, die: aDie({ radius, minStraight: null, minTail: null }) })).findings.find(
    (f) => f.check === 'self-clearance',
  )!;

/** A U of two 90° corners: its legs lie `gap` apart. */
const u = (gap: number): Vec3[] => [
  [0, 0, 0],
  [300, 0, 0],
  [300, gap, 0],
  [0, gap, 0],
];

describe('self-clearance', () => {
  it('measures a U across its legs', () => {
    const f = selfOf(u(23), 10);
    expect(f).toMatchObject({ verdict: 'pass', limit: 10, unit: 'mm' });
    expect(f.found).toBeCloseTo(23 - 12, 9);
  });

  it('fails a U that is too tight', () => {
    const f = selfOf(u(20), 10);
    expect(f.verdict).toBe('fail');
    expect(f.found).toBeCloseTo(20 - 12, 9);
    expect(f.message).toContain('no nearer than 8 mm');
  });

  it('passes a plain bend', () => {
    expect(
      selfOf([
        [0, 0, 0],
        [200, 0, 0],
        [200, 200, 0],
      ]).verdict,
    ).toBe('pass');
  });

  it('says that a short line cannot come back to itself', () => {
    const f = selfOf([
      [0, 0, 0],
      [30, 0, 0],
    ]);
    // π/2 × (12 + 10)
    expect(f.limit).toBeCloseTo(11 * Math.PI, 9);
    expect(f).toMatchObject({ verdict: 'pass', found: 30 });
    expect(f.message).toContain('too short');
  });
});
