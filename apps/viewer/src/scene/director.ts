/** Keeps the picture in step with what is to be shown and with the hand. */
import { addScaled, distance, pointAt, sub, type Vec3 } from 'runback';
import { Gestures, type Hands } from './hand/gestures.ts';
import { type PickAsk, pickThing } from './hand/pick.ts';
import { type Held, Layers } from './layers.ts';
import { basisOf } from './math/fit.ts';
import { toWorld } from './math/tilt.ts';
import { Eye } from './parts/eye.ts';
import type { EyeNow, Shown } from './parts/kinds.ts';
import { Shower } from './shown.ts';
import { Stage } from './stage.ts';
import type { AxisLock, SceneEvents, SceneState, SceneStats, ViewName } from './types.ts';
import { gazeFor, lineMiddle, standFor } from './where.ts';

/** A dropped corner stays where the hand left it until the job says so, but no longer than this. */
const HOLD_MS = 700;
const SAME_MM = 0.01;
/** Below this height the axes would lie over the line. */
const GNOMON_ROOM_PX = 300;
const TURN_PER_HEIGHT = 2 * Math.PI;

export class Director {
  private readonly canvas: HTMLCanvasElement;
  private readonly stage: Stage;
  private readonly shower: Shower;
  private readonly layers: Layers;
  private readonly gestures: Gestures;
  private readonly eye: Eye;
  private shown: Shown | null = null;
  private held: Held | null = null;
  private holding: ReturnType<typeof setTimeout> | undefined;
  private lock: AxisLock = null;
  private fitted: 'line' | 'all' = 'line';
  /** The view that the camera is in as long as nobody turned it. */
  private viewed: ViewName = 'corner';
  private unplaced = true;

  constructor(canvas: HTMLCanvasElement, events: SceneEvents) {
    this.canvas = canvas;
    this.stage = new Stage(canvas);
    this.shower = new Shower(this.stage.pixel);
    this.layers = new Layers(this.stage);
    // Before the controls, so that a gesture can take a pointer from them.
    this.gestures = new Gestures(canvas, this.hands(), events);
    this.eye = new Eye(canvas, this.stage.pixel, () => this.request());
    canvas.addEventListener('webglcontextrestored', this.restore);
  }

  show(state: SceneState): void {
    const before = this.shown;
    const now = this.shower.work(state);
    this.shown = now;
    if (this.stage.resize()) this.eye.resize(this.stage.width, this.stage.height);
    this.stage.pose(now.pose);
    this.eye.surround(now.middle, now.radius);
    this.eye.setProjection(state.looks.projection);
    this.layers.update(now);
    this.release();
    this.corners();
    this.shower.letGo();
    if (before?.state.job.title !== state.job.title) this.unplaced = true;
    if (this.unplaced) this.placeFirst();
    else if (before && before.line.line.id !== now.line.line.id)
      this.view(this.eye.untouched ? this.viewed : null);
    else if (before && before.state.tilt !== state.tilt) this.follow(before, now);
    this.request();
  }

  /** Keeps the chosen line where it is in the picture while the machine tilts about it. */
  private follow(before: Shown, now: Shown): void {
    const way = sub(lineMiddle(now), lineMiddle(before));
    const gaze = this.eye.aim();
    this.eye.goTo({ ...gaze, target: addScaled(gaze.target, way, 1) }, { eased: false });
  }

  /** Stands at the corner view, at once; waits until the canvas has a size. */
  private placeFirst(): void {
    if (this.stage.width === 0) return;
    this.unplaced = false;
    this.fitted = 'line';
    this.goTo('corner', false);
  }

  fit(what: 'line' | 'all'): void {
    this.fitted = what;
    this.view(null);
  }

  settle(): void {
    if (this.eye.untouched) this.view(this.viewed);
  }

  /** `null`: from where the camera is. */
  view(name: ViewName | null): void {
    this.goTo(name, !(this.shown?.state.reducedMotion ?? true));
  }

  private goTo(name: ViewName | null, eased: boolean): void {
    const { shown, stage, eye } = this;
    if (!shown || stage.width === 0) return;
    if (name !== null) this.viewed = name;
    const canvas = { width: stage.width, height: stage.height };
    const stand = name === null ? eye.aim() : standFor(name, shown, canvas);
    eye.goTo(gazeFor(shown, { ...canvas, stand, what: this.fitted, focal: eye.focal }), { eased });
    eye.untouched = eye.untouched || name !== null;
    this.request();
  }

  resize(): void {
    if (!this.stage.resize()) return;
    this.eye.resize(this.stage.width, this.stage.height);
    if (this.shown) {
      this.eye.surround(this.shown.middle, this.shown.radius);
      if (this.unplaced) this.placeFirst();
      else if (this.eye.untouched) this.goTo(this.viewed, false);
      this.drawFrame(this.shown);
    }
  }

  orbit(dx: number, dy: number): void {
    const gaze = this.eye.aim();
    const turn = TURN_PER_HEIGHT / Math.max(1, this.stage.height);
    this.turnTo({ ...gaze, azimuth: gaze.azimuth - dx * turn, polar: gaze.polar - dy * turn });
  }

  pan(dx: number, dy: number): void {
    const gaze = this.eye.aim();
    const { right, up } = basisOf(gaze);
    const target = addScaled(addScaled(gaze.target, right, -dx * gaze.mmPerPx), up, dy * gaze.mmPerPx);
    this.turnTo({ ...gaze, target });
  }

  zoom(factor: number): void {
    const gaze = this.eye.aim();
    this.turnTo({ ...gaze, mmPerPx: gaze.mmPerPx / factor });
  }

  private turnTo(gaze: ReturnType<Eye['gaze']>): void {
    this.eye.untouched = false;
    this.eye.goTo(gaze, { eased: false });
    this.request();
  }

  project(point: Vec3): readonly [number, number] {
    if (!this.shown) return [0, 0];
    return this.eye.now(this.shown.pose).project(toWorld(this.shown.pose, point));
  }

  pixel(x: number, y: number): readonly [number, number, number] {
    if (this.shown) this.drawFrame(this.shown);
    return this.stage.read(x, y);
  }

  gridStep(): number {
    return this.layers.ground.step();
  }

  stats(): SceneStats {
    return this.stage.stats();
  }

  dispose(): void {
    clearTimeout(this.holding);
    this.canvas.removeEventListener('webglcontextrestored', this.restore);
    this.gestures.dispose();
    this.layers.dispose();
    this.shower.dispose();
    this.eye.dispose();
    this.stage.dispose();
  }

  private readonly request = (): void => {
    this.stage.request((time) => {
      const moving = this.eye.step(time);
      if (!this.shown || this.stage.width === 0) return;
      this.drawFrame(this.shown);
      if (moving) this.request();
    });
  };

  /** What three does not bring back by itself after the browser took the picture away. */
  private readonly restore = (): void => {
    if (this.shown) this.layers.ground.renew(this.shown);
    this.request();
  };

  private drawFrame(now: Shown): void {
    const { stage, eye, layers } = this;
    const view = eye.now(now.pose);
    layers.place(view, now);
    layers.ground.shade(stage.renderer, stage.scene);
    stage.light(view);
    stage.clear(now.inks.bg);
    stage.draw(eye.camera);
    const { left, top, bottom } = now.state.inset;
    if (stage.height - top - bottom > GNOMON_ROOM_PX)
      layers.gnomon.draw(stage.renderer, view, { x: left, y: bottom });
    this.canvas.dataset.ready = 'true';
  }

  private points(): readonly Vec3[] {
    const corners = this.shown?.line.line.corners ?? [];
    return corners.map(({ at }, i) => (this.held?.index === i ? this.held.at : at));
  }

  private corners(): void {
    if (this.shown) this.layers.updateCorners(this.shown, this.points(), this.lock);
  }

  /** Lets go of a dropped corner that the job has caught up with. */
  private release(): void {
    const corner = this.held && this.shown?.line.line.corners[this.held.index];
    if (this.holding === undefined || !this.held || !corner) return;
    if (distance(corner.at, this.held.at) < SAME_MM) this.drop();
  }

  private drop(): void {
    clearTimeout(this.holding);
    this.holding = undefined;
    this.held = null;
    this.corners();
    this.request();
  }

  private hold(corner: Held | null): void {
    clearTimeout(this.holding);
    this.holding = corner === null ? setTimeout(() => this.drop(), HOLD_MS) : undefined;
    if (corner === null) return;
    this.held = corner;
    this.corners();
    this.request();
  }

  private hands(): Hands {
    return {
      now: () => this.shown,
      eye: (now) => this.eye.now(now.pose),
      ask: (x, y, reach) => this.ask({ x, y, reach }),
      thing: (ask) => pickThing(ask, this.layers.solids.group),
      points: () => this.points(),
      bead: () => beadOf(this.shown),
      free: (on) => {
        this.eye.controls.enabled = on;
      },
      held: (corner) => this.hold(corner),
      guided: (lock) => {
        this.lock = lock;
      },
    };
  }

  private ask(at: Pick<PickAsk, 'x' | 'y' | 'reach'>): PickAsk {
    const now = this.shown!;
    const eye: EyeNow = this.eye.now(now.pose);
    return { now, eye, ray: this.eye.ray(at.x, at.y), ...at };
  }
}

function beadOf(shown: Shown | null): Vec3 | null {
  if (!shown?.centreline || shown.stale || shown.state.bead === null) return null;
  return pointAt(shown.centreline, Math.min(Math.max(shown.state.bead, 0), shown.centreline.length));
}
