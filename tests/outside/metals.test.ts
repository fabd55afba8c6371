/** Mass, section, heat and walls of tubes against further tables, and their misprints. */
import { codeWall, freeGrowth, proofTest, tubeMass, tubeSection } from '@runback/bending';
import { catalogue } from '@runback/catalogue';
import { describe, expect, it } from 'vitest';

const INCH = 25.4;
const PSI = 0.006894757293168;
const LB = 0.45359237;
/** kg/m³ of 1 lb/in³. */
const LB_IN3 = LB / 0.0254 ** 3;
const off = (found: number, printed: number): number => Math.abs(found / printed - 1);
const kg = (od: number, wall: number, densityKgM3: number) => tubeMass({ od, wall, densityKgM3 }).tubeKgPerM;
const value = (id: string, of: 'density' | 'expansion' | 'youngs'): number =>
  catalogue.materials[id]?.[of]?.value ?? Number.NaN;

describe('mass', () => {
  // EN 10220, kg/m as printed for the first four (from memory); the last two by its formula.
  it.each([
    [21.3, 2.6, 1.199, 1.2],
    [60.3, 3.6, 5.0339, 5.03],
    [10, 1, 0.22195, 0.222],
    [6, 1, 0.12331, 0.123],
    [25, 1.5, 0.86932, 0.869],
    [4.75, 0.7, 0.06991, 0.0699],
  ])('EN 10220, %f × %f mm', (od, wall, worked, printed) => {
    expect(off(kg(od, wall, 7850), worked)).toBeLessThan(1e-4);
    expect(Number(kg(od, wall, 7850).toPrecision(3))).toBe(printed);
  });

  it('an aerospace tube sheet, 0.284 lb/in³: 3.5 × .036 in, a foot of 1.335 lb; 4 × .047 in, 1.989 lb, 2.961 kg/m', () => {
    const pounds = (od: number, wall: number) => (kg(od * INCH, wall * INCH, 0.284 * LB_IN3) * 0.3048) / LB;
    expect(pounds(3.5, 0.036)).toBeCloseTo(1.335, 3);
    expect(pounds(4, 0.047)).toBeCloseTo(1.989, 3);
    expect(off(kg(4 * INCH, 0.047 * INCH, 0.284 * LB_IN3), 2.961)).toBeLessThan(0.001);
  });

  it('constants of mill sheets: 10.68 and 10.69 are 0.2833 and 0.2836 lb/in³, 10.79 for stainless 0.2862', () => {
    for (const [constant, density] of [
      [10.68, 0.2833],
      [10.69, 0.2836],
      [10.79, 0.2862],
    ] as const) {
      const perFoot = (kg(2 * INCH, 0.1 * INCH, density * LB_IN3) * 0.3048) / LB;
      expect(off(perFoot, constant * 1.9 * 0.1)).toBeLessThan(0.0005);
    }
  });

  it('ASME B36.10M, DN 50 schedule 40, 60.3 × 3.91 mm: 5.44 kg/m', () =>
    expect(kg(60.3, 3.91, 7850)).toBeCloseTo(5.44, 2));

  it('304 is printed from 7930 to 8000, 316 from 7980 to 8027: ours lies within one per cent of all of them', () => {
    for (const printed of [7930, 8000])
      expect(off(value('stainless-304', 'density'), printed)).toBeLessThan(0.01);
    for (const printed of [8000, 7980, 8027])
      expect(off(value('stainless-316', 'density'), printed)).toBeLessThan(0.01);
  });
});

describe('section', () => {
  // B36.10 and B36.19 property table; US Army EI 02C097 Table B-1. Inches.
  it.each([
    [0.675, 0.091, 0.167, 0.00729, 0.0216],
    [0.405, 0.049, 0.0548, 0.00088, 0.00437],
    [12, 0.134, 5, 87.9, 14.7],
  ])('%f × %f in, as printed', (od, wall, area, inertia, modulus) => {
    const found = tubeSection(od, wall);
    expect(off(found.area, area)).toBeLessThan(0.0011);
    expect(off(found.inertia, inertia)).toBeLessThan(0.006);
    expect(off(found.modulus, modulus)).toBeLessThan(0.0035);
  });

  it('radii of gyration: 2 in schedule 40 0.787 in (Mott, Table A16-6); 12 × .134, 12 × 1/4, 12.75 × 3/8 (EI 02C097)', () => {
    expect(tubeSection(2.375, 0.154).gyration).toBeCloseTo(0.787, 3);
    expect(tubeSection(12, 0.134).gyration).toBeCloseTo(4.2, 2);
    expect(tubeSection(12, 0.25).gyration).toBeCloseTo(4.16, 2);
    expect(tubeSection(12.75, 0.375).gyration).toBeCloseTo(4.38, 2);
  });
});

describe('heat', () => {
  it('90/10 copper-nickel: 17e-6 to 300 °C (copper association), 17.1e-6 (a mill’s C70600 sheet), E 135 GPa, 8900 to 8940', () => {
    const id = 'copper-nickel-90-10';
    expect(value(id, 'expansion') * 1e6).toBeCloseTo(17, 9);
    expect(off(value(id, 'expansion'), 17.1e-6)).toBeLessThan(0.01);
    expect(value(id, 'youngs')).toBe(135_000);
    // The mill prints 18e6 psi, 124 GPa: sheets differ by 8 %.
    expect(off(value(id, 'youngs'), 18e6 * PSI)).toBeLessThan(0.1);
    expect(off(value(id, 'density'), 8940)).toBeLessThan(0.005);
  });

  it('3003 expands 23.2e-6 (materials pages, 20 to 100 °C), 5052 23.8e-6 (alloy table)', () => {
    expect(value('aluminium-3003', 'expansion') * 1e6).toBeCloseTo(23.2, 9);
    expect(value('aluminium-5052', 'expansion') * 1e6).toBeCloseTo(23.8, 9);
  });

  it('school figures, steel 12, copper 17, aluminium 25e-6 (OpenStax), lie within 10 % of the catalogue', () => {
    for (const [id, printed] of [
      ['low-carbon-steel', 12],
      ['copper', 17],
      ['aluminium-6061', 25],
      ['aluminium-3003', 25],
    ] as const)
      expect(off(value(id, 'expansion') * 1e6, printed), id).toBeLessThan(0.1);
  });

  it('304: means to 100, 315 and 538 °C of 17.2, 17.8, 18.4e-6 (wire data sheet): hot tube grows 7 % more than the cold figure says', () => {
    const growth = (alpha: number) => freeGrowth(1000, { expansionPerK: alpha, deltaK: 500 });
    const ours = value('stainless-304', 'expansion');
    expect(growth(ours)).toBeCloseTo(growth(17.2e-6), 9);
    expect(off(growth(18.4e-6), growth(ours))).toBeLessThan(0.071);
  });

  it('carbon steel, means to 100 and 250 °F of 6.13 and 6.49e-6 per °F (a piping course): within 6 % of the catalogue', () => {
    for (const printed of [6.13, 6.25, 6.38, 6.49])
      expect(off((value('low-carbon-steel', 'expansion') * 1e6) / 1.8, printed)).toBeLessThan(0.062);
  });
});

describe('walls', () => {
  it('the (3a) exercise on NPS 12: with the allowance of 3 mm 1.02023 in, before the mill’s share', () => {
    const given = { pressureMPa: 3000 * PSI, allowableMPa: 20_000 * PSI, od: 12.75 * INCH, allowance: 3 };
    expect(codeWall(given).order / INCH).toBeCloseTo(1.02023, 4);
    expect(codeWall({ ...given, wallToleranceFraction: 0.125 }).order / INCH).toBeCloseTo(1.02023 / 0.875, 4);
  });

  it('14 CFR 29.1435(b): a rotorcraft’s hydraulics are proved at 1.5 times their greatest pressure too', () =>
    expect(proofTest('aircraft-hydraulic', 20.7).pressureMPa).toBeCloseTo(1.5 * 20.7, 12));

  it('46 CFR 28.335: metal fuel lines 0.9 mm, 0.035 in; 46 CFR 119.455 prints 0.35 in, ten times that', () => {
    const wall = catalogue.tubes['al6061-1-4inx035']!.wall;
    expect(Number(wall.toFixed(1))).toBe(0.9);
    expect(off(wall, 0.35 * INCH)).toBeGreaterThan(0.89);
  });
});
