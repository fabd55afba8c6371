import type { BenchPlan, OrderStep } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import { cell, joined, line, pen, zone } from './set.ts';
import { frameOf, type SheetContext } from './sheet-context.ts';
import { type Paragraph, type Stacked, stackOrPoint } from './stack.ts';
import { height, length } from './words.ts';

/** What to check and to do when the last bend is made. */
export function after({ plan, worked, options, page, pages }: SheetContext): Stacked {
  const { x, y, width, height: tall } = frameOf(options).bands.after;
  const body = zone('after', [x, y + 6.6], [width, tall - 9]);
  const words =
    page < pages ? notYet(page) : [...inOrder([...ends(plan), ...checks(plan)]), ...clips(worked, plan)];
  const list = stackOrPoint(body, words, { cap: 4.5, minCap: 2.1, columns: 2 });
  const part = joined([
    { zones: [], items: [line([x, y], [x + width, y], pen(0.8))] },
    cell(
      zone('after head', [x, y + 1.2], [width, 4.6]),
      plan.rows.length === 0 ? 'AFTER SAWING' : 'AFTER BENDING',
      { cap: 3, weight: 'bold' },
    ),
    list.part,
  ]);
  return { ...list, part };
}

/** Nothing is trimmed or measured while bends are still to be made. */
const notYet = (page: number): Paragraph[] => [
  {
    text: `NOT YET: go on with the bends of page ${page + 1}. What comes after them stands there.`,
    weight: 'bold',
  },
];

/** Numbered: the lengths and heights hold for the finished tube, not for one still left long. */
const inOrder = (words: readonly Paragraph[]): Paragraph[] =>
  words.map((word, i) => ({ ...word, text: `${i + 1}. ${word.text}` }));

function checks({ final, unit }: BenchPlan): Paragraph[] {
  return [
    {
      text: `End to end when finished, centre to centre: ${height(final.endToEnd, unit)}`,
      tick: true,
      weight: 'bold',
    },
    ...final.heights.map((h): Paragraph => ({ text: h.words, tick: true })),
  ];
}

/** What is still to be done to the ends: everything in the order list behind the bending. */
function ends({ order }: BenchPlan): Paragraph[] {
  const last = order.steps.findLastIndex((step) => step.kind === 'bend' || step.kind === 'hook');
  const steps = order.steps.slice(last + 1).filter((step) => step.kind !== 'check');
  return steps.map((step: OrderStep): Paragraph => ({ text: step.words, tick: true }));
}

/** Clips are placed on the finished tube, from its finished end A, whichever end it was bent from. */
function clips({ line: { clips: places } }: WorkedLine, { unit }: BenchPlan): Paragraph[] {
  if (places === null || places.length === 0) return [];
  const list = places.map((place) => length(place, unit)).join(' · ');
  return [{ text: `Clips from finished END A: ${list}` }];
}
