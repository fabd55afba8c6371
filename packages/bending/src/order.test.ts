import type { Row } from '@runback/geometry';
import type { Line } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { DEG, end, figure, flare, make } from '../test-kit/lines.ts';
import { benchOrder } from './order.ts';
import { bendPlan } from './plan.ts';
import type { BenchOrder, EndName } from './types.ts';

const rows: readonly Row[] = [
  { straightBefore: 60, turn: null, angle: 90 * DEG, radius: 36 },
  { straightBefore: 50, turn: 40 * DEG, angle: 45 * DEG, radius: 36 },
];
const nut = { length: 18, bore: 12.3, acrossFlats: 22 };
const sleeve = { length: 8 };

function order(changes: Partial<Line>, from: EndName = 'A', list: readonly Row[] = rows): BenchOrder {
  const { line, centreline } = make({ rows: list, lastStraight: 80, changes });
  return benchOrder(line, bendPlan(line, centreline, from));
}
const words = (found: BenchOrder): string[] => found.steps.map((step) => step.words);

const flaredA = end({ fitting: flare, flareWhen: 'before', nut, sleeve });
const flaredZ = end({ fitting: flare, flareWhen: 'after', nut, sleeve, spare: figure(40) });

describe('the order at the bench', () => {
  it('A flared first, Z left long and flared last', () => {
    const found = order({ endA: flaredA, endZ: flaredZ });
    // 60 + 56.549 + 50 + 28.274 + 80 = 274.823; 4 used at each end and 40 to spare.
    expect(words(found)).toEqual([
      'SAW 323 (finished 275)',
      'flag END A (START)',
      'pencil line full length',
      'NUT A on, thread to END A',
      'SLEEVE A on, between NUT A and END A',
      'FLARE A (double flare)',
      'hook tape on FLARED FACE of A',
      'mark ALL bends now; arrows to FREE',
      'bends 1 to 2',
      'check end-to-end and heights, offer up',
      'trim END Z to 84 from end of last bend',
      'NUT Z on, thread to END Z',
      'SLEEVE Z on, between NUT Z and END Z',
      'FLARE Z (double flare)',
    ]);
    expect(found.steps[3]!.because).toBe('before END A is flared: it cannot go on over it');
    expect(found.trim).toBe(84);
    expect(found.hook).toEqual({ end: 'A', face: 'finished', words: 'FLARED FACE of A' });
    expect(found.notes).toEqual([]);
  });

  it('A flared after bending: the tape hooks on the sawn end', () => {
    const found = order({ endA: { ...flaredA, flareWhen: 'after' }, endZ: flaredZ });
    expect(found.hook).toEqual({ end: 'A', face: 'sawn', words: 'SAWN END of A' });
    const kinds = found.steps.map((step) => `${step.kind}${step.end ?? ''}`);
    expect(kinds.indexOf('formA')).toBeGreaterThan(kinds.indexOf('bend'));
    expect(kinds.indexOf('nutA')).toBeLessThan(kinds.indexOf('formA'));
    expect(kinds.indexOf('formA')).toBeLessThan(kinds.indexOf('formZ'));
  });

  it('both flared before bending: every nut goes on first, and nothing is left to trim', () => {
    const found = order({ endA: flaredA, endZ: { ...flaredZ, flareWhen: 'before', spare: figure(0) } });
    const kinds = found.steps.map((step) => `${step.kind}${step.end ?? ''}`);
    const before = kinds.slice(0, kinds.indexOf('bend'));
    expect(before).toEqual([
      'saw',
      'tagA',
      'pencil-line',
      'nutA',
      'sleeveA',
      'formA',
      'nutZ',
      'sleeveZ',
      'formZ',
      'hookA',
      'mark',
    ]);
    expect(kinds.slice(kinds.indexOf('bend'))).toEqual(['bend', 'check']);
    expect(found.trim).toBeNull();
    expect(found.notes).toEqual([
      'Both ends are formed before bending: nothing is left to trim, the sawn length decides where END Z comes.',
    ]);
  });

  it('spare on an end flared before bending comes off before it is flared', () => {
    const found = order({ endA: flaredA, endZ: { ...flaredZ, flareWhen: 'before' } });
    const kinds = found.steps.map((step) => `${step.kind}${step.end ?? ''}`);
    expect(kinds.indexOf('trimZ')).toBeGreaterThan(-1);
    expect(kinds.indexOf('trimZ')).toBeLessThan(kinds.indexOf('formZ'));
    expect(kinds.indexOf('trimZ')).toBeLessThan(kinds.indexOf('bend'));
    expect(found.trim).toBeNull();
  });

  it('worked from Z: START is Z, with its spare before the marks', () => {
    const found = order({ endA: flaredA, endZ: flaredZ }, 'Z');
    expect(found.hook).toEqual({ end: 'Z', face: 'sawn', words: 'SAWN END of Z' });
    expect(words(found)).toContain('flag END Z (START)');
    expect(words(found)).toContain('saw 40 off END Z');
    // A is the free end, flared first: nothing is trimmed there.
    expect(found.trim).toBeNull();
    const kinds = found.steps.map((step) => `${step.kind}${step.end ?? ''}`);
    expect(kinds.indexOf('formA')).toBeLessThan(kinds.indexOf('bend'));
    expect(found.notes).toEqual(['Worked from END Z: START is END Z.']);
  });

  it('plain ends and a straight tube need little', () => {
    const bare = order({}, 'A', []);
    expect(words(bare)).toEqual([
      'SAW 80 (finished 80)',
      'flag END A (START)',
      'pencil line full length',
      'hook tape on SAWN END of A',
    ]);
    expect(bare.parks).toEqual([]);
    expect(words(order({ endZ: end({ spare: figure(25) }) }, 'A', [])).at(-1)).toBe('saw 25 off END Z');
  });
});

describe('where nuts and sleeves are parked', () => {
  const found = order({ endA: flaredA, endZ: flaredZ });
  const park = (end: EndName, part: 'nut' | 'sleeve') =>
    found.parks.find((one) => one.end === end && one.part === part)!;

  it('up against the flare made first, back against the bend for the flare made last', () => {
    expect([park('A', 'sleeve').park, park('A', 'nut').park]).toEqual([0, 8]);
    expect([park('Z', 'sleeve').park, park('Z', 'nut').park]).toEqual([54, 62]);
    expect([park('A', 'nut').straight, park('Z', 'nut').straight]).toEqual([60, 80]);
    expect(found.parks.every((one) => one.fits)).toBe(true);
    expect(park('A', 'nut').passesRadius).toBeCloseTo(135, 9);
    expect(park('A', 'nut').words).toBe(
      'NUT A: up against END A; it passes no bend, so it stays within 60 of END A',
    );
  });

  it('does not fit on a straight shorter than nut and sleeve', () => {
    const short = order({ endA: flaredA }, 'A', [{ ...rows[0]!, straightBefore: 25 }]);
    expect(short.parks.map((one) => one.fits)).toEqual([false, false]);
    expect(short.parks[0]!.words).toBe('NUT A does not fit on its straight: it must stay within 25 of END A');
  });
});
