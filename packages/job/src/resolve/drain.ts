/** Where a line drains to, and how much it must fall. */
import { formatPath, type Segment } from '../path.ts';
import type { MeasuredValues } from '../schema/job.ts';
import type { Drain, Figure } from '../types.ts';
import { entry, fromCatalogue, fromTold } from './figures.ts';
import type { ServiceLimits, Shelf } from './shelf.ts';

export interface DrainAsk {
  readonly drain: MeasuredValues['drain'];
  readonly at: readonly Segment[];
  readonly limits: ServiceLimits;
}

export function drainOf(shelf: Shelf, { drain, at, limits }: DrainAsk): Drain | null {
  if (!drain) return null;
  const level = fromCatalogue({ value: 0, source: 'level: neither the job nor its service asks for more' });
  const tilted = fromCatalogue({ value: 0, source: 'never level in any attitude' });
  const rest = drain.rule === undefined ? (limits.minSlope ?? level) : ruled(shelf, drain.rule, at);
  return {
    to: drain.to,
    minSlope: fromTold(drain.minSlope, [...at, 'minSlope'], rest),
    minSlopeTilted: fromTold(
      drain.minSlopeTilted,
      [...at, 'minSlopeTilted'],
      limits.minSlopeTilted ?? tilted,
    ),
  };
}

/** The fall a published rule asks for: the angle of its fraction, not of the rounded per cent it may be called by. */
function ruled(shelf: Shelf, id: string, at: readonly Segment[]): Figure {
  const rule = entry(shelf.catalogue.drainRules, id);
  if (!rule) throw new RangeError(`resolve: no drain rule ${JSON.stringify(id)} in the catalogue`);
  const [rise, run] = rule.fraction;
  const source = `${rule.source}: ${rule.name} (${rise}:${run})`;
  return { value: Math.atan(rise / run), source, path: formatPath([...at, 'rule']) };
}
