/** From pointers on the canvas to what they mean: a corner dragged, the bead drawn along, something picked. */
import type { Vec3 } from 'runback';
import { axisAlong, draggedTo } from '../math/drag.ts';
import { toMachine, toWorld, turnedBack } from '../math/tilt.ts';
import type { EyeNow, Shown } from '../parts/kinds.ts';
import { partAt } from '../shape/line-parts.ts';
import type { AxisLock, CornerDrag, DragPhase, SceneEvents } from '../types.ts';
import { type Hit, nearestOnChosen, type PickAsk, pickCorner } from './pick.ts';

/** How the gestures see and touch the scene. */
export interface Hands {
  /** `null` before anything is shown. */
  now(): Shown | null;
  eye(now: Shown): EyeNow;
  ask(x: number, y: number, reach: number): PickAsk;
  thing(ask: PickAsk): Hit | null;
  /** Corners of the chosen line, the dragged one where it is. */
  points(): readonly Vec3[];
  /** Where the bead is, if anywhere. */
  bead(): Vec3 | null;
  /** Lets the pointer turn the camera, or not. */
  free(on: boolean): void;
  /** A corner is somewhere else than the job says; `null`: no longer. */
  held(corner: { readonly index: number; readonly at: Vec3 } | null): void;
  /** What a dragged corner is held to just now, for its guide. */
  guided(lock: AxisLock): void;
}

type Press =
  | {
      readonly kind: 'corner';
      readonly index: number;
      readonly start: readonly Vec3[];
      readonly offset: Offset;
    }
  | { readonly kind: 'bead'; readonly at: number }
  | { readonly kind: 'none' };

interface Offset {
  readonly x: number;
  readonly y: number;
}

interface Down {
  readonly pointer: number;
  readonly x: number;
  readonly y: number;
  readonly press: Press;
  readonly gesture: string;
  moved: boolean;
  last: Vec3 | null;
}

const SLACK_PX = { fine: 4, coarse: 9 };
const REACH_PX = { fine: { corner: 11, tube: 7 }, coarse: { corner: 26, tube: 24 } };

export class Gestures {
  private readonly canvas: HTMLCanvasElement;
  private readonly hands: Hands;
  private readonly events: SceneEvents;
  private readonly stop = new AbortController();
  private down: Down | null = null;
  private count = 0;

  constructor(canvas: HTMLCanvasElement, hands: Hands, events: SceneEvents) {
    [this.canvas, this.hands, this.events] = [canvas, hands, events];
    const on = (
      name: 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel' | 'pointerleave',
      run: (e: PointerEvent) => void,
    ) => canvas.addEventListener(name, run, { signal: this.stop.signal, capture: true });
    on('pointerdown', (event) => this.press(event));
    on('pointermove', (event) => this.moveTo(event));
    on('pointerup', (event) => this.lift(event));
    on('pointercancel', () => this.end());
    on('pointerleave', () => this.events.onPeek(null));
  }

  dispose(): void {
    this.stop.abort();
  }

  private place(event: PointerEvent): Offset {
    const box = this.canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  private press(event: PointerEvent): void {
    const now = this.hands.now();
    if (!event.isPrimary || event.button !== 0 || now === null) return;
    const { x, y } = this.place(event);
    const press = this.pressAt(now, event, { x, y });
    this.count += 1;
    const gesture = `drag ${this.count}`;
    this.down = { pointer: event.pointerId, x, y, press, gesture, moved: false, last: null };
    if (press.kind === 'none') return;
    this.hands.free(false);
    this.canvas.setPointerCapture(event.pointerId);
  }

  private pressAt(now: Shown, event: PointerEvent, { x, y }: Offset): Press {
    const reach = REACH_PX[kindOf(event)];
    const points = this.hands.points();
    const index = pickCorner(this.hands.ask(x, y, reach.corner), points);
    if (index !== null) {
      const [px, py] = this.hands.eye(now).project(toWorld(now.pose, points[index]!));
      return { kind: 'corner', index, start: points, offset: { x: px - x, y: py - y } };
    }
    // A finger that lands on the tube turns the view, unless it lands on the bead.
    const touch = kindOf(event) === 'coarse';
    const ask = this.hands.ask(x, y, reach.tube);
    const hit = this.hands.thing(ask);
    if (hit?.kind !== 'tube') return { kind: 'none' };
    if (touch && !this.nearBead(now, { x, y })) return { kind: 'none' };
    return { kind: 'bead', at: hit.at };
  }

  private nearBead(now: Shown, { x, y }: Offset): boolean {
    const bead = this.hands.bead();
    if (bead === null) return false;
    const [px, py] = this.hands.eye(now).project(toWorld(now.pose, bead));
    return Math.hypot(px - x, py - y) <= REACH_PX.coarse.corner;
  }

  private moveTo(event: PointerEvent): void {
    const now = this.hands.now();
    if (now === null) return;
    const { x, y } = this.place(event);
    const { down } = this;
    if (down === null) {
      if (kindOf(event) === 'fine' && event.buttons === 0) this.hover(event, { x, y });
      return;
    }
    if (event.pointerId !== down.pointer) return;
    if (!down.moved && Math.hypot(x - down.x, y - down.y) < SLACK_PX[kindOf(event)]) return;
    const first = !down.moved;
    down.moved = true;
    if (down.press.kind === 'bead') this.drawBead({ x, y });
    if (down.press.kind === 'corner') this.dragCorner(down, event, first ? 'start' : 'move');
  }

  private drawBead({ x, y }: Offset): void {
    const near = nearestOnChosen(this.hands.ask(x, y, 0));
    if (near) this.events.onBead(near.at);
  }

  private hover(event: PointerEvent, { x, y }: Offset): void {
    const reach = REACH_PX[kindOf(event)];
    const corner = pickCorner(this.hands.ask(x, y, reach.corner), this.hands.points());
    const hit = corner === null ? this.hands.thing(this.hands.ask(x, y, reach.tube)) : null;
    this.canvas.style.cursor =
      corner !== null ? 'move' : hit && hit.kind !== 'surrounding' ? 'pointer' : 'grab';
    this.events.onPeek(hit?.kind === 'tube' ? hit.at : null);
  }

  private dragCorner(down: Down, event: PointerEvent, phase: DragPhase): void {
    const now = this.hands.now();
    if (now === null || down.press.kind !== 'corner') return;
    const { index, start, offset } = down.press;
    const { x, y } = this.place(event);
    const { ray, eye } = this.hands.ask(x + offset.x, y + offset.y, 0);
    const { pose, state } = now;
    const local = { from: toMachine(pose, ray.from), direction: turnedBack(pose.turn, ray.direction) };
    const grip = {
      points: start,
      index,
      snap: state.looks.snap,
      viewNormal: turnedBack(pose.turn, eye.back),
    };
    const lock =
      state.axisLock ?? heldLock(event, () => draggedTo(local, { ...grip, lock: null }), start[index]!);
    this.hands.guided(lock);
    down.last = draggedTo(local, { ...grip, lock });
    this.tell(down, { index, at: down.last, phase });
  }

  private tell(down: Down, { index, at, phase }: Omit<CornerDrag, 'gesture'>): void {
    this.hands.held({ index, at });
    this.events.onDrag({ index, at, phase, gesture: down.gesture });
  }

  private lift(event: PointerEvent): void {
    const { down } = this;
    if (down === null || event.pointerId !== down.pointer) return;
    if (!down.moved) this.click(event, down);
    this.end();
  }

  private end(): void {
    const { down } = this;
    if (down === null) return;
    this.down = null;
    this.hands.free(true);
    if (down.press.kind !== 'corner' || down.last === null) return;
    this.tell(down, { index: down.press.index, at: down.last, phase: 'end' });
    this.hands.guided(null);
    this.hands.held(null);
  }

  private click(event: PointerEvent, down: Down): void {
    const now = this.hands.now();
    if (now === null) return;
    if (down.press.kind === 'corner') {
      this.events.onSelect({ kind: 'point', index: down.press.index });
      return;
    }
    const hit = this.hands.thing(this.hands.ask(down.x, down.y, REACH_PX[kindOf(event)].tube));
    if (hit?.kind === 'line') this.events.onChooseLine(hit.id);
    else if (hit?.kind === 'tube' && now.centreline) {
      this.events.onSelect(partAt(now.line.line, now.centreline, hit.at));
      this.events.onBead(hit.at);
    } else this.events.onSelect(hit?.kind === 'surrounding' ? hit : null);
  }
}

const kindOf = ({ pointerType }: PointerEvent): 'fine' | 'coarse' =>
  pointerType === 'touch' ? 'coarse' : 'fine';

/** Shift: the axis that the pointer follows best; Alt: the leg. */
function heldLock(event: PointerEvent, freely: () => Vec3, start: Vec3): AxisLock {
  if (event.altKey) return 'leg';
  if (!event.shiftKey) return null;
  const at = freely();
  return axisAlong([at[0] - start[0], at[1] - start[1], at[2] - start[2]]);
}
