/** What the report says of the liquid and the stick. */
import { about, exactly, listOf, NOT_NEGATIVE, NUMBER, nullable, ref, TEXT, TRIPLE } from './parts.ts';

const OUTLETS = { enum: ['A', 'Z', 'both'] };
const NUMBERED = { type: 'integer', minimum: 1 };
const FROM_A = 'mm from end A of the line, of a run from end A of its first line.';

export const POCKET = exactly(
  {
    from_mm: about(NOT_NEGATIVE, `Where it begins, ${FROM_A}`),
    to_mm: about(NOT_NEGATIVE, `Where it ends, ${FROM_A}`),
    lowest_mm: about(
      NOT_NEGATIVE,
      `Where the floor of the bore is lowest (for air: its roof highest), ${FROM_A}`,
    ),
    level_mm: about(
      NUMBER,
      'Height of the surface along up, mm; for air along down, so that it counts the other way.',
    ),
    depth_mm: about(NOT_NEGATIVE, 'From the surface to the lowest floor (for air: the highest roof), mm.'),
    volume_ml: about(NOT_NEGATIVE, 'Volume of this pocket, ml.'),
    point_mm: about(TRIPLE, 'The place of lowest_mm on the centreline, mm.'),
  },
  'A stretch of bore that stays wet, or full of air.',
);

const KEPT_KEYS = {
  volume_ml: about(
    NOT_NEGATIVE,
    'All that stays, ml: exact for a round bore smaller than the radius of its bends. Gas moves freely; no surface tension, no film on the wall.',
  ),
  bound_ml: about(NOT_NEGATIVE, 'What the quadrature may be off by at most, ml.'),
  pockets: listOf(ref('pocket')),
};

export const KEPT = exactly(KEPT_KEYS, 'What stays at rest.');

export const WORST_KEPT = exactly(
  {
    ...KEPT_KEYS,
    atMost_ml: about(
      NOT_NEGATIVE,
      'Certainly no more than this in any attitude, ml; volume_ml is the most a search found.',
    ),
    up: about(TRIPLE, 'Up in that attitude, a unit vector in the axes of the job.'),
    attitude: about(
      nullable(exactly({ pitch_deg: NUMBER, roll_deg: NUMBER })),
      'Positive pitch: nose down. Positive roll: right side down. Null when the attitudes are a cone.',
    ),
    tries: about(
      { type: 'integer', minimum: 0 },
      'Attitudes looked at, counted; 0 when the fall of the line proves that nothing stays.',
    ),
  },
  'The most that stays in any attitude, as far as a search tells.',
);

export const AIR = exactly(
  {
    outlets: about(OUTLETS, 'The ends at which air can leave.'),
    ...KEPT_KEYS,
    worst: about(nullable(ref('worstKept')), 'Over the attitudes; null when it was not looked for.'),
  },
  'Air that stays when it is filled, at rest.',
);

export const POCKETS = exactly(
  {
    outlets: about(OUTLETS, 'The ends at which liquid can leave.'),
    capacity_ml: about(NOT_NEGATIVE, 'All the bore holds, ml. What drains is this less what stays.'),
    liquid: about(ref('kept'), 'Liquid that stays after draining, at rest.'),
    worst: about(nullable(ref('worstKept')), 'Liquid over the attitudes; null when it was not looked for.'),
    air: about(nullable(ref('air')), 'Null when the line is not bled.'),
    cling: about(
      nullable(
        exactly({
          capillaryLength_mm: about(
            NOT_NEGATIVE,
            'Square root of surface tension over density and gravity, mm.',
          ),
          holds: about(
            { type: 'boolean' },
            'The bore is so small that a plug may hang in it whatever its slope. An estimate.',
          ),
        }),
      ),
      'What the model of the pockets leaves out; null without surface tension and density.',
    ),
  },
  'Where liquid stays after draining, and air after filling.',
);

const AT_BEND = {
  line: about(TEXT, 'Id of the line.'),
  bend: about(NUMBERED, 'Counted from end A of that line, as in its bends.'),
  at_mm: about(NUMBER, `Start of the bend, ${FROM_A}`),
};

const TIP = exactly({
  ...AT_BEND,
  longest_mm: about(
    NOT_NEGATIVE,
    'Longest stiff tip of this thickness that passes this bend, mm. A perfect round bore.',
  ),
  alone: about(
    { type: 'boolean' },
    'False: a straight beside it is too short for the end of the tip, and longest_mm is that of an endless arc, which is shorter.',
  ),
});

const BLADE = exactly(
  {
    play_mm: about(
      NUMBER,
      'Smallest bore less the diagonal of the blade, mm: negative where it does not go in.',
    ),
    bends: listOf(
      exactly({
        ...AT_BEND,
        radius_mm: about(NUMBER, 'Tightest radius of the middle of the blade, mm.'),
        strain: about(NOT_NEGATIVE, 'Half the thickness over that radius; no unit.'),
        takesSet: about({ type: 'boolean' }, 'The strain is past yield: it comes out bent. An estimate.'),
      }),
    ),
    twists: listOf(
      exactly({
        fromBend: about(
          NUMBERED,
          'From this bend to the next, counted from 1 along the whole run from end A.',
        ),
        twist_deg: about(NUMBER, 'Right-handed about travel from A; half a turn is none.'),
        straight_mm: about(NUMBER, 'The straight there is, mm.'),
        needs_mm: about(NOT_NEGATIVE, 'The straight the twist asks for within yield, mm. An estimate.'),
        enough: about({ type: 'boolean' }, 'False: it takes a set there, or rides edge-on round a bend.'),
      }),
    ),
  },
  'A flat blade, which bends only the thin way.',
);

const STEP = exactly({
  line: about(TEXT, 'Id of the line before the step, from end A.'),
  at_mm: about(NUMBER, `Where it is, ${FROM_A}`),
  step_mm: about(NOT_NEGATIVE, 'Height all round, mm: half the difference of the bores.'),
  catches: { enum: ['going in', 'coming out'] },
  lead: exactly(
    {
      length_mm: about(NOT_NEGATIVE, 'Length of the cone along the tube, mm.'),
      push: about(
        nullable(NUMBER),
        'Push along the tube for each unit the cone pushes sideways, no unit; null where it jams.',
      ),
    },
    'The chamfer or reducer that cures it.',
  ),
});

export const PASSAGE = exactly(
  {
    enters: { enum: ['A', 'Z'] },
    stiff_mm: about(
      nullable(NUMBER),
      'The stiffest part of the stick, mm: its tip or a link; null when none is stiff.',
    ),
    tips: listOf(TIP),
    blade: about(nullable(BLADE), 'Null when the stick is no blade, or nothing says how stiff it is.'),
    steps: listOf(STEP),
    push: exactly(
      {
        angle_deg: about(NOT_NEGATIVE, 'Everything the run turns through.'),
        low: about(NUMBER, 'Factor with the lowest friction; no unit.'),
        high: about(NUMBER, 'Factor with the highest friction; no unit.'),
      },
      'By how much the bends multiply the force, for something limp: for comparing routes, not a force.',
    ),
  },
  'Whether a stick passes. Estimates for a clean round bore: try the stick before the line is fitted.',
);

export const STICK = exactly(
  {
    way: exactly(
      {
        centreline_mm: NOT_NEGATIVE,
        shortestLow_mm: about(NOT_NEGATIVE, 'The shortest way inside the bore is no shorter than this, mm.'),
        shortestHigh_mm: about(NOT_NEGATIVE, 'And no longer than this, mm.'),
        longest_mm: about(NOT_NEGATIVE, 'Round the outside of every bend, mm; an estimate.'),
        uncertainty_mm: about(NOT_NEGATIVE, 'Longest less shortest, mm.'),
      },
      'The way the stick takes through the tube.',
    ),
    seatToTip: exactly(
      { shortest_mm: NUMBER, middle_mm: NUMBER, longest_mm: NUMBER },
      'From the face its cap seats on to its end, mm.',
    ),
    marks: listOf(
      exactly({
        name: TEXT,
        litres: about(NUMBER, 'What was or will be filled in, litres.'),
        at_mm: about(NUMBER, 'From the end of the stick, mm. A place to start: verify by filling.'),
        doubt_mm: about(NOT_NEGATIVE, 'May be off by this much along the stick, either way, mm.'),
        perDegree_mm: about(
          nullable(NUMBER),
          'How far the reading moves for one degree of tilt the worst way, along the stick, mm; null without a pan, and along a level stick.',
        ),
        from: about({ enum: ['fills', 'pan'] }, 'Measured fills, or the sizes of the pan.'),
      }),
    ),
    pullOut: exactly(
      {
        from_mm: TRIPLE,
        to_mm: TRIPLE,
        direction: about(TRIPLE, 'Out of the tube, a unit vector.'),
        length_mm: NOT_NEGATIVE,
      },
      'Straight room above the cap to pull it out.',
    ),
    tip_mm: about(TRIPLE, 'Where its end stands when it is seated.'),
  },
  'How long the stick is and where its marks go.',
);

export const FACT = exactly(
  {
    group: { enum: ['pockets', 'passage', 'stick', 'pressure', 'flow', 'thermal', 'mass'] },
    label: TEXT,
    text: about(TEXT, 'The figure with its unit, in the units of the job, rounded for reading.'),
    basis: about(TEXT, 'The model, its source, and what it leaves out.'),
    caution: about(nullable(TEXT), 'What the figure is not.'),
  },
  'A figure in words, as the terminal, the sheet and the viewer print it.',
);
