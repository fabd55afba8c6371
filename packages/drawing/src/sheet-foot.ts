import { bands } from './frame.ts';
import { cell, joined, type Part, pen, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import type { Item } from './types.ts';

/** Length of the bar that shows whether the print is true to scale. mm */
export const CHECK_BAR = 100;
const TICK = 2.2;

/** The bar to lay a rule on, the page number, the checksum of the job. */
export function foot({ page, pages, options }: SheetContext): Part {
  const { x, y, width } = bands.foot;
  const right = x + CHECK_BAR + 6;
  return joined([
    { zones: [], items: bar(x + 0.3, y + 2.4) },
    cell(
      zone('bar words', [x, y + 4], [CHECK_BAR, 4]),
      '100 mm between the end ticks: measure it before you use a print',
      { cap: 2.2, minCap: 1.7 },
    ),
    cell(
      zone('foot', [right, y + 0.8], [width - CHECK_BAR - 6, 4.4]),
      `page ${page} of ${pages} · job ${options.checksum}`,
      {
        cap: 2.5,
        minCap: 1.7,
        anchor: 'end',
      },
    ),
  ]);
}

function bar(x: number, y: number): Item[] {
  const tick = (at: number, size: number): Item => ({
    kind: 'line',
    from: [x + at, y - size],
    to: [x + at, y],
    stroke: pen(0.25),
  });
  return [
    { kind: 'line', from: [x, y], to: [x + CHECK_BAR, y], stroke: pen(0.25), name: 'check-bar' },
    ...[0, CHECK_BAR].map((at) => tick(at, TICK)),
    ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((i) => tick((i * CHECK_BAR) / 10, i === 5 ? TICK * 0.8 : TICK * 0.45)),
  ];
}
