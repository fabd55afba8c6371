/** The pointer card that is fixed beside the wheel. */
import { cell, joined, line, type Part, pen, zone } from './set.ts';
import type { PathItem, Point } from './types.ts';

export const POINTER = { width: 72, height: 34 } as const;
/** The strip that is folded and clamped. mm */
const FOOT = 15;
const POINT = 14;

export function drawPointer([x, y]: Point, onBender: boolean): Part {
  const { width, height } = POINTER;
  const middle = y + height / 2;
  const outline: PathItem = {
    kind: 'path',
    name: 'pointer-cut',
    stroke: pen(0.25),
    steps: [
      ['M', x, y],
      ['L', x + width - POINT, y],
      ['L', x + width, middle],
      ['L', x + width - POINT, y + height],
      ['L', x, y + height],
      ['Z'],
    ],
  };
  const fold = {
    ...line([x + FOOT, y], [x + FOOT, y + height], { ...pen(0.25), dash: [2, 1.2] }),
    name: 'pointer-fold',
  };
  const aim = line([x + width - POINT - 2, middle], [x + width, middle], pen(0.4));
  const inner = width - POINT - FOOT - 4;
  return joined([
    { zones: [], items: [outline, fold, aim] },
    cell(
      zone('pointer foot', [x + 1, y + 4], [FOOT - 2, height - 8]),
      `fold; fix to the ${onBender ? 'BENDER' : 'bench'}`,
      {
        cap: 2.2,
        minCap: 1.6,
        lines: 5,
        first: 'wrap',
        anchor: 'middle',
      },
    ),
    cell(zone('pointer', [x + FOOT + 2, y + 4], [inner, 6]), 'POINTER', { cap: 4, weight: 'bold' }),
    cell(
      zone('pointer words', [x + FOOT + 2, middle + 1.5], [inner, 12]),
      'tip at the rim of the wheel; stop 1 here for bend 1',
      {
        cap: 2.4,
        minCap: 1.8,
        lines: 3,
        first: 'wrap',
        at: 'top',
      },
    ),
  ]);
}
