import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { aLine, figure } from '../../../../tests/helpers/a-line.ts';
import { type FullSpec, fullLine, METAL, OIL } from '../../test-kit/full-line.ts';
import type { WorkedLine } from '../types.ts';
import { workLine } from '../work-line.ts';
import { leastPressure } from './estimates-pressure.ts';

const STRAIGHT: readonly Vec3[] = [
  [0, 0, 100],
  [1000, 0, 0],
];
const LEG: readonly Vec3[] = [
  [0, 0, 0],
  [400, 0, 0],
  [400, 300, 0],
];
const work = (spec: Partial<FullSpec> = {}): WorkedLine =>
  workLine(fullLine({ points: STRAIGHT, ...spec }), { cures: false });
const LONG = Math.hypot(1000, 100);

describe('estimates', () => {
  it('are null where the job says nothing', () => {
    const worked = workLine(aLine({ points: STRAIGHT }), { cures: false });
    expect([worked.pressure, worked.flow, worked.thermal, worked.mass]).toEqual([null, null, null, null]);
  });

  it('of pressure: Barlow 2St/D from strength over its factor and the wall that is left, and the code', () => {
    const { pressure } = work({ duty: { pressure: figure(10) } });
    expect(pressure!.straight!.barlowMPa).toBeCloseTo((2 * (500 / 4) * 0.9) / 12, 9);
    expect(pressure!.code!.straightMPa).toBeCloseTo((2 * 0.9 * 120) / (12 - 2 * 0.9 * 0.4), 9);
    expect(pressure!.code!.bendInsideMPa).toBeNull();
    expect(pressure!.proof!.pressureMPa).toBe(20);
    const bent = work({ points: LEG, service: 'brake' }).pressure!;
    expect(bent.working).toBeNull();
    expect(bent.proof).toBeNull();
    expect(bent.code!.leastMPa).toBeLessThan(bent.code!.straightMPa);
    expect(leastPressure(bent)).toBe(Math.min(bent.code!.leastMPa, bent.straight!.barlowMPa));
  });

  it('of pressure do without what is not known, and without a rule for the service', () => {
    const duty = { pressure: figure(10) };
    const bare = work({ metal: {}, duty, service: 'steam' }).pressure!;
    expect(bare).toEqual({ working: 10, straight: null, code: null, proof: null });
    expect(leastPressure(bare)).toBeNull();
    expect(work({ metal: {} }).pressure).toBeNull();
    // No inside of a bend at half the diameter: nothing by the code, but nothing thrown either.
    expect(work({ points: LEG, radius: 5.5, die: null, duty }).pressure!.code).toBeNull();
  });

  it('of flow: Hagen–Poiseuille 128ηLQ/(πd⁴) while laminar, and the weight of the rise', () => {
    const duty = { flow: figure(6), toward: 'Z' as const };
    const { drop } = work({ duty }).flow!;
    const [q, eta] = [6 / 60_000, 40e-6 * 900];
    const laminar = (128 * eta * (LONG / 1000) * q) / (Math.PI * 0.01 ** 4) / 1e6;
    expect(drop!.friction.regime).toBe('laminar');
    expect(drop!.straightsMPa).toBeCloseTo(laminar, 9);
    expect(drop!.riseMPa).toBeCloseTo((-900 * 9.80665 * 0.1) / 1e6, 12);
    // Up the same line the other way.
    const back = work({ duty: { ...duty, toward: 'A' } }).flow!.drop!;
    expect(back.riseMPa).toBeCloseTo(-drop!.riseMPa, 12);
    expect(back.straightsMPa).toBe(drop!.straightsMPa);
  });

  it('of flow want a density, a viscosity and bends of 1 to 20 bores', () => {
    const duty = { flow: figure(6) };
    expect(work({ duty, fluid: { ...OIL, density: null } }).flow).toBeNull();
    expect(work({ duty, fluid: null }).flow).toBeNull();
    expect(work({ duty, points: LEG, od: 3, wall: 0.7, radius: 36 }).flow).toBeNull();
    expect(work({ duty, points: LEG }).flow!.drop!.bendsMPa).toBeGreaterThan(0);
  });

  it('of the time to run out: between half of an even slope and it, for a straight line', () => {
    const drain = { to: 'Z', minSlopeDeg: 1 } as const;
    const time = work({ drain }).flow!.drain!;
    const even = (32 * 40 * LONG ** 2) / (9806.65 * 100 * 100);
    expect(time.evenS).toBeCloseTo(even, 6);
    expect(time.leastS).toBeCloseTo(even / 2, 6);
    expect(time.mostS).toBeGreaterThanOrEqual(even);
    expect(work({ drain: { ...drain, to: 'both' } }).flow).toBeNull();
    expect(work({ drain: { ...drain, to: 'A' } }).flow).toBeNull();
    expect(work({ drain, endZ: { opening: 6 } }).flow).toBeNull();
    const plumb: Vec3[] = [
      [0, 0, 500],
      [0, 0, 0],
    ];
    expect(work({ drain, points: plumb }).flow!.drain!.evenS).toBeGreaterThan(0);
  });

  it('of heat: α·ΔT to the farther end of the range, and the leg √(3EDΔ/S)', () => {
    const temperature = { fitted: figure(20), lowest: figure(-30), highest: figure(120) };
    const { thermal, centreline } = work({ points: LEG, duty: { temperature } });
    expect(thermal!.deltaK).toBe(100);
    expect(thermal!.growth).toBeCloseTo(16e-6 * 100 * centreline!.length, 9);
    expect(thermal!.movement.map((x) => x.toFixed(3))).toEqual(['0.640', '0.480', '0.000']);
    const movement = 16e-6 * 100 * 500;
    expect(thermal!.leg!.needed).toBeCloseTo(Math.sqrt((3 * 200_000 * 12 * movement) / 120), 9);
    // The corner lies 240 off the straight between the ends; the bend of 36 cuts it by 36·(√2 − 1)/… at most 15.
    expect(thermal!.leg!.length).toBeGreaterThan(240 - 15);
    expect(thermal!.leg!.length).toBeLessThan(240);
    expect(thermal!.leg!.takes).toBe(thermal!.leg!.length >= thermal!.leg!.needed);
    const cold = { ...temperature, lowest: figure(-200) };
    expect(work({ points: LEG, duty: { temperature: cold } }).thermal!.deltaK).toBe(-220);
  });

  it('of heat judge a straight line by the metal alone, and none with a free end', () => {
    const temperature = (highest: number) => ({ fitted: figure(20), lowest: null, highest: figure(highest) });
    // E·α·ΔT = 3.2 MPa per degree, 120 allowed.
    const some = work({ duty: { temperature: temperature(50) } }).thermal!.leg!;
    expect(some.stressMPa).toBeCloseTo(96, 9);
    expect([some.length, some.takes]).toEqual([0, true]);
    expect(work({ duty: { temperature: temperature(60) } }).thermal!.leg!.takes).toBe(false);
    expect(work({ duty: { temperature: temperature(60) }, endA: { rigid: false } }).thermal!.leg).toBeNull();
    expect(work({ duty: { temperature: { ...temperature(60), highest: null } } }).thermal).toBeNull();
    const { allowable: _, ...coded } = METAL;
    expect(work({ metal: coded, duty: { temperature: temperature(60) } }).thermal!.leg!.allowableMPa).toBe(
      140,
    );
  });

  it('of heat need no leg where both ends are one place', () => {
    const hoop: Vec3[] = [
      [0, 0, 0],
      [300, 0, 0],
      [300, 300, 0],
      [0, 300, 0],
      [0, 0, 0],
    ];
    const temperature = { fitted: figure(20), lowest: null, highest: figure(120) };
    const { leg, movement } = work({ points: hoop, duty: { temperature } }).thermal!;
    expect(movement).toEqual([0, 0, 0]);
    expect([leg!.needed, leg!.takes]).toEqual([0, true]);
  });

  it('of mass: metal and contents by geometry, the frequency of the longest span', () => {
    const { mass } = work({ clips: [300] });
    expect(mass!.tubeKg).toBeCloseTo((8000 * Math.PI * 11 * LONG) / 1e9, 12);
    expect(mass!.contents).toBeCloseTo(25 * Math.PI * LONG, 6);
    expect(mass!.contentsKg).toBeCloseTo((900 * 25 * Math.PI * LONG) / 1e9, 12);
    expect(mass!.frequency!.span).toBeCloseTo(LONG - 300, 9);
    const inertia = (Math.PI * (12 ** 4 - 10 ** 4)) / 64;
    const perM = mass!.tubeKgPerM + mass!.contentsKgPerM;
    const span = (LONG - 300) / 1000;
    const hertz = (Math.PI / (2 * span * span)) * Math.sqrt((200e9 * inertia * 1e-12) / perM);
    expect(mass!.frequency!.firstHz).toBeCloseTo(hertz, 6);
    expect(work().mass!.frequency).toBeNull();
    expect(work({ fluid: null }).mass!.contentsKg).toBe(0);
  });
});
