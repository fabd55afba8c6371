import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { codePressure, codeWall, codeWallFromBore } from './code-wall.ts';
import { type ProofService, proofRules, proofTest } from './proof.ts';
import { pressureEstimates, thickWallStress } from './strength.ts';

const tube = fc.record({
  od: fc.double({ min: 2, max: 200, noNaN: true }),
  share: fc.double({ min: 0.002, max: 0.498, noNaN: true }),
  stress: fc.double({ min: 10, max: 900, noNaN: true }),
});
const SEED = { seed: 20_261, numRuns: 300 };
const estimates = (od: number, wall: number, stressMPa = 100) =>
  pressureEstimates({ od, wall, stressMPa, safetyFactor: 1 });

describe('three formulas side by side', () => {
  it('Barlow is never above the others', () =>
    fc.assert(
      fc.property(tube, ({ od, share, stress }) => {
        const found = estimates(od, od * share, stress);
        expect(found.barlowMPa).toBeLessThanOrEqual(found.lameMPa * (1 + 1e-12));
        expect(found.barlowMPa).toBeLessThan(found.boardmanMPa);
        expect(found.leastMPa).toBe(Math.min(found.barlowMPa, found.lameMPa));
      }),
      SEED,
    ));

  it('Boardman passes Lamé exactly where the wall passes D/6', () => {
    const even = estimates(60, 10);
    expect(even.boardmanMPa).toBeCloseTo(even.lameMPa, 10);
    for (const share of [0.01, 0.1, 0.16])
      expect(estimates(60, 60 * share).boardmanMPa).toBeLessThan(estimates(60, 60 * share).lameMPa);
    for (const share of [0.17, 0.3, 0.45]) {
      expect(estimates(60, 60 * share).boardmanMPa).toBeGreaterThan(estimates(60, 60 * share).lameMPa);
      expect(estimates(60, 60 * share).thin).toBe(false);
    }
  });

  it('they become one as the wall thins: the difference halves with the wall', () => {
    const gap = (share: number): number => {
      const found = estimates(1, share);
      return found.lameMPa / found.barlowMPa - 1;
    };
    expect(gap(1e-6)).toBeLessThan(1.1e-6);
    expect(gap(1e-3) / gap(5e-4)).toBeCloseTo(2, 2);
  });

  it('a solid bar is where Lamé says S and Barlow too', () => {
    const found = estimates(10, 5 - 1e-9);
    expect(found.lameMPa).toBeCloseTo(100, 6);
    expect(found.barlowMPa).toBeCloseTo(100, 6);
  });

  it('scale leaves the pressure, stress goes straight through, tolerance is less wall', () => {
    expect(estimates(120, 10).lameMPa).toBeCloseTo(estimates(12, 1).lameMPa, 12);
    expect(estimates(12, 1, 200).boardmanMPa).toBeCloseTo(2 * estimates(12, 1).boardmanMPa, 12);
    const short = pressureEstimates({
      od: 12,
      wall: 1,
      stressMPa: 400,
      safetyFactor: 4,
      wallToleranceFraction: 0.125,
    });
    expect(short.lameMPa).toBeCloseTo(estimates(12, 0.875).lameMPa, 12);
    expect([short.wallLeft, short.allowableMPa, short.safetyFactor]).toEqual([0.875, 100, 4]);
    expect(short.caution).toBe('estimate, not approval');
  });

  it('the Lamé pressure brings the bore to the allowed stress, and the hoop falls by the pressure across the wall', () =>
    fc.assert(
      fc.property(tube, ({ od, share, stress }) => {
        const insideMPa = estimates(od, od * share, stress).lameMPa;
        const found = thickWallStress({ od, wall: od * share, insideMPa });
        expect(found.hoopBoreMPa / stress).toBeCloseTo(1, 9);
        expect((found.hoopBoreMPa - found.hoopOutsideMPa) / insideMPa).toBeCloseTo(1, 6);
      }),
      SEED,
    ));

  it('the same pressure on both sides is the same pressure everywhere', () => {
    const found = thickWallStress({ od: 10, wall: 2, insideMPa: 7, outsideMPa: 7 });
    for (const value of [found.hoopBoreMPa, found.hoopOutsideMPa, found.axialMPa])
      expect(value).toBeCloseTo(-7, 12);
  });

  it.each([
    [{ od: 0 }, 'od must be > 0, got 0'],
    [{ wall: 6 }, 'wall must be < od/2 = 6 mm, got 6'],
    [{ stressMPa: Number.NaN }, 'stressMPa must be > 0, got NaN'],
    [{ safetyFactor: 0.5 }, 'safetyFactor must be >= 1, got 0.5'],
    [{ wallToleranceFraction: 1 }, 'wallToleranceFraction must be >= 0 and < 1, got 1'],
  ])('%o is refused', (wrong, words) => {
    const right = { od: 12, wall: 1, stressMPa: 100, safetyFactor: 4 };
    expect(() => pressureEstimates({ ...right, ...wrong })).toThrow(RangeError);
    expect(() => pressureEstimates({ ...right, ...wrong })).toThrow(words);
  });
});

describe('wall and pressure by the piping formulas', () => {
  const code = { allowableMPa: 138, allowance: 0.3 };

  it('wall and pressure undo each other, straight and on the inside of a bend', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 30, noNaN: true }),
        fc.double({ min: 1.5, max: 10, noNaN: true }),
        (pressureMPa, ratio) => {
          const bent = { ...code, od: 20, radius: 20 * ratio };
          const measured = { ...bent, wallOutsideBend: 5 };
          const needed = codeWall({ ...bent, pressureMPa });
          expect(codePressure({ ...measured, wall: needed.straight + 0.3 }).straightMPa).toBeCloseTo(
            pressureMPa,
            9,
          );
          expect(codePressure({ ...measured, wall: needed.bendInside! + 0.3 }).bendInsideMPa).toBeCloseTo(
            pressureMPa,
            9,
          );
          expect(codePressure({ ...bent, wall: needed.order }).leastMPa).toBeGreaterThan(
            pressureMPa * (1 - 1e-9),
          );
        },
      ),
      SEED,
    ));

  it('(3a) and (3b) are one formula, by the outside and by the bore', () => {
    const { straight } = codeWallFromBore({ ...code, pressureMPa: 9, bore: 50 });
    const od = 50 + 2 * (straight + code.allowance);
    expect(codeWall({ ...code, pressureMPa: 9, od }).straight).toBeCloseTo(straight, 12);
    expect(() => codeWallFromBore({ ...code, pressureMPa: 240, bore: 50 })).toThrow(/must be < 230.*got 240/);
  });

  it('inside wants more, outside less, and both come to the straight as the bend opens', () => {
    const at = (radius: number) => codeWall({ ...code, pressureMPa: 10, od: 20, radius });
    expect(at(40).bendInside).toBeGreaterThan(at(40).straight);
    expect(at(40).bendOutside).toBeLessThan(at(40).straight);
    expect(at(60).bendInside!).toBeLessThan(at(40).bendInside!);
    expect(at(2e8).bendInside).toBeCloseTo(at(2e8).straight, 7);
    expect(at(2e8).bendOutside).toBeCloseTo(at(2e8).straight, 7);
  });

  it('the least is the least of straight and bend, and a thin measured outside governs', () => {
    const found = codePressure({ allowableMPa: 138, od: 20, wall: 2, radius: 60 });
    expect(found.leastMPa).toBe(found.bendInsideMPa);
    const thin = codePressure({ ...code, od: 20, wall: 2, radius: 60, wallOutsideBend: 1.2 });
    expect(thin.leastMPa).toBe(thin.bendOutsideMPa);
    expect(codePressure({ ...code, od: 20, wall: 2 }).bendInsideMPa).toBeNull();
  });

  it('from D/6 on the pressure is Lamé’s, without a step', () => {
    const at = (wall: number) => codePressure({ allowableMPa: 100, od: 60, wall }).straightMPa;
    expect(at(15)).toBeCloseTo(estimates(60, 15).lameMPa, 10);
    expect(at(10 - 1e-9)).toBeCloseTo(at(10), 6);
    expect(codeWall({ allowableMPa: 100, od: 60, pressureMPa: at(9.9) }).thin).toBe(true);
    expect(codeWall({ allowableMPa: 100, od: 60, pressureMPa: at(10.2) }).thin).toBe(false);
  });

  it('what cannot be is refused', () => {
    expect(() => codeWall({ ...code, pressureMPa: 1, od: 20, radius: 10 })).toThrow(
      /radius must be > .*got 10/,
    );
    expect(() => codeWall({ ...code, pressureMPa: 1, od: 20, quality: 1.2 })).toThrow(/got 1.2/);
    expect(() => codePressure({ ...code, od: 20, wall: 0.2 })).toThrow(/leaves no wall of 0.2 mm/);
  });
});

describe('proof', () => {
  it('twice above the low range, the floor up to it', () => {
    expect(proofTest('fuel', 1).pressureMPa).toBe(2);
    expect(proofTest('fuel', 0.1).pressureMPa).toBeCloseTo(0.68948, 5);
    expect(proofTest('fuel', 0.1).pressureMPa).toBe(proofTest('fuel', 0.3).pressureMPa);
  });

  it('never under the working pressure, and every rule says where it is from', () => {
    for (const service of Object.keys(proofRules) as ProofService[]) {
      const found = proofTest(service, 0.34);
      if (found.pressureMPa !== null) {
        expect(found.pressureMPa, service).toBeGreaterThan(0.34);
        expect(found.medium, service).not.toBeNull();
      }
      expect(found.source.length, service).toBeGreaterThan(10);
      expect(found.mediumSource.length, service).toBeGreaterThan(10);
    }
  });

  it('an unknown service and no pressure are refused', () => {
    expect(() => proofTest('steam' as ProofService, 1)).toThrow(/got steam/);
    expect(() => proofTest('fuel', 0)).toThrow(/got 0/);
  });
});
