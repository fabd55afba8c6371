import { fillet, type Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { type FullSpec, fullLine } from '../../test-kit/full-line.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const RAD = Math.PI / 180;
const TILT = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [0, 0] } as const;
const HUMP: readonly Vec3[] = [
  [0, 0, 0],
  [200, 0, 60],
  [400, 0, 0],
];
const SAG: readonly Vec3[] = HUMP.map(([x, y, z]) => [x, y, -z]);
const FALLING: readonly Vec3[] = [
  [0, 0, 100],
  [300, 0, 70],
  [600, 0, 10],
];
const Z = { to: 'Z', minSlopeDeg: 0 } as const;

const said = (check: string, spec: FullSpec, cures = false): Finding[] =>
  workLine(fullLine(spec), { cures }).findings.filter((f) => f.check === check);

describe('pockets', () => {
  it('is a note with the ml and the place of the lowest floor', () => {
    const [f, ...more] = said('pockets', { points: SAG, drain: Z });
    const c = fillet(SAG.map((at) => ({ at, radius: 36 })));
    const middle = c.ok ? c.centreline.length / 2 : 0;
    expect(f).toMatchObject({ verdict: 'note', limit: 0, unit: 'ml', bend: 1, path: null });
    expect(f!.at).toBeCloseTo(middle, 3);
    expect(f!.found).toBeGreaterThan(20);
    expect(f!.message).toBe(
      `At rest ${f!.found!.toFixed(1)} ml of liquid stays in bend B1, ${middle.toFixed(1)} mm from end A; it cannot leave at end Z.`,
    );
    expect(more).toEqual([]);
  });

  it('lists several places', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, -60],
      [400, 0, 0],
      [600, 0, -60],
      [800, 0, -10],
    ];
    const [f] = said('pockets', { points, drain: Z });
    expect(f!.message).toMatch(
      /^At rest [\d.]+ ml of liquid stays in 2 places: [\d.]+ ml in bend B1, .* from end A and [\d.]+ ml in bend B3, /,
    );
    expect(f!.bend).toBe(1);
  });

  it('passes a line that runs out, and in every attitude when its fall proves it', () => {
    expect(said('pockets', { points: FALLING, drain: Z, attitudes: TILT }, true)).toMatchObject([
      { verdict: 'pass', found: 0, at: null, message: 'At rest no liquid stays: all of it leaves at end Z.' },
      {
        verdict: 'pass',
        found: 0,
        message: 'In no attitude does liquid stay: its fall proves that all of it leaves at end Z.',
      },
    ]);
  });

  it('tells the worst attitude, how many were tried, and what is certain', () => {
    const [rest, worst] = said('pockets', { points: SAG, drain: Z, attitudes: TILT }, true);
    expect(worst).toMatchObject({ verdict: 'note', limit: 0, unit: 'ml' });
    expect(worst!.found).toBeGreaterThanOrEqual(rest!.found!);
    expect(worst!.message).toMatch(
      /^In the worst attitude found, nose (up|down) [\d.]+°, [\d.]+ ml of liquid stays .*: found in \d+ tries, certainly no more than [\d.]+ ml\.$/,
    );
    const nose = { kind: 'box', pitch: [5 * RAD, 5 * RAD], roll: [0, 0] } as const;
    const [, one] = said('pockets', { points: SAG, drain: Z, attitudes: nose }, true);
    expect(one!.message).toContain(': found in 1 try, certainly no more than ');
    // The only attitude is at rest: nothing is said twice.
    const level = { kind: 'box', pitch: [0, 0], roll: [0, 0] } as const;
    for (const only of [{}, { attitudes: level }, { attitudes: { kind: 'cone', tilt: 0 } as const }])
      expect(said('pockets', { points: SAG, drain: Z, ...only }, true)).toHaveLength(1);
  });

  it('says nothing of a line that does not drain', () => {
    expect(said('pockets', { points: SAG })).toEqual([]);
    expect(said('pockets', { points: SAG, service: 'brake' })).toEqual([]);
  });
});

describe('air', () => {
  it('is a note where it stays when the line is bled', () => {
    const [f] = said('air', { points: HUMP, service: 'brake' });
    const [liquid] = said('pockets', { points: SAG, drain: { ...Z, to: 'both' } });
    expect(f).toMatchObject({ verdict: 'note', limit: 0, unit: 'ml', bend: 1 });
    expect(f!.found).toBeCloseTo(liquid!.found!, 4);
    expect(f!.message).toMatch(
      /^At rest [\d.]+ ml of air stays in bend B1, .*; it cannot leave at either end\.$/,
    );
  });

  it('passes where it can leave, and is silent where nothing is bled', () => {
    expect(said('air', { points: FALLING, service: 'brake' })).toMatchObject([{ verdict: 'pass', found: 0 }]);
    expect(said('air', { points: HUMP })).toEqual([]);
  });

  it('is judged in every attitude where the job wants that', () => {
    const bleed = { to: 'both', tilted: true, path: 'lines[0].bleed' } as const;
    const spec = { points: HUMP, service: 'brake', attitudes: TILT } as const;
    expect(said('air', spec, true)).toHaveLength(1);
    const both = said('air', { ...spec, bleed }, true);
    expect(both.map((f) => [f.verdict, f.path])).toEqual([
      ['note', 'lines[0].bleed'],
      ['note', 'lines[0].bleed'],
    ]);
  });
});
