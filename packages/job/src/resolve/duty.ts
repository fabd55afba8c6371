/** What runs in a line, what it has to stand, and how air leaves it. */
import type { Bleed, Duty, Fluid } from '../fluid-types.ts';
import { formatPath, type Segment } from '../path.ts';
import type { MeasuredValues } from '../schema/job.ts';
import type { Figure, Service } from '../types.ts';
import { entry, fromCatalogue, fromTold, jobOr } from './figures.ts';
import { figureOf, ownOf, type Shelf } from './shelf.ts';

const PRACTICE = 'common practice, no source';
const FITTED_C = { value: 20, source: `${PRACTICE}: fitted in a warm shop` };
const SAFETY = {
  value: 4,
  source: `${PRACTICE} for hydraulic tube: bursting pressure over working pressure`,
};
const MILL = { value: 0.1, source: `${PRACTICE}: the mill may leave out a tenth of the wall` };

/** The liquid of this id. */
export function fluidOf(shelf: Shelf, id: string): Fluid {
  const own = ownOf(shelf, 'fluids', id);
  const other = entry(shelf.catalogue.fluids, id);
  return {
    id,
    name: entry(shelf.job.fluids, id)?.name ?? other?.name ?? id,
    density: figureOf(own, 'density', other?.density),
    viscosity: figureOf(own, 'viscosity', other?.viscosity),
    surfaceTension: figureOf(own, 'surfaceTension', other?.surfaceTension),
  };
}

export function dutyOf(values: MeasuredValues['duty'], line: readonly Segment[]): Duty {
  const at = (...keys: readonly string[]): readonly Segment[] => [...line, 'duty', ...keys];
  const { pressure, flow, toward = 'Z', temperature, safetyFactor, wallTolerance } = values ?? {};
  const degrees = <F extends Figure | null>(key: 'fitted' | 'lowest' | 'highest', other: F): Figure | F =>
    jobOr(temperature?.[key], at('temperature', key), other);
  return {
    pressure: fromTold(pressure, at('pressure'), null),
    flow: fromTold(flow, at('flow'), null),
    toward,
    temperature: temperature
      ? {
          fitted: degrees('fitted', fromCatalogue(FITTED_C)),
          lowest: degrees('lowest', null),
          highest: degrees('highest', null),
        }
      : null,
    safetyFactor: jobOr(safetyFactor, at('safetyFactor'), fromCatalogue(SAFETY)),
    wallTolerance: jobOr(wallTolerance, at('wallTolerance'), fromCatalogue(MILL)),
  };
}

/** A service that is filled and bled is bled at both ends, at rest, unless the job says otherwise. */
export function bleedOf(
  values: MeasuredValues['bleed'],
  service: Service,
  line: readonly Segment[],
): Bleed | null {
  if (!values && !service.bleeds) return null;
  const path = values ? formatPath([...line, 'bleed']) : null;
  return { to: values?.to ?? 'both', tilted: values?.tilted ?? false, path };
}
