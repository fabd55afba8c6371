import { BEFORE } from './frame.ts';
import { cell, joined, line, pen, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import { type Paragraph, type Stacked, stackOrPoint } from './stack.ts';
import { length } from './words.ts';

const SAW_WIDTH = 66;

/** How long to saw, and what to do, in order, before the first bend. */
export function before({ plan }: SheetContext): Stacked {
  const { x, y, width, height } = BEFORE;
  const steps = zone('steps', [x + SAW_WIDTH + 4, y + 2.2], [width - SAW_WIDTH - 4, height - 4]);
  const list = stackOrPoint(steps, beforeSteps(plan.order.steps), { cap: 4, minCap: 2.1, columns: 2 });
  const part = joined([
    {
      zones: [],
      items: [
        line([x, y], [x + width, y], pen(0.8)),
        line([x + SAW_WIDTH + 1, y + 2.5], [x + SAW_WIDTH + 1, y + height - 2.5], pen(0.2, 0.5)),
      ],
    },
    cell(zone('saw', [x, y + 3], [SAW_WIDTH - 1, 12.6]), `SAW ${length(plan.cutLength, plan.unit)}`, {
      cap: 8,
      minCap: 4,
      weight: 'bold',
    }),
    cell(
      zone('finished', [x, y + 16.6], [SAW_WIDTH - 1, 7]),
      `finished ${length(plan.finishedLength, plan.unit)}`,
      {
        cap: 4,
        minCap: 3,
      },
    ),
    list.part,
  ]);
  return { ...list, part };
}

/** The order at the bench up to hooking the tape on; what the tape hooks on is bold. Sawing stands large beside it. */
function beforeSteps(steps: SheetContext['plan']['order']['steps']): Paragraph[] {
  const hook = steps.findIndex((step) => step.kind === 'hook');
  return steps
    .slice(0, hook + 1)
    .filter((step) => step.kind !== 'saw')
    .map((step) => ({ text: step.words, tick: true, weight: step.kind === 'hook' ? 'bold' : 'regular' }));
}
