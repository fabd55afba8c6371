/**
 * Numerical zero, all of it. Nothing here is a workshop tolerance: these say when two doubles mean the same
 * thing. A test finds bare `1e-` literals anywhere else in the packages.
 */

const DEGREE = Math.PI / 180;

/** Points closer than this coincide, and a straight down to minus this counts as 0. mm. Far below any rule, far above rounding at 1 km. */
export const POINT_MM = 1e-6;

/** A corner under this is no bend; a turn under this is 0; a turn this close to 180° is a half turn. 1e-6°: at 1 m it moves a point 2e-5 mm. */
export const ANGLE_RAD = 1e-6 * DEGREE;

/** Distances are searched until their bounds agree to this. mm. */
export const DISTANCE_MM = 1e-9;

/** Slopes over a set of attitudes are searched until their bounds agree to this. rad. */
export const SLOPE_RAD = 1e-9;

/** A squared length below this has no direction: (1e-150)² still leaves normal doubles. */
export const NO_DIRECTION = 1e-300;

/** Radii within this are the same die. mm. */
export const RADIUS_MM = 1e-9;

/** Two unit vectors whose cross product is shorter than this are parallel as far as doubles can tell. */
export const PARALLEL = 1e-12;

/** Coordinates beyond this are a mistake in the job. mm (10 km). */
export const FARTHEST_MM = 1e7;

/** Rounding of a sum of a dozen terms, as a fraction of the largest of them: 16 ulp. */
export const ROUNDING = 2 ** -48;

/** A direction whose length is off 1, or two whose square is off 0, by less than this are sound: some dozen roundings. */
export const UNIT_OFF = 1e-12;

/** Slopes this close are equal, and the place nearest A is named: at a 60 mm radius it moves a place by 1e-4 mm. rad. */
export const SLOPE_TIE_RAD = 1e-12;

/** Trapped volumes are integrated until the quadrature's own bound is under this for each stretch. mm³: a five-thousandth of a drop. */
export const VOLUME_MM3 = 1e-2;

/** Levels this close are one surface of liquid. mm */
export const LEVEL_MM = 1e-9;
