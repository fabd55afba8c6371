import { BEFORE } from './frame.ts';
import { cell, joined, line, type Part, pen, rect, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import { type Paragraph, type Stacked, stackOrPoint } from './stack.ts';
import { length } from './words.ts';

const SAW_WIDTH = 66;

/** How long to saw, and what to do, in order, before the first bend. */
export function before({ plan, worked }: SheetContext): Stacked {
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
    worked.verdict === 'fail' ? forbidden(worked) : saw(plan),
    list.part,
  ]);
  return { ...list, part };
}

function saw(plan: SheetContext['plan']): Part {
  const { x, y } = BEFORE;
  return joined([
    cell(zone('saw', [x, y + 3], [SAW_WIDTH - 1, 12.6]), `SAW ${length(plan.cutLength, plan.unit)}`, {
      cap: 8,
      minCap: 4,
      weight: 'bold',
    }),
    cell(
      zone('finished', [x, y + 16.6], [SAW_WIDTH - 1, 7]),
      `finished ${length(plan.finishedLength, plan.unit)}`,
      { cap: 4, minCap: 3 },
    ),
  ]);
}

/** A line that fails gives no length to saw: the place where it would stand says why. */
function forbidden({ findings }: SheetContext['worked']): Part {
  const { x, y } = BEFORE;
  const fails = findings.filter((finding) => finding.verdict === 'fail').length;
  const box = zone('saw', [x, y + 2.5], [SAW_WIDTH - 1, 13.5]);
  const why = `${fails === 1 ? '1 check fails' : `${fails} checks fail`}: do not saw, do not bend`;
  return joined([
    { zones: [], items: [rect(box, { fill: 0 })] },
    cell({ ...box, x: box.x + 2, width: box.width - 4 }, 'DO NOT BEND', {
      cap: 7,
      minCap: 4,
      weight: 'bold',
      anchor: 'middle',
      fill: 1,
    }),
    cell(zone('finished', [x, y + 17.4], [SAW_WIDTH - 1, 7]), why, {
      cap: 3.4,
      minCap: 2.6,
      lines: 2,
      weight: 'bold',
    }),
  ]);
}

/** The order at the bench up to hooking the tape on; what the tape hooks on is bold. Sawing stands large beside it. */
function beforeSteps(steps: SheetContext['plan']['order']['steps']): Paragraph[] {
  const bend = steps.findIndex((step) => step.kind === 'bend' || step.kind === 'check');
  const last = steps.findLastIndex((step) => step.kind === 'hook' || step.kind === 'mark');
  return steps
    .slice(0, bend < 0 ? last + 1 : bend)
    .filter((step) => step.kind !== 'saw')
    .map((step, i) => ({
      text: `${i + 1}. ${step.words}`,
      tick: true,
      weight: step.kind === 'hook' || step.kind === 'mark' ? 'bold' : 'regular',
    }));
}
