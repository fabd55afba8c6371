/** A point or direction `[x, y, z]` in right-handed axes; points in millimetres. Never changed in place. */
export type Vec3 = readonly [number, number, number];

/** A 3 × 3 matrix by its rows. */
export type Mat3 = readonly [Vec3, Vec3, Vec3];

/** A straight piece of a centreline. Its length may be 0: two arcs may meet without a straight between them. */
export interface Straight {
  readonly kind: 'straight';
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit vector of travel from A to Z. Set even when the length is 0. */
  readonly direction: Vec3;
  readonly length: number;
  /** Distances from point 0 along the centreline, mm. */
  readonly start: number;
  readonly end: number;
}

/**
 * A circular piece of a centreline, less than a whole turn.
 * The point at angle t (0 ≤ t ≤ angle) is `centre + radius·(cos t·u + sin t·v)`; `u × v = normal`,
 * and the tangent there is `cos t·v − sin t·u`. Travel is right-handed about `normal`.
 */
export interface Arc {
  readonly kind: 'arc';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly centre: Vec3;
  /** Unit normal of the plane of bend: d_in × d_out. */
  readonly normal: Vec3;
  /** Unit vector from the centre to `from`. */
  readonly u: Vec3;
  /** Unit vector of travel at `from`. */
  readonly v: Vec3;
  readonly radius: number;
  /** Bend angle: the change of direction, radians, in (0, 2π). */
  readonly angle: number;
  readonly length: number;
  readonly start: number;
  readonly end: number;
}

export type Piece = Straight | Arc;

/** A bend as the shop counts it: from A to Z, the first is index 0. */
export interface Bend {
  /** Index of its arc in `pieces`. */
  readonly piece: number;
  /** Indices of the points (0 = end A) whose corners this arc rounds: one, or more where corners were merged. */
  readonly points: readonly number[];
  /** Straight before it, tangent to tangent, mm. */
  readonly straightBefore: number;
  /**
   * Turn from the previous plane of bend to this one, radians in (−π, π]; right-hand about travel A→Z,
   * so clockwise as seen looking from A towards Z. `null` for the first bend. Exactly π for a half turn, 0 never −0.
   */
  readonly turn: number | null;
  /** Sum of the turns so far, radians in [0, 2π): the hour at which this bend leaves, bend 1 at 12 o'clock. */
  readonly clock: number;
  readonly angle: number;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
  readonly normal: Vec3;
}

/** Straights and arcs, tangent to each other, always straight, arc, straight, …, arc, straight (2·bends + 1 pieces). */
export interface Centreline {
  readonly pieces: readonly Piece[];
  readonly bends: readonly Bend[];
  /** Developed length, mm. */
  readonly length: number;
}

/** What a tube has at one distance along it: where it is and which way it goes. */
export interface Frame {
  readonly point: Vec3;
  /** Unit vector of travel A→Z. */
  readonly tangent: Vec3;
  /** Unit normal of the plane of the last bend at or before here (of the next bend before the first one). */
  readonly normal: Vec3;
}

/** A corner that cannot be rounded as asked. */
export interface Misfit {
  /** Index of the point (0 = end A). */
  readonly point: number;
  readonly reason: 'leg-too-short' | 'turns-back';
  /** Radius asked for, mm. */
  readonly radius: number;
  /** Largest radius that fits here with its neighbours held at their own radii, mm (0 when none does). */
  readonly largestRadius: number;
  /**
   * Length of the leg that is too short, and the length it needs, mm.
   * Where the line turns back: how far apart its two legs lie (0) and how far a half circle needs them (2·radius).
   */
  readonly found: number;
  readonly needed: number;
  /** The leg too short (where the line turns back: the shorter one there): indices of its two points. */
  readonly leg: readonly [number, number];
  /**
   * Smallest move found of one point that cures this leg (the others held), or null where none was found. A corner is
   * moved where one can cure it; an end of the line, which sits in a port, only where none can.
   */
  readonly cure: { readonly point: number; readonly to: Vec3; readonly distance: number } | null;
}

export type Filleted =
  | { readonly ok: true; readonly centreline: Centreline }
  | { readonly ok: false; readonly misfits: readonly Misfit[] };

/** Bend rows that define a line in its own frame, without a place in space. Millimetres and radians. */
export interface Row {
  readonly straightBefore: number;
  /** `null` for the first row. */
  readonly turn: number | null;
  readonly angle: number;
  readonly radius: number;
}

/** A solid to keep clear of. Distances to it are signed: negative inside. */
export type Solid =
  | { readonly kind: 'sphere'; readonly centre: Vec3; readonly radius: number }
  /** Swept sphere along a path of straights and arcs (round ends). */
  | { readonly kind: 'tube'; readonly path: readonly Piece[]; readonly radius: number }
  | { readonly kind: 'cylinder'; readonly from: Vec3; readonly to: Vec3; readonly radius: number }
  /** `axes` are three orthonormal unit vectors, right-handed; `half` the half sizes along them. */
  | {
      readonly kind: 'box';
      readonly centre: Vec3;
      readonly half: Vec3;
      readonly axes: readonly [Vec3, Vec3, Vec3];
    }
  /** Everything on the side away from `normal` (unit, pointing to the free side). */
  | { readonly kind: 'half-space'; readonly point: Vec3; readonly normal: Vec3 };

/** The closest approach of a path to something: signed distance of the centreline and where. */
export interface Nearest {
  /** mm, negative inside a solid. */
  readonly distance: number;
  /** Distance along the first path, mm from its point 0. */
  readonly at: number;
  readonly point: Vec3;
  /** The closest point on the other thing's surface or path. */
  readonly other: Vec3;
  /** Distance along the second path where there is one. */
  readonly otherAt: number | null;
}

/** A set of attitudes of the machine. Radians. */
export type AttitudeSet =
  | { readonly kind: 'rest' }
  | { readonly kind: 'cone'; readonly tilt: number }
  | {
      readonly kind: 'box';
      readonly pitch: readonly [number, number];
      readonly roll: readonly [number, number];
    };

/** The axes of the machine: unit, mutually square, left = up × forward. */
export interface MachineAxes {
  readonly forward: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
}

export type DrainEnd = 'A' | 'Z' | 'both';

/** A smallest slope and where and in which attitude it occurs. Radians; positive runs towards the drain end. */
export interface SlopeExtreme {
  readonly slope: number;
  /** Distance along the line from A, mm; of equal places the one nearest A. */
  readonly at: number;
  readonly point: Vec3;
  /** Up in body axes in that attitude. */
  readonly up: Vec3;
  /** Pitch and roll of that attitude (0, 0 at rest). `null` for a cone. */
  readonly attitude: { readonly pitch: number; readonly roll: number } | null;
}
