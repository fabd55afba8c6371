import {
  about,
  exactly,
  listOf,
  NOT_NEGATIVE,
  NUMBER,
  nullable,
  ref,
  TEXT,
  TRIPLE,
  VERDICT,
} from './parts.ts';

const BEND_NUMBER = { type: 'integer', minimum: 1 };

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
  normal: about(TRIPLE, 'Normal of the plane of bend, a unit vector: travel is right-handed about it.'),
  angle_deg: { type: 'number', exclusiveMinimum: 0, exclusiveMaximum: 360 },
  radius_mm: { type: 'number', exclusiveMinimum: 0 },
  ...ALONG,
});

export const BEND = exactly({
  bend: about(BEND_NUMBER, 'Counted from end A.'),
  points: about(
    listOf({ type: 'integer', minimum: 0 }),
    'Points of the job whose corners this bend rounds, counted from 0 at end A.',
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

export const SLOPE = exactly(
  {
    toward: about({ enum: ['A', 'Z', 'both'] }, 'The ends it drains to.'),
    rest_deg: about(NUMBER, 'Smallest fall toward them at rest; negative where it rises.'),
    rest_at_mm: about(NUMBER, 'Where that is, from end A.'),
    worst_deg: about(NUMBER, 'Smallest fall over the attitudes of the machine; negative where it rises.'),
    worst_at_mm: about(NUMBER, 'Where that is, from end A.'),
    worst_attitude: nullable(
      exactly(
        { pitch_deg: NUMBER, roll_deg: NUMBER },
        'Positive pitch: nose down. Positive roll: right side down.',
      ),
    ),
    worst_up: about(TRIPLE, 'Up in that attitude, a unit vector in the axes of the job.'),
    proof: exactly(
      { holds: { type: 'boolean' }, text: about(TEXT, 'One sentence, in the units of the job.') },
      'Whether the tangent of the centreline is proven to fall everywhere in every attitude, or where it does not.',
    ),
  },
  'The fall of the centreline toward the ends it drains to, as drawn: what was bent is proven with a level.',
);

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
  limit: about(nullable(NUMBER), 'In the unit named.'),
  unit: about(
    { enum: ['mm', 'deg', 'count', 'ratio', 'percent', 'ml', 'MPa', ''] },
    'Of found and limit; empty when there is nothing to measure.',
  ),
  at_mm: nullable(NUMBER),
  point_mm: nullable(TRIPLE),
  bend: about(nullable(BEND_NUMBER), 'Counted from end A.'),
  to: nullable(TEXT),
  path: about(nullable(TEXT), 'Path in the job file of what set the limit or is at fault.'),
  cure: nullable(CURE),
  basis: TEXT,
});

/** What a line and a run both have. */
const WORKED = {
  pockets: about(nullable(ref('pockets')), 'Null when it does not drain and is not bled.'),
  passage: about(nullable(ref('passage')), 'Null without a stick of its own.'),
  stick: about(nullable(ref('stick')), 'Null without a stick of its own.'),
};
const FACTS = { facts: about(listOf(ref('fact')), 'Those figures in words, in the order of their groups.') };

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
    ...WORKED,
    pressure: about(nullable(ref('pressure')), 'Null when there is nothing to work it from.'),
    flow: about(nullable(ref('flow')), 'Null when there is nothing to work it from.'),
    thermal: about(nullable(ref('thermal')), 'Null without temperatures, or the expansion of the material.'),
    mass: about(nullable(ref('mass')), 'Null without the density of the material.'),
    ...FACTS,
    findings: listOf(ref('finding')),
  },
  'A line, read from end A.',
);

export const IMPOSSIBLE = exactly(
  { id: TEXT, verdict: { const: 'fail' }, findings: { ...listOf(ref('finding')), minItems: 1 } },
  'A line whose geometry cannot exist.',
);

export const RUN = exactly(
  {
    id: TEXT,
    name: TEXT,
    lines: about({ ...listOf(TEXT), minItems: 1 }, 'Ids of its lines, from its end A.'),
    drain: about(
      nullable({ enum: ['A', 'Z', 'both'] }),
      'Where it drains to; null when the job does not say.',
    ),
    verdict: VERDICT,
    ...WORKED,
    ...FACTS,
    findings: about(
      listOf(ref('finding')),
      'A place along the line (at_mm) is from end A of the line named in to; the same findings stand with that line.',
    ),
  },
  'Lines joined end to end, worked together; distances from end A of the first.',
);
