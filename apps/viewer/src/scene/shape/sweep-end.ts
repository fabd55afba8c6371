/** How a swept tube ends: sawn off square, sawn off with its bore to be seen, or round. */
import { add, addScaled, scale, type Vec3 } from 'runback';
import { circle, fan, spokes, strip } from './circle.ts';
import type { MeshBuilder, Rgb } from './mesh.ts';
import type { Ring } from './rings.ts';

export type EndShape =
  | { readonly kind: 'flat'; readonly cut?: Rgb }
  /** `bore` is a radius, mm. The hole is a pocket, dark at its bottom. */
  | { readonly kind: 'bored'; readonly bore: number; readonly cut: Rgb; readonly dark: Rgb }
  | { readonly kind: 'round' };

export interface EndAsk {
  /** The last ring; its tangent leads out of the tube. */
  readonly ring: Ring;
  readonly outer: number;
  readonly sides: number;
  readonly shape: EndShape;
  /** Straight behind the end, mm. */
  readonly straight: number;
}

const POCKET_BORES = 3;
const SHALLOW_BORES = 0.3;
const CAP_STEPS = 8;

export function closeEnd(builder: MeshBuilder, ask: EndAsk): void {
  const { shape, outer } = ask;
  if (shape.kind === 'round') roundEnd(builder, ask);
  else if (shape.kind === 'bored' && shape.bore > 0) boredEnd(builder, ask, shape);
  else disc(builder, ask, { radius: outer, colour: shape.cut ?? [1, 1, 1], depth: 0 });
}

/** Depth of the hole, mm: never out of the straight behind it, where the bend would come through. */
export const pocketDepth = (bore: number, straight: number): number =>
  Math.max(Math.min(POCKET_BORES * bore, straight), SHALLOW_BORES * bore);

interface Disc {
  readonly radius: number;
  readonly colour: Rgb;
  /** mm behind the end. */
  readonly depth: number;
}

function disc(builder: MeshBuilder, { ring, sides }: EndAsk, { radius, colour, depth }: Disc): void {
  const normal = (): Vec3 => ring.tangent;
  const middle = addScaled(ring.point, ring.tangent, -depth);
  const rim = circle(builder, middle, { radius, out: spokes(ring, sides), normal, colour });
  fan(builder, rim, builder.vertex({ at: middle, normal: ring.tangent, colour }));
}

function boredEnd(builder: MeshBuilder, ask: EndAsk, shape: EndShape & { readonly kind: 'bored' }): void {
  const { ring, outer, sides, straight } = ask;
  const { bore, cut, dark } = shape;
  const out = spokes(ring, sides);
  const depth = pocketDepth(bore, straight);
  const face = { out, normal: (): Vec3 => ring.tangent, colour: cut };
  const hole = { out, normal: (spoke: Vec3): Vec3 => scale(spoke, -1), radius: bore };
  const bottom = addScaled(ring.point, ring.tangent, -depth);
  strip(
    builder,
    circle(builder, ring.point, { ...face, radius: outer }),
    circle(builder, ring.point, { ...face, radius: bore }),
  );
  strip(
    builder,
    circle(builder, ring.point, { ...hole, colour: dark }),
    circle(builder, bottom, { ...hole, colour: dark }),
  );
  disc(builder, ask, { radius: bore, colour: dark, depth });
}

function roundEnd(builder: MeshBuilder, { ring, outer, sides }: EndAsk): void {
  const out = spokes(ring, sides);
  const circles = Array.from({ length: CAP_STEPS }, (_, i) => {
    const angle = ((Math.PI / 2) * i) / CAP_STEPS;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const normal = (spoke: Vec3): Vec3 => add(scale(spoke, c), scale(ring.tangent, s));
    const middle = addScaled(ring.point, ring.tangent, outer * s);
    return circle(builder, middle, { radius: outer * c, out, normal, tube: outer });
  });
  circles.slice(1).forEach((to, i) => {
    strip(builder, circles[i]!, to);
  });
  const at = addScaled(ring.point, ring.tangent, outer);
  fan(builder, circles[circles.length - 1]!, builder.vertex({ at, normal: ring.tangent, radius: outer }));
}
