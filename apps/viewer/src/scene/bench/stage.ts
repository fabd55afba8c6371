/** The bench picture on a canvas: drawn when something changed, turned with a finger, freed when it is left. */
import type { BenchPlan } from 'runback';
import {
  AmbientLight,
  DirectionalLight,
  PerspectiveCamera,
  Quaternion,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { onTheme, readColours } from './colours.ts';
import { type Labels, labelsOf } from './labels.ts';
import { type BenchPlaces, benchPlaces } from './places.ts';
import { type BenchThings, benchThings, freeThings } from './things.ts';
import { eyeFor } from './view.ts';

/** Narrow, as from a few steps back: what is near must not look large. */
const ANGLE_DEG = 16;
const MARGIN = 0.14;
const SHOW_MS = 1600;

export interface Sight {
  readonly plan: BenchPlan;
  /** 0 for bend 1. */
  readonly index: number;
  readonly od: number;
}

export interface StageEvents {
  readonly labels: (labels: Labels) => void;
  /** True when it is no longer looked at from where the operator stands. */
  readonly strayed: (away: boolean) => void;
}

export class BenchStage {
  readonly #canvas: HTMLCanvasElement;
  readonly #events: StageEvents;
  readonly #renderer: WebGLRenderer;
  readonly #camera = new PerspectiveCamera(ANGLE_DEG, 1, 1, 20000);
  readonly #controls: OrbitControls;
  readonly #scene = new Scene();
  readonly #sun = new DirectionalLight(0xffffff, 2.1);
  readonly #watch: ResizeObserver;
  readonly #forgetTheme: () => void;
  #places: BenchPlaces | null = null;
  #things: BenchThings | null = null;
  #asked = 0;
  #playing = 0;
  #homing = false;

  /** @throws Error when the browser has no WebGL */
  constructor(canvas: HTMLCanvasElement, events: StageEvents) {
    this.#canvas = canvas;
    this.#events = events;
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, powerPreference: 'low-power' });
    this.#renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.#camera.up.set(0, 0, 1);
    this.#controls = new OrbitControls(this.#camera, canvas);
    this.#controls.enablePan = false;
    this.#controls.addEventListener('change', this.#orbited);
    this.#scene.add(new AmbientLight(0xffffff, 1.5), this.#sun);
    this.#watch = new ResizeObserver(() => this.#resize());
    this.#watch.observe(canvas);
    this.#forgetTheme = onTheme(() => this.#rebuild());
  }

  show(sight: Sight): void {
    this.#places = benchPlaces(sight);
    this.#rebuild();
    this.#resize();
  }

  /** Back to the operator's eye. */
  home(): void {
    if (!this.#places) return;
    this.#homing = true;
    const lens = { angle: (ANGLE_DEG * Math.PI) / 180, aspect: this.#camera.aspect, margin: MARGIN };
    const { from, target } = eyeFor(this.#places, lens);
    this.#camera.position.set(...from);
    this.#controls.target.set(...target);
    const far = this.#camera.position.distanceTo(this.#controls.target);
    this.#controls.minDistance = far * 0.3;
    this.#controls.maxDistance = far * 6;
    this.#controls.update();
    this.#homing = false;
    this.#events.strayed(false);
    this.#ask();
  }

  /** The turn as it is made, once; before and after it where movement is not wanted. */
  play(): void {
    this.#stop();
    const began = performance.now();
    const step = (now: number): void => {
      const share = shareOf((now - began) / SHOW_MS);
      if (this.#places) this.#things?.turning.quaternion.copy(turnedBack(this.#places, 1 - smooth(share)));
      this.#draw();
      this.#playing = share < 1 ? requestAnimationFrame(step) : 0;
    };
    this.#playing = requestAnimationFrame(step);
  }

  dispose(): void {
    this.#stop();
    cancelAnimationFrame(this.#asked);
    this.#watch.disconnect();
    this.#forgetTheme();
    this.#controls.removeEventListener('change', this.#orbited);
    this.#controls.dispose();
    if (this.#things) freeThings(this.#things.whole);
    this.#renderer.dispose();
  }

  readonly #orbited = (): void => {
    if (!this.#homing) this.#events.strayed(true);
    this.#ask();
  };

  #ask(): void {
    if (this.#asked === 0) this.#asked = requestAnimationFrame(() => this.#draw());
  }

  #draw(): void {
    this.#asked = 0;
    // The light stands over the looker's shoulder, so that no side that is looked at is dark.
    this.#sun.position.copy(this.#camera.position).add(new Vector3(0, 0, this.#camera.position.length()));
    this.#renderer.render(this.#scene, this.#camera);
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    if (this.#places) this.#events.labels(labelsOf(this.#places, this.#camera, { width, height }));
  }

  #rebuild(): void {
    if (!this.#places) return;
    this.#stop();
    const colours = readColours(this.#canvas);
    if (this.#things) {
      this.#scene.remove(this.#things.whole);
      freeThings(this.#things.whole);
    }
    this.#things = benchThings(this.#places, colours);
    this.#scene.background = colours.ground;
    this.#scene.add(this.#things.whole);
    this.#ask();
  }

  #resize(): void {
    const { clientWidth: width, clientHeight: height } = this.#canvas;
    if (width === 0 || height === 0) return;
    this.#renderer.setSize(width, height, false);
    this.#camera.aspect = width / height;
    this.#camera.updateProjectionMatrix();
    this.home();
  }

  #stop(): void {
    cancelAnimationFrame(this.#playing);
    this.#playing = 0;
    this.#things?.turning.quaternion.identity();
  }
}

const still = matchMedia('(prefers-reduced-motion: reduce)');

function shareOf(time: number): number {
  const held = Math.min(1, Math.max(0, time));
  return still.matches ? Math.floor(held) : held;
}

const smooth = (t: number): number => t * t * (3 - 2 * t);

/** How far back from the end of the turn; `share` is 1 at its beginning. */
function turnedBack({ pose }: BenchPlaces, share: number): Quaternion {
  const way = pose.turns === -1 ? 1 : -1;
  const by = pose.turns === null ? 0 : way * pose.goes * share;
  return new Quaternion().setFromAxisAngle(new Vector3(...pose.travel), by);
}
