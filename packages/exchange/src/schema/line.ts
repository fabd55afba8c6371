import { about, exactly, listOf, NUMBER, nullable, TEXT, TRIPLE, VERDICT } from './parts.ts';

const BEND_NUMBER = { type: 'integer', minimum: 1 };
const NOT_NEGATIVE = { type: 'number', minimum: 0 };

const ENDS = { from_mm: TRIPLE, to_mm: TRIPLE };
const ALONG = {
  start_mm: about(NUMBER, 'Distance from point 0 along the finished centreline, mm.'),
  end_mm: NUMBER,
};

export const STRAIGHT = exactly({ kind: { const: 'straight' }, ...ENDS, ...ALONG });

export const ARC = exactly({
  kind: { const: 'arc' },
  ...ENDS,
  centre_mm: TRIPLE,
  normal: about(TRIPLE, 'Unit normal of the plane of bend: travel is right-handed about it.'),
  angle_deg: { type: 'number', exclusiveMinimum: 0, exclusiveMaximum: 360 },
  radius_mm: { type: 'number', exclusiveMinimum: 0 },
  ...ALONG,
});

export const BEND = exactly({
  bend: about(BEND_NUMBER, 'Counted from end A.'),
  points: about(
    listOf({ type: 'integer', minimum: 0 }),
    'Points of the job whose corners this bend rounds; 0 is end A.',
  ),
  straightBefore_mm: NUMBER,
  turn_deg: about(
    nullable({ type: 'number', exclusiveMinimum: -180, maximum: 180 }),
    'From the last plane of bend to this one, clockwise as seen looking from A towards Z; null for the first bend.',
  ),
  clock_deg: { type: 'number', minimum: 0, exclusiveMaximum: 360 },
  angle_deg: { type: 'number', exclusiveMinimum: 0, exclusiveMaximum: 360 },
  radius_mm: { type: 'number', exclusiveMinimum: 0 },
  start_mm: NUMBER,
  end_mm: NUMBER,
  mark_mm: about(NUMBER, 'Pencil mark from the sawn end A, before flaring and trimming.'),
  markFinished_mm: about(NUMBER, 'The same from the finished end A.'),
  dial_deg: NUMBER,
});

export const SLOPE = exactly({
  toward: { enum: ['A', 'Z', 'both'] },
  rest_deg: NUMBER,
  rest_at_mm: NUMBER,
  worst_deg: NUMBER,
  worst_at_mm: NUMBER,
  worst_attitude: nullable(
    exactly(
      { pitch_deg: NUMBER, roll_deg: NUMBER },
      'Positive pitch: nose down. Positive roll: right side down.',
    ),
  ),
  worst_up: about(TRIPLE, 'Up in body axes in that attitude.'),
});

export const CLEARANCE = exactly({
  kind: { enum: ['surrounding', 'line', 'self'] },
  to: TEXT,
  distance_mm: about(NUMBER, 'From the surface of the tube; negative when they overlap.'),
  keepOff_mm: NUMBER,
  at_mm: NUMBER,
});

const CURE = exactly({
  text: TEXT,
  edits: listOf(exactly({ path: TEXT, value: {} }, 'A value of the job file, in its units and degrees.')),
});

export const FINDING = exactly({
  check: TEXT,
  verdict: VERDICT,
  message: TEXT,
  found: about(nullable(NUMBER), 'In the unit named.'),
  limit: nullable(NUMBER),
  unit: { enum: ['mm', 'deg', 'count', 'ratio', 'percent', ''] },
  at_mm: nullable(NUMBER),
  point_mm: nullable(TRIPLE),
  bend: nullable(BEND_NUMBER),
  to: nullable(TEXT),
  path: about(nullable(TEXT), 'Path in the job file of what set the limit or is at fault.'),
  cure: nullable(CURE),
  basis: TEXT,
});

const ref = (name: string) => ({ $ref: `#/$defs/${name}` });

export const LINE = exactly(
  {
    id: TEXT,
    verdict: VERDICT,
    od_mm: { type: 'number', exclusiveMinimum: 0 },
    bore_mm: NOT_NEGATIVE,
    developedLength_mm: NOT_NEGATIVE,
    cutLength_mm: NUMBER,
    pieces: listOf({ anyOf: [ref('straight'), ref('arc')] }),
    bends: listOf(ref('bend')),
    lastStraight_mm: NUMBER,
    slope: nullable(ref('slope')),
    clearance: listOf(ref('clearance')),
    findings: listOf(ref('finding')),
  },
  'A line, read from end A.',
);

export const IMPOSSIBLE = exactly(
  { id: TEXT, verdict: { const: 'fail' }, findings: { ...listOf(ref('finding')), minItems: 1 } },
  'A line whose geometry cannot exist.',
);
