/** Lines: measured ones, and the opposite hand of one. */
import { z } from 'zod';
import { bleed, duty } from './duty.ts';
import {
  angle,
  byId,
  direction,
  id,
  type Kit,
  length,
  list,
  name,
  note,
  object,
  point,
  word,
} from './kinds.ts';
import { stick } from './runs.ts';
import { slope } from './told.ts';
import { attitudes } from './tooling.ts';

const MOST_PIECES = 10_000;
const QUANTITY = `a whole number from 1 to ${MOST_PIECES}`;

const quantity = () =>
  z.number({ error: QUANTITY }).int(QUANTITY).min(1, QUANTITY).max(MOST_PIECES, QUANTITY);

const corner = (kit: Kit) =>
  object(kit, {
    at: point(kit),
    radius: length(kit, 'more than 0').optional(),
    note: note().optional(),
  });

const nut = (kit: Kit) =>
  object(kit, {
    length: length(kit, 'more than 0'),
    bore: length(kit, 'more than 0').optional(),
    acrossFlats: length(kit, 'more than 0').optional(),
  });

const end = (kit: Kit) =>
  object(kit, {
    fitting: id().optional(),
    joins: list(kit, id(), { least: 0, what: 'a list of ids of surroundings' }).optional(),
    free: length(kit, 'not negative').optional(),
    direction: direction().optional(),
    misfit: angle(0, 180).optional(),
    spare: length(kit, 'not negative').optional(),
    nut: nut(kit).optional(),
    sleeve: object(kit, { length: length(kit, 'more than 0') }).optional(),
    flareWhen: word(['before', 'after']).optional(),
    far: word(['rigid', 'hose']).optional(),
    opening: length(kit, 'more than 0').optional(),
    note: note().optional(),
  });

const drain = (kit: Kit) =>
  object(kit, {
    to: word(['A', 'Z', 'both']),
    minSlope: slope().optional(),
    minSlopeTilted: slope().optional(),
    rule: id().optional(),
  });

const clearance = (kit: Kit) =>
  object(kit, {
    self: length(kit, 'not negative').optional(),
    lines: length(kit, 'not negative').optional(),
    to: byId(kit, length(kit, 'not negative'), 'distances by id of a surrounding').optional(),
  });

export const measured = (kit: Kit) =>
  object(kit, {
    id: id(),
    name: name().optional(),
    service: id().optional(),
    tube: id(),
    bender: id().optional(),
    quantity: quantity().optional(),
    points: list(kit, corner(kit), { least: 2, what: 'a list of at least two points { "at": [x, y, z] }' }),
    endA: end(kit).optional(),
    endZ: end(kit).optional(),
    drain: drain(kit).optional(),
    fluid: id().optional(),
    duty: duty(kit).optional(),
    bleed: bleed(kit).optional(),
    stick: stick(kit).optional(),
    attitudes: attitudes(kit).optional(),
    clearance: clearance(kit).optional(),
    clips: list(kit, length(kit, 'not negative'), {
      least: 0,
      what: 'a list of distances from end A',
    }).optional(),
    note: note().optional(),
  });

export const mirrored = (kit: Kit) =>
  object(kit, {
    id: id(),
    mirrorOf: id(),
    across: word(['x', 'y', 'z']),
    offset: length(kit, 'any').optional(),
    name: name().optional(),
    quantity: quantity().optional(),
    clearance: clearance(kit).optional(),
    note: note().optional(),
  });

export const line = (kit: Kit) => z.union([measured(kit), mirrored(kit)]);
