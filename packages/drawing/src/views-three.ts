/** Where each view looks and where it stands on the page. */
import { type MachineAxes, negate } from '@runback/geometry';
import { orthographic, type Projection } from './picture-project.ts';
import { cell, joined, type Part, zone } from './set.ts';
import type { Point, Zone } from './types.ts';
import { standardScale } from './views-scale.ts';
import { MARGIN, type Subject, sizeIn, view } from './views-view.ts';

export const TITLE = 4;

export type Side = 'left' | 'above' | 'front';

/** Where each view looks: the principal one from the left side of the machine, and from above and the front. */
export function lookFrom(side: Side, { forward, left, up }: MachineAxes): Projection {
  if (side === 'left') return orthographic(negate(left), up);
  // From above the paper's up is the far side of the principal view, so that both share their forward.
  if (side === 'above') return orthographic(negate(up), negate(left));
  return orthographic(negate(forward), up);
}

export interface Drawn {
  readonly part: Part;
  readonly scale: number;
  readonly lost: readonly string[];
}

/** How wide and tall a view is with what stands round it. */
export const withMargin = (
  [width, height]: readonly [number, number],
  scale: number,
): readonly [number, number] => [
  width * scale + MARGIN.left + MARGIN.right,
  height * scale + MARGIN.top + MARGIN.bottom,
];

export const title = ({ name, x, y, width }: Zone, text: string): Part =>
  cell(zone(`${name} title`, [x, y], [width, TITLE]), text, { cap: 2.3, minCap: 1.4, lines: 2 });

interface Three {
  readonly area: Zone;
  readonly angle: 'first' | 'third';
}

const TITLES: Readonly<Record<Side, string>> = {
  left: 'from the left side',
  above: 'from above',
  front: 'from the front',
};

/**
 * Three views by ISO 5456-2:1996: in first-angle projection the view from above stands below the principal view and
 * the one from its left (the front of the machine) on its right; in third-angle above it and on its left.
 */
export function threeViews(subject: Subject, axes: MachineAxes, { area, angle }: Three): Drawn {
  const sizes = {
    left: sizeIn(subject, lookFrom('left', axes)),
    front: sizeIn(subject, lookFrom('front', axes)),
    above: sizeIn(subject, lookFrom('above', axes)),
  };
  const layout = (s: number): Record<'column' | 'row', readonly [number, number]> => {
    const [wide, tall] = withMargin(sizes.left, s);
    const [side] = withMargin(sizes.front, s);
    const [, plan] = withMargin(sizes.above, s);
    return { column: [wide, side], row: [tall + TITLE, plan + TITLE] };
  };
  const sum = ([a, b]: readonly [number, number]): number => a + b;
  const scale = standardScale(
    (s) => sum(layout(s).column) <= area.width && sum(layout(s).row) <= area.height,
  );
  const places = viewPlaces(layout(scale), { area, angle });
  const drawn = (['left', 'above', 'front'] as const).map((side) => {
    const place = places[side];
    const own = { ...place, y: place.y + TITLE, height: place.height - TITLE };
    const one = view(subject, { projection: lookFrom(side, axes), scale, zone: own, dimensions: true });
    return { lost: one.lost, part: joined([title(place, TITLES[side]), one.part]) };
  });
  return { scale, lost: drawn.flatMap((one) => one.lost), part: joined(drawn.map((one) => one.part)) };
}

/** The rectangles of the views; what is left over of the area is shared out. */
export function viewPlaces(
  { column, row }: Record<'column' | 'row', readonly [number, number]>,
  { area, angle }: Three,
): Readonly<Record<Side, Zone>> {
  const extra: Point = [(area.width - column[0] - column[1]) / 2, (area.height - row[0] - row[1]) / 2];
  const [wide, side] = [column[0] + extra[0], column[1] + extra[0]];
  const [tall, plan] = [row[0] + extra[1], row[1] + extra[1]];
  const first = angle === 'first';
  const x = first ? { left: area.x, front: area.x + wide } : { left: area.x + side, front: area.x };
  const y = first ? { left: area.y, above: area.y + tall } : { left: area.y + plan, above: area.y };
  return {
    left: zone('view left', [x.left, y.left], [wide, tall]),
    above: zone('view above', [x.left, y.above], [wide, plan]),
    front: zone('view front', [x.front, y.left], [side, tall]),
  };
}
