/** The two ends of a line. */

import { PLAIN_FITTING } from '../defaults.ts';
import { formatPath, type Segment } from '../path.ts';
import type { EndValues } from '../schema/job.ts';
import type { Corner, EndFitting, Figure, LineEnd } from '../types.ts';
import { fromCatalogue, fromJob } from './figures.ts';
import { fittingOf, type Shelf } from './shelf.ts';
import { directionOf } from './solid.ts';

export interface EndAsk {
  readonly values: EndValues | undefined;
  readonly end: 'A' | 'Z';
  readonly at: readonly Segment[];
  readonly corners: readonly Corner[];
  /** Of the tube, mm. */
  readonly od: number;
}

/** True for an end that is given a shape: flared, beaded. */
const isFormed = ({ bar, uses }: EndFitting): boolean => bar.value > 0 || uses.value > 0;

export function endOf(shelf: Shelf, ask: EndAsk): LineEnd {
  const { values = {}, end, at, od } = ask;
  const fitting = fittingOf(shelf, values.fitting ?? PLAIN_FITTING, od);
  // A is flared first and the tape hooks on it; Z is fitted, cut and flared last.
  const flareWhen = values.flareWhen ?? (end === 'A' && isFormed(fitting) ? 'before' : 'after');
  const { nut, sleeve } = values;
  return {
    fitting,
    joins: values.joins ?? [],
    free: values.free ?? 0,
    direction: values.direction ? directionOf(values.direction) : null,
    misfit: values.misfit === undefined ? null : fromJob(values.misfit, [...at, 'misfit']),
    spare: spareOf(shelf, ask, isFormed(fitting) && flareWhen === 'before'),
    nut: nut ? { length: nut.length, bore: nut.bore ?? null, acrossFlats: nut.acrossFlats ?? null } : null,
    sleeve: sleeve ?? null,
    flareWhen,
    rigid: values.far !== 'hose',
    opening: values.opening ?? null,
    path: formatPath(at),
  };
}

function spareOf(shelf: Shelf, ask: EndAsk, formedFirst: boolean): Figure {
  const { values, end, at, corners } = ask;
  if (values?.spare !== undefined) return fromJob(values.spare, [...at, 'spare']);
  if (end === 'A') return fromCatalogue({ value: 0, source: 'no spare on the end worked from' });
  if (formedFirst) return fromCatalogue({ value: 0, source: 'formed before bending: nothing is cut off' });
  const { spareZ } = shelf.job;
  const least = spareZ === undefined ? fromCatalogue(shelf.catalogue.spareZ) : fromJob(spareZ, ['spareZ']);
  const tail = corners.findLast((corner) => corner.die?.minTail)?.die?.minTail;
  return tail && tail.value > least.value ? tail : least;
}
