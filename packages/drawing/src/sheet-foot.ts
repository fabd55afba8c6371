import { type JobUnit, type LengthStyle, plainUnit } from '@runback/job';
import { cell, joined, type Part, pen, zone } from './set.ts';
import { frameOf, type SheetContext, type SheetOptions } from './sheet-context.ts';
import type { Item } from './types.ts';

/** Length of the bar that shows whether the print is true to scale. mm */
export const CHECK_BAR = 100;
const TICK = 2.2;

interface Bar {
  readonly length: number;
  readonly parts: number;
  readonly name: string;
}

const bars: Readonly<Record<JobUnit, Bar>> = {
  mm: { length: CHECK_BAR, parts: 10, name: '100 mm' },
  in: { length: 4 * 25.4, parts: 8, name: '4 in' },
};

export interface Footing extends Pick<SheetContext, 'page' | 'pages'> {
  readonly options: Pick<SheetOptions, 'paper' | 'checksum'>;
  readonly unit: LengthStyle;
}

/** The bar to lay a rule on, the page number, the checksum of the job. */
export function foot({ page, pages, options, unit }: Footing): Part {
  const { x, y, width } = frameOf(options).bands.foot;
  const { length, name } = bars[plainUnit(unit)];
  const right = x + length + 6;
  return joined([
    { zones: [], items: bar(x + 0.3, y + 2.4, bars[plainUnit(unit)]) },
    cell(
      zone('bar words', [x, y + 4], [length, 4]),
      `${name} between the end ticks: measure it before you use a print`,
      { cap: 2.2, minCap: 1.7 },
    ),
    cell(
      zone('foot', [right, y + 0.8], [width - length - 6, 4.4]),
      `page ${page} of ${pages} · job ${options.checksum}`,
      {
        cap: 2.5,
        minCap: 1.7,
        anchor: 'end',
      },
    ),
  ]);
}

function bar(x: number, y: number, { length, parts }: Bar): Item[] {
  const tick = (at: number, size: number): Item => ({
    kind: 'line',
    from: [x + at, y - size],
    to: [x + at, y],
    stroke: pen(0.25),
  });
  const between = Array.from({ length: parts - 1 }, (_, i) => i + 1);
  return [
    { kind: 'line', from: [x, y], to: [x + length, y], stroke: pen(0.25), name: 'check-bar' },
    ...[0, length].map((at) => tick(at, TICK)),
    ...between.map((i) => tick((i * length) / parts, i === parts / 2 ? TICK * 0.8 : TICK * 0.45)),
  ];
}
