/** A soft shadow on the ground: everything seen from straight below, the nearer to the ground the darker, then blurred. */

import type { Vec3 } from 'runback';
import {
  Camera,
  Mesh,
  OrthographicCamera,
  PlaneGeometry,
  Scene,
  ShaderMaterial,
  type Texture,
  Vector2,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { SHADOW_LAYER } from './geometry.ts';

const SIZE = 512;
/** Half width of the blur, in parts of the picture. */
const SPREADS = [3.8 / SIZE, 1.7 / SIZE];

const NEARNESS = {
  vertexShader: `
varying float height;
uniform float ground;
uniform float reach;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  height = (world.y - ground) / reach;
  gl_Position = projectionMatrix * viewMatrix * world;
}`,
  fragmentShader: `
varying float height;
void main() {
  gl_FragColor = vec4(mix(1.0, 0.45, clamp(height, 0.0, 1.0)), 0.0, 0.0, 1.0);
}`,
};

const BLUR = {
  vertexShader: `
varying vec2 place;
void main() {
  place = uv;
  gl_Position = vec4(position.xy, 0.0, 1.0);
}`,
  fragmentShader: `
varying vec2 place;
uniform sampler2D picture;
uniform vec2 step;
void main() {
  float sum = 0.0;
  float weights = 0.0;
  for (int i = -4; i <= 4; i++) {
    float weight = exp(-float(i * i) / 8.0);
    sum += weight * texture2D(picture, place + float(i) * step).r;
    weights += weight;
  }
  gl_FragColor = vec4(sum / weights, 0.0, 0.0, 1.0);
}`,
};

export interface ShadowAsk {
  readonly scene: Scene;
  readonly middle: Vec3;
  /** Half the width of the shadow's picture, mm. */
  readonly half: number;
  readonly ground: number;
}

export class Shadow {
  private readonly targets = [new WebGLRenderTarget(SIZE, SIZE), new WebGLRenderTarget(SIZE, SIZE)] as const;
  private readonly camera = new OrthographicCamera();
  private readonly nearness = new ShaderMaterial({
    ...NEARNESS,
    uniforms: { ground: { value: 0 }, reach: { value: 1 } },
  });
  private readonly blur = new ShaderMaterial({
    ...BLUR,
    uniforms: { picture: { value: null as Texture | null }, step: { value: new Vector2() } },
    depthTest: false,
    depthWrite: false,
  });
  private readonly sheet = new Mesh(new PlaneGeometry(2, 2), this.blur);
  private readonly blurScene = new Scene();
  /** The sheet is drawn as it is: any camera does. */
  private readonly plain = new Camera();

  constructor() {
    this.camera.layers.set(SHADOW_LAYER);
    this.sheet.frustumCulled = false;
    this.blurScene.add(this.sheet);
  }

  get texture(): Texture {
    return this.targets[0].texture;
  }

  draw(renderer: WebGLRenderer, ask: ShadowAsk): void {
    const { scene, middle, half, ground } = ask;
    const { camera } = this;
    Object.assign(camera, { left: -half, right: half, top: half, bottom: -half, near: 0, far: 4 * half });
    camera.position.set(middle[0], ground - 1, middle[2]);
    // From below, with x to the right of the picture and z up it.
    camera.up.set(0, 0, 1);
    camera.lookAt(middle[0], ground + 1, middle[2]);
    camera.updateProjectionMatrix();
    this.nearness.uniforms.ground!.value = ground;
    this.nearness.uniforms.reach!.value = half;
    renderer.setClearColor(0x000000, 0);
    scene.overrideMaterial = this.nearness;
    this.pass(renderer, { target: 0, scene, camera });
    scene.overrideMaterial = null;
    for (const spread of SPREADS) {
      this.blurPass(renderer, { from: 0, x: spread, y: 0 });
      this.blurPass(renderer, { from: 1, x: 0, y: spread });
    }
    renderer.setRenderTarget(null);
  }

  private blurPass(
    renderer: WebGLRenderer,
    { from, x, y }: { readonly from: 0 | 1; readonly x: number; readonly y: number },
  ): void {
    this.blur.uniforms.picture!.value = this.targets[from].texture;
    (this.blur.uniforms.step!.value as Vector2).set(x, y);
    this.pass(renderer, { target: from === 0 ? 1 : 0, scene: this.blurScene, camera: this.plain });
  }

  private pass(
    renderer: WebGLRenderer,
    { target, scene, camera }: { readonly target: 0 | 1; readonly scene: Scene; readonly camera: Camera },
  ): void {
    renderer.setRenderTarget(this.targets[target]);
    renderer.clear();
    renderer.render(scene, camera);
  }

  dispose(): void {
    for (const target of this.targets) target.dispose();
    this.nearness.dispose();
    this.blur.dispose();
    this.sheet.geometry.dispose();
  }
}
