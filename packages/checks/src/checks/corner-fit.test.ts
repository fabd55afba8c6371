import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aDie, aLine } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import { workLine } from '../work-line.ts';

/** A step of 60 between two 90° corners of radius 36: each takes 36 of the leg, so 72 is needed. */
const STEP: readonly Vec3[] = [
  [0, 0, 0],
  [150, 0, 0],
  [150, 60, 0],
  [300, 60, 0],
];

describe('corner-fit', () => {
  it('says how many corners were rounded when all fit', () => {
    const worked = workLine(
      aLine({
        points: [
          [0, 0, 0],
          [200, 0, 0],
          [200, 200, 0],
        ],
      }),
    );
    expect(worked.findings.find((f) => f.check === 'corner-fit')).toMatchObject({
      verdict: 'pass',
      found: 1,
      unit: 'count',
    });
  });

  it('names the leg, what it needs and the largest radius there, and nothing else is said of the line', () => {
    const worked = workLine(aLine({ points: STEP }));
    expect(worked).toMatchObject({
      verdict: 'fail',
      centreline: null,
      plan: null,
      slope: null,
      clearance: [],
    });
    expect(new Set(worked.findings.map((f) => f.check))).toEqual(new Set(['corner-fit']));
    for (const f of worked.findings) {
      expect(f.verdict).toBe('fail');
      expect(f.found).toBeCloseTo(60, 9);
      expect(f.limit).toBeCloseTo(72, 9);
      expect(f.message).toContain('60 mm long and needs 72 mm');
      expect(f.message).toContain('24 mm');
      expect(f.path).toMatch(/^lines\[0\]\.points\[[12]\]\.at$/);
    }
  });

  it('offers a move that cures, of less than the 12 mm that are missing or just that', () => {
    const line = aLine({ points: STEP });
    const [first] = workLine(line).findings;
    expect(first!.cure).not.toBeNull();
    const cured = applyEdits(line, first!.cure!.edits);
    expect(workLine(cured).centreline).not.toBeNull();
    const moved = cured.corners.map((c, i) => Math.hypot(...c.at.map((x, k) => x - line.corners[i]!.at[k]!)));
    expect(Math.max(...moved)).toBeLessThanOrEqual(12.02);
    expect(Math.max(...moved)).toBeGreaterThan(1);
  });

  it('writes the move in inches, and on the line that a mirrored one mirrors', () => {
    const inch = aLine({ points: STEP, units: 'in' });
    const cure = workLine(inch).findings[0]!.cure!;
    expect(workLine(applyEdits(inch, cure.edits)).centreline).not.toBeNull();
    const far = Math.max(...(cure.edits[0]!.value as number[]).map(Math.abs));
    expect(far).toBeLessThan(13);

    const mirror = { of: 'right', axis: 1, offset: 5 } as const;
    const points = STEP.map(([x, y, z]): Vec3 => [x, 10 - y, z]);
    const other = aLine({ points, mirror, index: 1, source: 'lines[0]' });
    const mirrored = workLine(other).findings;
    const straight = workLine(aLine({ points: STEP })).findings;
    expect(mirrored.map((f) => [f.found, f.limit, f.path])).toEqual(
      straight.map((f) => [f.found, f.limit, f.path]),
    );
    const edits = mirrored[0]!.cure!.edits;
    expect(edits[0]!.path).toMatch(/^lines\[0\]/);
    expect(workLine(applyEdits(other, edits)).centreline).not.toBeNull();
    expect(mirrored[0]!.cure!.text).toContain('"right"');
  });

  it('cannot round a corner that turns straight back', () => {
    const [f] = workLine(
      aLine({
        points: [
          [0, 0, 0],
          [200, 0, 0],
          [50, 0, 0],
        ],
      }),
    ).findings;
    expect(f).toMatchObject({ check: 'corner-fit', verdict: 'fail', unit: 'deg', found: 180 });
  });

  it('fits at equality: a leg that two bends use up whole', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [150, 0, 0],
      [150, 72, 0],
      [300, 72, 0],
    ];
    expect(workLine(aLine({ points, die: aDie({ minStraight: null }) })).centreline).not.toBeNull();
  });
});
