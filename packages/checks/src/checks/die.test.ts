import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aDie, aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [200, 0, 0],
  [200, 200, 0],
];
const dieOf = (spec: Omit<LineSpec, 'points'>): Finding[] =>
  workLine(aLine({ points: POINTS, ...spec })).findings.filter((f) => f.check === 'die');

describe('die', () => {
  it('passes with the largest dial named: 1.028 × 90 + 0.4', () => {
    const found = dieOf({ die: aDie({ springBack: { factor: 1.028, fixedDeg: 0.4 } }) });
    expect(found.map((f) => f.verdict)).toEqual(['pass']);
    expect(found[0]).toMatchObject({
      limit: 180,
      unit: 'deg',
      bend: 1,
      path: 'benders.bench.dies[0].maxAngle',
    });
    expect(found[0]!.found).toBeCloseTo(92.92, 9);
  });

  it('notes that nothing is calibrated', () => {
    const found = dieOf({});
    expect(found.map((f) => f.verdict)).toContain('note');
    expect(found.some((f) => f.message.startsWith('NOT CALIBRATED'))).toBe(true);
  });

  it('fails a dial beyond the reach of the tool, though the bend itself is within it', () => {
    const die = aDie({ maxAngleDeg: 91, springBack: { factor: 1.028, fixedDeg: 0.4 } });
    const found = dieOf({ die });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ verdict: 'fail', limit: 91 });
  });

  it('fails a radius that no die makes, and cures it with the nearest that fits', () => {
    const spec = { radius: 50, die: aDie({ radius: 36 }), dies: [aDie({ radius: 60 })] };
    const found = dieOf(spec);
    const bad = found.find((f) => f.verdict === 'fail')!;
    expect(bad).toMatchObject({ found: 50, unit: 'mm', bend: 1, path: 'lines[0].points[1].radius' });
    expect(bad.message).toContain('36 mm and 60 mm');
    expect(bad.cure!.edits).toEqual([{ path: 'lines[0].points[1].radius', value: 60 }]);
    const cured = workLine(applyEdits(aLine({ points: POINTS, ...spec }), bad.cure!.edits));
    expect(cured.findings.some((f) => f.check === 'die' && f.verdict === 'fail')).toBe(false);
  });

  it('fails a rack without a die for the tube', () => {
    const found = dieOf({ od: 10, die: aDie({ od: 12 }) });
    expect(found[0]).toMatchObject({ verdict: 'fail', found: 0, limit: 1, path: 'benders.bench.dies' });
    expect(found[0]!.message).toContain('OD 10 mm');
  });

  it('only notes when no bender is named', () => {
    expect(dieOf({ die: null }).map((f) => f.verdict)).toEqual(['note']);
  });

  it('fails a radius of half the OD or less', () => {
    const found = dieOf({ radius: 6 });
    expect(found.find((f) => f.verdict === 'fail')).toMatchObject({ found: 6, limit: 6, unit: 'mm' });
    expect(dieOf({ radius: 6.01 }).some((f) => f.verdict === 'fail')).toBe(false);
  });

  it('has nothing to judge on a straight tube', () => {
    const [f] = workLine(
      aLine({
        points: [
          [0, 0, 0],
          [100, 0, 0],
        ],
      }),
    ).findings.filter((x) => x.check === 'die');
    expect(f).toMatchObject({ verdict: 'pass', found: 0, unit: 'count' });
  });
});
