/** Tubes, benders and the figures a job brings of its own. */
import { z } from 'zod';
import {
  angle,
  byId,
  direction,
  type Kit,
  length,
  list,
  name,
  note,
  object,
  positive,
  word,
} from './kinds.ts';
import { slope } from './told.ts';

export const tube = (kit: Kit) =>
  object(kit, {
    material: name(),
    od: length(kit, 'more than 0'),
    wall: length(kit, 'more than 0'),
    stock: length(kit, 'more than 0').optional(),
    note: note().optional(),
  });

const FACTOR = 'a factor like 1.03, more than 0';

const springBack = (kit: Kit) =>
  object(kit, { factor: positive(FACTOR).optional(), fixed: angle(-90, 90).optional() });

/** What may stand on a bender and, nearer, on a die. */
const habits = (kit: Kit) => ({
  springBack: springBack(kit).optional(),
  stretchPerDegree: length(kit, 'any').optional(),
  markOffset: length(kit, 'any').optional(),
});

const die = (kit: Kit) =>
  object(kit, {
    od: length(kit, 'more than 0'),
    radius: length(kit, 'more than 0'),
    minStraight: length(kit, 'not negative').optional(),
    minTail: length(kit, 'not negative').optional(),
    maxAngle: angle(0, 360).optional(),
    ...habits(kit),
    springBackByTube: byId(kit, springBack(kit), 'spring-back by tube id').optional(),
    note: note().optional(),
  });

const bench = (kit: Kit) =>
  object(kit, {
    stand: word(['side', 'behind-free', 'at-start']),
    startOn: word(['left', 'right']),
    plane: word(['flat', 'upright']),
    former: word(['near', 'far', 'above', 'below']),
    moves: word(['tube', 'bender']),
    turnCheck: word(['flag', 'gauge', 'height']).optional(),
  });

export const bender = (kit: Kit) =>
  object(kit, {
    name: name().optional(),
    dies: list(kit, die(kit), { least: 0, what: 'a list of dies' }),
    ...habits(kit),
    bench: bench(kit).optional(),
    note: note().optional(),
  });

export const attitudes = (kit: Kit) => {
  const range = z.tuple([angle(-180, 180), angle(-180, 180)], {
    error: 'two angles [lowest, highest] in degrees',
  });
  return object(kit, {
    tilt: angle(0, 180).optional(),
    pitch: range.optional(),
    roll: range.optional(),
  });
};

const cautions = (kit: Kit) => list(kit, name(), { least: 0, what: 'a list of texts' });

export const material = (kit: Kit) =>
  object(kit, {
    name: name().optional(),
    density: positive('kg/m³, more than 0').optional(),
    youngs: positive('MPa, more than 0').optional(),
    yield: positive('MPa, more than 0').optional(),
    expansion: positive('a figure per kelvin, more than 0').optional(),
    strength: positive('MPa, more than 0').optional(),
    allowable: positive('MPa, more than 0').optional(),
    cautions: cautions(kit).optional(),
    source: name().optional(),
  });

export const fitting = (kit: Kit) =>
  object(kit, {
    name: name().optional(),
    uses: length(kit, 'not negative').optional(),
    bar: length(kit, 'not negative').optional(),
    traps: z.boolean({ error: 'true or false' }).optional(),
    cautions: cautions(kit).optional(),
    source: name().optional(),
  });

export const REASONS = ['hot', 'moving', 'fixed', 'wiring'] as const;

export const keepOff = (kit: Kit) =>
  object(kit, {
    hot: length(kit, 'not negative').optional(),
    moving: length(kit, 'not negative').optional(),
    fixed: length(kit, 'not negative').optional(),
    wiring: length(kit, 'not negative').optional(),
  });

export const service = (kit: Kit) =>
  object(kit, {
    name: name().optional(),
    cautions: cautions(kit).optional(),
    minSlope: slope().optional(),
    minSlopeTilted: slope().optional(),
    drains: z.boolean({ error: 'true or false' }).optional(),
    bleeds: z.boolean({ error: 'true or false' }).optional(),
    keepOff: keepOff(kit).optional(),
    notes: list(kit, object(kit, { check: name(), reason: name() }), {
      least: 0,
      what: 'a list of { check, reason }',
    }).optional(),
    source: name().optional(),
  });

export const clipSpacing = (kit: Kit) =>
  list(kit, object(kit, { od: length(kit, 'more than 0'), spacing: length(kit, 'more than 0') }), {
    least: 0,
    what: 'a list of { od, spacing }',
  });

export const axes = () =>
  z.union([z.tuple([direction(), direction()]), z.tuple([direction(), direction(), direction()])], {
    error: 'two or three directions [[x, y, z], …] of plain numbers, square to each other',
  });
