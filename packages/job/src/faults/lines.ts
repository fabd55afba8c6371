/** Lines: points apart, and a radius to be had for every corner. */
import { distance, POINT_MM } from '@runback/geometry';
import { formatLength } from '../format.ts';
import { diesFor } from '../resolve/dies.ts';
import type { LooseMeasured } from '../schema/job.ts';
import { type Look, measuredOf } from './look.ts';

export function lookAtLines(look: Look): void {
  look.job.lines?.forEach((line, i) => {
    const own = measuredOf(line);
    if (!own) return;
    coincident(look, own, i);
    radii(look, own, i);
  });
}

function coincident(look: Look, line: LooseMeasured, i: number): void {
  line.points?.forEach((point, k) => {
    const before = line.points?.[k - 1]?.at;
    if (!before || !point?.at || distance(before, point.at) >= POINT_MM) return;
    look.fault(
      ['lines', i, 'points', k, 'at'],
      'this point is where the one before it is',
      'a point away from it',
    );
  });
}

/** Index of the first corner without a radius of its own, or −1. */
function needsDie(look: Look, line: LooseMeasured, i: number): number {
  const points = line.points ?? [];
  return points.findIndex(
    (point, k) =>
      k > 0 &&
      k < points.length - 1 &&
      point &&
      look.written(['lines', i, 'points', k, 'radius']) === undefined,
  );
}

function radii(look: Look, line: LooseMeasured, i: number): void {
  const corner = needsDie(look, line, i);
  if (corner < 0) return;
  const at = ['lines', i, 'points', corner];
  if (look.written(['lines', i, 'bender']) === undefined) {
    look.fault(at, 'this corner has no radius, and the line has no bender', {
      expected: '"radius" here, or "bender" on the line',
      got: 'neither',
    });
    return;
  }
  const dies = line.bender === undefined ? undefined : entry(look.job.benders, line.bender)?.dies;
  const od = odOf(look, line.tube);
  if (!dies || od === undefined) return;
  const whole = dies.flatMap((die) => (die?.od === undefined ? [] : { od: die.od, radius: die.radius ?? 0 }));
  if (whole.length < dies.length || diesFor(whole, od).length > 0) return;
  const unit = look.job.units ?? 'mm';
  const size = (mm: number): string => formatLength(mm, unit, { decimals: 3, denominator: null });
  const have = [...new Set(whole.map((die) => size(die.od)))].join(', ');
  look.fault(at, 'this corner has no radius, and the bender has no die for this tube', {
    expected: `a die for OD ${size(od)}`,
    got: have === '' ? 'no dies' : `dies for OD ${have}`,
  });
}

function odOf(look: Look, tube: string | undefined): number | undefined {
  if (tube === undefined) return undefined;
  if (entry(look.job.tubes, tube)) return entry(look.job.tubes, tube)?.od;
  return entry(look.catalogue.tubes, tube)?.od;
}

function entry<T>(record: Readonly<Record<string, T>> | undefined, key: string): T | undefined {
  return record && Object.hasOwn(record, key) ? record[key] : undefined;
}
