/** Labels beside what they name: each takes the first of its places that is free of the others. */
import { roomOf, textWidth } from './measure.ts';
import { line, pen } from './set.ts';
import type { Anchor, Box, Item, Point, TextItem, Weight } from './types.ts';

/** A place a label may take. */
export interface Spot {
  readonly text: string;
  readonly cap: number;
  readonly weight: Weight;
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly anchor: Anchor;
  /** From what is named to the label; left out when they touch. */
  readonly leader?: readonly [Point, Point];
}

export interface Label {
  /** What to call it when there is no room. */
  readonly what: string;
  /** Best first. */
  readonly spots: readonly Spot[];
}

/** Where labels may stand and what they must not touch. */
export interface Room {
  readonly zone: string;
  readonly allowed: (box: Box) => boolean;
  readonly boxes: readonly Box[];
  readonly lines: readonly (readonly [Point, Point])[];
}

export interface Placed {
  readonly items: readonly Item[];
  readonly boxes: readonly Box[];
  /** Labels there was no room for. */
  readonly left: readonly string[];
}

/** Air round a label, mm. */
const AIR = 0.35;

export function placeLabels(labels: readonly Label[], room: Room): Placed {
  const boxes = [...room.boxes];
  const lines = [...room.lines];
  const items: Item[] = [];
  const left: string[] = [];
  for (const { what, spots } of labels) {
    const spot = spots.find((one) => free(one, { ...room, boxes, lines }));
    if (!spot) {
      left.push(what);
      continue;
    }
    boxes.push(boxOf(spot));
    if (spot.leader) {
      lines.push(spot.leader);
      items.push(line(...spot.leader, pen(0.2)));
    }
    items.push(textOf(spot, room.zone));
  }
  return { items, boxes: boxes.slice(room.boxes.length), left };
}

const textOf = ({ leader: _, ...spot }: Spot, zone: string): TextItem => ({
  kind: 'text',
  ...spot,
  fill: 0,
  zone,
});

function free(spot: Spot, { allowed, boxes, lines }: Room): boolean {
  const box = boxOf(spot);
  if (!allowed(box) || boxes.some((other) => overlap(box, other)) || lines.some((one) => crosses(one, box)))
    return false;
  const { leader } = spot;
  return !leader || !boxes.some((other) => crosses(leader, other));
}

/** The room of a label with its air. */
export function boxOf({ text, cap, weight, anchor, x, y }: Spot): Box {
  const { up, down } = roomOf(text, weight);
  const width = textWidth(text, cap, weight);
  const shift = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  return {
    x: x - shift - AIR,
    y: y - cap * up - AIR,
    width: width + 2 * AIR,
    height: cap * (up + down) + 2 * AIR,
  };
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const inside = (box: Box, outer: Box): boolean =>
  box.x >= outer.x &&
  box.y >= outer.y &&
  box.x + box.width <= outer.x + outer.width &&
  box.y + box.height <= outer.y + outer.height;

/** True when a line runs through a box (touching its edge does not count). */
export function crosses([[x0, y0], [x1, y1]]: readonly [Point, Point], box: Box): boolean {
  let [enter, leave] = [0, 1];
  const sides = [
    [x1 - x0, box.x - x0, box.x + box.width - x0],
    [y1 - y0, box.y - y0, box.y + box.height - y0],
  ] as const;
  for (const [step, low, high] of sides) {
    if (step === 0) {
      if (low >= 0 || high <= 0) return false;
      continue;
    }
    enter = Math.max(enter, Math.min(low / step, high / step));
    leave = Math.min(leave, Math.max(low / step, high / step));
  }
  return enter < leave;
}
