/** Lines joined end to end, and the stick that goes through them. */
import { z } from 'zod';
import { between, id, type Kit, length, list, name, note, object, point, word } from './kinds.ts';

const MOST_LITRES = 1_000_000;

const litres = (least: number) => between(least, MOST_LITRES, 'litres');

/** Friction of anything on anything; rubber on a dry road is under 2. */
const MOST_FRICTION = 5;

const friction = () => {
  const part = between(0, MOST_FRICTION, '');
  return z.tuple([part, part], { error: 'two figures [lowest, highest], like [0.1, 0.3]' });
};

const tip = (kit: Kit) =>
  object(kit, {
    length: length(kit, 'more than 0'),
    thickness: length(kit, 'more than 0'),
    width: length(kit, 'more than 0').optional(),
  });

const pan = (kit: Kit) => {
  const size = length(kit, 'more than 0');
  return object(kit, {
    middle: point(kit),
    size: z.tuple([size, size], { error: 'two sizes [along the machine, across it]' }),
  });
};

export const stick = (kit: Kit) =>
  object(kit, {
    kind: word(['blade', 'cable', 'links']),
    enters: word(['A', 'Z']),
    material: id().optional(),
    thickness: length(kit, 'more than 0'),
    width: length(kit, 'more than 0').optional(),
    link: length(kit, 'more than 0').optional(),
    tip: tip(kit).optional(),
    seat: length(kit, 'any').optional(),
    beyond: length(kit, 'any').optional(),
    friction: friction().optional(),
    pan: pan(kit).optional(),
    fills: list(kit, object(kit, { litres: litres(0), at: length(kit, 'not negative') }), {
      least: 2,
      what: 'a list of at least two { litres, at }',
    }).optional(),
    levels: list(kit, object(kit, { name: name(), litres: litres(0) }), {
      least: 0,
      what: 'a list of { name, litres }',
    }).optional(),
    note: note().optional(),
  });

export const run = (kit: Kit) =>
  object(kit, {
    id: id(),
    name: name().optional(),
    lines: list(kit, id(), { least: 1, what: 'a list of ids of lines, at least one' }),
    drain: word(['A', 'Z', 'both']).optional(),
    stick: stick(kit).optional(),
    note: note().optional(),
  });
