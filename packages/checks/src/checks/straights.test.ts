import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aDie, aLine, FLARE, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const straightsOf = (spec: LineSpec): Finding[] =>
  workLine(aLine(spec)).findings.filter((f) => f.check === 'straights');

/** 90° corners of radius 36 take 36 of each leg. */
const step = (rise: number, run = 200): Vec3[] => [
  [0, 0, 0],
  [run, 0, 0],
  [run, rise, 0],
  [2 * run, rise, 0],
];

const cureHolds = (spec: LineSpec, pick: (f: Finding) => boolean): void => {
  const line = aLine(spec);
  const before = workLine(line).findings;
  const bad = before.find(pick);
  expect(bad?.verdict).toBe('fail');
  expect(bad!.cure).not.toBeNull();
  const after = workLine(applyEdits(line, bad!.cure!.edits)).findings;
  const failing = (all: readonly Finding[]) => all.filter((f) => f.verdict === 'fail').length;
  expect(failing(after)).toBeLessThan(failing(before));
};

describe('straights between bends', () => {
  it('measures tangent to tangent against the die', () => {
    const [f] = straightsOf({ points: step(90) });
    expect(f).toMatchObject({
      verdict: 'fail',
      limit: 30,
      unit: 'mm',
      bend: 1,
      path: 'benders.bench.dies[0].minStraight',
    });
    expect(f!.found).toBeCloseTo(18, 9);
    expect(f!.message).toContain('between B1 and B2 is 18 mm; the tool needs 30 mm');
    expect(f!.at).toBeCloseTo(164 + 18 * Math.PI + 9, 9);
  });

  it('passes at exactly the limit and names the tightest', () => {
    const [f] = straightsOf({ points: step(102) });
    expect(f!.verdict).toBe('pass');
    expect(f!.found).toBeCloseTo(30, 9);
  });

  it('says so when the rounded numbers would look equal', () => {
    const [f] = straightsOf({ points: step(101.99) });
    expect(f!.verdict).toBe('fail');
    expect(f!.message).toContain('is 29.99 mm; the tool needs 30 mm');
  });

  it('takes the larger of the two dies', () => {
    const big = { ...aDie({ radius: 50, minStraight: 80 }), path: 'benders.bench.dies[1]' };
    const [f] = straightsOf({ points: step(150), radius: [0, 36, 50, 0], dies: [big] });
    expect(f).toMatchObject({ verdict: 'fail', limit: 80 });
    expect(f!.found).toBeCloseTo(64, 9);
  });

  it('is a note when the die names no least straight', () => {
    const [f] = straightsOf({ points: step(90), die: aDie({ minStraight: null }) });
    expect(f).toMatchObject({ verdict: 'note', found: null });
  });

  it('cures with a move that holds the ends', () => {
    cureHolds({ points: step(90) }, (f) => f.check === 'straights');
    const f = straightsOf({ points: step(90) }).find((x) => x.verdict === 'fail');
    expect(f!.cure!.edits[0]!.path).toMatch(/points\[[12]\]\.at/);
  });
});

describe('the tail at the ends', () => {
  const points = step(150, 70);

  it('fails when the sawn end is too near the first bend', () => {
    const f = straightsOf({ points }).find((x) => x.message.startsWith('End A'));
    expect(f).toMatchObject({ verdict: 'fail', limit: 45, bend: 1 });
    expect(f!.found).toBeCloseTo(34, 9);
    cureHolds({ points }, (x) => x.message.startsWith('End A leaves'));
  });

  it('is a note when spare makes up for it: bent long and trimmed', () => {
    const f = straightsOf({ points, endA: { spare: 20 } }).find((x) => x.message.startsWith('End A'));
    expect(f).toMatchObject({ verdict: 'note', limit: 45 });
    expect(f!.found).toBeCloseTo(54, 9);
    expect(f!.message).toContain('bend it 20 mm long and trim it');
  });

  it('does not count spare of an end that is flared before it is bent', () => {
    const endZ = { fitting: FLARE, spare: 40, flareWhen: 'before' } as const;
    const f = straightsOf({ points, endZ }).find((x) => x.message.startsWith('End Z leaves'));
    expect(f!.verdict).toBe('fail');
    expect(f!.found).toBeCloseTo(34, 9);
    const after = straightsOf({ points, endZ: { ...endZ, flareWhen: 'after' } });
    expect(after.find((x) => x.message.startsWith('End Z'))).toMatchObject({ verdict: 'note' });
    expect(after.find((x) => x.message.startsWith('End Z'))!.found).toBeCloseTo(34 + 40 + 1, 9);
  });

  it('is a note when the die names no tail', () => {
    const f = straightsOf({ points, die: aDie({ minTail: null }) }).filter((x) =>
      x.message.startsWith('The tail'),
    );
    expect(f.map((x) => x.verdict)).toEqual(['note', 'note']);
  });
});

describe('the straight behind a formed end', () => {
  const nut = { length: 18, bore: 12.3, acrossFlats: 22 };
  const behind = (f: Finding): boolean => f.message.startsWith('The straight behind');

  it('wants bar, nut and sleeve', () => {
    const endA = { fitting: FLARE, nut, sleeve: 8 };
    const f = straightsOf({ points: step(150, 82), endA }).find(behind);
    expect(f).toMatchObject({ verdict: 'fail', limit: 21 + 18 + 8 });
    expect(f!.found).toBeCloseTo(46, 9);
    cureHolds({ points: step(150, 82), endA }, behind);
    expect(straightsOf({ points: step(150, 84), endA }).find(behind)?.verdict).toBe('pass');
  });

  it('is a note when a flare traps a nut that the job does not give', () => {
    expect(straightsOf({ points: step(150), endA: { fitting: FLARE } }).find(behind)?.verdict).toBe('note');
  });

  it('says nothing of a plain end', () => {
    expect(straightsOf({ points: step(150) }).some(behind)).toBe(false);
  });
});
