/** Tubes and benders of a job, with everything that may stand in two places looked up. */

import { formatPath, type Segment } from '../path.ts';
import type { BenderValues, DieValues } from '../schema/job.ts';
import type { Bench, Bender, Die, Figure, Tube } from '../types.ts';
import { entry, fromJob } from './figures.ts';
import { materialOf, type Shelf } from './shelf.ts';

/**
 * The tube of this id: the job's, else the catalogue's.
 * @throws RangeError when there is none.
 */
export function tubeOf(shelf: Shelf, id: string): Tube {
  const own = entry(shelf.job.tubes, id);
  const values = own ?? entry(shelf.catalogue.tubes, id);
  if (!values) throw new RangeError(`resolve: no tube ${JSON.stringify(id)} in the job or the catalogue`);
  const { od, wall } = values;
  const material = materialOf(shelf, values.material);
  return {
    id,
    od,
    wall,
    bore: od - 2 * wall,
    material,
    stock: own?.stock ?? null,
    path: formatPath(['tubes', id]),
  };
}

/**
 * The bender of this id as it bends this tube.
 * @throws RangeError when there is none.
 */
export function benderOf(shelf: Shelf, id: string, tube: string): Bender {
  const values = entry(shelf.job.benders, id);
  if (!values) throw new RangeError(`resolve: no bender ${JSON.stringify(id)} in the job`);
  const at = ['benders', id];
  const dies = values.dies.map((die, i) => dieOf(die, { bender: values, at, i, tube }));
  return { id, dies, bench: values.bench ? benchOf(values.bench) : null, path: formatPath(at) };
}

interface Holder {
  readonly bender: BenderValues;
  readonly at: readonly Segment[];
  readonly i: number;
  readonly tube: string;
}

function dieOf(values: DieValues, holder: Holder): Die {
  const at = [...holder.at, 'dies', holder.i];
  const figure = (key: 'minStraight' | 'minTail' | 'maxAngle'): Figure | null => {
    const value = values[key];
    return value === undefined ? null : fromJob(value, [...at, key]);
  };
  return {
    od: values.od,
    radius: values.radius,
    minStraight: figure('minStraight'),
    minTail: figure('minTail'),
    maxAngle: figure('maxAngle'),
    springBack: springBackOf(values, holder),
    stretch: perRadian(values.stretchPerDegree ?? holder.bender.stretchPerDegree ?? 0),
    markOffset: values.markOffset ?? holder.bender.markOffset ?? 0,
    path: formatPath(at),
  };
}

/** Something per degree as the same per radian. */
const perRadian = (perDegree: number): number => (perDegree * 180) / Math.PI;

/** Nearest first: for this tube on the die, on the die, on the bender. */
function springBackOf(values: DieValues, { bender, at, i, tube }: Holder): Die['springBack'] {
  const die = [...at, 'dies', i];
  const places = [
    { values: entry(values.springBackByTube, tube), at: [...die, 'springBackByTube', tube] },
    { values: values.springBack, at: [...die, 'springBack'] },
    { values: bender.springBack, at: [...at, 'springBack'] },
  ];
  const said = places.find((place) => place.values !== undefined);
  if (!said?.values) return null;
  const { factor = 1, fixed = 0 } = said.values;
  return { factor, fixed, path: formatPath(said.at) };
}

/** Without the key rather than with an empty one, where the job does not say. */
function benchOf({ turnCheck, ...stance }: NonNullable<BenderValues['bench']>): Bench {
  return turnCheck === undefined ? stance : { ...stance, turnCheck };
}
