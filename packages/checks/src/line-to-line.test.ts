import type { Vec3 } from '@runback/geometry';
import type { Line, ResolvedJob } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aBall, aLine, frozen } from '../../../tests/helpers/a-line.ts';
import type { Finding, WorkedJob } from './types.ts';
import { workJob } from './work-job.ts';

const job = (lines: readonly Line[]): ResolvedJob => ({
  title: 'Tender 7',
  revision: null,
  units: 'mm',
  axes: lines[0]!.axes,
  lines,
  runs: [],
  surroundings: lines[0]!.surroundings,
  checksum: 'abc',
});

const between = (worked: WorkedJob): Finding[][] =>
  worked.lines.map((line) => line.findings.filter((f) => f.check === 'line-to-line'));

const along = (y: number): Vec3[] => [
  [0, y, 0],
  [300, y, 0],
  [300, y, 300],
];

describe('line-to-line', () => {
  it('says nothing of a single line', () => {
    expect(between(workJob(job([aLine({ points: along(0) })])))).toEqual([[]]);
  });

  it('measures surface to surface, with the larger limit, a row in both', () => {
    const a = aLine({ id: 'a', points: along(0), lines: 8 });
    const b = aLine({ id: 'b', index: 1, points: along(25), od: 8, lines: 20 });
    const worked = workJob(job([a, b]));
    // 25 − (12 + 8)/2 = 15
    const [[inA], [inB]] = between(worked) as [[Finding], [Finding]];
    expect(inA).toMatchObject({ verdict: 'fail', limit: 20, unit: 'mm', to: 'b' });
    expect(inB).toMatchObject({ verdict: 'fail', limit: 20, to: 'a' });
    expect(inA.found).toBeCloseTo(15, 9);
    expect(inB.found).toBeCloseTo(15, 9);
    const rows = worked.lines.map((line) => line.clearance.filter((r) => r.kind === 'line').map((r) => r.to));
    expect(rows).toEqual([['b'], ['a']]);
    expect(worked.verdict).toBe('fail');
  });

  it('names the tightest when all are clear', () => {
    const lines = [0, 30, 90].map((y, i) => aLine({ id: `l${i}`, index: i, points: along(y) }));
    const [first] = between(workJob(job(lines)));
    expect(first).toMatchObject([{ verdict: 'pass', to: 'l1', limit: 10 }]);
    expect(first![0]!.found).toBeCloseTo(18, 9);
  });

  it('lets the free parts of two ends that join the same thing be as near as their ports', () => {
    const endA = { joins: ['block'], free: 60 };
    const fan: Vec3[] = [
      [0, 15, 0],
      [40, 15, 0],
      [140, 300, 0],
    ];
    const surroundings = [aBall('block', [-60, 0, 0], 40)];
    const lines = (end: { joins?: string[]; free?: number }) => [
      aLine({ id: 'a', points: along(0), radius: 10, endA: end, surroundings }),
      aLine({ id: 'b', index: 1, points: fan, radius: 10, endA: end, surroundings }),
    ];
    const apart = between(workJob(job(lines({}))))[0]![0]!;
    expect(apart.found).toBeCloseTo(3, 9);
    const joined = between(workJob(job(lines(endA))))[0]![0]!;
    expect(joined.found!).toBeGreaterThan(10);
    expect(joined.verdict).toBe('pass');
  });

  it('notes a line that does not exist, which keeps its own findings only', () => {
    const step: Vec3[] = [
      [0, 0, 0],
      [150, 0, 0],
      [150, 60, 0],
      [300, 60, 0],
    ];
    const worked = workJob(
      job([aLine({ id: 'a', points: along(200) }), aLine({ id: 'b', index: 1, points: step })]),
    );
    expect(between(worked)[0]).toMatchObject([{ verdict: 'note', to: 'b', found: null }]);
    expect(worked.lines[1]!.findings.every((f) => f.check === 'corner-fit')).toBe(true);
    expect(worked.lines[1]!.verdict).toBe('fail');
  });

  it('takes frozen lines and gives frozen JSON-able data', () => {
    const worked = workJob(
      frozen(job([aLine({ id: 'a', points: along(0) }), aLine({ id: 'b', points: along(50) })])),
    );
    expect(JSON.parse(JSON.stringify(worked))).toEqual(worked);
    const walk = (value: unknown): boolean =>
      typeof value !== 'object' ||
      value === null ||
      (Object.isFrozen(value) && Object.values(value).every(walk));
    expect(walk(worked)).toBe(true);
  });
});
