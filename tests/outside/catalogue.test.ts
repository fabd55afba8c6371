/** The catalogue against what is printed elsewhere. Only figures that were read in a published text stand here. */
import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import { describe, expect, it } from 'vitest';

/** The row that serves a tube: the first whose largest OD reaches it. */
const row = (od: number) => catalogue.clipSpacing.find((r) => od <= r.od)?.spacing;

describe('MIL-H-8891A Table II, greatest distance between supports (para 3.11.4.3)', () => {
  // OD in, distance in, as printed; the pairing is inferred, the scan interleaves its columns.
  it.each([
    [1 / 4, 16],
    [5 / 16, 18],
    [3 / 8, 20],
    [1 / 2, 23],
    [5 / 8, 25.5],
    [3 / 4, 27.5],
    [1, 30],
    [1.25, 31.5],
    [1.5, 32.5],
  ])('%f in tube: %f in', (od, printed) => {
    const found = row(od * 25.4);
    expect(found?.value).toBeCloseTo(printed * 25.4, 10);
    expect(found?.source).toMatch(/MIL-H-8891A Table II.*pairing.*inferred/);
  });

  it('rows not legible there say they are from memory', () => {
    for (const od of [1 / 8, 3 / 16]) expect(row(od * 25.4)?.source).toMatch(/from memory/);
  });

  it('a metric tube takes the nearest printed size', () => {
    const near: readonly (readonly [number, number])[] = [
      [4.76, 3 / 16],
      [6, 1 / 4],
      [8, 5 / 16],
      [10, 3 / 8],
      [12, 1 / 2],
      [15, 5 / 8],
      [18, 3 / 4],
      [22, 3 / 4],
      [25, 1],
    ];
    for (const [od, printed] of near) expect(row(od), `${od} mm`).toEqual(row(printed * 25.4));
  });
});

describe('NAVEDTRA 14018 Table 6-6, standard walls', () => {
  // OD, wall of 6061, wall of annealed corrosion-resistant steel: inches as printed (3/4 and 1 in too).
  it.each([
    ['3-16', 0.028, 0.02],
    ['1-4', 0.035, 0.028],
    ['5-16', 0.049, 0.035],
    ['3-8', 0.049, 0.049],
    ['1-2', 0.065, 0.058],
    ['5-8', 0.083, 0.065],
    ['3-4', 0.095, 0.083],
    ['1', 0.065, 0.083],
  ])('%s in: 6061 %f, stainless %f', (size, aluminium, stainless) => {
    const key = (wall: number) => `${size}inx${String(Math.round(wall * 1000)).padStart(3, '0')}`;
    expect(catalogue.tubes[`al6061-${key(aluminium)}`]?.wall).toBeCloseTo(aluminium * 25.4, 10);
    expect(catalogue.tubes[`ss304-${key(stainless)}`]?.wall).toBeCloseTo(stainless * 25.4, 10);
  });
});

describe('materials', () => {
  // Callister Table B.6, thermal expansion at room temperature, 1e-6 per °C.
  it.each([
    ['stainless-304', 17.2],
    ['stainless-316', 15.9],
    ['low-carbon-steel', 11.7],
    ['copper', 17.0],
    ['aluminium-6061', 23.6],
  ])('%s expands %f millionths per K', (id, printed) => {
    expect((catalogue.materials[id]?.expansion?.value ?? Number.NaN) * 1e6).toBeCloseTo(printed, 9);
  });

  // The Fahrenheit column of the same tables, rounded to 0.1: 304 9.6, 316 8.8, 5052 13.2, 3003 12.9, 6061 13.1.
  it.each([
    ['stainless-304', 9.6],
    ['stainless-316', 8.8],
    ['aluminium-5052', 13.2],
    ['aluminium-3003', 12.9],
    ['aluminium-6061', 13.1],
  ])('%s: %f millionths per °F within its rounding', (id, printed) => {
    const value = ((catalogue.materials[id]?.expansion?.value ?? Number.NaN) * 1e6) / 1.8;
    expect(Math.abs(value - printed)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('densities: Gere Table H; Aluminum Specification Table 4.3; EN 10220 austenitic factor', () => {
    const density = (id: string) => catalogue.materials[id]?.density?.value ?? Number.NaN;
    expect([density('low-carbon-steel'), density('copper'), density('aluminium-6061')]).toEqual([
      7850, 8900, 2700,
    ]);
    expect([density('aluminium-3003'), density('aluminium-5052')]).toEqual([2730, 2680]);
    expect(density('stainless-304')).toBeCloseTo(7850 * 1.015, -1);
  });

  it('brake steel yields at 170 MPa or more (SAE J527 Table 2)', () => {
    expect(catalogue.materials['low-carbon-steel']?.yield?.value).toBe(170);
  });

  // psi to MPa at 6894.757 Pa; the table itself prints MPa to 0.1.
  const KSI = 6.894757;

  it('allowable stress of 304 and 316 at 38 °C: 137.9 MPa, 20.0 ksi (ASME B31.3-2002 Table A-1 extract)', () => {
    for (const id of ['stainless-304', 'stainless-316']) {
      expect(catalogue.materials[id]?.allowable?.value).toBe(137.9);
      expect(catalogue.materials[id]?.allowable?.value).toBeCloseTo(20 * KSI, 1);
    }
  });

  it('allowable stress of annealed copper at 100 °F: 6000 psi (Copper Tube Handbook Table 3c)', () => {
    expect(catalogue.materials.copper?.allowable?.value).toBeCloseTo(6 * KSI, 4);
  });

  it('tensile strength: SAE J524/J525 45 000 psi, ASTM A269/A213 75 ksi', () => {
    expect(catalogue.materials['low-carbon-steel']?.strength?.value).toBeCloseTo(45 * KSI, 3);
    for (const id of ['stainless-304', 'stainless-316'])
      expect(catalogue.materials[id]?.strength?.value).toBeCloseTo(75 * KSI, 3);
  });

  it('spring wire data table: A228 30 000 000 psi and 230 ksi, A313 302 28 000 000 psi and 125 ksi', () => {
    const { 'spring-steel': steel, 'stainless-302-spring': stainless } = catalogue.materials;
    expect(steel?.youngs?.value).toBeCloseTo(30_000 * KSI, 0);
    expect(steel?.strength?.value).toBeCloseTo(230 * KSI, 3);
    expect(Math.abs((stainless?.youngs?.value ?? Number.NaN) - 28_000 * KSI)).toBeLessThan(100);
    expect(stainless?.strength?.value).toBeCloseTo(125 * KSI, 3);
  });

  it('annealed stainless yields at 30 ksi (ASTM A269/A213)', () => {
    expect(catalogue.materials['stainless-304']?.yield?.value).toBeCloseTo(30 * 6.894757, 1);
  });
});

describe('distances', () => {
  it('hot 3 in, moving 3/4 in, wiring 2 in, in mm', () => {
    const { hot, moving, wiring } = catalogue.keepOff;
    expect([hot.value, moving.value, wiring.value]).toEqual([76.2, 19.05, 50.8]);
  });

  it('printed in mm as 75 and 19 elsewhere: the rounding agrees', () => {
    expect(Math.abs(catalogue.keepOff.hot.value - 75)).toBeLessThan(2);
    expect(Math.round(catalogue.keepOff.moving.value)).toBe(19);
  });

  it('between pipes in an engine bay mostly 10 mm, 5 mm at least (workshop manual clearance list, 2009)', () => {
    expect(catalogue.clearance.lines.value).toBe(10);
    expect(catalogue.keepOff.fixed.value).toBe(5);
  });
});

describe('slopes', () => {
  it('1:12 is 4.8° as instrument guides print it', () => {
    expect(Number(catalogue.services.sensing?.minSlopeDeg?.value.toFixed(1))).toBe(4.8);
  });
});

describe('drain rules', () => {
  // Rise and run in inches as the codes print them.
  it.each([
    ['ipc-704.1-small', 1 / 4, 12],
    ['ipc-704.1-medium', 1 / 8, 12],
    ['ipc-704.1-large', 1 / 16, 12],
    ['upc-708.1', 1 / 4, 12],
    ['upc-708.1-reduced', 1 / 8, 12],
    ['imc-307.2', 1 / 8, 12],
    ['fuel-gas', 1 / 4, 15 * 12],
    ['compressed-air-against-flow', 6, 100 * 12],
    ['steam-main', 1 / 4, 10 * 12],
  ])('%s: %f in on %f in', (id, rise, run) => {
    const [top, below] = catalogue.drainRules[id]?.fraction ?? [Number.NaN, 1];
    expect(top * run).toBe(below * rise);
  });

  it('the condensate rule called 1 % is 1.0417 %', () => {
    const [rise, run] = catalogue.drainRules['imc-307.2']?.fraction ?? [0, 1];
    expect((100 * rise) / run).toBeCloseTo(1.0416667, 7);
  });
});

describe('docs/catalogue.md', () => {
  const text = readFileSync(new URL('../../docs/catalogue.md', import.meta.url), 'utf8');
  /** Rows of the table whose head starts with this cell. */
  const table = (head: string): string[][] => {
    const lines = text.split('\n');
    const from = lines.findIndex((line) => line.startsWith('|') && line.split('|')[1]?.trim() === head);
    const rest = lines.slice(from + 2);
    const end = rest.findIndex((line) => !line.startsWith('|'));
    return rest.slice(0, end).map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
  };

  it('prints the distances of the catalogue', () => {
    const printed = table('because').map(([key, mm]) => [key, Number(mm)]);
    expect(printed).toEqual(Object.entries(catalogue.keepOff).map(([key, f]) => [key, f.value]));
  });

  it('prints the ends of the catalogue', () => {
    const printed = table('fitting').map(([key, uses, bar]) => [key, Number(uses), Number(bar)]);
    expect(printed).toEqual(
      Object.entries(catalogue.fittings).map(([key, f]) => [key, f.uses.value, f.bar.value]),
    );
  });

  it('prints the clip spacing of the catalogue', () => {
    const printed = table('tube OD, in').map(([, spacing]) => Number(spacing) * 25.4);
    expect(printed.length).toBe(catalogue.clipSpacing.length);
    catalogue.clipSpacing.forEach((r, i) => {
      expect(printed[i]).toBeCloseTo(r.spacing.value, 9);
    });
  });

  it('prints the drain rules of the catalogue', () => {
    const printed = table('rule').map(([key, fraction]) => [key, fraction]);
    const held = Object.entries(catalogue.drainRules).map(([key, r]) => [key, r.fraction.join(':')]);
    expect(printed).toEqual(held);
  });

  it('prints the fluids of the catalogue', () => {
    const figures = (cells: readonly string[]) =>
      cells.map((cell) => (cell === '' ? undefined : Number(cell)));
    const printed = table('fluid').map(([key, name, ...rest]) => [key, name, ...figures(rest)]);
    const held = Object.entries(catalogue.fluids).map(([key, f]) => [
      key,
      f.name,
      f.density?.value,
      f.viscosity?.value,
      f.surfaceTension?.value,
    ]);
    expect(printed).toEqual(held);
  });

  it('prints the strengths of the materials', () => {
    const printed = table('material').map(([key, strength, allowable]) => [key, strength, allowable]);
    const held = Object.entries(catalogue.materials).map(([key, m]) => [
      key,
      m.strength?.value.toFixed(1) ?? '',
      m.allowable?.value.toFixed(1) ?? '',
    ]);
    expect(printed).toEqual(held);
  });

  it('prints the slopes of the services', () => {
    const printed = table('service').map(([key, deg]) => [key, Number(deg)]);
    const held = Object.entries(catalogue.services)
      .filter(([, s]) => s.minSlopeDeg !== undefined)
      .map(([key, s]) => [key, Number(s.minSlopeDeg?.value.toFixed(4))]);
    expect(printed).toEqual(held);
  });
});
