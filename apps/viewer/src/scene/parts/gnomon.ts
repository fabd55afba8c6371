/** The machine's own axes, named, in a corner of the canvas. */

import { add, dot, scale, type Vec3 } from 'runback';
import {
  ConeGeometry,
  CylinderGeometry,
  Group,
  Mesh,
  MeshBasicMaterial,
  OrthographicCamera,
  Scene,
  Sprite,
  Vector3,
  type WebGLRenderer,
} from 'three';
import { turnedBy } from '../math/tilt.ts';
import { MadeFrom } from './geometry.ts';
import type { EyeNow, Shown } from './kinds.ts';

/** Width and height, px. */
const SIZE = 180;
const ARM_PX = 22;
const WORD_GAP_PX = 5;
const Y = new Vector3(0, 1, 0);

export interface Gnomon {
  update(now: Shown): void;
  draw(renderer: WebGLRenderer, eye: EyeNow, corner: { readonly x: number; readonly y: number }): void;
  dispose(): void;
}

interface Arm {
  readonly group: Group;
  readonly word: Sprite;
  /** In the world. */
  along: Vec3;
}

export function makeGnomon(): Gnomon {
  const scene = new Scene();
  const camera = new OrthographicCamera(-SIZE / 2, SIZE / 2, SIZE / 2, -SIZE / 2, -SIZE, SIZE);
  const material = new MeshBasicMaterial();
  const shaft = new CylinderGeometry(0.9, 0.9, ARM_PX - 6, 10).translate(0, (ARM_PX - 6) / 2, 0);
  const tip = new ConeGeometry(3.2, 8, 14).translate(0, ARM_PX - 3, 0);
  const arms = ['forward', 'left', 'up'].map((): Arm => {
    const group = new Group();
    group.add(new Mesh(shaft, material), new Mesh(tip, material));
    const word = new Sprite();
    scene.add(group, word);
    return { group, word, along: [0, 1, 0] };
  });
  const made = new MadeFrom();
  return {
    update: (now) => {
      const { forward, left, up } = now.state.axes;
      [forward, left, up].forEach((along, i) => {
        arms[i]!.along = turnedBy(now.pose.turn, along);
      });
      if (!made.changed(now.labels)) return;
      material.color = now.inks.ink;
      ['forward', 'left', 'up'].forEach((text, i) => {
        const { material: words, width, height } = now.labels.of({ kind: 'word', text });
        arms[i]!.word.material = words;
        arms[i]!.word.scale.set(width, height, 1);
      });
    },
    draw: (renderer, eye, { x, y }) => {
      for (const { group, word, along } of arms) {
        group.quaternion.setFromUnitVectors(Y, new Vector3(...along));
        word.position.set(...wordPlace(along, word.scale, eye));
      }
      camera.position.set(...eye.back);
      camera.up.set(...eye.up);
      camera.lookAt(0, 0, 0);
      renderer.clearDepth();
      renderer.setViewport(x, y, SIZE, SIZE);
      renderer.render(scene, camera);
    },
    dispose: () => {
      for (const one of [shaft, tip, material]) one.dispose();
    },
  };
}

/** Beyond the tip of its arm as it is seen, with its own size to spare; of an arm seen end on, aside. */
function wordPlace(along: Vec3, size: { readonly x: number; readonly y: number }, eye: EyeNow): Vec3 {
  const [x, y] = [dot(along, eye.right), dot(along, eye.up)];
  const seen = Math.hypot(x, y);
  const [dx, dy] = seen > END_ON ? [x / seen, y / seen] : ASIDE;
  const [across, high] = [
    size.x / 2 / Math.max(Math.abs(dx), END_ON),
    size.y / 2 / Math.max(Math.abs(dy), END_ON),
  ];
  const far = ARM_PX * seen + WORD_GAP_PX + Math.min(across, high);
  return add(add(scale(eye.right, dx * far), scale(eye.up, dy * far)), scale(eye.back, ARM_PX));
}

const END_ON = 0.05;
const ASIDE = [0.6, -0.8] as const;
