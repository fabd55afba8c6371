/**
 * What a line is for. At most three short cautions each: they share the sheet with three general ones.
 * A service's slopes are used when a line has `drain` but does not give them.
 */
import type { CatalogueService } from '@runback/job';
import { figure, oneIn, PRACTICE } from './sourcing.ts';

/** The check of the slope in every attitude, apart from the one at rest. */
const TILTED = 'slope-tilted';
const SENSING = '1:12, as instrument guides ask of sensing lines';

export const services: Readonly<Record<string, CatalogueService>> = {
  dipstick: {
    name: 'dipstick tube',
    drains: true,
    minSlopeDeg: figure(12, PRACTICE),
    minSlopeTiltedDeg: figure(0, `${PRACTICE}: never level in any attitude`),
    cautions: [
      'Run the stick through before the tube is fixed: it must not drag.',
      'Mark the stick by filling, not from the drawing.',
    ],
  },
  brake: {
    name: 'brake line',
    bleeds: true,
    cautions: [
      'Brake line: a competent person inspects it, and it holds pressure before use. This sheet is no approval.',
      'No pure copper, no aluminium, no single 45° flare.',
      'Double 45°, bubble and 37° flares are never mixed.',
    ],
    notes: [{ check: TILTED, reason: 'bled at rest, attitudes are for use' }],
  },
  fuel: {
    name: 'fuel line',
    bleeds: true,
    minSlopeDeg: figure(0, `${PRACTICE}: level is allowed, the pump keeps it full`),
    cautions: [
      'Fuel: no naked heat near a line that has held fuel.',
      'Test with liquid, never with air.',
      'Fuel goes below wiring, and wiring never hangs from it.',
    ],
    notes: [
      { check: TILTED, reason: 'kept full by its pump; what stays on a slope is worth knowing, no fault' },
    ],
  },
  'oil-drain': {
    name: 'oil drain',
    drains: true,
    minSlopeDeg: figure(oneIn(12), `${SENSING}; for drains ${PRACTICE}`),
    cautions: [
      'Turbocharger drain: within 15° of plumb at the housing, and no dip anywhere.',
      'The drain enters above the oil level.',
    ],
  },
  vent: {
    name: 'vent or breather',
    drains: true,
    minSlopeDeg: figure(1, `${PRACTICE}: more than level, no sag anywhere`),
    cautions: [
      'Blow through before fitting: a blocked vent blows seals.',
      'An outlet in cold air ices up: keep a relief hole in the warm.',
    ],
  },
  cooler: {
    name: 'cooler line',
    cautions: [
      'Flush after bending: swarf goes straight to the bearings.',
      'Lines of a pair are not crossed at the cooler.',
    ],
    notes: [{ check: TILTED, reason: 'full in use; it is emptied at rest' }],
  },
  sensing: {
    name: 'sensing line',
    drains: true,
    minSlopeDeg: figure(oneIn(12), SENSING),
    cautions: ['Gas: fall to the process. Liquid: fall to the instrument, and bleed the high end.'],
  },
  general: { name: 'tube', cautions: [] },
};
