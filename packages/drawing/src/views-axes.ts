/** The little picture of the axes beside the isometric view. */
import { type MachineAxes, negate, type Vec3 } from '@runback/geometry';
import { along, type Projection } from './picture-project.ts';
import { cell, joined, line, type Part, pen, zone } from './set.ts';
import type { Item, Point } from './types.ts';

/** Forward, left, up and the way things fall. */
export function axesPicture(axes: MachineAxes, projection: Projection, [x, y]: Point): Part {
  const centre: Point = [x + 13, y + 12];
  const arm = (v: Vec3, long: number): Point => {
    const [dx, dy] = along(v, projection);
    return [centre[0] + dx * long, centre[1] + dy * long];
  };
  const label = { cap: 1.9, minCap: 1.4 } as const;
  const [forward, left, up, down] = [
    arm(axes.forward, 8),
    arm(axes.left, 8),
    arm(axes.up, 7),
    arm(negate(axes.up), 10),
  ];
  return joined([
    {
      zones: [],
      items: [
        ...arrowTo(centre, forward, 0.25),
        ...arrowTo(centre, left, 0.25),
        ...arrowTo(centre, up, 0.25),
      ],
    },
    { zones: [], items: arrowTo(centre, down, 0.9) },
    cell(zone('axis forward', [x, forward[1] + 0.4], [9.5, 3]), 'forward', { ...label, at: 'top' }),
    cell(zone('axis left', [left[0] - 3, left[1] + 0.4], [8, 3]), 'left', { ...label, at: 'top' }),
    cell(zone('axis up', [up[0] + 1, up[1] - 1], [8, 3]), 'up', { ...label, at: 'top' }),
    cell(zone('gravity', [down[0] - 10, down[1] + 0.4], [20, 3]), 'GRAVITY', {
      ...label,
      weight: 'bold',
      at: 'top',
      anchor: 'middle',
    }),
  ]);
}

function arrowTo(from: Point, tip: Point, width: number): Item[] {
  const long = Math.hypot(tip[0] - from[0], tip[1] - from[1]);
  const [ux, uy] = [(tip[0] - from[0]) / long, (tip[1] - from[1]) / long];
  const size = 1.4 + width;
  const neck: Point = [tip[0] - ux * size, tip[1] - uy * size];
  return [
    line(from, neck, pen(width)),
    {
      kind: 'path',
      fill: 0,
      steps: [
        ['M', ...tip],
        ['L', neck[0] - uy * size * 0.4, neck[1] + ux * size * 0.4],
        ['L', neck[0] + uy * size * 0.4, neck[1] - ux * size * 0.4],
        ['Z'],
      ],
    },
  ];
}
