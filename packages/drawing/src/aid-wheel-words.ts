/** What is printed on the wheel besides its numbers. */
import type { AidContext } from './aid-context.ts';
import { sideWords } from './aid-stops.ts';
import { type Disc, RING, WHEEL_RADIUS, WHEEL_ZONE } from './aid-wheel-plan.ts';
import { at } from './end-view.ts';
import { cell, pen, type Style } from './set.ts';
import type { Box, Item, Point } from './types.ts';

export interface Words {
  readonly box: Box;
  readonly items: readonly Item[];
}

/** Which face this is, large; and an arrow for either way round, with what the operator does to go that way. */
export function wordsOn(
  { centre, hole }: Disc,
  { plan, worked, options }: AidContext,
  face: 'START' | 'FREE',
): Words[] {
  const [x, y] = centre;
  const end = face === 'START' ? plan.from : plan.free;
  const side = face === 'START' ? 1 : -1;
  const carried = plan.bench?.moves === 'bender';
  const hand = plan.hand === 'OPPOSITE HAND' ? ' · OPPOSITE HAND' : '';
  const whose = `${worked.line.id}${hand} · job ${options.checksum}`;
  const inner = hole + 3.5;
  const wide = Math.min(23, WHEEL_RADIUS - RING - inner - BOW - 1);
  const style = { cap: 2.6, minCap: 1.1, lines: 4, first: 'wrap', weight: 'bold', anchor: 'middle' } as const;
  const said = (which: 1 | -1): string =>
    sideWords(plan, which)
      .head.replace(/:/u, '')
      .replace(/ FROM YOU| YOU$/u, '');
  const way = (right: boolean): Words => {
    const box = { x: right ? x + inner : x - inner - BOW - wide, y: y - 6.5, width: BOW + wide, height: 13 };
    const text = block(
      { ...box, x: right ? box.x + BOW : box.x, width: wide },
      said(right === (side === 1) ? 1 : -1),
      style,
    );
    // What is on the right comes up to the pointer anticlockwise; a bender goes down to it.
    return { box, items: [...bow(centre, hole + 5, { right, up: !carried }), ...text.items] };
  };
  return [
    block({ x: x - 19, y: y + inner + 3.5, width: 38, height: 9.5 }, `THIS FACE TO ${face} ${end}`, {
      cap: 3.6,
      minCap: 2.6,
      lines: 2,
      first: 'wrap',
      weight: 'bold',
      anchor: 'middle',
    }),
    // Cut out, the wheel has left its page: it must still say whose it is, and which hand.
    block({ x: x - 19, y: y + inner + 14.2, width: 38, height: 6 }, whose, {
      cap: 2.2,
      minCap: 1.4,
      lines: 2,
      first: 'wrap',
      anchor: 'middle',
    }),
    way(true),
    way(false),
  ];
}

/** Room for the bow beside the hole, mm. */
const BOW = 4;

/** An arrow bowed round the hole, from below to above on its side or down. */
function bow(
  centre: Point,
  r: number,
  { right, up }: { readonly right: boolean; readonly up: boolean },
): Item[] {
  const reach = (6 / r) * (180 / Math.PI);
  const low = right ? 90 + reach : 270 - reach;
  const high = right ? 90 - reach : 270 + reach;
  const [from, to] = up ? [low, high] : [high, low];
  const way = Math.sign(to - from);
  const neck = to - way * (2.6 / r) * (180 / Math.PI);
  return [
    {
      kind: 'path',
      name: right ? 'wheel-way-right' : 'wheel-way-left',
      steps: [
        ['M', ...at(centre, r, from)],
        ['A', r, 0, way > 0 ? 1 : 0, ...at(centre, r, neck)],
      ],
      stroke: pen(0.6),
    },
    {
      kind: 'path',
      fill: 0,
      steps: [
        ['M', ...at(centre, r, to)],
        ['L', ...at(centre, r + 1.4, neck)],
        ['L', ...at(centre, r - 1.4, neck)],
        ['Z'],
      ],
    },
  ];
}

const block = (box: Box, text: string, style: Style): Words => ({
  box,
  items: cell({ ...box, name: WHEEL_ZONE }, text, style).items,
});
