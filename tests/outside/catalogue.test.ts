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
});

describe('slopes', () => {
  it('1:12 is 4.8° as instrument guides print it', () => {
    expect(Number(catalogue.services.sensing?.minSlopeDeg?.value.toFixed(1))).toBe(4.8);
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

  it('prints the slopes of the services', () => {
    const printed = table('service').map(([key, deg]) => [key, Number(deg)]);
    const held = Object.entries(catalogue.services)
      .filter(([, s]) => s.minSlopeDeg !== undefined)
      .map(([key, s]) => [key, Number(s.minSlopeDeg?.value.toFixed(4))]);
    expect(printed).toEqual(held);
  });
});
