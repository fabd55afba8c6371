/** Keys of the scene, while the canvas has the focus. */
import type { Vec3 } from 'runback';
import type { SceneHandle, ViewName } from '../scene/index.ts';
import { store } from '../store/index.ts';
import { nudge } from './nudge.ts';

const TURN_PX = 22;
const PAN_PX = 40;
const ZOOM = 1.2;
const BEAD_STEP_MM = 5;
const BEAD_FAR = 5;

const VIEWS: readonly ViewName[] = ['forward', 'rear', 'left', 'right', 'above', 'below'];

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const NUDGES: Readonly<Record<string, Vec3>> = {
  ArrowLeft: [-1, 0, 0],
  ArrowRight: [1, 0, 0],
  ArrowUp: [0, 1, 0],
  ArrowDown: [0, -1, 0],
  PageUp: [0, 0, 1],
  PageDown: [0, 0, -1],
};

/** True when the key meant something here. */
export function sceneKey(event: KeyboardEvent, handle: SceneHandle): boolean {
  if (event.ctrlKey || event.metaKey) return false;
  if (event.altKey) return nudgeKey(event.key);
  return arrowKey(event, handle) || otherKey(event, handle);
}

function nudgeKey(key: string): boolean {
  const way = NUDGES[key];
  if (!way) return false;
  nudge(way);
  return true;
}

function arrowKey({ key, shiftKey }: KeyboardEvent, handle: SceneHandle): boolean {
  const way = ARROWS[key];
  if (!way) return false;
  // Looking further right turns the scene to the left, as a hand on it would.
  if (shiftKey) handle.pan(-way[0] * PAN_PX, -way[1] * PAN_PX);
  else handle.orbit(-way[0] * TURN_PX, -way[1] * TURN_PX);
  return true;
}

function otherKey({ key, code, shiftKey }: KeyboardEvent, handle: SceneHandle): boolean {
  const view = VIEWS[Number(/^Digit(\d)$/u.exec(code)?.[1] ?? 0) - 1];
  if (view && !shiftKey) handle.view(view);
  else if (key === '+' || key === '=') handle.zoom(ZOOM);
  else if (key === '-' || key === '_') handle.zoom(1 / ZOOM);
  else if (key === 'f' || key === 'F') handle.fit('line');
  else if (code === 'BracketLeft') moveBead(shiftKey ? -BEAD_FAR : -1);
  else if (code === 'BracketRight') moveBead(shiftKey ? BEAD_FAR : 1);
  else if (key === 'd' || key === 'D') store.letGo();
  else if (key === 'Escape' && store.pour.value === null) store.select(null);
  else return false;
  return true;
}

function moveBead(steps: number): void {
  const length = store.line.value?.centreline?.length;
  if (length === undefined) return;
  const at = (store.bead.value ?? 0) + steps * BEAD_STEP_MM;
  store.setBead(Math.min(Math.max(at, 0), length));
}
