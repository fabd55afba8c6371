import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { figure } from '../../../../tests/helpers/a-line.ts';
import { type FullSpec, fullLine } from '../../test-kit/full-line.ts';
import type { Finding } from '../types.ts';
import { workLine } from '../work-line.ts';

const LEG: readonly Vec3[] = [
  [0, 0, 0],
  [400, 0, 0],
  [400, 300, 0],
];
const said = (check: string, spec: Partial<FullSpec>): Finding[] =>
  workLine(fullLine({ points: LEG, ...spec }), { cures: false }).findings.filter((f) => f.check === check);

describe('pressure', () => {
  const at = (mpa: number): Partial<FullSpec> => ({
    duty: { pressure: figure(mpa, 'lines[0].duty.pressure') },
  });

  it('fails above the lowest of the formulas, passes below, and never approves', () => {
    const [pass] = said('pressure', at(10));
    const [fail] = said('pressure', at(30));
    expect(pass).toMatchObject({ verdict: 'pass', limit: 10, unit: 'MPa', path: 'lines[0].duty.pressure' });
    expect(fail).toMatchObject({ verdict: 'fail', limit: 30, found: pass!.found });
    for (const f of [pass!, fail!]) expect(f.message).toContain('estimate, not approval');
    expect(fail!.message).toContain('30 MPa (300 bar)');
  });

  it('passes at exactly the lowest', () => {
    const limit = said('pressure', at(10))[0]!.found!;
    expect(said('pressure', at(limit))[0]!.verdict).toBe('pass');
    const [over] = said('pressure', at(limit * 1.00001));
    expect(over!.verdict).toBe('fail');
    const [holds, works] = over!.message.match(/[\d.]+ MPa/gu)!;
    expect(holds).not.toBe(works);
  });

  it('is a note where neither strength nor allowable stress is known, and silent without a pressure', () => {
    expect(said('pressure', { ...at(10), metal: {} })).toMatchObject([
      { verdict: 'note', found: null, limit: 10 },
    ]);
    expect(said('pressure', {})).toEqual([]);
  });
});

describe('thermal', () => {
  const to = (highest: number): Partial<FullSpec> => ({
    duty: {
      temperature: {
        fitted: figure(20),
        lowest: null,
        highest: figure(highest, 'lines[0].duty.temperature.highest'),
      },
    },
  });

  it('passes where the line is long enough off the straight, and notes where it is not', () => {
    expect(said('thermal', to(40))).toMatchObject([
      { verdict: 'pass', unit: 'mm', path: 'lines[0].duty.temperature.highest' },
    ]);
    const [f] = said('thermal', to(220));
    expect(f!.verdict).toBe('note');
    expect(f!.limit).toBeGreaterThan(f!.found!);
    expect(f!.message).toMatch(
      /^Warmed by 200 °C, end Z wants to move 1\.6 mm; its leg of .* is too short to take it, .* needed: estimate, not approval\.$/,
    );
  });

  it('says what is missing, and nothing of a line with a free end', () => {
    expect(said('thermal', { ...to(90), metal: {} })[0]!.message).toBe(
      'Whether its bends take the heat is not judged: how stainless 304 expands is not known.',
    );
    expect(said('thermal', { ...to(90), endZ: { rigid: false } })).toEqual([]);
    expect(said('thermal', {})).toEqual([]);
  });
});
