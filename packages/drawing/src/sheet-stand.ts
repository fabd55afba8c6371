import type { BenchPlan } from '@runback/bending';
import { standWords } from './bench-words.ts';
import { STAND } from './frame.ts';
import { joined, line, type Part, pen, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import { type Paragraph, stack } from './stack.ts';
import { STAND_SIZE, standPicture } from './stand-picture.ts';

/** Where the operator stands and which end is in which hand: what the turn words of this page hang on. */
export function stand({ plan }: SheetContext): Part {
  const { x, y, width, height } = STAND;
  if (plan.rows.length === 0) return joined([]);
  const picture = zone('stand picture', [x, y + 1], STAND_SIZE);
  const words = zone('stand words', [x + STAND_SIZE[0] + 5, y + 2], [width - STAND_SIZE[0] - 5, height - 3]);
  return joined([
    {
      zones: [picture],
      items: [line([x, y], [x + width, y], pen(0.8)), standPicture(plan, [x, y + 1], picture.name)],
    },
    stack(words, standing(plan), { cap: 4, minCap: 2.4 }).part,
  ]);
}

/** Without a bench the second sentence is the warning; with one, that another bench wants another page. */
function standing(plan: BenchPlan): Paragraph[] {
  const [place, tool] = standWords(plan);
  if (!plan.bench) return [{ text: place }, { text: tool, weight: 'bold' }];
  return [{ text: place }, { text: tool }, { text: 'If yours differs: STOP, print again.', weight: 'bold' }];
}
