import { fromRows, mirrored, reversed } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { bendingStrain, bladePassage, capstan, pushFactor, radiusWithoutSet, twistAllowed } from './index.ts';

const spring = { thickness: 0.5, width: 5, youngsMPa: 205_000, yieldMPa: 1000 };
const line = (turn: number, straight = 80) =>
  fromRows(
    [
      { straightBefore: 50, turn: null, angle: 1, radius: 60 },
      { straightBefore: straight, turn, angle: 0.8, radius: 60 },
    ],
    50,
  );
const passage = (turn: number, straight?: number) =>
  bladePassage([{ centreline: line(turn, straight), bore: 8 }], spring);

describe('a blade in a bend', () => {
  it('reaches its yield strain at the smallest radius without set', () => {
    expect(bendingStrain(0.5, radiusWithoutSet(spring))).toBeCloseTo(1000 / 205_000, 15);
  });

  it('lies tightest on the inner wall its width leaves it, and takes a set under the smallest radius', () => {
    const [bend] = passage(0).bends;
    expect(bend!.radius).toBeCloseTo(60 - (Math.sqrt(64 - 25) - 0.5) / 2, 12);
    expect(bend!.takesSet).toBe(false);
    const soft = bladePassage([{ centreline: line(0), bore: 8 }], { ...spring, yieldMPa: 800 });
    expect(soft.bends.map((b) => b.takesSet)).toEqual([true, true]);
  });

  it('has the play its diagonal leaves in the smallest bore', () => {
    expect(passage(0).play).toBeCloseTo(8 - Math.hypot(5, 0.5), 12);
    expect(bladePassage([{ centreline: line(0), bore: 4 }], spring).play).toBeLessThan(0);
    const lipped = [{ centreline: line(0), bore: 8, openingZ: 6 }];
    expect(bladePassage(lipped, spring).play).toBeCloseTo(6 - Math.hypot(5, 0.5), 12);
  });

  it('refuses what is no blade', () => {
    expect(() => radiusWithoutSet({ ...spring, yieldMPa: 0 })).toThrow('yieldMPa must be > 0, got 0');
    expect(() => twistAllowed({ ...spring, thickness: 6 })).toThrow('got 6 and 5');
    expect(() => bendingStrain(1, 0)).toThrow('got 0');
  });
});

describe('a blade between bends', () => {
  it('twists by the turn, less any half turn', () => {
    const twist = (turn: number) => passage(turn).twists[0]!.twist;
    expect(twist(0)).toBe(0);
    expect(twist(Math.PI)).toBe(0);
    expect(twist(1)).toBeCloseTo(1, 12);
    expect(twist(2)).toBeCloseTo(2 - Math.PI, 12);
    expect(twist(-2)).toBeCloseTo(Math.PI - 2, 12);
  });

  it('needs straight in proportion, and has it or not', () => {
    const needs = 1 / twistAllowed(spring);
    expect(passage(1).twists[0]!.needs).toBeCloseTo(needs, 9);
    expect(passage(1, needs + 1).twists[0]!.enough).toBe(true);
    expect(passage(1, needs - 1).twists[0]!.enough).toBe(false);
  });

  it('needs the same from the other end, and the opposite way in the mirror', () => {
    const there = passage(1).twists[0]!;
    const other = (centreline: ReturnType<typeof line>) =>
      bladePassage([{ centreline, bore: 8 }], spring).twists[0]!;
    expect(other(reversed(line(1))).twist).toBeCloseTo(there.twist, 12);
    expect(other(mirrored(line(1), 2, 7)).twist).toBeCloseTo(-there.twist, 12);
  });

  it('is held by its edges when wide and by its face when thick', () => {
    expect(twistAllowed({ ...spring, width: 100 })).toBeLessThan(twistAllowed(spring));
    expect(twistAllowed({ ...spring, thickness: 1 })).toBeCloseTo(twistAllowed(spring) / 2, 12);
  });
});

describe('push', () => {
  it('multiplies bend by bend whichever way they turn', () => {
    for (const turn of [0, 1, Math.PI]) {
      const { angle, low, high } = pushFactor([{ centreline: line(turn), bore: 8 }]);
      expect(angle).toBeCloseTo(1.8, 12);
      expect(low).toBeCloseTo(capstan(1, 0.15) * capstan(0.8, 0.15), 12);
      expect(high).toBeCloseTo(Math.exp(0.45), 12);
    }
  });
  it('is 1 without bends or friction, and refuses negatives', () => {
    expect(capstan(0, 0.3)).toBe(1);
    expect(capstan(3, 0)).toBe(1);
    expect(() => capstan(-1, 0.2)).toThrow('got -1');
    expect(() => capstan(1, -0.2)).toThrow('got -0.2');
    const run = [{ centreline: line(0), bore: 8 }];
    expect(() => pushFactor(run, { low: 0.3, high: 0.2 })).toThrow('got 0.3 and 0.2');
  });
});
