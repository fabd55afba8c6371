/** Puts the scene on a canvas and keeps it in step with the store. */
import { effect } from '@preact/signals';
import {
  createScene,
  type Inset,
  type SceneEvents,
  type SceneHandle,
  type SceneState,
} from '../scene/index.ts';
import { store } from '../store/index.ts';
import { local } from './local.ts';
import { followColours, readTheme } from './theme.ts';

/** A canvas that says which scene is on it, for whoever looks at the page from outside. */
export interface SceneCanvas extends HTMLCanvasElement {
  runbackScene?: SceneHandle;
}

/** `null` until there is something to show. */
function stateNow(): SceneState | null {
  const [job, line] = [store.worked.value, store.line.value];
  if (!job || !line) return null;
  const { colour, projection, keepOff, snap } = store.looks.value;
  return {
    job,
    lineId: line.line.id,
    axes: line.line.axes,
    tilt: store.tilt.value,
    colour,
    profile: store.profile.value,
    falls: store.falls.value,
    pockets: store.pockets.value,
    drop: store.pour.value?.at ?? null,
    selection: store.selection.value,
    bead: store.bead.value,
    looks: { projection, keepOff, snap },
    axisLock: local.axisLock.value,
    theme: local.theme.value,
    inset: insetNow(),
    reducedMotion: local.reducedMotion.value,
  };
}

function insetNow(): Inset {
  const [inset, { right, bottom }] = [local.inset.value, local.panelTakes.value];
  return { ...inset, right: Math.max(inset.right, right), bottom: Math.max(inset.bottom, bottom) };
}

const events: SceneEvents = {
  onSelect: (selection) => store.select(selection),
  onBead: (at) => store.setBead(at),
  onPeek: (at) => store.peekBead(at),
  onChooseLine: (id) => store.chooseLine(id),
  onDrag: ({ index, at, gesture, phase }) => {
    if (phase === 'start') store.select({ kind: 'point', index });
    store.movePoint(index, at, gesture);
  },
};

/** Returns what takes the scene off the canvas again. */
export function hostScene(canvas: SceneCanvas): () => void {
  let handle: SceneHandle;
  try {
    handle = createScene(canvas, events);
  } catch {
    local.fault.value = 'none';
    return () => {};
  }
  canvas.runbackScene = handle;
  local.handle.value = handle;
  const stop = effect(() => {
    const state = stateNow();
    if (!state) return;
    handle.show(state);
    local.grid.value = handle.gridStep();
  });
  const size = new ResizeObserver(() => handle.resize());
  size.observe(canvas);
  const unfollow = followColours(() => {
    local.theme.value = readTheme();
  });
  const off = watchContext(canvas);
  return () => {
    for (const end of [stop, unfollow, off]) end();
    size.disconnect();
    local.handle.value = null;
    handle.dispose();
  };
}

/** The browser may take the picture away, and usually gives it back. */
function watchContext(canvas: HTMLCanvasElement): () => void {
  const lost = (): void => {
    local.fault.value = 'lost';
  };
  const restored = (): void => {
    local.fault.value = null;
  };
  canvas.addEventListener('webglcontextlost', lost);
  canvas.addEventListener('webglcontextrestored', restored);
  return () => {
    canvas.removeEventListener('webglcontextlost', lost);
    canvas.removeEventListener('webglcontextrestored', restored);
  };
}
