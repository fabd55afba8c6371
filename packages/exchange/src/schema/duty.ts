/** The estimates of a line: strength, flow, heat, weight. */
import { about, exactly, listOf, NOT_NEGATIVE, NUMBER, nullable, TEXT, TRIPLE } from './parts.ts';

const ESTIMATE = 'An estimate, not an approval and not a rating.';
const CAUTION = { caution: about(TEXT, 'What the figures beside it are not.') };
const YES_NO = { type: 'boolean' };

const STRAIGHT_PRESSURE = exactly(
  {
    barlow_MPa: about(NOT_NEGATIVE, '2·S·t/D on the outside diameter, MPa.'),
    boardman_MPa: about(NOT_NEGATIVE, '2·S·t/(D − 0.8·t), MPa; not to be used when thin is false.'),
    lame_MPa: about(NOT_NEGATIVE, 'S·(D² − d²)/(D² + d²), MPa.'),
    least_MPa: about(NOT_NEGATIVE, 'The least of the three, MPa.'),
    allowable_MPa: about(NOT_NEGATIVE, 'S, MPa: tensile strength over the safety factor.'),
    safetyFactor: about(NOT_NEGATIVE, 'What the tensile strength was divided by; no unit.'),
    wallLeft_mm: about(NOT_NEGATIVE, 't, mm: the wall the tolerance of the mill leaves.'),
    thin: about(YES_NO, 'The wall left is under a sixth of the outside diameter.'),
    ...CAUTION,
  },
  `Of a straight tube, new and round, steady pressure. ${ESTIMATE}`,
);

const CODE_PRESSURE = exactly(
  {
    straight_MPa: about(NOT_NEGATIVE, 'MPa.'),
    bendInside_MPa: about(nullable(NOT_NEGATIVE), 'Inside the tightest bend, MPa; null without bends.'),
    bendOutside_MPa: about(
      nullable(NOT_NEGATIVE),
      'Outside of it, with the wall stretched, MPa; null without bends.',
    ),
    least_MPa: about(NOT_NEGATIVE, 'The least of them, MPa.'),
    allowable_MPa: about(NOT_NEGATIVE, 'Allowable stress, MPa, with the factor of the code inside.'),
    safetyFactor: about(NUMBER, '1: the allowable stress has it inside; no unit.'),
    ...CAUTION,
  },
  `ASME B31.3, 304.1.2 (3a) with the factors of 304.2.1 for bends: a few formulas of a code, not a design to it. ${ESTIMATE}`,
);

const PROOF_TEST = exactly(
  {
    pressure_MPa: about(
      nullable(NOT_NEGATIVE),
      'To prove with, MPa; null where such a line is not proved by pressure.',
    ),
    burst_MPa: about(nullable(NOT_NEGATIVE), 'Held without bursting, MPa; null where the source names none.'),
    medium: about(nullable(TEXT), 'What to fill it with.'),
    source: TEXT,
    mediumSource: TEXT,
    ...CAUTION,
  },
  'Pressure to prove the finished line with. Everything in the circuit must stand it; never with air unless the source says so.',
);

export const PRESSURE = exactly(
  {
    working_MPa: about(nullable(NOT_NEGATIVE), 'What the job says it works at, MPa.'),
    straight: about(nullable(STRAIGHT_PRESSURE), 'Null without the tensile strength.'),
    code: about(nullable(CODE_PRESSURE), 'Null without an allowable stress.'),
    proof: about(nullable(PROOF_TEST), 'Null without a working pressure.'),
  },
  `Pressure. ${ESTIMATE}`,
);

const DROP = exactly(
  {
    velocity_mPerS: about(NOT_NEGATIVE, 'Mean velocity, m/s.'),
    reynolds: about(NOT_NEGATIVE, 'No unit.'),
    friction: exactly(
      {
        regime: about({ enum: ['laminar', 'unsure', 'turbulent'] }, 'Unsure from Reynolds 2000 to 4000.'),
        factor: about(NOT_NEGATIVE, 'Darcy; where unsure, the higher. No unit.'),
        low: about(NOT_NEGATIVE, 'The lower of what it may be. No unit.'),
        high: about(NOT_NEGATIVE, 'The higher of what it may be. No unit.'),
      },
      '64/Re, or Colebrook.',
    ),
    straights_MPa: about(NOT_NEGATIVE, 'MPa.'),
    bends_MPa: about(NOT_NEGATIVE, 'MPa; ends, fittings and valves are not in it.'),
    rise_MPa: about(NUMBER, 'Weight of the rise, MPa; negative where it falls.'),
    total_MPa: about(NUMBER, 'MPa.'),
    least_MPa: about(NUMBER, 'Total with the lower factor where the regime is unsure, MPa.'),
    ...CAUTION,
  },
  `Pressure drop in the direction of flow, steady, full bore. ${ESTIMATE}`,
);

const DRAIN_TIME = exactly(
  {
    least_s: about(NOT_NEGATIVE, 'No route of this length and fall is sooner, s.'),
    even_s: about(
      nullable(NOT_NEGATIVE),
      'On an even slope, laminar, s; null where it would not be laminar.',
    ),
    most_s: about(nullable(NOT_NEGATIVE), 'On the shallowest slope all along, s; null when it has no bound.'),
    assumptions: listOf(TEXT),
    ...CAUTION,
  },
  `Time for a full line to run out by gravity, until the last full bore is out. ${ESTIMATE}`,
);

export const FLOW = exactly(
  {
    drop: about(nullable(DROP), 'Null without flow, viscosity and density.'),
    drain: about(nullable(DRAIN_TIME), 'Null when it does not drain, or without viscosity.'),
  },
  `Flow. ${ESTIMATE}`,
);

const LEG = exactly(
  {
    length_mm: about(NOT_NEGATIVE, 'The leg there is, mm.'),
    needed_mm: about(NOT_NEGATIVE, 'The leg that takes the movement at the allowed stress, mm.'),
    takes: YES_NO,
    stress_MPa: about(NOT_NEGATIVE, 'Bending stress at both ends of the leg, MPa.'),
    allowable_MPa: about(NOT_NEGATIVE, 'What it is held against, MPa.'),
    ...CAUTION,
  },
  `Guided cantilever, both ends held. ${ESTIMATE}`,
);

export const THERMAL = exactly(
  {
    delta_K: about(NUMBER, 'From fitted to the farther end of the range, K.'),
    growth_mm: about(NUMBER, 'Of the developed length, mm; negative when it shrinks.'),
    movement_mm: about(TRIPLE, 'Of end Z against end A when A is held and Z is free, mm.'),
    leg: about(nullable(LEG), 'Null when an end is free, or nothing says what the tube may stand.'),
  },
  'Heat: the whole line at one temperature. What it is fixed to grows too.',
);

export const MASS = exactly(
  {
    tube_kgPerM: about(NOT_NEGATIVE, 'kg/m.'),
    contents_kgPerM: about(NOT_NEGATIVE, 'kg/m; 0 without the density of the liquid.'),
    tube_kg: about(NOT_NEGATIVE, 'Of the developed length, kg; nominal sizes.'),
    contents_kg: about(NOT_NEGATIVE, 'kg; 0 without the density of the liquid.'),
    total_kg: about(NOT_NEGATIVE, 'kg.'),
    contents_ml: about(NOT_NEGATIVE, 'What the bore holds, ml.'),
    frequency: about(
      nullable(
        exactly({
          first_hz: about(NOT_NEGATIVE, 'Hz: a straight span, pinned at both clips.'),
          span_mm: about(NOT_NEGATIVE, 'The longest span between clips, mm.'),
        }),
      ),
      'First natural frequency; null without clips. An estimate.',
    ),
    ...CAUTION,
  },
  `Mass. ${ESTIMATE}`,
);
