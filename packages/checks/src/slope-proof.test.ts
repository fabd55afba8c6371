import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aLine, type LineSpec } from '../../../tests/helpers/a-line.ts';
import type { SlopeProof } from './types.ts';
import { workLine } from './work-line.ts';

const RAD = Math.PI / 180;
const TILT = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;
const proofOf = (spec: LineSpec): SlopeProof => workLine(aLine(spec), { cures: false }).slope!.proof;
const Z = { to: 'Z', minSlopeDeg: 1 } as const;

const DIPSTICK: readonly Vec3[] = [
  [60, 130, 0],
  [60, 130, 110],
  [90, 190, 340],
  [430, 250, 440],
];

describe('the proof of the fall', () => {
  it('is one sentence to sign for, never more than there is', () => {
    const drain = { to: 'A', minSlopeDeg: 12 } as const;
    expect(proofOf({ points: DIPSTICK, radius: 60, drain, attitudes: TILT })).toEqual({
      holds: true,
      text:
        'Falls toward end A over its whole length, bends included: at least 16.15° with the machine level, at least 10.69° in every attitude ' +
        '(nose up 5° to nose down 5°, left side down 3° to right side down 3°). ' +
        'Proven over the whole line as drawn and all attitudes at once, not sampled; what was bent is proven with a level.',
    });
  });

  it('keeps a tenth that only rounding is short of', () => {
    const fall = 100 * Math.tan(5 * RAD);
    const points: Vec3[] = [
      [0, 0, fall],
      [100, 0, 0],
    ];
    expect(proofOf({ points, drain: Z }).text).toBe(
      'Falls toward end Z over its whole length, bends included: at least 5° at rest (the job gives no attitudes). Proven over the whole line as drawn, not sampled; what was bent is proven with a level.',
    );
    const attitudes = { kind: 'box', pitch: [0, 0], roll: [0, 0] } as const;
    expect(proofOf({ points, drain: Z, attitudes }).text).toContain(
      ': at least 5° at rest, its only attitude. ',
    );
    const hair: Vec3[] = [
      [0, 0, 0.002],
      [100, 0, 0],
    ];
    expect(proofOf({ points: hair, drain: Z }).text).toContain(
      ': at least 0.001° (1° asked: NOT met) at rest',
    );
  });

  it('says what was asked and is not met', () => {
    const steep = { to: 'A', minSlopeDeg: 17, tiltedDeg: 11 } as const;
    expect(proofOf({ points: DIPSTICK, radius: 60, drain: steep, attitudes: TILT }).text).toContain(
      'at least 16.15° (17° asked: NOT met) with the machine level, at least 10.69° (11° asked: NOT met) in every attitude',
    );
  });

  it('speaks of one crest where both ends are open', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, 60],
      [400, 0, 0],
    ];
    const { holds, text } = proofOf({ points, drain: { to: 'both', minSlopeDeg: 1 }, attitudes: TILT });
    expect(holds).toBe(true);
    expect(text).toMatch(/^Falls from one crest toward both its ends over its whole length/);
  });

  it('names other sets of attitudes', () => {
    const spec = { points: DIPSTICK, radius: 60, drain: { to: 'A', minSlopeDeg: 12 } } as const;
    const said = (attitudes: NonNullable<LineSpec['attitudes']>): string =>
      proofOf({ ...spec, attitudes }).text;
    expect(said({ kind: 'cone', tilt: 4 * RAD })).toContain('(tilted up to 4° any way)');
    expect(said({ kind: 'box', pitch: [0, 6 * RAD], roll: [0, 0] })).toContain('(level to nose down 6°)');
    expect(said({ kind: 'box', pitch: [0, 0], roll: [-2 * RAD, -2 * RAD] })).toContain('(left side down 2°)');
  });

  it('is the counter-example where it does not hold: attitude, place, by how much', () => {
    // 3° forward and down: nose up 5° turns it uphill by 2°.
    const points: Vec3[] = [
      [0, 0, 400 * Math.tan(3 * RAD)],
      [400, 0, 0],
    ];
    const pitching = { kind: 'box', pitch: TILT.pitch, roll: [0, 0] } as const;
    expect(proofOf({ points, drain: Z, attitudes: pitching })).toEqual({
      holds: false,
      text: 'Does NOT fall everywhere: nose up 5°, between end A and end Z, 0 mm from end A, it rises 2° toward end Z.',
    });
    const rising = proofOf({ points: points.toReversed(), drain: Z, units: 'in' });
    expect(rising.text).toBe(
      'Does NOT fall everywhere: at rest, between end A and end Z, 0 in from end A, it rises 3° toward end Z.',
    );
  });

  it('does not hold for a line that is level somewhere, or sags between two open ends', () => {
    const level: Vec3[] = [
      [0, 0, 0],
      [400, 0, 0],
    ];
    expect(proofOf({ points: level, drain: Z })).toMatchObject({
      holds: false,
      text: 'Does NOT fall everywhere: at rest, between end A and end Z, 0 mm from end A, it is level, no fall toward end Z.',
    });
    const sag: Vec3[] = [
      [0, 0, 60],
      [200, 0, 0],
      [400, 0, 60],
    ];
    expect(proofOf({ points: sag, drain: { to: 'both', minSlopeDeg: 0 } }).text).toMatch(
      /^Does NOT fall everywhere: at rest it sags in bend B1, \d+\.?\d* mm from end A\.$/,
    );
  });
});
