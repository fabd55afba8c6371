/** What is left of a job when its faulty values are taken out, so that the rest is still looked through. */
import type { z } from 'zod';
import type { Segment } from '../path.ts';
import { job, type LooseJob } from './job.ts';
import type { Kit } from './kinds.ts';
import { faultsOf, valueAt } from './words.ts';

const MOST_ROUNDS = 12;

/** Reads what can be read; null when nothing can. */
export function readLoose(data: unknown, unit: Kit['unit']): LooseJob | null {
  const schema = job({ unit, loose: true });
  let rest = data;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const read = schema.safeParse(rest);
    if (read.success) return read.data;
    rest = without(rest, pathsToCut(read.error.issues, rest));
    if (typeof rest !== 'object' || rest === null) return null;
  }
  return null;
}

/** Where to cut for each issue; when the value is gone already, what it stands in goes. */
function pathsToCut(issues: readonly z.core.$ZodIssue[], data: unknown): readonly (readonly Segment[])[] {
  const faults = issues.flatMap((issue) => faultsOf(issue, data));
  return faults.map(({ at }) => {
    const shape = at.at(-1) === 'shape' && at[0] === 'surroundings';
    return shape || valueAt(data, at) === undefined ? at.slice(0, -1) : at;
  });
}

interface Cut {
  whole: boolean;
  readonly below: Map<Segment, Cut>;
}

/** A copy of the data without the values at these paths; a list keeps its places. */
function without(data: unknown, paths: readonly (readonly Segment[])[]): unknown {
  const root: Cut = { whole: false, below: new Map() };
  for (const path of paths) {
    let cut = root;
    for (const segment of path) {
      const next: Cut = cut.below.get(segment) ?? { whole: false, below: new Map() };
      cut.below.set(segment, next);
      cut = next;
    }
    cut.whole = true;
  }
  return copied(data, root);
}

function copied(value: unknown, cut: Cut): unknown {
  if (cut.whole) return undefined;
  if (cut.below.size === 0 || typeof value !== 'object' || value === null) return value;
  const sub = (segment: Segment, inner: unknown): unknown => {
    const next = cut.below.get(segment);
    return next ? copied(inner, next) : inner;
  };
  if (Array.isArray(value)) return value.map((item, i) => sub(i, item));
  const copy: Record<string, unknown> = Object.create(null);
  for (const [key, inner] of Object.entries(value)) {
    const kept = sub(key, inner);
    if (kept !== undefined) copy[key] = kept;
  }
  return copy;
}
