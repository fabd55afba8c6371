import type { BenchPlan } from '@runback/bending';
import type { Bench } from '@runback/job';
import { STAND } from './frame.ts';
import { joined, line, type Part, pen, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import { type Paragraph, stack } from './stack.ts';
import { formerSide, STAND_SIZE, standPicture } from './stand-picture.ts';

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
    stack(words, standWords(plan), { cap: 4, minCap: 2.4 }).part,
  ]);
}

function standWords({ bench, from }: BenchPlan): Paragraph[] {
  const tag = `START is END ${from}.`;
  const stop: Paragraph = { text: 'If yours differs: STOP, print again.', weight: 'bold' };
  if (!bench)
    return [
      { text: `${tag} Stand at START and look along the tube towards FREE: turns are as seen from there.` },
      { text: 'The job does not say how you stand at the bender. Not sure: STOP.', weight: 'bold' },
    ];
  return [{ text: `${tag} ${place(bench)}` }, { text: toolWords(bench) }, stop];
}

function place(bench: Bench): string {
  if (bench.stand === 'side') return `Stand beside the tube, START on your ${bench.startOn.toUpperCase()}.`;
  if (bench.stand === 'at-start') return 'Stand at START, looking along the tube to FREE.';
  return 'Stand behind the stock at FREE, looking along the tube to START.';
}

const FORMER_WORDS = {
  near: 'on the near side',
  far: 'on the far side',
  above: 'above the tube',
  below: 'below the tube',
  left: 'on the left',
  right: 'on the right',
} as const;

function toolWords(bench: Bench): string {
  if (bench.moves === 'bender')
    return 'The tube is held; you carry the BENDER round it. Turns are as seen from START, looking towards FREE.';
  return `Tool bends ${bench.plane}, former ${FORMER_WORDS[formerSide(bench)]}. You turn the TUBE.`;
}
