/** The bead that rides the chosen line, with a plumb line to the ground below it. */

import { pointAt, type Vec3 } from 'runback';
import {
  BufferGeometry,
  Float32BufferAttribute,
  type Group,
  Line,
  Mesh,
  RingGeometry,
  SphereGeometry,
} from 'three';
import { toWorld } from '../math/tilt.ts';
import { groupIn, MadeFrom } from './geometry.ts';
import type { Layer, Shown } from './kinds.ts';

const BEAD_OD = 0.66;
const LEAST_PX = 6;
const FOOT_PX = 6;
const GHOST_ORDER = 4;

export function makeBead(world: Group): Layer {
  const group = groupIn(world);
  const ball = new SphereGeometry(1, 32, 20);
  const ring = new RingGeometry(0.72, 1, 40).rotateX(-Math.PI / 2);
  const stroke = new BufferGeometry();
  const ends = new Float32BufferAttribute(new Float32Array(6), 3);
  stroke.setAttribute('position', ends);
  const bead = new Mesh(ball);
  const hidden = new Mesh(ball);
  hidden.renderOrder = GHOST_ORDER;
  const foot = new Mesh(ring);
  const plumb = new Line(stroke);
  plumb.frustumCulled = false;
  group.add(bead, hidden, foot, plumb);
  const made = new MadeFrom();
  let radius = 1;
  return {
    update: (now) => {
      const at = placeOf(now);
      group.visible = at !== null;
      if (at === null) return;
      radius = now.line.line.tube.od * BEAD_OD;
      if (made.changed(now.materials)) {
        bead.material = now.materials.bead;
        hidden.material = now.materials.beadHidden;
        foot.material = now.materials.foot;
        plumb.material = now.materials.plumb;
      }
      bead.position.set(...at);
      hidden.position.set(...at);
      foot.position.set(at[0], now.ground, at[2]);
      ends.setXYZ(0, ...at);
      ends.setXYZ(1, at[0], now.ground, at[2]);
      ends.needsUpdate = true;
    },
    place: (eye) => {
      if (!group.visible) return;
      const { x, y, z } = bead.position;
      const size = Math.max(radius, LEAST_PX * eye.mmPerPx([x, y, z]));
      bead.scale.setScalar(size);
      hidden.scale.setScalar(size);
      foot.scale.setScalar(Math.max(radius, FOOT_PX * eye.mmPerPx([x, foot.position.y, z])));
    },
    dispose: () => {
      ball.dispose();
      ring.dispose();
      stroke.dispose();
    },
  };
}

function placeOf({ state: { bead }, centreline, stale, pose }: Shown): Vec3 | null {
  if (bead === null || !centreline || stale) return null;
  return toWorld(pose, pointAt(centreline, Math.min(Math.max(bead, 0), centreline.length)));
}
