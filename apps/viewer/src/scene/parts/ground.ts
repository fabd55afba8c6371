/** Level ground under the lowest thing: a grid that fades out, and the shadow on it. It never tilts. */
import {
  Color,
  type Group,
  Mesh,
  PlaneGeometry,
  type Scene,
  ShaderMaterial,
  type Texture,
  Vector2,
  type WebGLRenderer,
} from 'three';
import { gridStepFor } from '../math/grid.ts';
import { MadeFrom } from './geometry.ts';
import type { Layer, Shown } from './kinds.ts';
import { Shadow } from './shadow.ts';

/** The ground reaches this many radii of everything. */
const REACH = 2.6;
const SHADOW_REACH = 1.15;

const VERTEX = `
varying vec2 place;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  place = world.xz;
  gl_Position = projectionMatrix * viewMatrix * world;
}`;

const FRAGMENT = `
varying vec2 place;
uniform vec2 middle;
uniform float reach;
uniform float grid;
uniform float shade;
uniform float half_;
uniform vec3 line;
uniform vec3 ink;
uniform sampler2D shadow;
float lines(float every, float width) {
  vec2 at = place / every;
  vec2 pixel = fwidth(at);
  vec2 away = abs(fract(at - 0.5) - 0.5) / max(pixel, vec2(1e-6));
  // Lines closer together than some pixels run into grey: fade them instead.
  vec2 seen = (1.0 - clamp(away - width + 0.5, 0.0, 1.0)) * smoothstep(0.5, 0.12, pixel);
  return max(seen.x, seen.y);
}
void main() {
  float away = length(place - middle) / reach;
  float fade = 1.0 - smoothstep(0.35, 1.0, away);
  float strokes = max(lines(grid, 0.5) * 0.55, lines(grid * 5.0, 0.75)) * fade;
  vec2 at = (place - middle) / (2.0 * half_) + 0.5;
  float inside = step(0.0, min(min(at.x, at.y), min(1.0 - at.x, 1.0 - at.y)));
  float dark = texture2D(shadow, at).r * inside * shade;
  float alpha = dark + strokes * (1.0 - dark);
  gl_FragColor = vec4(mix(line, ink, dark / max(alpha, 1e-4)), alpha);
  #include <colorspace_fragment>
}`;

export interface Ground extends Layer {
  /** Draws the shadow anew when it has to be. */
  shade(renderer: WebGLRenderer, scene: Scene): void;
  /** The shadow's picture was lost. */
  renew(now: Shown): void;
  step(): number;
}

function groundMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: true,
    depthWrite: false,
    uniforms: {
      middle: { value: new Vector2() },
      reach: { value: 1 },
      grid: { value: 100 },
      shade: { value: 0.3 },
      half_: { value: 1 },
      line: { value: null as Color | null },
      ink: { value: null as Color | null },
      shadow: { value: null as Texture | null },
    },
  });
}

export function makeGround(world: Group): Ground {
  const material = groundMaterial();
  const mesh = new Mesh(new PlaneGeometry(1, 1).rotateX(-Math.PI / 2), material);
  mesh.renderOrder = -1;
  mesh.frustumCulled = false;
  world.add(mesh);
  const shadow = new Shadow();
  const made = new MadeFrom();
  let stale: Shown | null = null;
  return {
    update: (now) => {
      const { uniforms } = material;
      const { middle, radius, ground, inks } = now;
      mesh.position.set(middle[0], ground, middle[2]);
      mesh.scale.setScalar(2 * REACH * radius);
      (uniforms.middle!.value as Vector2).set(middle[0], middle[2]);
      uniforms.reach!.value = REACH * radius;
      uniforms.half_!.value = SHADOW_REACH * radius;
      uniforms.grid!.value = gridStepFor(radius, now.state.job.units);
      uniforms.line!.value = inks.grid;
      // A shadow is never lighter than the ground, whatever the ink.
      uniforms.ink!.value = SHADE;
      uniforms.shade!.value = lightness(inks.bg) > HALF ? 0.22 : 0.5;
      uniforms.shadow!.value = shadow.texture;
      const { line, state, pose } = now;
      const lines = state.job.lines.map(({ centreline }) => centreline?.pieces ?? null);
      if (made.changed(line.line.surroundings, lines, pose, [middle, radius, ground])) stale = now;
    },
    shade: (renderer, scene) => {
      if (!stale) return;
      const { middle, radius, ground } = stale;
      stale = null;
      mesh.visible = false;
      shadow.draw(renderer, { scene, middle, half: SHADOW_REACH * radius, ground });
      mesh.visible = true;
    },
    renew: (now) => {
      stale = now;
    },
    step: () => material.uniforms.grid!.value as number,
    dispose: () => {
      mesh.geometry.dispose();
      material.dispose();
      shadow.dispose();
    },
  };
}

const SHADE = new Color(0, 0, 0);
const HALF = 0.2;
const lightness = ({ r, g, b }: Color): number => (r + g + b) / 3;
