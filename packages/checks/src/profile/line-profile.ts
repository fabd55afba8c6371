import { frameAt } from '@runback/geometry';
import type { WorkedJob, WorkedLine } from '../types.ts';
import { nearestTo } from './nearest.ts';
import { placesOf } from './places.ts';
import type { LineProfile, ProfileOptions } from './types.ts';

/** Default options of `lineProfile`. */
export const PROFILE_DEFAULTS: Required<ProfileOptions> = { step: 5 };

/**
 * A worked line laid out along its length: places every `step` mm at most from end A to end Z (0 and `length`
 * exactly), with every tangent point, clip, local extreme and place of a finding among them, and at each what it
 * comes nearest to, by the rules of the checks `clearance` and `line-to-line`. Null for a line that cannot exist.
 * Millimetres; `job` is the one that the line is in.
 * @throws RangeError when `step` is not > 0 mm.
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * import { lineProfile, workJob } from '@runback/checks';
 * import { parseJob, resolve } from '@runback/job';
 * const text = `{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "surroundings": [{ "id": "ball", "shape": "sphere", "centre": [40, 0, 60], "diameter": 20, "keepOff": 30 }],
 *   "lines": [{ "id": "rail", "tube": "t", "points": [{ "at": [0, 0, 0] }, { "at": [100, 0, 0] }] }] }`;
 * const job = workJob(resolve(parseJob(text, { catalogue }), catalogue));
 * lineProfile(job.lines[0], job, { step: 20 }).places[2].nearest; // => { "kind": "surrounding", "to": "ball", "distance": 44, "keepOff": 30 }
 * ```
 */
export function lineProfile(
  worked: WorkedLine,
  job: WorkedJob,
  options: ProfileOptions = {},
): LineProfile | null {
  const { step } = { ...PROFILE_DEFAULTS, ...options };
  if (!(step > 0)) throw new RangeError(`lineProfile: step must be > 0 mm, got ${step}`);
  const { centreline } = worked;
  if (centreline === null) return null;
  const nearest = nearestTo(worked, centreline, job);
  const places = placesOf(worked, centreline, step).map((at) => {
    const { point, tangent } = frameAt(centreline, at);
    return { at, point, tangent, nearest: nearest(at, point) };
  });
  return { length: centreline.length, places, bends: centreline.bends };
}
