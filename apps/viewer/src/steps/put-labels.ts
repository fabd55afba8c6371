/** The words of the picture put beside their places, none on another. */
import type { LabelName, Labels, Placed } from '../scene/bench/index.ts';

/** What is said only where it is seen; the tags say which way the ends are even then. */
const SEEN_ONLY: readonly LabelName[] = ['former', 'amount', 'before', 'you'];
/** Who finds its place first. */
const ORDER: readonly LabelName[] = ['start', 'amount', 'free', 'you', 'before', 'former'];
const GAP = 7;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Moved by hand, not drawn anew: they follow the picture as it is turned. */
export function putLabels(host: HTMLElement | null, { words, barriers }: Labels): void {
  if (!host) return;
  const room = { w: host.clientWidth, h: host.clientHeight };
  const taken = [...barriers.map(boxRound), ...boxesBeside(host)];
  for (const name of ORDER) {
    const label = host.querySelector<HTMLElement>(`[data-label="${name}"]`);
    if (!label) continue;
    const placed = words.find((one) => one.name === name);
    const unseen = placed && !placed.inside && SEEN_ONLY.includes(name);
    label.hidden = !placed || unseen === true || label.textContent === '';
    if (!placed || label.hidden) continue;
    label.classList.toggle('bench-far', !placed.inside);
    const box = freeBox(placed, { w: label.offsetWidth, h: label.offsetHeight }, { room, taken });
    taken.push(box);
    label.style.transform = `translate(${Math.round(box.x)}px, ${Math.round(box.y)}px)`;
  }
}

const boxRound = ({ x, y }: Pick<Placed, 'x' | 'y'>): Box => ({ x: x - 9, y: y - 9, w: 18, h: 18 });

/** What else stands on the picture: its buttons, its legend. */
function boxesBeside(host: HTMLElement): readonly Box[] {
  const { left, top } = host.getBoundingClientRect();
  return [...(host.parentElement?.querySelectorAll('[data-beside]') ?? [])].map((one) => {
    const { x, y, width, height } = one.getBoundingClientRect();
    return { x: x - left, y: y - top, w: width, h: height };
  });
}

interface Around {
  readonly room: { readonly w: number; readonly h: number };
  readonly taken: readonly Box[];
}

/** Above its place, or below, or beside it: the first that stands on no other. */
function freeBox({ x, y, name }: Placed, { w, h }: { w: number; h: number }, { room, taken }: Around): Box {
  const over = { x: x - w / 2, y: y - h - GAP };
  const under = { x: x - w / 2, y: y + GAP };
  const beside = [
    { x: x + GAP, y: y - h / 2 },
    { x: x - w - GAP, y: y - h / 2 },
    ...[1, 2, 3, 4].flatMap((n) => [
      { x: x - w / 2, y: y + GAP + n * h },
      { x: x - w / 2, y: y - GAP - (n + 1) * h },
    ]),
  ];
  const tries = name === 'before' || name === 'you' ? [under, over, ...beside] : [over, under, ...beside];
  const boxes = tries.map((at) => ({
    x: Math.min(Math.max(at.x, 2), room.w - w - 2),
    y: Math.min(Math.max(at.y, 2), room.h - h - 2),
    w,
    h,
  }));
  return boxes.find((box) => !taken.some((other) => meet(box, other))) ?? boxes[0]!;
}

const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
