/** Surroundings as solids, with how far a line keeps off them. */
import { formatPath } from '../path.ts';
import type { SurroundingValues } from '../schema/job.ts';
import type { Figure, Surrounding } from '../types.ts';
import { fromJob } from './figures.ts';
import { keepOffOf, type ServiceLimits, type Shelf } from './shelf.ts';
import { solidOf } from './solid.ts';

/** All surroundings, as a line of this service keeps off them; null: as no service in particular. */
export function surroundingsOf(shelf: Shelf, limits: ServiceLimits | null): readonly Surrounding[] {
  return (shelf.job.surroundings ?? []).map((values, i) => {
    const read = solidOf(values);
    if (!read.ok) throw new RangeError(`resolve: surrounding ${values.id} cannot exist`);
    const { id, because = null } = values;
    const at = ['surroundings', i];
    return {
      id,
      solid: read.solid,
      because,
      keepOff: keepOff(shelf, { values, i, limits }),
      path: formatPath(at),
    };
  });
}

interface KeepOffAsk {
  readonly values: SurroundingValues;
  readonly i: number;
  readonly limits: ServiceLimits | null;
}

function keepOff(shelf: Shelf, { values, i, limits }: KeepOffAsk): Figure {
  if (values.keepOff !== undefined) return fromJob(values.keepOff, ['surroundings', i, 'keepOff']);
  if (values.because === undefined) throw new RangeError(`resolve: no keepOff for surrounding ${values.id}`);
  return keepOffOf(shelf, values.because, limits);
}
