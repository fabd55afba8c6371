/** Another unit for the job without another length in it: what was bare gets the unit it was in. */
import type { JobEdit, JobUnit } from 'runback';
import { writtenNumber } from '../../parts/read.ts';
import { LENGTH_PATHS } from './length-paths.ts';
import { path, type Written } from './written.ts';

interface Place {
  readonly at: readonly (string | number)[];
  readonly value: unknown;
}

/** Digits and a fraction, without a unit of their own. */
const BARE = /^[-+−\d\s./]+$/u;

/**
 * The edits that write the job in other units and leave every length what it is: 82.5 becomes "82.5 mm", a bare
 * "3 7/32" becomes "3 7/32 in". Noughts and lengths with a unit of their own stay as they are.
 */
export function unitEdits(job: Written, to: JobUnit): readonly JobEdit[] {
  if (job.units === to) return [];
  const lengths = LENGTH_PATHS.flatMap((pattern) => places(job, pattern));
  const edits = lengths.flatMap(({ at, value }): JobEdit[] => {
    const text = withUnit(value, job.units);
    return text === null ? [] : [{ path: path(...at), value: text }];
  });
  return [{ path: 'units', value: to }, ...edits];
}

function withUnit(value: unknown, unit: JobUnit): string | null {
  if (typeof value === 'number') return value === 0 ? null : `${writtenNumber(value)} ${unit}`;
  return typeof value === 'string' && BARE.test(value) ? `${value.trim()} ${unit}` : null;
}

/** Every place that a pattern means. */
function places(job: Written, pattern: string): readonly Place[] {
  const steps = pattern.replaceAll('[]', '.[]').split('.');
  let found: readonly Place[] = [{ at: [], value: job }];
  for (const step of steps) found = found.flatMap((place) => below(place, step));
  return found;
}

function below({ at, value }: Place, step: string): readonly Place[] {
  if (typeof value !== 'object' || value === null) return [];
  if (step === '[]')
    return Array.isArray(value) ? value.map((item, i) => ({ at: [...at, i], value: item })) : [];
  if (Array.isArray(value)) return [];
  const inner = Object.entries(value).filter(([key]) => step === '*' || key === step);
  return inner.map(([key, item]) => ({ at: [...at, key], value: item }));
}
