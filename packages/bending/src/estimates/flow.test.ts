import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drainTime, partFull } from './drain.ts';
import { bendLoss, fullyTurbulentFactor, headPressure, pressureDrop } from './flow.ts';
import { colebrook, frictionFactor, meanVelocity, reynoldsNumber } from './friction.ts';

const SEED = { seed: 20_262, numRuns: 300 };

describe('friction', () => {
  it('Colebrook holds for its own answer', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 3.31, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (power, rough) => {
          const root = 1 / Math.sqrt(colebrook(10 ** power, rough));
          const miss = root + 2 * Math.log10(rough / 3.7 + (2.51 * root) / 10 ** power);
          expect(Math.abs(miss)).toBeLessThan(1e-12 * root);
        },
      ),
      SEED,
    ));

  it('falls with Reynolds, rises with roughness, and ends at the fully rough factor', () => {
    expect(colebrook(20_000, 0.001)).toBeLessThan(colebrook(10_000, 0.001));
    expect(colebrook(20_000, 0.002)).toBeGreaterThan(colebrook(20_000, 0.001));
    expect(colebrook(1e15, 0.01)).toBeCloseTo(0.25 / Math.log10(0.01 / 3.7) ** 2, 9);
  });

  it('is sure of itself only outside 2000 to 4000', () => {
    expect(frictionFactor(1999, 0).regime).toBe('laminar');
    expect(frictionFactor(4000, 0).regime).toBe('turbulent');
    const between = frictionFactor(2000, 0);
    expect([between.regime, between.low]).toEqual(['unsure', 0.032]);
    expect(between.factor).toBe(between.high);
    expect(between.high).toBeGreaterThan(1.4 * between.low);
  });

  it('half the bore, twice the Reynolds number and four times the velocity', () => {
    const at = (bore: number) => ({ flowLMin: 12, bore, viscosityMm2S: 30 });
    expect(reynoldsNumber(at(5))).toBeCloseTo(2 * reynoldsNumber(at(10)), 9);
    expect(meanVelocity(at(5))).toBeCloseTo(4 * meanVelocity(at(10)), 9);
  });

  it('what cannot be is refused', () => {
    expect(() => frictionFactor(0, 0)).toThrow(/reynolds must be > 0, got 0/);
    expect(() => colebrook(1500, 0)).toThrow(/>= 2000, got 1500/);
    expect(() => colebrook(1e5, 0.2)).toThrow(/<= 0.1, got 0.2/);
    expect(() => meanVelocity({ flowLMin: 1, bore: -2 })).toThrow(/got -2/);
  });
});

describe('bends', () => {
  const quarter = Math.PI / 2;

  it('is linear in the angle, whole quarters as the reference has them', () => {
    const at = (n: number) => bendLoss({ radius: 30, angle: n * quarter }, 10);
    expect(at(3) - at(2)).toBeCloseTo(at(2) - at(1), 12);
    expect(at(0.5)).toBeLessThan(at(1));
    expect(at(1)).toBeCloseTo(12 * fullyTurbulentFactor(10), 12);
  });

  it('between the rows of the table it lies between them', () => {
    const at = (ratio: number) => bendLoss({ radius: ratio, angle: quarter }, 1, 1);
    expect([at(1), at(2.5), at(5), at(18), at(20)]).toEqual([20, 12, 15.5, 46, 50]);
  });

  it('outside the table it is refused', () => {
    expect(() => bendLoss({ radius: 9, angle: 1 }, 10)).toThrow(/1 to 20 bores, got 9 mm/);
    expect(() => bendLoss({ radius: 210, angle: 1 }, 10)).toThrow(/got 210 mm/);
    expect(() => bendLoss({ radius: 30, angle: 0 }, 10)).toThrow(/angle must be > 0, got 0/);
    expect(() => fullyTurbulentFactor(1)).toThrow(/> 1 mm, got 1/);
  });
});

describe('pressure drop', () => {
  const oil = { viscosityMm2S: 100, densityKgM3: 870, bore: 10, straights: [800, 400] };

  it('laminar is Hagen–Poiseuille: linear in flow and length, fourth power of the bore', () => {
    const found = pressureDrop({ ...oil, flowLMin: 6 });
    const flow = 1e-4;
    expect(found.totalMPa * 1e6).toBeCloseTo((128 * 0.1e-3 * 870 * 1.2 * flow) / (Math.PI * 0.01 ** 4), 6);
    expect(pressureDrop({ ...oil, flowLMin: 12 }).totalMPa).toBeCloseTo(2 * found.totalMPa, 12);
    expect(pressureDrop({ ...oil, flowLMin: 6, bore: 20 }).totalMPa).toBeCloseTo(found.totalMPa / 16, 12);
    expect(pressureDrop({ ...oil, flowLMin: 6, straights: [1200] }).totalMPa).toBeCloseTo(found.totalMPa, 12);
  });

  it('grows with flow across the unsure range, and there says both ends', () => {
    const at = (flowLMin: number) => pressureDrop({ ...oil, viscosityMm2S: 10, flowLMin });
    const drops = [2, 8, 9.4, 9.5, 14, 18.8, 18.9, 30].map((flow) => at(flow).totalMPa);
    expect(drops).toEqual([...drops].sort((a, b) => a - b));
    expect(at(14).friction.regime).toBe('unsure');
    expect(at(14).leastMPa).toBeLessThan(at(14).totalMPa);
    expect(at(30).leastMPa).toBe(at(30).totalMPa);
  });

  it('what it climbs it must lift, what it falls it gains; the order of bends does not matter', () => {
    const bends = [
      { radius: 30, angle: 1 },
      { radius: 40, angle: 2 },
    ];
    const up = pressureDrop({ ...oil, flowLMin: 6, bends, rise: 500 });
    const down = pressureDrop({ ...oil, flowLMin: 6, bends: [...bends].reverse(), rise: -500 });
    expect(up.riseMPa).toBe(-down.riseMPa);
    expect(up.bendsMPa).toBeCloseTo(down.bendsMPa, 15);
    expect(up.totalMPa - down.totalMPa).toBeCloseTo(2 * headPressure(500, 870), 12);
  });

  it('what cannot be is refused', () => {
    expect(() => pressureDrop({ ...oil, flowLMin: 0 })).toThrow(/flowLMin must be > 0, got 0/);
    expect(() => pressureDrop({ ...oil, flowLMin: 1, straights: [-1] })).toThrow(
      /straight must be >= 0, got -1/,
    );
    expect(() => headPressure(Number.NaN, 1000)).toThrow(/got NaN/);
  });
});

describe('drain by gravity', () => {
  const line = { bore: 8, length: 1500, fall: 400, viscosityMm2S: 150 };

  /** Runs the column out in small steps of its upper surface, for a fall still left of `left(s)`. */
  function stepped(left: (s: number) => number): number {
    const steps = 20_000;
    let time = 0;
    for (let i = 0; i < steps; i += 1) {
      const s = ((i + 0.5) / steps) * line.length;
      const velocity = (9806.65 * line.bore ** 2 * left(s)) / (32 * line.viscosityMm2S * (line.length - s));
      time += line.length / steps / velocity;
    }
    return time;
  }

  it('an even slope takes the middle figure, and any other route lies in the bounds', () => {
    expect(stepped((s) => 400 * (1 - s / 1500)) / drainTime(line).evenS!).toBeCloseTo(1, 9);
    const shallowFirst = (s: number) => (s < 750 ? 400 - 0.05 * s : ((1500 - s) * 362.5) / 750);
    const steepFirst = (s: number) => (s < 750 ? 400 - (362.5 / 750) * s : (1500 - s) * 0.05);
    const { leastS, mostS } = drainTime({ ...line, leastSlope: Math.asin(0.05) });
    for (const route of [shallowFirst, steepFirst]) {
      expect(stepped(route)).toBeGreaterThan(leastS);
      expect(stepped(route)).toBeLessThan(mostS!);
    }
    expect(stepped(shallowFirst)).toBeLessThan(stepped(steepFirst));
  });

  it('thicker, thinner-bored, longer or flatter takes longer', () => {
    const base = drainTime(line).evenS!;
    for (const worse of [{ viscosityMm2S: 200 }, { bore: 7 }, { length: 1600 }, { fall: 300 }])
      expect(drainTime({ ...line, ...worse }).evenS).toBeGreaterThan(base);
  });

  it('water in a steep bore is not laminar: no middle figure, and the upper bound has turbulent friction', () => {
    const water = { bore: 20, length: 1000, fall: 500, viscosityMm2S: 1, leastSlope: 0.4 };
    const found = drainTime(water);
    expect(found.evenS).toBeNull();
    expect(found.mostS).toBeGreaterThan(2 * found.leastS);
    expect(drainTime({ ...water, roughness: 0.1 }).mostS).toBeGreaterThan(found.mostS!);
    expect(drainTime({ ...water, leastSlope: 0.1 }).mostS).toBeGreaterThan(found.mostS!);
    // Nothing is sooner than sliding down the slope without friction.
    expect(found.mostS).toBeGreaterThan(Math.sqrt((2 * 1000) / (9806.65 * Math.sin(0.4))));
    expect(found.assumptions.length).toBeGreaterThan(2);
  });

  it('what cannot be is refused', () => {
    expect(() => drainTime({ ...line, fall: 1600 })).toThrow(/fall must be <= length 1500 mm, got 1600/);
    expect(() => drainTime({ ...line, leastSlope: 0.5 })).toThrow(/must not exceed .*got 0.5/);
    expect(() => drainTime({ ...line, leastSlope: 0 })).toThrow(/leastSlope must be > 0, got 0/);
  });
});

describe('a part-full bore', () => {
  it('what one depth leaves dry, the other depth wets', () => {
    for (const depth of [0, 1, 3.3, 5, 8, 10]) {
      expect(partFull(10, depth).area + partFull(10, 10 - depth).area).toBeCloseTo(25 * Math.PI, 10);
      expect(partFull(10, depth).width).toBeCloseTo(partFull(10, 10 - depth).width, 12);
    }
    expect(partFull(10, 5).hydraulicRadius).toBeCloseTo(2.5, 12);
    expect(partFull(10, 10).hydraulicRadius).toBeCloseTo(2.5, 12);
    expect(partFull(10, 0).hydraulicRadius).toBe(0);
    expect(() => partFull(10, 11)).toThrow(/got 11/);
  });
});
