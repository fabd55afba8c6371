/** Pressure, flow, heat and mass against published figures. What was read only from memory is held loosely or not at all. */
import {
  bendLoss,
  codeWall,
  colebrook,
  endMovement,
  freeGrowth,
  frictionFactor,
  fullyTurbulentFactor,
  headPressure,
  heldForce,
  meanVelocity,
  partFull,
  pressureDrop,
  pressureEstimates,
  proofRules,
  proofTest,
  reynoldsNumber,
  thickWallStress,
  tubeMass,
  tubeSection,
} from '@runback/bending';
import { describe, expect, it } from 'vitest';

const INCH = 25.4;
const PSI = 0.006894757293168;
const LB_FT = 0.45359237 / 0.3048;
const GPM = 3.785411784;
const off = (found: number, printed: number): number => Math.abs(found / printed - 1);
const inPsi = (od: number, wall: number, psi: number, safetyFactor = 4) => {
  const found = pressureEstimates({ od: od * INCH, wall: wall * INCH, stressMPa: psi * PSI, safetyFactor });
  return [found.barlowMPa / PSI, found.boardmanMPa / PSI, found.lameMPa / PSI] as const;
};

describe('pressure', () => {
  // Reference table for seamless steel hydraulic tube: 50 000 psi, factor 4, by Barlow, rounded to 50 psi.
  it.each([
    [0.188, 0.028, 3750],
    [0.188, 0.035, 4650],
    [0.25, 0.028, 2800],
    [0.25, 0.035, 3500],
    [0.25, 0.049, 4900],
    [0.25, 0.065, 6500],
    [0.375, 0.035, 2350],
    [0.375, 0.049, 3250],
    [0.5, 0.049, 2450],
    [1, 0.065, 1600],
  ])('steel hydraulic tube %f × %f in: %d psi', (od, wall, printed) =>
    expect(Math.abs(inPsi(od, wall, 50_000)[0] - printed)).toBeLessThan(30),
  );

  it('Fluid Power Journal, “Sizing Tubes”: three forms, and 45 000 psi over 4 (SAE J524, J525)', () => {
    const [barlow, boardman, lame] = inPsi(0.25, 0.035, 50_000);
    expect(barlow).toBeCloseTo(3500, 6);
    expect(boardman).toBeCloseTo(3941.4, 1);
    expect(lame).toBeCloseTo(3964.7, 1);
    expect(inPsi(0.25, 0.035, 45_000)[0]).toBeCloseTo(3150, 6);
  });

  // Copper Tube Handbook, Table 3c: type M annealed, 100 °F, S = 6000 psi. Least wall and largest diameter are from
  // ASTM B88 tolerances as remembered, and give the printed figures.
  it.each([
    ['3/8', 0.5025, 0.023, 570],
    ['1/2', 0.6275, 0.025, 494],
    ['3/4', 0.878, 0.029, 407],
    ['1', 1.1285, 0.031, 337],
  ])('copper type M %s: by Boardman', (_, od, wall, printed) =>
    expect(Math.abs(inPsi(od, wall, 6000, 1)[1] - printed)).toBeLessThan(1),
  );

  it.each([
    [5100, 420],
    [4900, 403],
    [4800, 395],
    [4700, 387],
    [4000, 329],
    [3000, 247],
  ])('the same table, 1/2 in, S %d psi: %d psi', (stress, printed) =>
    expect(Math.abs(inPsi(0.6275, 0.025, stress, 1)[1] - printed)).toBeLessThan(1),
  );

  it.each([
    [0.252, 0.027, 1195],
    [0.377, 0.029, 836],
    [0.502, 0.029, 618],
  ])('refrigeration copper ASTM B280 at 150 °F, a gas supplier’s sheet: %f in', (od, wall, printed) =>
    expect(Math.abs(inPsi(od, wall, 5100, 1)[1] - printed)).toBeLessThan(1),
  );

  it('ASME B31.3 para 304.1.2 (3a), a worked sheet: 3 MPa, 219.1 mm, 137.9 MPa gives 2.36 mm', () =>
    expect(codeWall({ pressureMPa: 3, od: 219.1, allowableMPa: 137.9 }).straight).toBeCloseTo(2.36269, 5));

  it('a sheet of the same paragraph: 12.7 mm less 12.5 % leaves 11.11 mm', () =>
    expect(
      pressureEstimates({
        od: 219.1,
        wall: 12.7,
        stressMPa: 137.9,
        safetyFactor: 1,
        wallToleranceFraction: 0.125,
      }).wallLeft,
    ).toBeCloseTo(11.1125, 9));

  it('a trade table’s burst pressures are no Barlow of one strength: 13 475, 17 325, 16 088 psi', () => {
    const implied = (
      [
        [0.25, 0.028, 13_475],
        [0.25, 0.035, 17_325],
        [0.375, 0.049, 16_088],
      ] as const
    ).map(([od, wall, psi]) => psi / inPsi(od, wall, 1, 1)[0]);
    expect(Math.max(...implied) / Math.min(...implied)).toBeGreaterThan(1.02);
  });

  it('the same formula with allowance and mill tolerance, and the trap of the nominal size: 12 in is 12.75 in', () => {
    const given = {
      pressureMPa: 3000 * PSI,
      allowableMPa: 20_000 * PSI,
      allowance: 3,
      wallToleranceFraction: 0.125,
    };
    const found = codeWall({ ...given, od: 12.75 * INCH });
    expect(found.straight / INCH).toBeCloseTo(0.90212, 4);
    expect(found.order / INCH).toBeCloseTo(1.16598, 4);
    expect(codeWall({ ...given, od: 12 * INCH }).order / INCH).toBeLessThan(1.12);
  });

  it('thick cylinder, a solved question: hoop at the bore +45 under 25 inside means 12.4 outside', () => {
    const found = thickWallStress({ od: 500, wall: 50, insideMPa: 25, outsideMPa: 12.4 });
    expect(found.hoopBoreMPa).toBeCloseTo(45, 9);
  });

  it('thick cylinder, both pressures: 3.4375 along it; the page’s N/m² is a slip for MPa, a million times less', () => {
    const found = thickWallStress({ od: 100, wall: 20, insideMPa: 20, outsideMPa: 5 });
    expect(found.axialMPa).toBeCloseTo(3.44, 2);
    expect(found.hoopBoreMPa).toBeCloseTo(26.875, 9);
    expect(found.hoopOutsideMPa).toBeCloseTo(11.875, 9);
    expect(off(found.axialMPa * 1e6, 3.44)).toBeGreaterThan(1e5);
  });

  it('Barlow with the inside diameter, as one site prints it, promises more than Lamé; on the outside it does not', () => {
    const { barlowMPa, lameMPa } = pressureEstimates({ od: 6, wall: 1, stressMPa: 30, safetyFactor: 1 });
    expect(barlowMPa).toBeCloseTo(10, 12);
    expect((2 * 30 * 1) / 4).toBeGreaterThan(1.25 * lameMPa);
    expect(thickWallStress({ od: 6, wall: 1, insideMPa: 10 }).hoopBoreMPa).toBeCloseTo(26, 12);
  });

  it('proof and burst of aircraft tubes, 14 CFR 25.1435(a)(1) and 25.1438', () => {
    for (const service of ['aircraft-hydraulic', 'aircraft-pneumatic'] as const)
      expect([proofTest(service, 20).pressureMPa, proofTest(service, 20).burstMPa]).toEqual([30, 60]);
    expect(proofRules['aircraft-hydraulic'].source).toContain('25.1435');
  });
});

describe('friction', () => {
  // Values of an open fluids library's test-suite for the formula itself.
  it('Colebrook, Re 1e5, 1e-4', () =>
    expect(off(colebrook(1e5, 1e-4), 0.018513866077471648)).toBeLessThan(1e-10));
  it('Colebrook far out, Re 1.048e11', () =>
    expect(off(colebrook(1.048e11, 2.55e-8), 0.0037751087365)).toBeLessThan(1e-9));

  it('the explicit formulas of Haaland (1983) and Swamee and Jain (1976) lie near it, as they are meant to', () => {
    for (const [reynolds, rough] of [
      [1e5, 1e-4],
      [1e6, 1e-3],
      [1e5, 0.01],
      [1e7, 1e-5],
    ] as const) {
      const haaland = (-1.8 * Math.log10((rough / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
      const swamee = 0.25 / Math.log10(rough / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
      expect(off(colebrook(reynolds, rough), haaland)).toBeLessThan(0.02);
      expect(off(colebrook(reynolds, rough), swamee)).toBeLessThan(0.012);
    }
  });

  it('Crane TP-410 example 7.1: water at 30 °C, 50 mm plastic, 200 l/min, f 0.0179', () => {
    expect(off(reynoldsNumber({ flowLMin: 200, bore: 50, viscosityMm2S: 0.8438 }), 100_600)).toBeLessThan(
      0.01,
    );
    expect(off(frictionFactor(100_600, 0).factor, 0.0179)).toBeLessThan(0.02);
  });

  it('Crane TP-410 fT of 4 in pipe: 0.0163 to 0.017', () => {
    expect(fullyTurbulentFactor(100)).toBeGreaterThan(0.0162);
    expect(fullyTurbulentFactor(100)).toBeLessThan(0.017);
  });
});

describe('pressure drop', () => {
  it('laminar oil pipe, a solved examination question', () => {
    const line = {
      flowLMin: 210,
      bore: 50,
      viscosityMm2S: (0.1 / 900) * 1e6,
      densityKgM3: 900,
      straights: [300_000],
    };
    const found = pressureDrop(line);
    expect(off(found.velocityMPerS, 1.782)).toBeLessThan(0.001);
    expect(off(found.reynolds, 801.9)).toBeLessThan(0.001);
    expect(off(found.totalMPa * 1e6, 684_288)).toBeLessThan(0.001);
  });

  it('Giancoli, Physics, ch. 10: oil, 1.6 km of 29 cm pipe, 650 cm³/s, about 1200 Pa', () => {
    const line = { flowLMin: 39, bore: 290, viscosityMm2S: 200, densityKgM3: 1000, straights: [1_600_000] };
    expect(off(pressureDrop(line).totalMPa * 1e6, 1200)).toBeLessThan(0.01);
  });

  it('a needle, solved question: 85 254.55 Pa', () => {
    // The question takes the flow as laminar; at its Re of 3638 ours calls it unsure, and its lower end is that answer.
    const found = pressureDrop({
      flowLMin: 0.06,
      bore: 0.35,
      viscosityMm2S: 1,
      densityKgM3: 1000,
      straights: [31.4],
    });
    expect(found.friction.regime).toBe('unsure');
    expect(off(found.leastMPa * 1e6, 85_254.55)).toBeLessThan(1e-6);
    expect(found.totalMPa).toBeGreaterThan(found.leastMPa);
  });

  it('Crane TP-410 example 7.9: laminar oil in 5 in pipe with a rise of 50 ft, 26.06 psi; not without the rise', () => {
    const line = {
      flowLMin: 400 * GPM,
      bore: 5.047 * INCH,
      viscosityMm2S: 130 / 0.87,
      densityKgM3: 0.87 * 999,
      straights: [300 * 304.8],
      rise: 50 * 304.8,
    };
    const found = pressureDrop(line);
    expect(off(found.velocityMPerS / 0.3048, 6.414)).toBeLessThan(0.001);
    expect(off(found.reynolds, 1676)).toBeLessThan(0.005);
    expect(off(found.friction.factor, 0.0382)).toBeLessThan(0.005);
    // Pipe and rise alone: the excerpt does not list valves, which may well make up the rest (our guess).
    expect(found.totalMPa / PSI).toBeLessThan(26.06);
    expect(off(found.totalMPa / PSI, 26.06)).toBeLessThan(0.03);
    expect(off(pressureDrop({ ...line, rise: 0 }).totalMPa / PSI, 26.06)).toBeGreaterThan(0.5);
  });

  it('Crane TP-410 example 7.13: fuel oil in 2 in pipe, 9.65 psi per 100 ft; by Colebrook 65 759 Pa', () => {
    const line = {
      flowLMin: 120 * GPM,
      bore: 2.067 * INCH,
      viscosityMm2S: 2.7,
      densityKgM3: 815,
      roughness: 0.0018 * INCH,
      straights: [30_480],
    };
    const found = pressureDrop(line);
    expect(off(found.friction.factor, 0.0227022)).toBeLessThan(1e-5);
    expect(off(found.totalMPa * 1e6, 65_759)).toBeLessThan(0.003);
    expect(off(found.totalMPa / PSI, 9.65)).toBeLessThan(0.02);
  });

  it('Crane TP-410 example 7.11: a flat coil of seven half turns, r/d 4, 19 609 Pa', () => {
    const bore = 26.64;
    const found = pressureDrop({
      flowLMin: 60,
      bore,
      viscosityMm2S: 0.3654,
      densityKgM3: 971.8,
      roughness: 0.0018 * INCH,
      // The excerpt says 9 m; taken as straights, with the bends on top.
      straights: [9000],
      bends: Array.from({ length: 7 }, () => ({ radius: 4 * bore, angle: Math.PI })),
    });
    expect(off(found.totalMPa * 1e6, 19_609)).toBeLessThan(0.07);
  });

  it('a bore for a speed is 0.639·√(Q/V) in, gpm and ft/s; printed upside down it is not (Fluid Power Journal)', () => {
    const [gpm, feet] = [10, 15];
    const at = (bore: number) => meanVelocity({ flowLMin: gpm * GPM, bore: bore * INCH }) / 0.3048;
    expect(off(at(0.639 * Math.sqrt(gpm / feet)), feet)).toBeLessThan(0.001);
    expect(off(at(0.639 * Math.sqrt(feet / gpm)), feet)).toBeGreaterThan(0.5);
  });
});

describe('bends, Crane TP-410 page A-29 (reprinted in Ludwig, vol. 1)', () => {
  const equivalent = (ratio: number) => bendLoss({ radius: ratio, angle: Math.PI / 2 }, 1, 1);

  it.each([
    [1, 20],
    [1.5, 14],
    [2, 12],
    [3, 12],
    [4, 14],
    [6, 17],
    [8, 24],
    [10, 30],
    [12, 34],
    [14, 38],
    [16, 42],
    [18, 46],
    [20, 50],
  ])('r/d %f: %d fT', (ratio, printed) => expect(equivalent(ratio)).toBe(printed));

  it('a circulating list of 8 fT to 20 fT for r/d 8 to 20 is not that table', () => {
    for (const ratio of [8, 10, 12, 14, 16, 20]) expect(equivalent(ratio)).toBeGreaterThan(2 * ratio);
  });

  it('eq. 2-20: two quarters, r/d 4, fT 0.023, K 0.555257', () =>
    expect(bendLoss({ radius: 4, angle: Math.PI }, 1, 0.023)).toBeCloseTo(0.555257, 6));

  it('Ito 1960 for smooth bends at Re 1e5, with the factor of a smooth bore for fT: within −10 and +50 % at 90°, under ours at 30°', () => {
    const factor = frictionFactor(1e5, 0).factor;
    for (const [ratio, ito] of [
      [2, 0.204603],
      [3, 0.201743],
      [5, 0.241107],
      [8, 0.322153],
    ] as const) {
      const ours = bendLoss({ radius: ratio, angle: Math.PI / 2 }, 1, factor);
      expect(ours / ito).toBeGreaterThan(0.9);
      expect(ours / ito).toBeLessThan(1.5);
    }
    expect(bendLoss({ radius: 5, angle: Math.PI / 6 }, 1, factor) / 0.10457946).toBeGreaterThan(1);
  });
});

describe('a part-full bore and a column at rest', () => {
  it('circular segment, D 72, h 24: 1188.02989891 (an open fluids library’s tests)', () => {
    expect(off(partFull(72, 24).area, 1188.02989891)).toBeLessThan(1e-10);
    expect(off((partFull(72, 24).wetted * 120) / 144, 73.85756504)).toBeLessThan(1e-9);
  });

  it('horizontal tank, a solved school problem: level 0.2 m below the top and 1 m wide, 15.138 m³ in 10 m', () => {
    const found = partFull(1450, 1250);
    expect(found.width).toBeCloseTo(1000, 9);
    expect((found.area * 10_000) / 1e9).toBeCloseTo(15.137923, 6);
  });

  it('segment by arcsine (Dr Math, 2000) is the same segment', () => {
    for (const [h, a] of [
      [0.3, 1],
      [1, 1],
      [1.7, 1],
    ] as const) {
      const by = (Math.PI * a * a) / 2 - a * a * Math.asin(1 - h / a) - (a - h) * Math.sqrt(h * (2 * a - h));
      expect(partFull(2 * a, h).area).toBeCloseTo(by, 12);
    }
  });

  it('Crane TP-410 example 7.26: 24 in two thirds full', () => {
    const found = partFull(24 * INCH, 16 * INCH);
    expect(found.area / 1e6).toBeCloseTo(0.2067, 4);
    expect(found.wetted / 1000).toBeCloseTo(1.16472, 4);
    expect(found.hydraulicRadius / 1000).toBeCloseTo(0.177467, 5);
  });

  it('Jones 2004: body of a horizontal tank, D 108, L 156 in, US gallons', () => {
    for (const [depth, gallons] of [
      [36, 1805.188],
      [84, 5162.893],
      [54, 3093.286],
      [108, 6186.571],
    ] as const)
      expect((partFull(108, depth).area * 156) / 231).toBeCloseTo(gallons, 3);
  });

  it('a metre of water is 9.80665 kPa at 1000 kg/m³ (standard gravity, CGPM 1901)', () =>
    expect(headPressure(1000, 1000) * 1e6).toBeCloseTo(9806.65, 9));
});

describe('heat', () => {
  it('a bridge of 1275 m, 12e-6, 55 K and 57 K (OpenStax, College Physics, example 13.3; a solved question)', () => {
    expect(off(freeGrowth(1275, { expansionPerK: 12e-6, deltaK: 55 }), 0.84)).toBeLessThan(0.005);
    expect(freeGrowth(1275, { expansionPerK: 12e-6, deltaK: 57 })).toBeCloseTo(0.8721, 9);
  });

  it('carbon steel from 50 to 350 °F by the means of ASME B31.3 Table C: 2087.33e-6, a piece on each side of 70 °F', () => {
    const cold = freeGrowth(1, { expansionPerK: 6.36667e-6, deltaK: 20 });
    const hot = freeGrowth(1, { expansionPerK: 7e-6, deltaK: 280 });
    expect((cold + hot) * 1e6).toBeCloseTo(2087.33, 2);
  });

  it('304 by Callister, Table B.6: 1.2 m warmed by 100 K, 2.064 mm along, and its end no more', () => {
    const heat = { expansionPerK: 17.2e-6, deltaK: 100 };
    expect(freeGrowth(1200, heat)).toBeCloseTo(2.064, 9);
    expect(endMovement([0, 0, 0], [900, 500, 200], heat).distance).toBeLessThan(2.064);
  });

  it('316 is printed from 15.9 to 17.5e-6: the spread of the answer is the spread of the table, 10 %', () => {
    const [low, high] = [15.9e-6, 17.5e-6].map((expansionPerK) =>
      heldForce({ od: 12, wall: 1, youngsMPa: 193_000, expansionPerK, deltaK: 80 }),
    );
    expect(high!.forceN / low!.forceN).toBeCloseTo(17.5 / 15.9, 12);
  });
});

describe('mass and section', () => {
  const kg = (od: number, wall: number, densityKgM3: number) =>
    tubeMass({ od, wall, densityKgM3 }).tubeKgPerM;

  it('EN 10220: (D − T)·T·0.0246615 for 7.85; austenitic 1.015 of it', () => {
    expect(off(kg(33.7, 2.6, 7850), (33.7 - 2.6) * 2.6 * 0.0246615)).toBeLessThan(1e-6);
    expect(off(kg(33.7, 2.6, 7970), kg(33.7, 2.6, 7850) * 1.015)).toBeLessThan(0.0005);
  });

  it.each([
    [57, 3.5, 7929, 4.66, 0.005],
    [75, 1, 7850, 1.825, 0.0005],
    [10, 0.5, 7850, 0.117, 0.0005],
  ])('trade and aerospace tube sheets, %d × %f: %f kg/m', (od, wall, density, printed, within) =>
    expect(Math.abs(kg(od, wall, density) - printed)).toBeLessThan(within),
  );

  it('a sheet prints (57 − 35) for (57 − 3.5): that tube would be less than half as heavy', () =>
    expect(kg(57, 3.5, 7929) / ((57 - 35) * 3.5 * 0.02491)).toBeGreaterThan(2));

  it('factors in circulation that are another metal’s: 0.0256 for copper, 0.0082 for aluminium, 0.02466 for stainless', () => {
    const factor = (densityKgM3: number) => kg(20, 1, densityKgM3) / 19;
    expect(off(factor(8900), 0.0256)).toBeGreaterThan(0.08);
    expect(off(factor(8900), 0.02796)).toBeLessThan(0.001);
    expect(off(factor(2700), 0.0082)).toBeGreaterThan(0.03);
    expect(off(factor(7970), 0.02466)).toBeGreaterThan(0.014);
    expect(off(factor(7850), 0.02466)).toBeLessThan(0.001);
  });

  // ASME B36.10 and B36.19 weights, lb/ft, with 10.68 (OD − t)·t: 0.28333 lb/in³.
  it.each([
    [0.405, 0.068, 0.2447],
    [0.54, 0.088, 0.4248],
    [0.675, 0.091, 0.5676],
    [0.84, 0.109, 0.851],
    [1.315, 0.133, 1.679],
    [2.375, 0.154, 3.653],
    [2, 0.25, 4.6725],
  ])('schedule 40 and mill guide, %f × %f in: %f lb/ft', (od, wall, printed) => {
    const density = (10.68 / (12 * Math.PI)) * (0.45359237 / 0.0254 ** 3);
    expect(Math.abs(kg(od * INCH, wall * INCH, density) / LB_FT - printed)).toBeLessThan(0.001);
  });

  // Property tables of B36.10, Mott (Machine Elements, Table A16-6) and US Army EI 02C097 (Table B-1).
  it.each([
    [0.405, 0.068, 0.07199, 0.001064, 0.005252],
    [0.54, 0.088, 0.12496, 0.003312, 0.012267],
    [2.375, 0.154, 1.0745, 0.665747, 0.560629],
    [0.84, 0.109, 0.2503, 0.017092, 0.040695],
    [1.315, 0.133, 0.4939, 0.087343, 0.132841],
    [12, 0.25, 9.2284, 159.33, 26.556],
    [12.75, 0.375, 14.579, 279.34, 43.817],
  ])('section %f × %f in', (od, wall, area, inertia, modulus) => {
    const found = tubeSection(od, wall);
    expect(off(found.area, area)).toBeLessThan(0.0005);
    expect(off(found.inertia, inertia)).toBeLessThan(0.0005);
    expect(off(found.modulus, modulus)).toBeLessThan(0.0005);
  });

  it('hollow circle, Juvinall, appendix B: D 0.12, d 0.11 m', () => {
    const found = tubeSection(0.12, 0.005);
    expect(found.area).toBeCloseTo(0.00180642, 8);
    expect(off(found.inertia, 2.99188e-6)).toBeLessThan(1e-5);
    expect(off(found.polar, 5.98375e-6)).toBeLessThan(1e-5);
    expect(found.gyration).toBeCloseTo(0.0406971, 7);
  });

  it('a university mechanics example, D 40, t 5 mm: J 171 805.85 mm⁴', () =>
    expect(tubeSection(40, 5).polar).toBeCloseTo(171_805.848, 3));
});
