/** What the scene's own controls hold, and no other part needs to know. */
import { signal } from '@preact/signals';
import type { AxisLock, Inset, SceneHandle, Theme } from '../scene/index.ts';
import { readTheme } from './theme.ts';

const still = matchMedia('(prefers-reduced-motion: reduce)');

export const local = {
  handle: signal<SceneHandle | null>(null),
  axisLock: signal<AxisLock>(null),
  theme: signal<Theme>(readTheme()),
  inset: signal<Inset>({ top: 0, right: 0, bottom: 0, left: 0 }),
  reducedMotion: signal(still.matches),
  /** Distance of the lines of the ground grid, mm. */
  grid: signal(0),
  panel: signal(false),
  /** What the open panel takes of the picture: its height where it lies below, its width where it lies beside, px. */
  panelTakes: signal({ right: 0, bottom: 0 }),
  /** Lower edge of the buttons that the panel hangs under, px. */
  buttonsEnd: signal(0),
  /** Why there is no picture. */
  fault: signal<'none' | 'lost' | null>(null),
};

still.addEventListener('change', ({ matches }) => {
  local.reducedMotion.value = matches;
});
