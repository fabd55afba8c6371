/** The camera, in perspective or parallel, and the hand that turns it. */

import { addScaled, dot, sub, unit, type Vec3 } from 'runback';
import { OrthographicCamera, PerspectiveCamera, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Projection } from '../../store/types.ts';
import type { Ray } from '../math/drag.ts';
import { basisOf } from '../math/fit.ts';
import type { Pose } from '../math/tilt.ts';
import { eased, nearestAzimuth, type Stand, towardCamera } from '../math/views.ts';
import type { EyeNow } from './kinds.ts';
import type { PixelUniform } from './wide.ts';

const FIELD_DEG = 28;
const HALF_FIELD = Math.tan((FIELD_DEG * Math.PI) / 360);
const MOVE_MS = 340;
/** As near to straight above as keeps the way the camera is turned. */
const POLE = 0.0002;
const NEAREST_MM_PER_PX = 0.01;
const FARTHEST_RADII = 30;

/** Where the camera looks from and at, and how large. */
export interface Gaze extends Stand {
  readonly target: Vec3;
  readonly mmPerPx: number;
}

interface Move {
  readonly from: Gaze;
  readonly to: Gaze;
  begun: number | null;
}

export class Eye {
  readonly controls: OrbitControls;
  /** Set while the person has not turned the camera since it was last fitted. */
  untouched = true;
  private readonly deep = new PerspectiveCamera(FIELD_DEG);
  private readonly flat = new OrthographicCamera();
  private readonly pixel: PixelUniform;
  private width = 1;
  private height = 1;
  private middle: Vec3 = [0, 0, 0];
  private radius = 1000;
  private move: Move | null = null;

  constructor(canvas: HTMLCanvasElement, pixel: PixelUniform, changed: () => void) {
    this.pixel = pixel;
    this.deep.position.set(0, 1000, 3000);
    this.controls = new OrbitControls<PerspectiveCamera | OrthographicCamera>(
      this.deep,
      canvas,
    ) as OrbitControls;
    this.controls.zoomToCursor = true;
    this.controls.addEventListener('change', changed);
    this.controls.addEventListener('start', () => {
      this.move = null;
      this.untouched = false;
    });
  }

  get camera(): PerspectiveCamera | OrthographicCamera {
    return this.controls.object as PerspectiveCamera | OrthographicCamera;
  }

  /** Pixels from the eye to the picture; `null`: parallel. */
  get focal(): number | null {
    return this.camera === this.deep ? this.height / (2 * HALF_FIELD) : null;
  }

  resize(width: number, height: number): void {
    const { mmPerPx } = this.gaze();
    [this.width, this.height] = [width, height];
    this.look({ ...this.gaze(), mmPerPx });
  }

  /** What there is to see, for the planes between which it is drawn. */
  surround(middle: Vec3, radius: number): void {
    [this.middle, this.radius] = [middle, radius];
    const farthest = (FARTHEST_RADII * radius) / this.height;
    const { controls } = this;
    controls.minZoom = 1 / farthest;
    controls.maxZoom = 1 / NEAREST_MM_PER_PX;
    controls.minDistance = this.distanceFor(NEAREST_MM_PER_PX);
    controls.maxDistance = this.distanceFor(farthest);
  }

  setProjection(projection: Projection): void {
    const wanted = projection === 'parallel' ? this.flat : this.deep;
    if (this.camera === wanted) return;
    const gaze = this.gaze();
    this.controls.object = wanted;
    this.look(gaze);
  }

  gaze(): Gaze {
    const { target } = this.controls;
    const away = this.camera.position.clone().sub(target);
    const distance = Math.max(away.length(), Number.MIN_VALUE);
    const mmPerPx =
      this.camera === this.deep ? (distance * 2 * HALF_FIELD) / this.height : 1 / this.flat.zoom;
    return {
      target: target.toArray(),
      azimuth: Math.atan2(away.x, away.z),
      polar: Math.atan2(Math.hypot(away.x, away.z), away.y),
      mmPerPx,
    };
  }

  look({ target, azimuth, polar, mmPerPx }: Gaze): void {
    const held = { azimuth, polar: Math.min(Math.PI - POLE, Math.max(POLE, polar)) };
    const parallel = this.camera === this.flat;
    // A parallel camera sees the same from any distance: far enough for everything to be in front of it.
    const distance = parallel ? this.distanceFor(this.radius / this.height) * 2 : this.distanceFor(mmPerPx);
    this.controls.target.set(...target);
    this.camera.position.set(...addScaled(target, towardCamera(held), distance));
    this.setLens(mmPerPx);
    this.controls.update();
  }

  private setLens(mmPerPx: number): void {
    const [w, h] = [this.width / 2, this.height / 2];
    Object.assign(this.flat, { left: -w, right: w, top: h, bottom: -h, zoom: 1 / mmPerPx });
    this.deep.aspect = this.width / this.height;
    this.camera.updateProjectionMatrix();
  }

  private distanceFor(mmPerPx: number): number {
    return (mmPerPx * this.height) / (2 * HALF_FIELD);
  }

  /** Goes there at once, or in a short eased move. */
  goTo(gaze: Gaze, { eased: moves }: { readonly eased: boolean }): void {
    const from = this.gaze();
    this.move = null;
    if (moves)
      this.move = { from, to: { ...gaze, azimuth: nearestAzimuth(from.azimuth, gaze.azimuth) }, begun: null };
    else this.look(gaze);
  }

  /** The next step of a move; true while there is one. */
  step(time: number): boolean {
    const { move } = this;
    if (!move) return false;
    move.begun ??= time;
    const t = Math.min(1, (time - move.begun) / MOVE_MS);
    this.look(between(move, eased(t)));
    if (t === 1) this.move = null;
    return this.move !== null;
  }

  /** Where a move under way will end, else where the camera is. */
  aim(): Gaze {
    return this.move?.to ?? this.gaze();
  }

  now(pose: Pose): EyeNow {
    this.setPlanes();
    const { right, up, back } = basisOf(this.gaze());
    const eye = this.camera.position.toArray();
    const parallel = this.camera === this.flat;
    const perDepth = parallel ? 1 / this.flat.zoom : (2 * HALF_FIELD) / this.height;
    this.pixel.value = perDepth;
    const mmAtDepth = (depth: number): number => (parallel ? perDepth : perDepth * Math.max(0, depth));
    return {
      pose,
      right,
      up,
      back,
      mmPerPx: (world) => mmAtDepth(dot(sub(eye, world), back)),
      mmAtDepth,
      toEye: (world) => (parallel ? back : unit(sub(eye, world))),
      project: (world) => this.project(world),
      depth: (world) => dot(sub(eye, world), back),
    };
  }

  /** Between the nearest and the farthest thing, not nearer than a part of the way to what is looked at. */
  private setPlanes(): void {
    const { back } = basisOf(this.gaze());
    const away = dot(sub(this.camera.position.toArray(), this.middle), back);
    const parallel = this.camera === this.flat;
    const reach = 3 * this.radius;
    const near = parallel ? away - reach : Math.max(away - reach, this.distanceFor(this.gaze().mmPerPx) / 60);
    Object.assign(this.camera, { near, far: Math.max(away + reach, near * 2) });
    this.camera.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
  }

  project(world: Vec3): readonly [number, number] {
    const { x, y } = new Vector3(...world).project(this.camera);
    return [((x + 1) / 2) * this.width, ((1 - y) / 2) * this.height];
  }

  /** Through a pixel, in the world. */
  ray(x: number, y: number): Ray {
    const [nx, ny] = [(x / this.width) * 2 - 1, 1 - (y / this.height) * 2];
    const { back } = basisOf(this.gaze());
    const eye = this.camera.position.toArray();
    const on = new Vector3(nx, ny, 0).unproject(this.camera).toArray();
    if (this.camera === this.deep) return { from: eye, direction: unit(sub(on, eye)) };
    return { from: addScaled(on, back, dot(sub(eye, on), back)), direction: [-back[0], -back[1], -back[2]] };
  }

  dispose(): void {
    this.controls.dispose();
  }
}

function between({ from, to }: Move, t: number): Gaze {
  const mix = (a: number, b: number): number => a + (b - a) * t;
  return {
    target: addScaled(from.target, sub(to.target, from.target), t),
    azimuth: mix(from.azimuth, to.azimuth),
    polar: mix(from.polar, to.polar),
    mmPerPx: from.mmPerPx * (to.mmPerPx / from.mmPerPx) ** t,
  };
}
