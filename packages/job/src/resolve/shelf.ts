/** Materials, fittings and services: the catalogue's, extended and overridden by the job's, figure by figure. */
import type { Catalogue, CatalogueFlare, CatalogueService, Sourced } from '../catalogue-types.ts';
import type { JobValues } from '../schema/job.ts';
import type { EndFitting, Figure, FlareSize, KeepOffReason, Material, Service } from '../types.ts';
import { toRadians } from '../units.ts';
import { entry, fromCatalogue, fromJob, toldSource } from './figures.ts';

export interface Shelf {
  readonly job: JobValues;
  readonly catalogue: Catalogue;
}

type Table = 'materials' | 'fittings' | 'fluids';

/** The job's figure `key` of an entry, else the catalogue's, else null. */
export function figureOf(own: Own, key: string, other: Sourced | undefined): Figure | null {
  const value = own.values[key];
  if (typeof value === 'number') return fromJob(value, [own.table, own.id, key], own.source);
  return other === undefined ? null : fromCatalogue(other);
}

export interface Own {
  readonly table: Table;
  readonly id: string;
  readonly source: string | undefined;
  readonly values: Readonly<Record<string, unknown>>;
}

export function ownOf(shelf: Shelf, table: Table, id: string): Own {
  const values = entry<object & { source?: string | undefined }>(shelf.job[table], id);
  return { table, id, source: values?.source, values: { ...values } };
}

export function materialOf(shelf: Shelf, id: string): Material {
  const own = ownOf(shelf, 'materials', id);
  const said = entry(shelf.job.materials, id);
  const other = entry(shelf.catalogue.materials, id);
  return {
    id,
    name: said?.name ?? other?.name ?? id,
    density: figureOf(own, 'density', other?.density),
    youngs: figureOf(own, 'youngs', other?.youngs),
    yield: figureOf(own, 'yield', other?.yield),
    expansion: figureOf(own, 'expansion', other?.expansion),
    strength: figureOf(own, 'strength', other?.strength),
    allowable: figureOf(own, 'allowable', other?.allowable),
    cautions: said?.cautions ?? other?.cautions ?? [],
  };
}

const NONE: Figure = { value: 0, source: 'an end that is not formed', path: null };

/** Printed sizes are rounded: 3/16 in stands as 4.76, and 4.75 mm tube takes the same tool. mm. */
const SAME_FLARE = 0.05;

function flareOf(rows: readonly CatalogueFlare[], od: number): FlareSize | 'no row' {
  const row = rows.find((one) => Math.abs(one.od - od) <= SAME_FLARE);
  if (!row) return 'no row';
  const { source } = row;
  return {
    diameter: fromCatalogue({ value: row.diameter[0], source }),
    maxWall: fromCatalogue({ value: row.maxWall, source }),
  };
}

export function fittingOf(shelf: Shelf, id: string, od: number): EndFitting {
  const own = ownOf(shelf, 'fittings', id);
  const said = entry(shelf.job.fittings, id);
  const other = entry(shelf.catalogue.fittings, id);
  return {
    id,
    name: said?.name ?? other?.name ?? id,
    uses: figureOf(own, 'uses', other?.uses) ?? NONE,
    bar: figureOf(own, 'bar', other?.bar) ?? NONE,
    traps: said?.traps ?? other?.traps ?? false,
    flare: other?.flares ? flareOf(other.flares, od) : null,
    cautions: said?.cautions ?? other?.cautions ?? [],
  };
}

/** A service with the limits it brings; figures in mm and radians. */
export interface ServiceLimits {
  readonly service: Service;
  readonly minSlope: Figure | null;
  readonly minSlopeTilted: Figure | null;
  /** What the job says for this service. */
  readonly ownKeepOff: Partial<Record<KeepOffReason, Figure>>;
  /** What the catalogue says for this service. */
  readonly otherKeepOff: CatalogueService['keepOff'];
}

export function serviceOf(shelf: Shelf, id: string): ServiceLimits {
  const said = entry(shelf.job.services, id);
  const other = entry(shelf.catalogue.services, id);
  const slope = (key: 'minSlope' | 'minSlopeTilted', figure: Sourced | undefined): Figure | null => {
    const told = said?.[key];
    if (told) return fromJob(told.value, ['services', id, key], toldSource(told, said?.source));
    return figure ? fromCatalogue({ value: toRadians(figure.value), source: figure.source }) : null;
  };
  const keepOff: Partial<Record<KeepOffReason, Figure>> = {};
  for (const [reason, value] of Object.entries(said?.keepOff ?? {}))
    if (value !== undefined)
      keepOff[reason as KeepOffReason] = fromJob(value, ['services', id, 'keepOff', reason], said?.source);
  return {
    service: {
      id,
      name: said?.name ?? other?.name ?? id,
      drains: said?.drains ?? other?.drains ?? false,
      bleeds: said?.bleeds ?? other?.bleeds ?? false,
      cautions: said?.cautions ?? other?.cautions ?? [],
      notes: said?.notes ?? other?.notes ?? [],
    },
    minSlope: slope('minSlope', other?.minSlopeDeg),
    minSlopeTilted: slope('minSlopeTilted', other?.minSlopeTiltedDeg),
    ownKeepOff: keepOff,
    otherKeepOff: other?.keepOff,
  };
}

/** How far to keep off for a reason. What the job says comes before what the catalogue says. */
export function keepOffOf(shelf: Shelf, reason: KeepOffReason, limits: ServiceLimits | null): Figure {
  const said = shelf.job.keepOff?.[reason];
  return (
    limits?.ownKeepOff[reason] ??
    (said === undefined
      ? fromCatalogue(limits?.otherKeepOff?.[reason] ?? shelf.catalogue.keepOff[reason])
      : fromJob(said, ['keepOff', reason]))
  );
}

/** Distance between clips for a tube of this OD: the first row that serves it, or null beyond the last. */
export function clipSpacingOf(shelf: Shelf, od: number): Figure | null {
  const byOd = (a: { od: number }, b: { od: number }): number => a.od - b.od;
  const own = shelf.job.clipSpacing
    ?.map((row, i) => ({ ...row, i }))
    .toSorted(byOd)
    .find((row) => row.od >= od);
  if (own) return fromJob(own.spacing, ['clipSpacing', own.i, 'spacing']);
  const row = shelf.catalogue.clipSpacing.toSorted(byOd).find((each) => each.od >= od);
  return row ? fromCatalogue(row.spacing) : null;
}
