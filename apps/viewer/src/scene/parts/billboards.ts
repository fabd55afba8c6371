/** Marks that keep their size on the screen. They are pooled: a mark that goes leaves its sprite to the next. */

import { addScaled, dot, type Vec3 } from 'runback';
import { type Group, Sprite } from 'three';
import { toWorld, turnedBy } from '../math/tilt.ts';
import { groupIn } from './geometry.ts';
import type { Glyph } from './glyphs.ts';
import type { EyeNow } from './kinds.ts';
import type { Labels, Picture } from './labels.ts';

export interface Mark {
  readonly glyph: Glyph;
  /** Machine axes. */
  readonly at: Vec3;
  /** Moved on the screen along a direction (machine axes) by some pixels and mm, so that it stands beside the tube. */
  readonly push?: { readonly along: Vec3; readonly px: number; readonly mm?: number };
  /** Moved straight up or down the screen, px. */
  readonly lift?: number;
  /** Larger: in front. */
  readonly order: number;
  /** Left out where it would cover a mark that was placed before it. */
  readonly gives: boolean;
}

interface Taken {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

const FIRST_ORDER = 20;

export class Billboards {
  private readonly group: Group;
  private readonly sprites: Sprite[] = [];
  private marks: readonly { readonly mark: Mark; readonly picture: Picture }[] = [];

  /** `world` is a group that does not tilt. */
  constructor(world: Group) {
    this.group = groupIn(world);
  }

  /** In order of importance: those that give way do so to the ones before them. */
  show(marks: readonly Mark[], labels: Labels): void {
    this.marks = marks.map((mark) => ({ mark, picture: labels.of(mark.glyph) }));
    labels.keep(marks.map(({ glyph }) => glyph));
    while (this.sprites.length < marks.length) {
      const sprite = new Sprite();
      this.sprites.push(sprite);
      this.group.add(sprite);
    }
  }

  place(eye: EyeNow): void {
    const taken: Taken[] = [];
    this.sprites.forEach((sprite, i) => {
      const one = this.marks[i];
      sprite.visible = one !== undefined;
      if (one === undefined) return;
      const { mark, picture } = one;
      const world = placeOf(mark, eye);
      const [x, y] = eye.project(world);
      const here = {
        x,
        y,
        halfWidth: (picture.width * picture.solid) / 2,
        halfHeight: (picture.height * picture.solid) / 2,
      };
      sprite.visible = !(mark.gives && taken.some((other) => overlap(here, other)));
      if (sprite.visible) taken.push(here);
      const mm = eye.mmPerPx(world);
      sprite.material = picture.material;
      sprite.renderOrder = FIRST_ORDER + mark.order;
      sprite.position.set(...world);
      sprite.scale.set(picture.width * mm, picture.height * mm, 1);
    });
  }
}

const overlap = (a: Taken, b: Taken): boolean =>
  Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight;

function placeOf({ at, push, lift = 0 }: Mark, eye: EyeNow): Vec3 {
  const world = toWorld(eye.pose, at);
  const mm = eye.mmPerPx(world);
  const lifted = addScaled(world, eye.up, lift * mm);
  if (!push) return lifted;
  const along = turnedBy(eye.pose.turn, push.along);
  const [x, y] = [dot(along, eye.right), dot(along, eye.up)];
  const seen = Math.hypot(x, y);
  // Seen end on: above.
  const [right, up] = seen < END_ON ? [0, 1] : [x / seen, y / seen];
  const far = push.px * mm + (push.mm ?? 0);
  return addScaled(addScaled(lifted, eye.right, right * far), eye.up, up * far);
}

const END_ON = 0.05;
