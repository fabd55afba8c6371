/** Things to keep clear of. */
import { z } from 'zod';
import { direction, id, type Kit, length, list, note, object, point, sizes, word } from './kinds.ts';
import { axes, REASONS } from './tooling.ts';

export const SHAPES = ['tube', 'box', 'cylinder', 'sphere', 'plane'] as const;

const common = (kit: Kit) => ({
  id: id(),
  keepOff: length(kit, 'not negative').optional(),
  because: word(REASONS).optional(),
  note: note().optional(),
});

const shaped = <N extends (typeof SHAPES)[number], S extends z.core.$ZodLooseShape>(
  kit: Kit,
  shape: N,
  rest: S,
) => object(kit, { ...common(kit), shape: z.literal(shape), ...rest }, ['shape']);

const tube = (kit: Kit) =>
  shaped(kit, 'tube', {
    points: list(kit, point(kit), { least: 2, what: 'a list of at least two points [x, y, z]' }),
    radius: length(kit, 'more than 0').optional(),
    od: length(kit, 'more than 0'),
  });

const box = (kit: Kit) =>
  shaped(kit, 'box', {
    min: point(kit).optional(),
    max: point(kit).optional(),
    centre: point(kit).optional(),
    size: sizes(kit).optional(),
    axes: axes().optional(),
  }).meta({
    oneOf: [
      {
        required: ['min', 'max'],
        properties: { min: true, max: true, centre: false, size: false, axes: false },
      },
      { required: ['centre', 'size'], properties: { centre: true, size: true, min: false, max: false } },
    ],
  });

const cylinder = (kit: Kit) =>
  shaped(kit, 'cylinder', { from: point(kit), to: point(kit), diameter: length(kit, 'more than 0') });

const sphere = (kit: Kit) =>
  shaped(kit, 'sphere', { centre: point(kit), diameter: length(kit, 'more than 0') });

const plane = (kit: Kit) => shaped(kit, 'plane', { point: point(kit), normal: direction() });

export const surrounding = (kit: Kit) =>
  z.discriminatedUnion('shape', [tube(kit), box(kit), cylinder(kit), sphere(kit), plane(kit)], {
    error: `a surrounding { "shape": ${SHAPES.map((shape) => `"${shape}"`).join(' or ')}, … }`,
  });
