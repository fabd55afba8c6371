/** How far the end of one line comes from that of another, both beginning alike. */
import { angleBetween, type Centreline, frameAt, norm, sub } from '@runback/geometry';
import type { Miss } from './types.ts';

/** FREE end of `made` from that of `wanted`, both in the START frame. mm and radians. */
export function missOf(made: Centreline, wanted: Centreline): Miss {
  const [is, should] = [frameAt(made, made.length), frameAt(wanted, wanted.length)];
  const vector = sub(is.point, should.point);
  return { distance: norm(vector), vector, direction: angleBetween(is.tangent, should.tangent) };
}
