/** The whole job file: the one source of what may stand in it, for reading and for the published JSON Schema. */
import { z } from 'zod';
import { JOB_FORMAT, JOB_VERSION } from '../migrate.ts';
import { fluid } from './duty.ts';
import { byId, direction, type Kit, length, list, name, note, object } from './kinds.ts';
import { line, type measured, type mirrored } from './lines.ts';
import { run, type stick } from './runs.ts';
import { surrounding } from './surroundings.ts';
import * as own from './tooling.ts';

const RATIO = 'a number of more than 0';

const build = (kit: Kit) =>
  object(kit, {
    $schema: name().optional(),
    format: z.literal(JOB_FORMAT, { error: `"${JOB_FORMAT}"` }),
    version: z.literal(JOB_VERSION, { error: String(JOB_VERSION) }),
    title: name().optional(),
    revision: name().optional(),
    note: note().optional(),
    units: z.enum(['mm', 'in'], { error: '"mm" or "in"' }),
    up: direction().optional(),
    forward: direction().optional(),
    attitudes: own.attitudes(kit).optional(),
    tubes: byId(kit, own.tube(kit), 'tubes by id').optional(),
    benders: byId(kit, own.bender(kit), 'benders by id').optional(),
    surroundings: list(kit, surrounding(kit), { least: 0, what: 'a list of surroundings' }).optional(),
    lines: list(kit, line(kit), { least: 1, what: 'a list with at least one line' }),
    runs: list(kit, run(kit), { least: 0, what: 'a list of runs' }).optional(),
    fluids: byId(kit, fluid(kit), 'fluids by id').optional(),
    materials: byId(kit, own.material(kit), 'materials by id').optional(),
    fittings: byId(kit, own.fitting(kit), 'end fittings by id').optional(),
    services: byId(kit, own.service(kit), 'services by id').optional(),
    keepOff: own.keepOff(kit).optional(),
    clearance: object(kit, {
      self: length(kit, 'not negative').optional(),
      lines: length(kit, 'not negative').optional(),
    }).optional(),
    clipSpacing: own.clipSpacing(kit).optional(),
    minRadiusOverOd: z.number({ error: RATIO }).gt(0, RATIO).optional(),
    spareZ: length(kit, 'not negative').optional(),
  });

type JobSchema = ReturnType<typeof build>;

const built = new Map<string, JobSchema>();

/** The schema for a kit; the same for the same kit, for building one takes longer than using it. */
export function job(kit: Kit): JobSchema {
  const key = `${kit.unit} ${kit.loose}`;
  const schema = built.get(key) ?? build(kit);
  built.set(key, schema);
  return schema;
}

/** A job as written: numbers and texts in its own units and degrees. */
export type JobInput = z.input<JobSchema>;
/** A job as read: millimetres and radians. */
export type JobValues = z.output<JobSchema>;

export type MeasuredValues = z.output<ReturnType<typeof measured>>;
export type MirroredValues = z.output<ReturnType<typeof mirrored>>;
export type LineValues = JobValues['lines'][number];
export type SurroundingValues = z.output<ReturnType<typeof surrounding>>;
export type DieValues = NonNullable<JobValues['benders']>[string]['dies'][number];
export type BenderValues = NonNullable<JobValues['benders']>[string];
export type StickValues = z.output<ReturnType<typeof stick>>;
export type RunValues = NonNullable<JobValues['runs']>[number];
export type EndValues = NonNullable<MeasuredValues['endA']>;
export type AttitudeValues = NonNullable<JobValues['attitudes']>;

/** What may be left of a value when faulty parts of it are taken out. */
export type Loose<T> = T extends string | number | boolean | null | undefined
  ? T
  : T extends readonly [unknown, ...unknown[]]
    ? T
    : T extends readonly (infer U)[]
      ? readonly (Loose<U> | undefined)[]
      : { readonly [K in keyof T]?: Loose<T[K]> | undefined };

export type LooseJob = Loose<JobValues>;
export type LooseMeasured = Loose<MeasuredValues>;
export type LooseMirrored = Loose<MirroredValues>;
