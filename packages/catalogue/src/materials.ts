/** Materials: density kg/m³, Young's modulus and yield MPa (annealed), expansion 1/K near room temperature. */
import type { CatalogueMaterial } from '@runback/job';
import { figure, MEMORY, perMillion } from './sourcing.ts';

const CALLISTER = 'Callister, Materials Science and Engineering, Table B.6 (thermal expansion)';
const GERE = 'Gere, Mechanics of Materials, 5th ed., Table H (density)';
const EN_10220 = 'EN 10220, factor 1.015 on 7.85 for austenitic steel: 7.97';
const WIRE = 'spring wire data table, ASTM A313 302/304 and 316: E 28 000 000 psi';
const A269 = 'ASTM A269/A213 annealed, least 30 ksi, as printed in a tube burst-pressure table';
const ALUMINIUM = 'Aluminum Specification, Table 4.3 (density)';

const STAINLESS = [
  'Stainless: do not bend back.',
  'Stainless: cut and deburr with tools kept for stainless.',
] as const;
const NOT_FOR_BRAKES = 'not for brakes: it work-hardens and cracks at the flare';

export const materials: Readonly<Record<string, CatalogueMaterial>> = {
  'stainless-304': {
    name: '304 stainless',
    density: figure(7970, EN_10220),
    youngs: figure(193_000, WIRE),
    yield: figure(206.8, A269),
    expansion: perMillion(17.2, CALLISTER),
    cautions: STAINLESS,
  },
  'stainless-316': {
    name: '316 stainless',
    density: figure(7970, EN_10220),
    youngs: figure(193_000, WIRE),
    yield: figure(206.8, A269),
    expansion: perMillion(15.9, `${CALLISTER}; other tables print up to 17.5`),
    cautions: STAINLESS,
  },
  'copper-nickel-90-10': {
    name: '90/10 copper-nickel',
    density: figure(8900, 'Copper Development Association, copper-nickel physical properties'),
    youngs: figure(135_000, 'Copper Development Association, copper-nickel physical properties'),
    yield: figure(110, `${MEMORY}, annealed`),
    expansion: perMillion(17, 'Copper Development Association, copper-nickel physical properties, 10-300 °C'),
    cautions: ['Copper-nickel is soft: scrap any tube kinked or flattened in handling.'],
  },
  'low-carbon-steel': {
    name: 'low-carbon steel',
    density: figure(7850, GERE),
    youngs: figure(207_000, MEMORY),
    yield: figure(170, 'SAE J527 (October 2017), Table 2: at least 170 MPa'),
    expansion: perMillion(11.7, `${CALLISTER}, A36 and 1020`),
    cautions: ['Plain steel: protect from rust, and again where the tool marked the coating.'],
  },
  copper: {
    name: 'copper',
    density: figure(8900, GERE),
    youngs: figure(115_000, MEMORY),
    yield: figure(69, `${MEMORY}, annealed`),
    expansion: perMillion(17, `${CALLISTER}, C11000`),
    cautions: [`Pure copper: ${NOT_FOR_BRAKES}.`],
  },
  'aluminium-3003': {
    name: '3003 aluminium',
    density: figure(2730, ALUMINIUM),
    youngs: figure(69_000, MEMORY),
    yield: figure(42, `${MEMORY}, 3003-O`),
    expansion: perMillion(23.2, 'published data page for 3003, mean 20-100 °C'),
    cautions: [`Aluminium: ${NOT_FOR_BRAKES}.`],
  },
  'aluminium-5052': {
    name: '5052 aluminium',
    density: figure(2680, ALUMINIUM),
    youngs: figure(70_000, MEMORY),
    yield: figure(90, `${MEMORY}, 5052-O`),
    expansion: perMillion(
      23.8,
      'published table of aluminium alloys, mean 68-212 °F: 13.2 millionths per °F',
    ),
    cautions: [`Aluminium: ${NOT_FOR_BRAKES}.`],
  },
  'aluminium-6061': {
    name: '6061 aluminium',
    density: figure(2700, GERE),
    youngs: figure(69_000, MEMORY),
    yield: figure(55, `${MEMORY}, 6061-O; T4 and T6 are far harder and may crack in a bend`),
    expansion: perMillion(23.6, CALLISTER),
    cautions: [`Aluminium: ${NOT_FOR_BRAKES}.`, 'Aluminium 6061: ask for soft (O) tube, T6 cracks.'],
  },
};
