/** The canvas as three sees it: what draws, what is drawn, and when. */

import { addScaled } from 'runback';
import {
  type Camera,
  type Color,
  DirectionalLight,
  Group,
  HemisphereLight,
  Matrix4,
  Scene,
  WebGLRenderer,
} from 'three';
import type { Pose } from './math/tilt.ts';
import type { EyeNow } from './parts/kinds.ts';
import type { PixelUniform } from './parts/wide.ts';
import type { SceneStats } from './types.ts';

const SHARPEST = 2;
/** Of the sky and of what the ground throws back. */
const SKY = 0xffffff;
const FROM_GROUND = 0xd8cfc0;

export class Stage {
  readonly renderer: WebGLRenderer;
  readonly scene = new Scene();
  /** Tilts; counts from the pose's origin. */
  readonly machine = new Group();
  /** Stays level. */
  readonly world = new Group();
  readonly pixel: PixelUniform = { value: 1 };
  width = 0;
  height = 0;
  private readonly canvas: HTMLCanvasElement;
  private readonly key = new DirectionalLight(SKY, 1.35);
  private asked: number | null = null;

  constructor(canvas: HTMLCanvasElement) {
    this.canvas = canvas;
    this.renderer = new WebGLRenderer({
      canvas,
      antialias: true,
      stencil: true,
      powerPreference: 'low-power',
    });
    this.renderer.autoClear = false;
    this.renderer.info.autoReset = false;
    this.machine.matrixAutoUpdate = false;
    this.scene.add(this.machine, this.world, new HemisphereLight(SKY, FROM_GROUND, 2.15), this.key);
    this.scene.add(this.key.target);
  }

  /** Takes the size of the canvas on the page; false while it has none or has not changed. */
  resize(): boolean {
    const { clientWidth: width, clientHeight: height } = this.canvas;
    if (width === 0 || height === 0) return false;
    const sharp = Math.min(globalThis.devicePixelRatio || 1, SHARPEST);
    if (width === this.width && height === this.height && sharp === this.renderer.getPixelRatio())
      return false;
    [this.width, this.height] = [width, height];
    this.renderer.setPixelRatio(sharp);
    this.renderer.setSize(width, height, false);
    return true;
  }

  pose({ turn }: Pose): void {
    const [x, y, z] = turn;
    this.machine.matrix.copy(new Matrix4().set(...x, 0, ...y, 0, ...z, 0, 0, 0, 0, 1));
    this.machine.matrixWorldNeedsUpdate = true;
  }

  /** One frame soon, however often it is asked for. */
  request(frame: (time: number) => void): void {
    this.asked ??= requestAnimationFrame((time) => {
      this.asked = null;
      frame(time);
    });
  }

  /** The light comes over the viewer's left shoulder, so that round things look round from every side. */
  light({ back, right, up }: EyeNow): void {
    this.key.position.set(...addScaled(addScaled(back, right, -0.45), up, 0.6));
  }

  clear(colour: Color): void {
    const { renderer } = this;
    renderer.info.reset();
    renderer.setViewport(0, 0, this.width, this.height);
    renderer.setClearColor(colour, 1);
    renderer.clear();
  }

  draw(camera: Camera): void {
    this.renderer.render(this.scene, camera);
  }

  /** Of the pixel last drawn at a place of the canvas. */
  read(x: number, y: number): readonly [number, number, number] {
    const gl = this.renderer.getContext();
    const sharp = this.renderer.getPixelRatio();
    const rgba = new Uint8Array(4);
    const row = this.renderer.domElement.height - 1 - Math.floor(y * sharp);
    gl.readPixels(Math.floor(x * sharp), row, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, rgba);
    return [rgba[0]!, rgba[1]!, rgba[2]!];
  }

  stats(): SceneStats {
    const { memory, render, programs } = this.renderer.info;
    return {
      geometries: memory.geometries,
      textures: memory.textures,
      programs: programs?.length ?? 0,
      calls: render.calls,
    };
  }

  dispose(): void {
    if (this.asked !== null) cancelAnimationFrame(this.asked);
    this.renderer.dispose();
  }
}
