import { describe, expect, it } from 'vitest';
import { bench, DEG } from '../test-kit/lines.ts';
import { turnChecks } from './turn-checks.ts';

const leg = (angle: number, turn: number, straight = 100) => ({
  angle: angle * DEG,
  turn: turn * DEG,
  straight,
  radius: 0,
  fromStart: true,
});
const upright = bench({ plane: 'upright', former: 'above' });
const shown = (radians: number | undefined): number => Math.round(((radians ?? 0) / DEG) * 10) / 10;

describe('the ways to check a turn', () => {
  it('reads 33.8° on the last leg in a flat tool and 41.6° in an upright one after 60° and a turn of 40°', () => {
    expect(shown(turnChecks(leg(60, 40), bench()).gauge?.reading)).toBe(33.8);
    expect(shown(turnChecks(leg(60, 40), upright).gauge?.reading)).toBe(41.6);
    expect(shown(turnChecks(leg(60, -40), bench()).gauge?.reading)).toBe(33.8);
  });

  it('tells what the gauge confuses, and how to see which it is', () => {
    const flat = turnChecks(leg(60, 40), bench()).gauge!;
    expect(flat.confusedWith.map(shown)).toEqual([140]);
    expect(flat.words).toBe(
      'gauge on the last leg 33.8°; 140° reads the same: the leg must lie on the far side of the tube',
    );
    expect(turnChecks(leg(60, -140), bench()).gauge!.confusedWith.map(shown)).toEqual([-40]);
    const up = turnChecks(leg(60, 40), upright).gauge!;
    expect(up.confusedWith.map(shown)).toEqual([-40]);
    expect(up.words).toBe(
      'gauge on the last leg 41.6°; the wrong way reads the same: the leg must lean away',
    );
    expect(turnChecks(leg(60, 90), bench()).gauge!.confusedWith).toEqual([]);
    expect(turnChecks(leg(60, 180), upright).gauge!.confusedWith).toEqual([]);
    expect(turnChecks(leg(60, 0), bench()).gauge!.confusedWith.map(shown)).toEqual([180]);
    expect(turnChecks(leg(60, 180), bench()).gauge!.confusedWith.map(shown)).toEqual([0]);
  });

  it('reads the flag as the turn in any tool', () => {
    for (const how of [bench(), upright, null]) {
      expect(turnChecks(leg(60, -40), how).flag).toBeCloseTo(40 * DEG, 12);
      expect(turnChecks(leg(10, -40), how).flagWords).toBe('flag 40°');
    }
  });

  it('gives the height of the end of the last leg with its side', () => {
    // 100·sin 60°·sin 40° = 55.67
    const flat = turnChecks(leg(60, 40), bench()).height!;
    expect(Math.abs(flat.over)).toBeCloseTo(55.667, 3);
    expect(flat.words).toBe('END A 56 below the tool plane');
    expect(turnChecks(leg(60, -40), bench()).height!.words).toBe('END A 56 above the tool plane');
    expect(turnChecks(leg(60, 40), upright).height!.words).toBe('END A 56 off the tool plane, away from you');
    expect(turnChecks(leg(60, -40), upright, { from: 'Z' }).height!.words).toBe(
      'END Z 56 off the tool plane, toward you',
    );
    expect(turnChecks({ ...leg(60, 40), fromStart: false }, bench()).height!.words).toBe(
      'far end of the last leg 56 below the tool plane',
    );
    expect(turnChecks(leg(60, 40), null).height!.words).toBe(
      'END A 56 left of the tool plane, seen from END A with the former at 12',
    );
    expect(turnChecks(leg(60, 180), bench()).height!.words).toBe('END A in the tool plane');
    expect(turnChecks(leg(60, 40, 50.8), bench(), { unit: 'in' }).height!.words).toBe(
      'END A 1 1/8 below the tool plane',
    );
  });

  it('counts the straight from the tangent point with a radius as it does from the corner', () => {
    const fromCorner = turnChecks(leg(60, 40), bench()).height!.over;
    const setback = 36 * Math.tan(30 * DEG);
    const fromTangent = turnChecks({ ...leg(60, 40, 100 - setback), radius: 36 }, bench()).height!.over;
    expect(fromTangent).toBeCloseTo(fromCorner, 9);
  });

  it('leaves only the flag after a bend under 20°, no gauge after nearly a half-turn bend or without a bench', () => {
    const shallow = turnChecks(leg(19.9, 40), bench());
    expect([shallow.flagOnly, shallow.gauge, shallow.height]).toEqual([true, null, null]);
    expect(turnChecks(leg(20, 40), bench()).flagOnly).toBe(false);
    expect(turnChecks(leg(170, 40), bench()).gauge).toBeNull();
    expect(turnChecks(leg(170, 40), bench()).height).not.toBeNull();
    expect(turnChecks(leg(60, 40), null).gauge).toBeNull();
    expect(turnChecks(leg(60, 40), bench({ moves: 'bender' })).gauge).toBeNull();
  });

  it('refuses nonsense', () => {
    expect(() => turnChecks(leg(0, 40), bench())).toThrow('turnChecks: angle must be > 0, got 0');
    expect(() => turnChecks(leg(60, 40, -1), bench())).toThrow(
      'turnChecks: straight must be >= 0 mm, got -1',
    );
    expect(() => turnChecks(leg(60, Number.NaN), bench())).toThrow(RangeError);
  });
});
