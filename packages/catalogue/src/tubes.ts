/** Common tube sizes, each under `<short material>-<od>x<wall>`: mm as written, inch sizes exactly 25.4 times. */
import type { CatalogueTube } from '@runback/job';
import { inch, MEMORY, thou } from './sourcing.ts';

const NOMINAL = `common nominal size, ${MEMORY}`;
const BRAKE = `brake tube size of SAE J527 and ISO 4038, ${MEMORY}`;
const NAVEDTRA = 'NAVEDTRA 14018 Table 6-6 (standard wall)';

interface Size {
  readonly key: string;
  readonly od: number;
  readonly wall: number;
  readonly source: string;
}

const metric = (od: number, wall: number, source = NOMINAL): Size => ({
  key: `${od}x${wall}`,
  od,
  wall,
  source,
});

/** The key names the fraction with a dash and the wall in thousandths: `3-16inx028`. */
function imperial(fraction: string, thousandths: number, source = NOMINAL): Size {
  const [top = 0, bottom = 1] = fraction.split('/').map(Number);
  const key = `${fraction.replace('/', '-')}inx${String(thousandths).padStart(3, '0')}`;
  return { key, od: inch(top / bottom), wall: thou(thousandths), source };
}

const STAINLESS: readonly Size[] = [
  metric(6, 1),
  metric(8, 1),
  metric(10, 1),
  metric(12, 1),
  metric(15, 1),
  metric(18, 1.5),
  metric(22, 1.5),
  metric(25, 1.5),
  imperial('1/8', 20, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('3/16', 20, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('3/16', 28),
  imperial('1/4', 28, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('1/4', 35),
  imperial('5/16', 35, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('3/8', 35),
  imperial('3/8', 49, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('1/2', 35),
  imperial('1/2', 58, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('5/8', 65, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('3/4', 83, `${NAVEDTRA}, annealed corrosion-resistant steel`),
  imperial('1/1', 83, `${NAVEDTRA}, annealed corrosion-resistant steel`),
];

const COPPER_NICKEL: readonly Size[] = [
  metric(4.75, 0.71, BRAKE),
  metric(4.76, 0.71, BRAKE),
  metric(6, 1),
  metric(8, 1),
  metric(10, 1),
  imperial('3/16', 28, BRAKE),
  imperial('1/4', 28, BRAKE),
  imperial('5/16', 28, BRAKE),
  imperial('3/8', 28, BRAKE),
];

const STEEL: readonly Size[] = [
  metric(4.75, 0.7, BRAKE),
  metric(4.76, 0.71, BRAKE),
  metric(6, 0.7, BRAKE),
  metric(6, 1),
  metric(8, 0.7, BRAKE),
  metric(8, 1),
  metric(10, 0.7, BRAKE),
  metric(10, 1),
  metric(12, 1),
  metric(15, 1.5),
  metric(18, 1.5),
  metric(22, 1.5),
  imperial('3/16', 28, BRAKE),
  imperial('1/4', 28, BRAKE),
  imperial('1/4', 35),
  imperial('5/16', 28, BRAKE),
  imperial('5/16', 35),
  imperial('3/8', 28, BRAKE),
  imperial('3/8', 35),
  imperial('1/2', 35),
  imperial('1/2', 49),
  imperial('5/8', 49),
  imperial('3/4', 49),
];

const COPPER: readonly Size[] = [
  metric(6, 1),
  metric(8, 1),
  metric(10, 1),
  metric(12, 1),
  metric(15, 1),
  metric(18, 1),
  metric(22, 1),
  imperial('1/8', 30),
  imperial('3/16', 30),
  imperial('1/4', 30, 'refrigeration copper, ASTM B280, as printed in a rating sheet'),
  imperial('5/16', 32),
  imperial('3/8', 32, 'refrigeration copper, ASTM B280, as printed in a rating sheet'),
  imperial('1/2', 32, 'refrigeration copper, ASTM B280, as printed in a rating sheet'),
  imperial('5/8', 35),
];

const ALUMINIUM: readonly Size[] = [
  metric(6, 1),
  metric(8, 1),
  metric(10, 1),
  metric(12, 1),
  metric(15, 1.5),
  metric(18, 1.5),
  metric(22, 1.5),
  imperial('3/16', 35),
  imperial('1/4', 35),
  imperial('5/16', 35),
  imperial('3/8', 35),
  imperial('1/2', 35),
  imperial('1/2', 49),
  imperial('5/8', 35),
  imperial('3/4', 49),
  imperial('1/1', 49),
];

const ALUMINIUM_6061: readonly Size[] = [
  imperial('3/16', 28, `${NAVEDTRA}, 6061`),
  imperial('1/4', 35, `${NAVEDTRA}, 6061`),
  imperial('5/16', 49, `${NAVEDTRA}, 6061`),
  imperial('3/8', 49, `${NAVEDTRA}, 6061`),
  imperial('1/2', 65, `${NAVEDTRA}, 6061`),
  imperial('5/8', 83, `${NAVEDTRA}, 6061`),
  imperial('3/4', 95, `${NAVEDTRA}, 6061`),
  imperial('1/1', 65, `${NAVEDTRA}, 6061`),
];

const FAMILIES: readonly (readonly [prefix: string, material: string, sizes: readonly Size[]])[] = [
  ['ss304', 'stainless-304', STAINLESS],
  ['ss316', 'stainless-316', STAINLESS],
  ['cuni', 'copper-nickel-90-10', COPPER_NICKEL],
  ['steel', 'low-carbon-steel', STEEL],
  ['copper', 'copper', COPPER],
  ['al3003', 'aluminium-3003', ALUMINIUM],
  ['al5052', 'aluminium-5052', ALUMINIUM],
  ['al6061', 'aluminium-6061', ALUMINIUM_6061],
];

export const tubes: Readonly<Record<string, CatalogueTube>> = Object.fromEntries(
  FAMILIES.flatMap(([prefix, material, sizes]) =>
    sizes.map(({ key, od, wall, source }) => [
      `${prefix}-${key.replace('1-1in', '1in')}`,
      { material, od, wall, source },
    ]),
  ),
);
