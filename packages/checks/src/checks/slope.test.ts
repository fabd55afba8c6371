import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aDie, aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const slopeOf = (spec: LineSpec): Finding[] =>
  workLine(aLine(spec)).findings.filter((f) => f.check === 'slope');
const RAD = Math.PI / 180;
/** Falls 1 in 10 over 300, then 1 in 5 over 300, forward. */
const FALLING: readonly Vec3[] = [
  [0, 0, 100],
  [300, 0, 70],
  [600, 0, 10],
];

describe('slope', () => {
  it('is the smallest fall, at rest and in the worst attitude, named in words', () => {
    const drain = { to: 'Z', minSlopeDeg: 5, tiltedDeg: 0 } as const;
    const attitudes = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;
    const [rest, worst] = slopeOf({ points: FALLING, drain, attitudes });
    const fall = Math.atan(0.1) / RAD;
    expect(rest).toMatchObject({
      verdict: 'pass',
      limit: 5,
      unit: 'deg',
      path: 'lines[0].drain.minSlope',
      bend: null,
    });
    expect(rest!.found).toBeCloseTo(fall, 9);
    expect(rest!.message).toContain('between end A and B1');
    expect(worst).toMatchObject({ verdict: 'pass', limit: 0, path: 'lines[0].drain.minSlopeTilted' });
    // Down in body axes at pitch p and roll r, against the fall: cos f·sin p + sin f·cos p·cos r.
    const [f, p, r] = [Math.atan(0.1), -5 * RAD, 3 * RAD];
    const sine = Math.cos(f) * Math.sin(p) + Math.sin(f) * Math.cos(p) * Math.cos(r);
    expect(worst!.found).toBeCloseTo(Math.asin(sine) / RAD, 6);
    expect(worst!.message).toMatch(/nose up 5° and (right|left) side down 3°/);
  });

  it('passes at the limit at rest and fails level in an attitude', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, 0],
      [400, 50, 0],
    ];
    const [rest, worst] = slopeOf({ points, drain: { to: 'Z', minSlopeDeg: 0, tiltedDeg: 0 } });
    expect([rest!.verdict, worst!.verdict]).toEqual(['pass', 'fail']);
  });

  it('finds the worst place inside a bend', () => {
    // Down, then level through the bottom of a bend and up again: the tangent is worst where the arc ends.
    const points: Vec3[] = [
      [0, 0, 200],
      [0, 0, 0],
      [200, 0, 20],
    ];
    const [rest] = slopeOf({ points, drain: { to: 'Z', minSlopeDeg: 0 } });
    expect(rest!.verdict).toBe('fail');
    expect(rest!.found).toBeCloseTo(-Math.atan(0.1) / RAD, 9);
  });

  it('cures a failure with the shortest raise or drop of one inner point', () => {
    const spec: LineSpec = {
      points: [
        [0, 0, 100],
        [300, 0, 99],
        [600, 100, 10],
      ],
      drain: { to: 'Z', minSlopeDeg: 3 },
      die: aDie({ minStraight: null, minTail: null }),
    };
    const line = aLine(spec);
    const bad = slopeOf(spec)[0]!;
    expect(bad).toMatchObject({ verdict: 'fail', limit: 3 });
    expect(bad.cure!.edits).toHaveLength(1);
    const value = bad.cure!.edits[0]!.value as number[];
    // 3° over 300 is a drop of 15.72, rounded to hundredths: from 100 to 84.28.
    expect(value.slice(0, 2)).toEqual([300, 0]);
    expect(value[2]).toBeCloseTo(100 - 300 * Math.tan(3 * RAD), 1);
    const after = workLine(applyEdits(line, bad.cure!.edits)).findings.find((f) => f.check === 'slope')!;
    expect(after.verdict).toBe('pass');
    expect(after.found).toBeLessThan(3.01);
  });

  it('may be taken for a note by the service, at rest and in attitudes apart', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, 10],
      [400, 50, 20],
    ];
    const drain = { to: 'Z', minSlopeDeg: 1 } as const;
    const notes = [{ check: 'slope-tilted', reason: 'a pump keeps it full' }];
    const attitudes = { kind: 'cone', tilt: 2 * RAD } as const;
    const [rest, worst] = slopeOf({ points, drain, notes, attitudes });
    expect([rest!.verdict, worst!.verdict]).toEqual(['fail', 'note']);
    expect(worst!.message).toContain('a pump keeps it full');
  });

  it('is a note without a drain where the service lives by it, and silent elsewhere', () => {
    expect(slopeOf({ points: FALLING, service: 'dipstick' }).map((f) => f.verdict)).toEqual(['note']);
    expect(slopeOf({ points: FALLING, service: 'general' })).toEqual([]);
    expect(workLine(aLine({ points: FALLING })).slope).toBeNull();
  });

  it('names the rule or the fall as written that set its limit', () => {
    const line = aLine({ points: FALLING, drain: { to: 'Z', minSlopeDeg: 1 } });
    const by = (source: string, value: number): string =>
      workLine({
        ...line,
        drain: { ...line.drain!, minSlope: { value, source, path: 'lines[0].drain.rule' } },
      }).findings.find((f) => f.check === 'slope')!.message;
    expect(by('a code: small pipe (1:48)', Math.atan(1 / 48))).toContain(
      '1.19° (a code: small pipe (1:48)) wanted',
    );
    expect(by('the job: 1 in 10', Math.atan(1 / 10))).toContain('5.71° (the job: 1 in 10) wanted');
    expect(by('the job', Math.atan(1 / 10))).toContain(' 5.71° wanted');
    // Compared on the fraction: the line falls 1 in 10.
    const verdict = (rise: number): string =>
      workLine({
        ...line,
        drain: { ...line.drain!, minSlope: { value: Math.atan(rise), source: 'the job', path: null } },
      }).findings.find((f) => f.check === 'slope')!.verdict;
    expect([verdict(1 / 10), verdict(0.1001)]).toEqual(['pass', 'fail']);
  });

  it('lets a line that drains to both ends have its crest', () => {
    const hump: Vec3[] = [
      [0, 0, 0],
      [200, 0, 60],
      [400, 0, 0],
    ];
    const verdicts = slopeOf({ points: hump, drain: { to: 'both', minSlopeDeg: 0 } }).map((f) => f.verdict);
    expect(verdicts).toEqual(['pass']);
  });

  it('is told once of a line that is only ever level', () => {
    const level = { kind: 'box', pitch: [0, 0], roll: [0, 0] } as const;
    const drain = { to: 'Z', minSlopeDeg: 1 } as const;
    const [only, ...more] = slopeOf({ points: FALLING, drain });
    expect(only!.message).toMatch(
      /^At rest \(the job gives no attitudes\) the least fall toward end Z is 5\.71°, /,
    );
    expect(more).toEqual([]);
    const [same, ...none] = slopeOf({ points: FALLING, drain, attitudes: level });
    expect(same!.message).toMatch(/^At rest the least fall toward end Z is 5\.71°, /);
    expect(none).toEqual([]);
    expect(slopeOf({ points: FALLING.toReversed(), drain }).map((f) => f.verdict)).toEqual(['fail']);
    // Enough at rest, and less than wanted in an attitude: that is another rule.
    const tilted = slopeOf({ points: FALLING, drain: { ...drain, tiltedDeg: 8 }, attitudes: level });
    expect(tilted.map((f) => f.verdict)).toEqual(['pass', 'fail']);
    expect(tilted[1]!.message).toMatch(
      /^Level, its only attitude, the least fall toward end Z is 5\.71°, .*; more than 8° wanted\.$/,
    );
  });

  it('is cured for both rules at once where it is told once', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [300, 0, 30],
      [600, 100, -30],
    ];
    const drain = { to: 'Z', minSlopeDeg: 0 } as const;
    const spec: LineSpec = { points, drain, die: aDie({ minStraight: null, minTail: null }) };
    const [bad, ...more] = slopeOf(spec);
    expect([bad!.verdict, more]).toEqual(['fail', []]);
    const after = workLine(applyEdits(aLine(spec), bad!.cure!.edits));
    expect(after.slope!.worst.slope).toBeGreaterThan(0);
    expect(after.findings.filter((f) => f.check === 'slope' && f.verdict === 'fail')).toEqual([]);
  });
});
