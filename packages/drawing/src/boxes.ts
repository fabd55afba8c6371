import { roomOf, textWidth } from './measure.ts';
import type { Box, Item, Page, Point, TextItem, Zone } from './types.ts';

export interface TextBox extends Box {
  readonly item: TextItem;
}

/**
 * The box each text covers on the page, accents and tails included; texts printed across on purpose are left out.
 *
 * @throws RangeError when such a text stands in a turned group: its box would not be a rectangle
 */
export function textBoxes(page: Page): readonly TextBox[] {
  return collect(page.items, [0, 0]);
}

function collect(items: readonly Item[], origin: Point): TextBox[] {
  return items.flatMap((item): TextBox[] => {
    if (item.kind === 'text') return item.across ? [] : [boxOf(item, origin)];
    if (item.kind !== 'group') return [];
    const inner = collect(item.items, [origin[0] + item.at[0], origin[1] + item.at[1]]);
    if (item.turn && inner.length > 0)
      throw new RangeError(`textBoxes: text "${inner[0]!.item.text}" stands in a turned group`);
    return inner;
  });
}

function boxOf(item: TextItem, origin: Point): TextBox {
  const { up, down } = roomOf(item.text, item.weight);
  const width = textWidth(item.text, item.cap, item.weight);
  const shift = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
  return {
    item,
    x: origin[0] + item.x - shift,
    y: origin[1] + item.y - item.cap * up,
    width,
    height: item.cap * (up + down),
  };
}

/**
 * Faults of a page's layout in words, empty when sound: texts that cover each other, leave their zone or name none,
 * and zones that cover each other or leave the paper. Boxes that only touch are sound.
 */
export function layoutFaults(page: Page): readonly string[] {
  const boxes = textBoxes(page);
  const faults: string[] = [];
  boxes.forEach((box, i) => {
    const zone = page.zones.find((z) => z.name === box.item.zone);
    if (!zone) faults.push(`"${box.item.text}" names no zone: ${box.item.zone}`);
    else if (!within(box, zone)) faults.push(`"${box.item.text}" leaves ${describe(zone)}: ${corners(box)}`);
    for (const other of boxes.slice(i + 1))
      if (covers(box, other)) faults.push(`"${box.item.text}" covers "${other.item.text}"`);
  });
  return [...faults, ...zoneFaults(page)];
}

function zoneFaults(page: Page): string[] {
  const paper: Box = { x: 0, y: 0, width: page.width, height: page.height };
  return page.zones.flatMap((zone, i) => [
    ...(within(zone, paper) ? [] : [`zone ${describe(zone)} leaves the paper`]),
    ...page.zones
      .slice(i + 1)
      .filter((other) => covers(zone, other))
      .map((other) => `zone ${describe(zone)} covers ${describe(other)}`),
  ]);
}

/** Boxes are compared in whole thousandths of a mm, as they are printed. */
const whole = (mm: number): number => Math.round(mm * 1000);

const covers = (a: Box, b: Box): boolean =>
  whole(a.x) < whole(b.x + b.width) &&
  whole(b.x) < whole(a.x + a.width) &&
  whole(a.y) < whole(b.y + b.height) &&
  whole(b.y) < whole(a.y + a.height);

const within = (a: Box, outer: Box): boolean =>
  whole(a.x) >= whole(outer.x) &&
  whole(a.y) >= whole(outer.y) &&
  whole(a.x + a.width) <= whole(outer.x + outer.width) &&
  whole(a.y + a.height) <= whole(outer.y + outer.height);

const corners = (b: Box): string =>
  [b.x, b.y, b.x + b.width, b.y + b.height].map((n) => n.toFixed(2)).join(' ');
const describe = (z: Zone): string => `${z.name} (${corners(z)})`;
