import { z } from 'zod';
import { job } from './schema/job.ts';

/**
 * JSON Schema (draft 2020-12) of the job file, made from the very schema that reads it. Comments and trailing
 * commas are outside it, and so is everything that needs two places of a job compared.
 * @example
 * ```ts
 * import { jobSchema } from '@runback/job';
 * jobSchema().title; // => "Runback job"
 * ```
 */
export function jobSchema(): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(job({ unit: 'mm', loose: false }), { io: 'input', target: 'draft-2020-12' });
  return {
    ...schema,
    title: 'Runback job',
    description:
      'One machine with its tubes, benders, surroundings and lines. Lengths in `units`, angles in degrees.',
  };
}
