/** The symbols of projection: a truncated cone from the side and on its end, ISO 5456-2:1996 annex A (from memory). */
import { pen } from './set.ts';
import type { Item, Point } from './types.ts';

/** Width and height of the symbol, mm. */
export const SYMBOL: readonly [number, number] = [17, 8];

const LARGE = 6;
const SMALL = 3;
const LONG = 6;

/**
 * The symbol with its top left corner at a point. The small end of the cone looks to the left, so that its view from
 * the left shows both circles: in first-angle projection that view stands on the right, in third-angle on the left.
 */
export function projectionSymbol([x, y]: Point, angle: 'first' | 'third'): readonly Item[] {
  const middle = y + SYMBOL[1] / 2;
  const circlesX = angle === 'first' ? x + SYMBOL[0] - LARGE / 2 - 1 : x + LARGE / 2 + 1;
  const coneX = angle === 'first' ? x + 1 : x + SYMBOL[0] - LONG - 1;
  const thin = { width: 0.13, grey: 0, dash: [1.6, 0.5, 0.3, 0.5] };
  const circle = (diameter: number): Item => ({
    kind: 'circle',
    name: 'symbol-circle',
    centre: [circlesX, middle],
    radius: diameter / 2,
    stroke: pen(0.35),
  });
  return [
    {
      kind: 'path',
      name: 'symbol-cone',
      steps: [
        ['M', coneX, middle - SMALL / 2],
        ['L', coneX + LONG, middle - LARGE / 2],
        ['L', coneX + LONG, middle + LARGE / 2],
        ['L', coneX, middle + SMALL / 2],
        ['Z'],
      ],
      stroke: pen(0.35),
    },
    circle(LARGE),
    circle(SMALL),
    { kind: 'line', from: [x, middle], to: [x + SYMBOL[0], middle], stroke: thin },
    { kind: 'line', from: [circlesX, y], to: [circlesX, y + SYMBOL[1]], stroke: thin },
  ];
}
