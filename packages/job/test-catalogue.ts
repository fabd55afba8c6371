/** A small made-up catalogue for the tests of this room. None of its figures is meant for a shop. */
import type { Catalogue } from './src/catalogue-types.ts';

const figure = (value: number): { value: number; source: string } => ({
  value,
  source: 'made up for a test',
});

export const testCatalogue: Catalogue = {
  materials: {
    'stainless-304': { name: 'stainless 304', density: figure(8000), cautions: ['Do not bend back.'] },
    'steel-soft': { name: 'soft steel', density: figure(7850) },
  },
  tubes: { 'steel-8x1': { material: 'steel-soft', od: 8, wall: 1, source: 'made up for a test' } },
  fittings: {
    plain: { name: 'plain end', uses: figure(0), bar: figure(0), traps: false },
    'flare-37': { name: '37° flare', uses: figure(2.5), bar: figure(12), traps: true },
  },
  services: {
    dipstick: { name: 'dipstick tube', cautions: ['Run the stick through.'], minSlopeDeg: figure(10) },
    fuel: { name: 'fuel line', cautions: [], keepOff: { hot: figure(120) } },
    general: { name: 'tube', cautions: [] },
  },
  fluids: {
    water: { name: 'water', density: figure(1000), viscosity: figure(1), surfaceTension: figure(70) },
  },
  drainRules: { 'one-in-50': { name: '1 in 50', fraction: [1, 50], source: 'made up for a test' } },
  keepOff: { hot: figure(50), moving: figure(20), fixed: figure(6), wiring: figure(10) },
  clearance: { self: figure(5), lines: figure(7) },
  clipSpacing: [
    { od: 10, spacing: figure(400) },
    { od: 20, spacing: figure(600) },
  ],
  minRadiusOverOd: figure(2),
  spareZ: figure(25),
};
