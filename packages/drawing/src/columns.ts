/** The columns of the bend table, in the order of the hands. */
import { TABLE_LEFT } from './frame.ts';
import { zone } from './set.ts';
import type { Zone } from './types.ts';

/** mm; together as wide as the sheet. */
const WIDTHS = { bend: 9, mark: 29, picture: 17, turn: 57.8, flag: 14, dial: 19.5, check: 33.7 } as const;

export type Column = keyof typeof WIDTHS;
export const columns = Object.keys(WIDTHS) as Column[];

/** Air left and right of the text; what is set flush right needs some before a neighbour that is set flush left. */
const AIR: Readonly<Record<Column, readonly [number, number]>> = {
  bend: [0.2, 0.8],
  mark: [1, 0.6],
  picture: [0, 0],
  turn: [0.8, 0.8],
  flag: [0.8, 0.4],
  dial: [0.2, 0.5],
  check: [2.4, 0.4],
};

/** The zone of one column in one row, from `top` so many mm down. */
export function column(name: Column, row: string, [top, tall]: readonly [number, number]): Zone {
  const before = columns.slice(0, columns.indexOf(name)).reduce((sum, other) => sum + WIDTHS[other], 0);
  const [left, right] = AIR[name];
  return zone(`${row} ${name}`, [TABLE_LEFT + before + left, top], [WIDTHS[name] - left - right, tall]);
}
