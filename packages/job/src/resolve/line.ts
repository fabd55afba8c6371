/** One measured line, with everything it uses looked up. */
import type { MachineAxes } from '@runback/geometry';
import { GENERAL_SERVICE } from '../defaults.ts';
import { formatPath } from '../path.ts';
import type { MeasuredValues } from '../schema/job.ts';
import type { Bender, Corner, Figure, Line, Tube } from '../types.ts';
import { attitudesOf } from './axes.ts';
import { dieFor } from './dies.ts';
import { drainOf } from './drain.ts';
import { bleedOf, dutyOf, fluidOf } from './duty.ts';
import { endOf } from './ends.ts';
import { fromCatalogue, fromJob, jobOr } from './figures.ts';
import { stickOf } from './runs.ts';
import { clipSpacingOf, type Shelf, serviceOf } from './shelf.ts';
import { surroundingsOf } from './surroundings.ts';
import { benderOf, tubeOf } from './tooling.ts';

export interface LineAsk {
  readonly values: MeasuredValues;
  /** Index in the job's `lines`. */
  readonly i: number;
  readonly axes: MachineAxes;
}

export function lineOf(shelf: Shelf, { values, i, axes }: LineAsk): Line {
  const { job } = shelf;
  const at = ['lines', i];
  const tube = tubeOf(shelf, values.tube);
  const bender = values.bender === undefined ? null : benderOf(shelf, values.bender, values.tube);
  const limits = serviceOf(shelf, values.service ?? GENERAL_SERVICE);
  const corners = cornersOf(values, { i, tube, bender });
  return {
    id: values.id,
    name: values.name ?? values.id,
    path: formatPath(at),
    title: job.title ?? 'Untitled',
    revision: job.revision ?? null,
    units: job.units,
    service: limits.service,
    quantity: values.quantity ?? 1,
    mirror: null,
    tube,
    bender,
    corners,
    endA: endOf(shelf, { values: values.endA, end: 'A', at: [...at, 'endA'], corners, od: tube.od }),
    endZ: endOf(shelf, { values: values.endZ, end: 'Z', at: [...at, 'endZ'], corners, od: tube.od }),
    drain: drainOf(shelf, { drain: values.drain, at: [...at, 'drain'], limits }),
    bleed: bleedOf(values.bleed, limits.service, at),
    fluid: values.fluid === undefined ? null : fluidOf(shelf, values.fluid),
    duty: dutyOf(values.duty, at),
    stick: stickOf(shelf, values.stick, [...at, 'stick']),
    attitudes: attitudesOf(values.attitudes ?? job.attitudes),
    axes,
    clearance: clearanceOf(shelf, { values: values.clearance, i }),
    surroundings: surroundingsOf(shelf, limits),
    clips: values.clips ?? null,
    clipSpacing: clipSpacingOf(shelf, tube.od),
    bendLimits: {
      minRadiusOverOd: jobOr(
        job.minRadiusOverOd,
        ['minRadiusOverOd'],
        fromCatalogue(shelf.catalogue.minRadiusOverOd),
      ),
    },
  };
}

interface CornerHolder {
  readonly i: number;
  readonly tube: Tube;
  readonly bender: Bender | null;
}

function cornersOf(values: MeasuredValues, { i, tube, bender }: CornerHolder): readonly Corner[] {
  const last = values.points.length - 1;
  return values.points.map(({ at, radius, note = null }, k): Corner => {
    const place = ['lines', i, 'points', k];
    const path = formatPath(place);
    if (k === 0 || k === last) return { at, radius: 0, radiusSource: 'an end', die: null, note, path };
    const die = bender && dieFor(bender.dies, tube.od, radius);
    if (radius !== undefined)
      return { at, radius, radiusSource: formatPath([...place, 'radius']), die, note, path };
    if (!die) throw new RangeError(`resolve: no radius for ${path}`);
    return { at, radius: die.radius, radiusSource: `${die.path}.radius`, die, note, path };
  });
}

export interface ClearanceAsk {
  readonly values: MeasuredValues['clearance'];
  readonly i: number;
  readonly base?: Line['clearance'];
}

/** Clearances of a line: its own, else those of `base`, else the job's, else the catalogue's. */
export function clearanceOf(shelf: Shelf, { values, i, base }: ClearanceAsk): Line['clearance'] {
  const at = ['lines', i, 'clearance'];
  const general = (key: 'self' | 'lines'): Figure =>
    jobOr(shelf.job.clearance?.[key], ['clearance', key], fromCatalogue(shelf.catalogue.clearance[key]));
  const to: Record<string, Figure> = { ...base?.to };
  for (const [id, value] of Object.entries(values?.to ?? {})) to[id] = fromJob(value, [...at, 'to', id]);
  return {
    self: jobOr(values?.self, [...at, 'self'], base?.self ?? general('self')),
    lines: jobOr(values?.lines, [...at, 'lines'], base?.lines ?? general('lines')),
    to,
  };
}
