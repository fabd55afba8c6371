import { POINT_MM } from '@runback/geometry';
import { finding } from '../finding.ts';
import type { Finding } from '../types.ts';
import { sayBoth } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'stock';
const BASIS = 'the job: length of the stick or coil';

/**
 * The cut length comes out of one stick; says nothing when the tube has no stock length.
 * One that is long enough names no length to saw, for the line may fail another check.
 */
export function stock({ line, plan }: Work): Finding[] {
  const limit = line.tube.stock;
  if (limit === null) return [];
  const ok = plan.cutLength <= limit + POINT_MM;
  const [cut, has] = sayBoth(plan.cutLength, limit, line.units);
  return [
    finding({
      check: CHECK,
      verdict: ok ? 'pass' : 'fail',
      message: ok
        ? `A stock length of ${has} is enough for the line.`
        : `The line is sawn ${cut} long but comes in lengths of ${has}.`,
      found: plan.cutLength,
      limit,
      unit: 'mm',
      path: `${line.tube.path}.stock`,
      basis: BASIS,
    }),
  ];
}
