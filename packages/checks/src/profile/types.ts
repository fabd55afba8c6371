/** A worked line laid out straight: what a profile of it is drawn from. Millimetres and radians. */
import type { Bend, Vec3 } from '@runback/geometry';
import type { Verdict } from '../types.ts';

/** What a place of a line comes nearest to, by what is left of the distance wanted (distance − keepOff). */
export interface NearestThing {
  readonly kind: 'surrounding' | 'line';
  readonly to: string;
  /** From the surface of the tube here to the thing (to the surface of the other tube), mm; negative when they overlap. */
  readonly distance: number;
  readonly keepOff: number;
}

/** One place of a line. */
export interface ProfilePlace {
  /** Along the finished centreline from end A, mm. */
  readonly at: number;
  readonly point: Vec3;
  /** Unit vector of travel A→Z. */
  readonly tangent: Vec3;
  /** Null when nothing is given, or nothing is judged here. */
  readonly nearest: NearestThing | null;
}

/** A line by its places, from end A to end Z. */
export interface LineProfile {
  readonly length: number;
  readonly places: readonly ProfilePlace[];
  readonly bends: readonly Bend[];
}

export interface ProfileOptions {
  /** Farthest that two places lie apart, mm. */
  readonly step?: number;
}

/** Height and fall of one place. */
export interface ProfileFall {
  /** Over the drain end (the lower end where none or both drain), along up, mm. */
  readonly height: number;
  /** Toward the drain end, radians; null when no drain is asked. */
  readonly slope: number | null;
  /** The end that liquid here is to run to. */
  readonly toward: 'A' | 'Z' | null;
  /** Against the line's own limit; null when no drain is asked. */
  readonly verdict: Verdict | null;
}
