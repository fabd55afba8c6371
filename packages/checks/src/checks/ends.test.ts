import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aLine, FLARE, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../../tests/helpers/apply-edits.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [200, 0, 0],
  [200, 200, 0],
];
const STRAIGHT: readonly Vec3[] = [
  [0, 0, 0],
  [200, 0, 0],
];
const of = (check: string, spec: Partial<LineSpec> = {}): Finding[] =>
  workLine(aLine({ points: POINTS, ...spec })).findings.filter((f) => f.check === check);

describe('rigid-ends', () => {
  const held = { joins: ['block'] };

  it('wants a bend between two ends that are held', () => {
    const [f] = of('rigid-ends', { points: STRAIGHT, endA: held, endZ: { fitting: FLARE } });
    expect(f).toMatchObject({ verdict: 'fail', found: 0, limit: 1, unit: 'count' });
    expect(f!.basis).toContain('AC 43.13-1B');
  });

  it('passes with a bend, and with an end that can move', () => {
    expect(of('rigid-ends', { endA: held, endZ: held })).toMatchObject([{ verdict: 'pass', found: 1 }]);
    const loose = of('rigid-ends', { points: STRAIGHT, endA: held, endZ: { ...held, rigid: false } });
    expect(loose).toMatchObject([{ verdict: 'pass', found: 0 }]);
  });

  it('is a note when nothing says how the ends are held', () => {
    expect(of('rigid-ends', { points: STRAIGHT })).toMatchObject([{ verdict: 'note' }]);
  });
});

describe('port-direction', () => {
  it('measures the end straight against the port at both ends', () => {
    const [a, z] = of('port-direction', {
      endA: { direction: [1, 0, 0], misfitDeg: 2 },
      endZ: { direction: [0, -1, 0], misfitDeg: 2 },
    });
    expect(a).toMatchObject({ verdict: 'pass', found: 0, limit: 2, unit: 'deg', at: 0 });
    expect(z).toMatchObject({ verdict: 'pass', found: 0, limit: 2 });
  });

  it('fails beyond the misfit and cures by moving the next point onto the line of the port', () => {
    const lean = Math.PI / 36;
    const direction: Vec3 = [Math.cos(lean), Math.sin(lean), 0];
    const spec = { endA: { direction, misfitDeg: 2 } };
    const [f] = of('port-direction', spec);
    expect(f).toMatchObject({ verdict: 'fail', limit: 2, path: 'lines[0].endA.misfit' });
    expect(f!.found).toBeCloseTo(5, 9);
    const line = aLine({ points: POINTS, ...spec });
    const after = workLine(applyEdits(line, f!.cure!.edits)).findings;
    expect(after.find((x) => x.check === 'port-direction')).toMatchObject({ verdict: 'pass' });
  });

  it('is a note without a direction, and without a misfit but with the angle', () => {
    const [a, z] = of('port-direction', { endZ: { direction: [1, 0, 0] } });
    expect(a).toMatchObject({ verdict: 'note', found: null });
    expect(z).toMatchObject({ verdict: 'note', limit: null });
    expect(z!.found).toBeCloseTo(90, 9);
  });
});

describe('nuts', () => {
  const nut = { length: 18, bore: 12.3, acrossFlats: 22 };

  it('must be on before an end that is formed before bending, and stays on its straight', () => {
    const [a, z] = of('nuts', { endA: { fitting: FLARE, nut, flareWhen: 'before' } });
    expect(a).toMatchObject({ verdict: 'note', limit: 18 });
    // 18²/(8 × 0.3) = 135: more than the 36 of the bend.
    expect(a!.message).toContain('135 mm');
    expect(z).toMatchObject({ verdict: 'pass', found: 0 });
  });

  it('can go on later when the end is formed after bending', () => {
    expect(of('nuts', { endA: { fitting: FLARE, nut, flareWhen: 'after' } })[0]).toMatchObject({
      verdict: 'pass',
    });
  });

  it('fails on a straight shorter than nut and sleeve', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [56, 0, 0],
      [56, 200, 0],
    ];
    const [a] = of('nuts', { points, endA: { fitting: FLARE, nut, sleeve: 8 } });
    expect(a).toMatchObject({ verdict: 'fail', limit: 26 });
    expect(a!.found).toBeCloseTo(20, 9);
  });

  it('is a note when the fitting wants a nut the job does not give', () => {
    expect(of('nuts', { endA: { fitting: FLARE } })[0]).toMatchObject({ verdict: 'note', found: null });
  });
});

describe('stock', () => {
  it('compares the cut length, spare and flare use and all', () => {
    // 164 + 164 + 18π + 40 + 1
    const cut = 328 + 18 * Math.PI + 41;
    const endZ = { fitting: FLARE, spare: 40 };
    const [f] = of('stock', { endZ, stock: cut - 1 });
    expect(f).toMatchObject({ verdict: 'fail', unit: 'mm', path: 'tubes.t.stock' });
    expect(f!.found).toBeCloseTo(cut, 9);
    const [enough] = of('stock', { endZ, stock: cut });
    expect(enough!.verdict).toBe('pass');
    expect(enough!.message).not.toContain('sawn');
  });

  it('is silent without a stock length', () => {
    expect(of('stock')).toEqual([]);
  });
});
