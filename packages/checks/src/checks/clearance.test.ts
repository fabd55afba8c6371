import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aBall, aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [400, 0, 0],
  [400, 400, 0],
];
const clearanceOf = (spec: Omit<LineSpec, 'points'>): Finding[] =>
  workLine(aLine({ points: POINTS, ...spec })).findings.filter((f) => f.check === 'clearance');

describe('clearance', () => {
  it('measures from the tube surface to the solid', () => {
    // Ball of 20 whose centre is 60 beside the first straight: 60 − 20 − 6 = 34.
    const [f] = clearanceOf({ surroundings: [aBall('exhaust', [100, 60, 0], 20)] });
    expect(f).toMatchObject({ verdict: 'fail', limit: 40, unit: 'mm', to: 'exhaust', bend: null });
    expect(f!.found).toBeCloseTo(34, 9);
    expect(f!.at).toBeCloseTo(100, 3);
    expect(f!.path).toBe('surroundings[0].keepOff');
    expect(f!.message).toContain('passes "exhaust" at 34 mm between end A and B1 (40 mm wanted: hot)');
  });

  it('says by how much they overlap', () => {
    const [f] = clearanceOf({ surroundings: [aBall('exhaust', [100, 20, 0], 20)] });
    expect(f!.found).toBeCloseTo(-6, 9);
    expect(f!.message).toContain('overlaps "exhaust" by 6 mm');
  });

  it('takes what the line says of a surrounding over what the surrounding says', () => {
    const [f] = clearanceOf({ surroundings: [aBall('exhaust', [100, 60, 0], 20)], keepOff: { exhaust: 30 } });
    expect(f).toMatchObject({ verdict: 'pass', limit: 30, path: 'lines[0].clearance.to.exhaust' });
  });

  it('names the tightest when all are clear, and lists every one as a row', () => {
    const surroundings = [aBall('far', [100, 300, 0], 20), aBall('near', [100, 80, 0], 20)];
    const worked = workLine(aLine({ points: POINTS, surroundings }));
    const found = worked.findings.filter((f) => f.check === 'clearance');
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ verdict: 'pass', to: 'near' });
    const rows = worked.clearance.filter((r) => r.kind === 'surrounding');
    expect(rows.map((r) => [r.to, Math.round(r.distance), r.keepOff])).toEqual([
      ['far', 274, 40],
      ['near', 54, 40],
    ]);
  });

  it('leaves out the free part of an end that joins', () => {
    const block = aBall('block', [-10, 0, 0], 10);
    expect(clearanceOf({ surroundings: [block] })[0]!.verdict).toBe('fail');
    // 45 from the block's surface at the end of the free part, less half the OD: 39.
    const [f] = clearanceOf({ surroundings: [block], endA: { joins: ['block'], free: 45 } });
    expect(f!.found).toBeCloseTo(39, 9);
    expect(f!.at).toBeCloseTo(45, 3);
    const [near] = clearanceOf({ surroundings: [block], endZ: { joins: ['block'], free: 45 } });
    expect(near!.found).toBeCloseTo(-6, 9);
  });

  it('notes a surrounding that the free parts take out altogether', () => {
    const worked = workLine(
      aLine({
        points: POINTS,
        surroundings: [aBall('block', [0, 0, 0], 10)],
        endA: { joins: ['block'], free: 900 },
      }),
    );
    expect(worked.findings.filter((f) => f.check === 'clearance')).toMatchObject([
      { verdict: 'note', to: 'block' },
    ]);
    expect(worked.clearance.some((r) => r.kind === 'surrounding')).toBe(false);
  });

  it('is a note without surroundings', () => {
    expect(clearanceOf({})).toMatchObject([{ verdict: 'note', found: null }]);
  });

  it('cures with a push of a nearby corner straight away from it', () => {
    const spec = { points: POINTS, surroundings: [aBall('exhaust', [300, 60, 0], 20)] };
    const line = aLine(spec);
    const bad = workLine(line).findings.find((f) => f.check === 'clearance' && f.verdict === 'fail');
    expect(bad!.cure!.edits[0]!.path).toBe('lines[0].points[1].at');
    const after = workLine(applyEdits(line, bad!.cure!.edits)).findings.find((f) => f.check === 'clearance');
    expect(after!.verdict).toBe('pass');
    expect(after!.found).toBeLessThan(40.1);
  });
});
