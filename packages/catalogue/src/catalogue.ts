import type { Catalogue } from '@runback/job';
import { drainRules } from './drain-rules.ts';
import { fittings } from './fittings.ts';
import { fluids } from './fluids.ts';
import { materials } from './materials.ts';
import { services } from './services.ts';
import { clearance, clipSpacing, keepOff, minRadiusOverOd, spareZ } from './spacing.ts';
import { tubes } from './tubes.ts';

/**
 * The figures Runback starts from, each with its source: mm, degrees where the name says so, MPa, kg/m³, 1/K.
 * A shop brings its own where it knows better.
 *
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * catalogue.keepOff.moving.value; // => 19.05
 * ```
 */
export const catalogue: Catalogue = {
  materials,
  tubes,
  fittings,
  services,
  fluids,
  drainRules,
  keepOff,
  clearance,
  clipSpacing,
  minRadiusOverOd,
  spareZ,
};
