/**
 * How an end is made. `uses`: tube that forming it takes up, mm. `bar`: straight behind the formed end for the
 * bar that grips it (and 3 mm to spare), besides nut and sleeve, mm. The nut and the sleeve are the job's.
 */
import type { CatalogueFitting } from '@runback/job';
import { doubleFlares45, singleFlares45 } from './flares.ts';
import { figure, MEMORY, NOT_FORMED, PRACTICE } from './sourcing.ts';

const NONE = figure(0, NOT_FORMED);
const FLARE_BAR = figure(21, `${PRACTICE}: split bar 18 mm thick and 3 mm to spare; measure your own bar`);
const TRY_ONE = 'form one on a scrap and measure it';
const NUT_FIRST = 'Nut and sleeve go on before the end is formed.';

export const fittings: Readonly<Record<string, CatalogueFitting>> = {
  plain: { name: 'plain end', uses: NONE, bar: NONE, traps: false },
  socket: {
    name: 'plain end brazed or soldered into a socket',
    uses: NONE,
    bar: NONE,
    traps: false,
    cautions: ['Let the joint cool before the tube is moved.'],
  },
  weld: { name: 'plain end welded to a stub', uses: NONE, bar: NONE, traps: false },
  'single-flare-45': {
    name: '45° single flare',
    uses: figure(0.5, `worked from the SAE J533 flare diameters for 1/4 in: 0.4 to 0.6 mm; ${TRY_ONE}`),
    bar: FLARE_BAR,
    traps: true,
    flares: singleFlares45,
    cautions: [NUT_FIRST, 'Single 45° flare: never on brakes.'],
  },
  'double-flare-45': {
    name: '45° double flare',
    uses: figure(
      3,
      `worked for 3/16 × 0.028 in: 2.0 to 2.8 mm and the fold; 3 mm is habit, ${MEMORY}; a workshop manual allows 12-14 mm for both ends; ${TRY_ONE}`,
    ),
    bar: FLARE_BAR,
    traps: true,
    flares: doubleFlares45,
    cautions: [NUT_FIRST, 'Double 45° and bubble flares have different seats: never mix them.'],
  },
  'flare-37': {
    name: '37° single flare with sleeve',
    uses: figure(0.8, `worked for 1/4 × 0.035 in: 0.4 to 1.1 mm, often left out; ${TRY_ONE}`),
    bar: FLARE_BAR,
    traps: true,
    cautions: [NUT_FIRST, '37° flares belong to 37° fittings only.'],
  },
  'bubble-flare': {
    name: 'bubble flare',
    uses: figure(2.5, `${MEMORY}, low confidence: about 2 to 3 mm for 4.75 × 0.7; ${TRY_ONE}`),
    bar: FLARE_BAR,
    traps: true,
    cautions: [NUT_FIRST, 'Double 45° and bubble flares have different seats: never mix them.'],
  },
  bead: {
    name: 'bead for a hose',
    uses: figure(1, `${MEMORY}, low confidence; ${TRY_ONE}`),
    bar: figure(25, `${PRACTICE}: bead roller or bar and 3 mm to spare, besides the hose that covers it`),
    traps: true,
    cautions: ['The hose clip goes behind the bead, not on it.'],
  },
  'cutting-ring': {
    name: 'cutting ring and nut',
    uses: NONE,
    bar: figure(
      18,
      'tube-nut assembly instructions: straight of at least twice the nut; 18 mm stands for the second nut, from memory',
    ),
    traps: true,
    cautions: ['Push the tube home on its stop while the ring is set.'],
  },
  'compression-sleeve': {
    name: 'compression sleeve and nut',
    uses: NONE,
    bar: NONE,
    traps: true,
    cautions: ['Compression joints with loose sleeves are not accepted on brake lines.'],
  },
  bulkhead: {
    name: 'bulkhead union, 37° flare',
    uses: figure(0.8, `as for the 37° flare: worked for 1/4 × 0.035 in: 0.4 to 1.1 mm; ${TRY_ONE}`),
    bar: FLARE_BAR,
    traps: true,
    cautions: [NUT_FIRST, 'Hold the union with a second spanner.'],
  },
};
