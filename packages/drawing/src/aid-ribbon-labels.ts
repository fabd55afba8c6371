/** The label of a place on a ribbon, beside its leader. */
import type { Label, Spot } from './aid-place.ts';
import type { Weight } from './types.ts';

const CAPS = [2.8, 2.2] as const;

export interface RibbonLabel {
  /** In the piece's own mm. */
  readonly x: number;
  /** Longest first: the shorter ones serve where there is less room. */
  readonly labels: readonly string[];
  readonly weight: Weight;
  /** Baselines, best first on the right of the place. */
  readonly rows: readonly number[];
  /** Where its leader begins. */
  readonly top: number;
}

/** Right of its line and left of it, row by row, first with all it has to say. */
export function ribbonLabel({ x, labels, weight, rows, top }: RibbonLabel): Label {
  const spot = (text: string, cap: number, [side, y]: readonly [1 | -1, number]): Spot => ({
    text,
    cap,
    weight,
    x: x + side * 0.9,
    y,
    anchor: side === 1 ? 'start' : 'end',
    leader: [
      [x, top],
      [x, y],
    ],
  });
  // On its left a label takes the lowest row: the leaders of what stands there end above it.
  const upward = [...rows].sort((a, b) => b - a);
  const places = [...rows.map((y) => [1, y] as const), ...upward.map((y) => [-1, y] as const)];
  const spots = labels.flatMap((text) =>
    CAPS.flatMap((cap) => places.map((place) => spot(text, cap, place))),
  );
  return { what: labels.at(-1) ?? '', spots };
}
