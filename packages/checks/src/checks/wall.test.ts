import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [200, 0, 0],
  [200, 200, 0],
  [400, 200, 0],
];
const wallOf = (spec: Partial<LineSpec> = {}): Finding[] =>
  workLine(aLine({ points: POINTS, ...spec })).findings.filter((f) => f.check === 'wall');

describe('wall', () => {
  it('gives ratio, thinning and flattening of the tightest bend', () => {
    const [ratio, thin, flat] = wallOf({ radius: [0, 60, 36, 0] });
    expect(ratio).toMatchObject({ verdict: 'pass', found: 3, limit: 3, unit: 'ratio', bend: 2 });
    // 1 × 36/(36 + 6)
    expect(thin!.found).toBeCloseTo(6 / 7, 12);
    expect(thin!.message).toContain('0.86 mm');
    // R/D = 3: inside 11/10, outside 13/14.
    expect(thin!.message).toContain('0.929 outside, 1.100 inside');
    expect(flat!.found).toBeCloseTo(20 / 3, 12);
    expect(flat).toMatchObject({ verdict: 'pass', limit: 25, unit: 'percent' });
    expect(thin!.basis).toContain('estimate');
    expect(flat!.basis).toContain('estimate');
  });

  it('notes a tight bend and never fails', () => {
    const found = wallOf({ radius: 7 });
    expect(found.map((f) => f.verdict)).toEqual(['note', 'pass', 'note']);
    expect(found[0]!.found).toBeCloseTo(7 / 12, 12);
  });

  it('notes that no least ratio is known', () => {
    expect(wallOf({ minRatio: null })[0]!.verdict).toBe('note');
  });
});
