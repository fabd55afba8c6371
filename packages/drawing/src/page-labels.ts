/** Placing labels near what they name: never on the tube, never on each other, with a thin line where they stand off. */
import { CAP_EM, roomOf } from './measure.ts';
import type { Box, Item, Point, TextItem, Weight } from './types.ts';

export interface LabelAsk {
  readonly text: string;
  /** What it names. */
  readonly at: Point;
  readonly cap: number;
  readonly weight?: Weight;
  /** White on a black ground. */
  readonly tag?: boolean;
  readonly name?: string;
}

/** A stretch of tube, or any line, that no label may touch. */
export interface Barrier {
  readonly from: Point;
  readonly to: Point;
  /** Half its width. */
  readonly half: number;
}

export interface LabelRoom {
  readonly bounds: Box;
  readonly barriers: readonly Barrier[];
  /** Boxes already taken. */
  readonly taken: readonly Box[];
  readonly zone: string;
}

export interface Labels {
  readonly items: readonly Item[];
  readonly boxes: readonly Box[];
  /** Texts there was no room for. */
  readonly lost: readonly string[];
}

/** Air round a label, mm. */
const AIR = 0.5;
const NEAREST = 0.9;
const STEP = 1.6;
const FARTHEST = 46;
const DIRECTIONS = 24;
/** A label farther off than this has a line to what it names. mm */
const LEADER_FROM = 2.2;
const LEADER = { width: 0.13, grey: 0.35 };

/** Each label in turn at the nearest free place round what it names. */
export function placeLabels(asks: readonly LabelAsk[], room: LabelRoom): Labels {
  const items: Item[] = [];
  const lost: string[] = [];
  const boxes: Box[] = [];
  const taken = [...room.taken];
  const leaders: Barrier[] = [];
  for (const ask of asks) {
    const size = sizeOf(ask);
    const found = freeBox(ask, size, { ...room, taken, barriers: room.barriers.concat(leaders) });
    if (!found) {
      lost.push(ask.text);
      continue;
    }
    taken.push(found);
    boxes.push(found);
    const line = leader(ask.at, found);
    if (line) leaders.push({ ...line, half: 0 });
    items.push(
      ...(line ? [{ kind: 'line', ...line, stroke: LEADER } as const] : []),
      ...drawn(ask, found, room.zone),
    );
  }
  return { items, boxes, lost };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const TAG_PAD = 0.7;

function sizeOf({ text, cap, weight = 'regular', tag }: LabelAsk): Size {
  const room = roomOf(text, weight);
  const pad = tag ? 2 * TAG_PAD : 0;
  return { width: (room.em * cap) / CAP_EM + pad, height: (room.up + room.down) * cap + pad };
}

function drawn(ask: LabelAsk, box: Box, zone: string): Item[] {
  const { text, cap, weight = 'regular', tag, name } = ask;
  const pad = tag ? TAG_PAD : 0;
  const item: TextItem = {
    kind: 'text',
    x: box.x + pad,
    y: box.y + pad + roomOf(text, weight).up * cap,
    cap,
    weight,
    anchor: 'start',
    fill: tag ? 1 : 0,
    text,
    zone,
    ...(name ? { name } : {}),
  };
  return tag ? [{ kind: 'rect', ...box, fill: 0 }, item] : [item];
}

function freeBox({ at }: LabelAsk, { width, height }: Size, room: LabelRoom): Box | null {
  for (let off = NEAREST; off <= FARTHEST; off += STEP)
    for (let i = 0; i < DIRECTIONS; i++) {
      const angle = (2 * Math.PI * i) / DIRECTIONS - Math.PI / 4;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const reach = off + Math.abs(dx) * (width / 2) + Math.abs(dy) * (height / 2);
      const box = { x: at[0] + dx * reach - width / 2, y: at[1] + dy * reach - height / 2, width, height };
      if (free(box, at, room)) return box;
    }
  return null;
}

function free(box: Box, at: Point, { bounds, barriers, taken }: LabelRoom): boolean {
  const inside =
    box.x >= bounds.x &&
    box.y >= bounds.y &&
    box.x + box.width <= bounds.x + bounds.width &&
    box.y + box.height <= bounds.y + bounds.height;
  if (!inside || taken.some((other) => covers(grown(box, AIR), other))) return false;
  if (barriers.some((barrier) => touches(grown(box, barrier.half + AIR), barrier.from, barrier.to)))
    return false;
  const line = leader(at, box);
  return !line || !taken.some((other) => touches(other, line.from, line.to));
}

const grown = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

export const covers = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** The line from what is named to the nearest place of its label; none where they are close. */
function leader(
  at: Point,
  { x, y, width, height }: Box,
): { readonly from: Point; readonly to: Point } | null {
  const to: Point = [
    Math.min(Math.max(at[0], x - 0.3), x + width + 0.3),
    Math.min(Math.max(at[1], y - 0.3), y + height + 0.3),
  ];
  return Math.hypot(to[0] - at[0], to[1] - at[1]) > LEADER_FROM ? { from: at, to } : null;
}

/** Whether a stretch has a place inside a box. */
export function touches({ x, y, width, height }: Box, from: Point, to: Point): boolean {
  let [enter, leave] = [0, 1];
  for (const [start, step, low, high] of [
    [from[0], to[0] - from[0], x, x + width],
    [from[1], to[1] - from[1], y, y + height],
  ] as const) {
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter < leave;
}

/** The stretches of a trace as barriers. */
export const barriersOf = (points: readonly Point[], width: number): readonly Barrier[] =>
  points.slice(1).map((to, i) => ({ from: points[i]!, to, half: width / 2 }));
