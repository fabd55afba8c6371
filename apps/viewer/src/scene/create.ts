/** The scene: a canvas, what is shown on it, and what hands do there. */
import type { Vec3 } from 'runback';
import { Director } from './director.ts';
import type { SceneEvents, SceneHandle } from './types.ts';

/**
 * A scene on a canvas. Nothing is drawn before `show`; after it, a frame is drawn whenever something changed.
 * @throws Error when the browser gives no WebGL.
 */
export function createScene(canvas: HTMLCanvasElement, events: SceneEvents): SceneHandle {
  const director = new Director(canvas, events);
  return {
    show: (state) => director.show(state),
    fit: (what = 'line') => director.fit(what),
    settle: () => director.settle(),
    view: (name) => director.view(name),
    project: (point: Vec3) => director.project(point),
    pixel: (x, y) => director.pixel(x, y),
    orbit: (dx, dy) => director.orbit(dx, dy),
    pan: (dx, dy) => director.pan(dx, dy),
    zoom: (factor) => director.zoom(factor),
    gridStep: () => director.gridStep(),
    stats: () => director.stats(),
    resize: () => director.resize(),
    dispose: () => director.dispose(),
  };
}
