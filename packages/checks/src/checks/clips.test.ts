import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

/** Straights 364 and 364, a bend of 18π = 56.5 from 364 to 420.5 between them; 784.5 long. */
const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [400, 0, 0],
  [400, 400, 0],
];
const clipsOf = (spec: Partial<LineSpec>): Finding[] =>
  workLine(aLine({ points: POINTS, ...spec })).findings.filter((f) => f.check === 'clips');

const cured = (spec: Partial<LineSpec>, f: Finding): Finding[] => {
  const line = applyEdits(aLine({ points: POINTS, ...spec }), f.cure!.edits);
  return workLine(line).findings.filter((x) => x.check === 'clips');
};

describe('clips', () => {
  it('says how many are wanted when none are given, and proposes places on straights', () => {
    const [f] = clipsOf({ spacing: 300 });
    expect(f).toMatchObject({ verdict: 'note', found: 0, limit: 2, unit: 'count', path: 'lines[0].clips' });
    const after = cured({ spacing: 300 }, f!);
    expect(after.some((x) => x.verdict === 'fail')).toBe(false);
    expect((f!.cure!.edits[0]!.value as number[]).length).toBe(2);
  });

  it('moves a proposed place off a bend', () => {
    const [f] = clipsOf({ spacing: 425 });
    expect(f!.limit).toBe(1);
    const value = f!.cure!.edits[0]!.value as number[];
    expect(value).toHaveLength(1);
    expect(value[0]! <= 364 || value[0]! >= 364 + 18 * Math.PI).toBe(true);
    expect(cured({ spacing: 425 }, f!).some((x) => x.verdict === 'fail')).toBe(false);
  });

  it('takes one more when the bend will not let fewer do', () => {
    const spacing = 393;
    const [f] = clipsOf({ spacing });
    expect(f!.limit).toBe(1);
    expect(f!.cure!.edits[0]!.value).toHaveLength(2);
    expect(cured({ spacing }, f!).some((x) => x.verdict === 'fail')).toBe(false);
  });

  it('wants none on a line that may hang free between its ends', () => {
    expect(clipsOf({ spacing: 900 })).toMatchObject([{ verdict: 'pass', found: 0, limit: 0 }]);
  });

  it('fails a clip on a bend and moves it to the nearest straight', () => {
    const spec = { clips: [200, 370, 600] };
    const bad = clipsOf(spec).find((f) => f.verdict === 'fail')!;
    expect(bad).toMatchObject({ found: 370, bend: 1, path: 'lines[0].clips[1]' });
    expect(bad.cure!.edits).toEqual([{ path: 'lines[0].clips[1]', value: 364 }]);
    expect(cured(spec, bad).some((x) => x.verdict === 'fail')).toBe(false);
  });

  it('moves it to a whole millimetre of the straight it is nearest to', () => {
    const bad = clipsOf({ clips: [200, 415, 600] }).find((f) => f.verdict === 'fail')!;
    // The bend ends at 420.55: 420 would still be on it.
    expect(bad.cure!.edits).toEqual([{ path: 'lines[0].clips[1]', value: 421 }]);
  });

  it('fails a clip beyond the end of the line', () => {
    const bad = clipsOf({ clips: [300, 900] }).find((f) => f.verdict === 'fail')!;
    expect(bad).toMatchObject({ found: 900, path: 'lines[0].clips[1]' });
  });

  it('fails a gap that is too wide, ends counted as held, and cures it', () => {
    const spec = { clips: [100], spacing: 500 };
    const bad = clipsOf(spec).find((f) => f.verdict === 'fail')!;
    expect(bad.found).toBeCloseTo(728 + 18 * Math.PI - 100, 9);
    expect(bad.limit).toBe(500);
    expect(cured(spec, bad).some((x) => x.verdict === 'fail')).toBe(false);
  });

  it('notes a bend with nothing near on one side', () => {
    const found = clipsOf({ clips: [360], spacing: 500 });
    expect(found.at(-1)).toMatchObject({ verdict: 'note', unit: 'count', found: 1, bend: 1 });
    expect(clipsOf({ clips: [360, 430], spacing: 500 }).map((f) => f.verdict)).toEqual(['pass', 'pass']);
  });

  it('is a note when no spacing is known', () => {
    expect(clipsOf({ spacing: null })).toMatchObject([{ verdict: 'note' }]);
    expect(clipsOf({ clips: [200], spacing: null }).map((f) => f.verdict)).toEqual(['pass', 'note']);
  });
});
