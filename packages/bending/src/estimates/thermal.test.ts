import { fromRows, pointAt } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { clipFrequency, tubeMass, tubeSection } from './mass.ts';
import { endMovement, freeGrowth, growthLeg, heldForce } from './thermal.ts';

const heat = { expansionPerK: 17.2e-6, deltaK: 90 };

describe('growth', () => {
  it('end Z moves by the scaled chord, whatever the route: the line is bent again with every length grown', () => {
    const grow = 1 + 17.2e-6 * 90;
    const end = (by: number) => {
      const rows = [
        { straightBefore: 100 * by, turn: null, angle: 1.1, radius: 36 * by },
        { straightBefore: 80 * by, turn: 0.7, angle: 0.6, radius: 36 * by },
        { straightBefore: 240 * by, turn: -2, angle: 1.9, radius: 36 * by },
      ];
      const line = fromRows(rows, 150 * by);
      return [pointAt(line, 0), pointAt(line, line.length)] as const;
    };
    const [a, z] = end(1);
    const [, hot] = end(grow);
    const { vector, distance } = endMovement(a, z, heat);
    for (const i of [0, 1, 2] as const) expect(vector[i]).toBeCloseTo(hot[i] - z[i], 9);
    expect(distance).toBeCloseTo(Math.hypot(z[0] - a[0], z[1] - a[1], z[2] - a[2]) * 17.2e-6 * 90, 9);
  });

  it('from Z to A it is the opposite; cooling undoes heating; a closed ring goes nowhere', () => {
    const there = endMovement([1, 2, 3], [500, -40, 70], heat).vector;
    const back = endMovement([500, -40, 70], [1, 2, 3], heat).vector;
    for (const i of [0, 1, 2] as const) expect(there[i]).toBe(-back[i]);
    expect(freeGrowth(500, { ...heat, deltaK: -90 })).toBe(-freeGrowth(500, heat));
    expect(endMovement([5, 5, 5], [5, 5, 5], heat).distance).toBe(0);
  });

  it('what cannot be is refused', () => {
    expect(() => freeGrowth(-1, heat)).toThrow(/length must be >= 0, got -1/);
    expect(() => endMovement([0, 0, 0], [0, Number.NaN, 0], heat)).toThrow(/end Z: y .*got NaN/);
    expect(() => heldForce({ ...heat, od: 10, wall: 5, youngsMPa: 1 })).toThrow(/wall must be < od\/2/);
    expect(() => growthLeg({ od: 10, youngsMPa: 1, allowableMPa: 0, movement: 1, leg: 1 })).toThrow(/got 0/);
  });
});

describe('held', () => {
  const steel = { youngsMPa: 207_000, od: 12 };

  it('stress does not know the section, force does', () => {
    const thin = heldForce({ ...steel, ...heat, wall: 1 });
    const thick = heldForce({ ...steel, ...heat, wall: 2 });
    expect(thin.stressMPa).toBe(thick.stressMPa);
    expect(thick.forceN / thin.forceN).toBeCloseTo(20 / 11, 12);
    expect(heldForce({ ...steel, ...heat, deltaK: -90, wall: 1 }).forceN).toBe(-thin.forceN);
  });

  it('the leg needed is stressed just to what is allowed, by beam formulas worked apart', () => {
    const given = { ...steel, allowableMPa: 120, movement: 1.5, leg: 300 };
    const { needed, takes } = growthLeg(given);
    expect(takes).toBe(needed <= 300);
    const at = growthLeg({ ...given, leg: needed });
    expect(at.stressMPa).toBeCloseTo(120, 9);
    const { inertia, modulus } = tubeSection(12, 1);
    const force = (12 * 207_000 * inertia * 1.5) / needed ** 3;
    expect((force * needed) / 2 / modulus).toBeCloseTo(120, 9);
    expect(growthLeg({ ...given, movement: -1.5 }).needed).toBe(needed);
    expect(growthLeg({ ...given, movement: 6 }).needed).toBeCloseTo(2 * needed, 9);
  });
});

describe('mass and frequency', () => {
  const tube = { od: 12, wall: 1, densityKgM3: 7970 };

  it('twice the length, twice the mass; contents come on top', () => {
    const one = tubeMass({ ...tube, length: 700, contentsKgM3: 870 });
    const two = tubeMass({ ...tube, length: 1400, contentsKgM3: 870 });
    expect(two.totalKg).toBeCloseTo(2 * one.totalKg, 12);
    expect(one.totalKg).toBeCloseTo(one.tubeKg + one.contentsKg, 12);
    expect(tubeMass(tube).contentsKg).toBe(0);
    expect(tubeMass(tube).tubeKg).toBe(tubeMass(tube).tubeKgPerM);
  });

  it('half the span, four times the frequency; contents lower it by the root of the mass', () => {
    const beam = { ...tube, youngsMPa: 193_000, span: 500 };
    const empty = clipFrequency(beam).firstHz;
    const full = clipFrequency({ ...beam, contentsKgM3: 1000 }).firstHz;
    expect(clipFrequency({ ...beam, span: 250 }).firstHz).toBeCloseTo(4 * empty, 9);
    const { tubeKgPerM, contentsKgPerM } = tubeMass({ ...tube, contentsKgM3: 1000 });
    expect(empty / full).toBeCloseTo(Math.sqrt(1 + contentsKgPerM / tubeKgPerM), 12);
  });

  it('is the frequency at which a half sine’s bending energy is its energy of motion (Rayleigh)', () => {
    const [length, steps] = [0.5, 2000];
    const inertia = tubeSection(12, 1).inertia * 1e-12;
    let [bent, moving] = [0, 0];
    for (let i = 0; i < steps; i += 1) {
      const x = ((i + 0.5) / steps) * length;
      const wave = Math.PI / length;
      bent += 193e9 * inertia * (wave * wave * Math.sin(wave * x)) ** 2;
      moving += tubeMass(tube).tubeKgPerM * Math.sin(wave * x) ** 2;
    }
    const hertz = Math.sqrt(bent / moving) / (2 * Math.PI);
    expect(clipFrequency({ ...tube, youngsMPa: 193_000, span: 500 }).firstHz).toBeCloseTo(hertz, 8);
  });

  it('what cannot be is refused', () => {
    expect(() => tubeMass({ ...tube, densityKgM3: 0 })).toThrow(/densityKgM3 must be > 0, got 0/);
    expect(() => clipFrequency({ ...tube, youngsMPa: 1, span: 0 })).toThrow(/span must be > 0, got 0/);
    expect(() => tubeSection(4, 2)).toThrow(/got 2/);
  });
});
