/** The tool of a bend picture, the way to turn, the free leg to come. */
import { addScaled, cross, dot, scale, type Vec3 } from '@runback/geometry';
import type { Barrier } from './page-labels.ts';
import { stockLength } from './picture-fit.ts';
import type { Spot } from './picture-project.ts';
import type { Scene } from './picture-scene.ts';
import { arrow, block, disc, type Lens, seen } from './picture-shapes.ts';
import { stepsOf } from './picture-tube.ts';
import type { Item, Point } from './types.ts';

/** Half the thickness of the former, in OD. */
const HALF_DISC = 0.7;
/** The arrow round the tube, mm of paper. */
const ARROW = 6.2;

/** The outline of solids, and strokes through their middle, so that no label stands on them. */
export function outline(items: readonly Item[]): readonly Point[] {
  return items.flatMap((item) =>
    item.kind === 'path'
      ? item.steps.flatMap((s): Point[] => (s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]]] : []))
      : [],
  );
}

/** The dot on a former is no place for a word. */
export function hubs(scene: Scene, lens: Lens): readonly Barrier[] {
  const { former, formerBefore: before, travel, radius, od, projection } = scene;
  return [former, ...(before ? [before] : [])].map((side) => {
    const axis = cross(travel, side);
    const out = dot(projection.into, axis) > 0 ? -1 : 1;
    const [middle] = seen([addScaled(scale(side, radius), axis, out * od * HALF_DISC)], lens);
    return { from: middle!.at, to: [middle!.at[0] + 0.1, middle!.at[1]], half: 1 };
  });
}

export const formerCentre = ({ former, radius }: Scene): Vec3 => scale(former, radius);
export const formerDepth = (scene: Scene, lens: Lens): number => seen([formerCentre(scene)], lens)[0]!.depth;

/** Nearer than the tube, so that it covers half of it. */
export const formerInFront = (scene: Scene, lens: Lens): boolean =>
  formerDepth(scene, lens) < -scene.radius * lens.laying.scale * 0.5;

export function formerItems(scene: Scene, lens: Lens): readonly Item[] {
  return discOf(scene, scene.former, { lens, grey: 0.78 });
}

/** Where the bender was before it was carried round. */
export function formerBefore(scene: Scene, lens: Lens): readonly Item[] {
  return scene.formerBefore === null ? [] : discOf(scene, scene.formerBefore, { lens, grey: 0.95 });
}

function discOf(
  { travel, radius, od }: Scene,
  former: Vec3,
  { lens, grey }: { readonly lens: Lens; readonly grey: number },
): readonly Item[] {
  const shape = {
    centre: scale(former, radius),
    axis: cross(travel, former),
    across: [travel, former] as const,
    radius: Math.max(radius - od * 0.4, radius * 0.5),
    half: od * HALF_DISC,
  };
  return disc(shape, lens, grey);
}

/** The clamp holds the tube against the former on the START side. */
export function clampItems(
  { travel, former, plane, radius, od }: Scene,
  lens: Lens,
): { readonly items: readonly Item[]; readonly nearer: boolean } {
  const centre = addScaled(scale(travel, -radius * 0.45), former, -od * 1.05);
  const items = block(
    centre,
    [scale(travel, radius * 0.38), scale(former, od * 0.5), scale(plane, od * 0.7)],
    lens,
  );
  return {
    items,
    nearer: seen([centre], lens)[0]!.depth < seen([scale(travel, -radius * 0.45)], lens)[0]!.depth,
  };
}

export function turning(
  scene: Scene,
  lens: Lens,
): { readonly behind: readonly Item[]; readonly front: readonly Item[]; readonly path: readonly Point[] } {
  if (scene.turns === null) return { behind: [], front: [], path: [] };
  const centre = scale(scene.travel, stockLength(scene) * (scene.inLine ? 0.78 : 0.62));
  const radius = ARROW / lens.laying.scale;
  const ways = scene.turns === 'both' ? ([1, -1] as const) : ([scene.turns] as const);
  const drawn = ways.map((way) => arrow({ centre, travel: scene.travel, top: [0, 0, 1], way, radius }, lens));
  const front = drawn.flatMap((one) => one.front);
  const behind = drawn.flatMap((one) => one.behind);
  return { behind, front, path: outline([...behind, ...front]) };
}

/** Two dashed edges: there is no tube there yet. */
export function ghostItems(spots: readonly Spot[], width: number): Item[] {
  const points = spots.map((spot) => spot.at);
  const stroke = { width: 0.3, grey: 0, dash: [1.3, 0.8] };
  return [1, -1].map(
    (side): Item => ({
      kind: 'path',
      name: 'ghost',
      steps: stepsOf(
        points.map((at, i) => beside(at, { last: points[i - 1], next: points[i + 1] }, (side * width) / 2)),
      ),
      stroke,
    }),
  );
}

function beside(
  at: Point,
  { last = at, next = at }: { readonly last: Point | undefined; readonly next: Point | undefined },
  by: number,
): Point {
  const [dx, dy] = [next[0] - last[0], next[1] - last[1]];
  const long = Math.hypot(dx, dy) || 1;
  return [at[0] - (dy / long) * by, at[1] + (dx / long) * by];
}

/** The straight is drawn shorter than it is: two strokes across a gap. */
export function breakMark([x, y]: Point, width: number): Item[] {
  const tall = width / 2 + 1.2;
  const stroke = (dx: number): Item => ({
    kind: 'line',
    from: [x + dx - 0.6, y + tall],
    to: [x + dx + 0.6, y - tall],
    stroke: { width: 0.3, grey: 0 },
  });
  return [
    {
      kind: 'path',
      name: 'break',
      steps: [
        ['M', x - 1.4, y + tall],
        ['L', x - 0.2, y - tall],
        ['L', x + 1.4, y - tall],
        ['L', x + 0.2, y + tall],
        ['Z'],
      ],
      fill: 1,
    },
    stroke(-0.8),
    stroke(0.8),
  ];
}
