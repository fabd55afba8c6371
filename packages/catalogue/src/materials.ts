/**
 * Materials: density kg/m³, Young's modulus, yield (annealed), least tensile strength and a piping code's allowable
 * stress near room temperature in MPa, expansion 1/K. What nobody could be found to say is left out.
 */
import type { CatalogueMaterial } from '@runback/job';
import { figure, MEMORY, perMillion, psi } from './sourcing.ts';

const CALLISTER = 'Callister, Materials Science and Engineering, Table B.6 (thermal expansion)';
const GERE = 'Gere, Mechanics of Materials, 5th ed., Table H (density)';
const EN_10220 = 'EN 10220, factor 1.015 on 7.85 for austenitic steel: 7.97';
const WIRE = 'spring wire data table, ASTM A313 302/304 and 316: E 28 000 000 psi';
const A269 = 'ASTM A269/A213 annealed, least 30 ksi, as printed in a tube burst-pressure table';
const A269_STRENGTH = figure(
  psi(75_000),
  'ASTM A269/A213 annealed, least 75 ksi, as printed in a tube burst-pressure table',
);
const B31_3 = figure(
  137.9,
  `ASME B31.3-2002 Table A-1 extract, A312 TP304 and TP316 at 38 °C: 20.0 ksi; the same for A269/A213 tube ${MEMORY}`,
);
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
    strength: A269_STRENGTH,
    allowable: B31_3,
    expansion: perMillion(17.2, CALLISTER),
    cautions: STAINLESS,
  },
  'stainless-316': {
    name: '316 stainless',
    density: figure(7970, EN_10220),
    youngs: figure(193_000, WIRE),
    yield: figure(206.8, A269),
    strength: A269_STRENGTH,
    allowable: B31_3,
    expansion: perMillion(15.9, `${CALLISTER}; other tables print up to 17.5`),
    cautions: STAINLESS,
  },
  'copper-nickel-90-10': {
    name: '90/10 copper-nickel',
    density: figure(8900, 'Copper Development Association, copper-nickel physical properties'),
    youngs: figure(135_000, 'Copper Development Association, copper-nickel physical properties'),
    yield: figure(110, `${MEMORY}, annealed`),
    strength: figure(262, `${MEMORY}, annealed C70600 tube, least 38 ksi`),
    expansion: perMillion(17, 'Copper Development Association, copper-nickel physical properties, 10-300 °C'),
    cautions: ['Copper-nickel is soft: scrap any tube kinked or flattened in handling.'],
  },
  'low-carbon-steel': {
    name: 'low-carbon steel',
    density: figure(7850, GERE),
    youngs: figure(207_000, MEMORY),
    yield: figure(170, 'SAE J527 (October 2017), Table 2: at least 170 MPa'),
    strength: figure(
      psi(45_000),
      'SAE J524/J525 low-carbon tube, 45 000 psi, as printed in Fluid Power Journal, Sizing Tubes',
    ),
    expansion: perMillion(11.7, `${CALLISTER}, A36 and 1020`),
    cautions: ['Plain steel: protect from rust, and again where the tool marked the coating.'],
  },
  copper: {
    name: 'copper',
    density: figure(8900, GERE),
    youngs: figure(115_000, MEMORY),
    yield: figure(69, `${MEMORY}, annealed`),
    strength: figure(205, `${MEMORY}, annealed, least 30 ksi`),
    allowable: figure(psi(6000), 'Copper Tube Handbook, Table 3c: annealed copper at 100 °F, 6000 psi'),
    expansion: perMillion(17, `${CALLISTER}, C11000`),
    cautions: [`Pure copper: ${NOT_FOR_BRAKES}.`],
  },
  'aluminium-3003': {
    name: '3003 aluminium',
    density: figure(2730, ALUMINIUM),
    youngs: figure(69_000, MEMORY),
    yield: figure(42, `${MEMORY}, 3003-O`),
    strength: figure(95, `${MEMORY}, 3003-O, least 14 ksi`),
    expansion: perMillion(23.2, 'published data page for 3003, mean 20-100 °C'),
    cautions: [`Aluminium: ${NOT_FOR_BRAKES}.`],
  },
  'aluminium-5052': {
    name: '5052 aluminium',
    density: figure(2680, ALUMINIUM),
    youngs: figure(70_000, MEMORY),
    yield: figure(90, `${MEMORY}, 5052-O`),
    strength: figure(170, `${MEMORY}, 5052-O, least 25 ksi`),
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
  'spring-steel': {
    name: 'spring steel',
    density: figure(7850, GERE),
    youngs: figure(psi(30_000_000), 'spring wire data table, ASTM A228: E 30 000 000 psi'),
    yield: figure(1100, `${MEMORY}: about 0.7 of the least tensile strength`),
    strength: figure(
      psi(230_000),
      'spring wire data table, ASTM A228 music wire: 230 000 psi, the thickest wire; strip by its own sheet',
    ),
    expansion: perMillion(11.7, `${CALLISTER}, as plain steel`),
    cautions: ['Spring steel rusts: oil the stick, and do not cut it with a torch.'],
  },
  'stainless-302-spring': {
    name: '302 stainless spring',
    density: figure(7930, `${MEMORY}, as 304`),
    youngs: figure(193_000, WIRE),
    yield: figure(640, `${MEMORY}: about three quarters of the least tensile strength`),
    strength: figure(
      psi(125_000),
      'spring wire data table, ASTM A313 302/304: 125 000 psi, the thickest wire; strip by its own sheet',
    ),
    expansion: perMillion(17.2, `${CALLISTER}, as 304`),
    cautions: [],
  },
};
