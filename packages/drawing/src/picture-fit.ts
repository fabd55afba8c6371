/** How much of a bend goes into its picture, at what scale, and what of it lies behind the tool. */
import { addScaled, scale, type Vec3 } from '@runback/geometry';
import { extent, type Laying, type Spot } from './picture-project.ts';
import { type Scene, type SceneAsk, sceneOf } from './picture-scene.ts';
import { seen } from './picture-shapes.ts';
import { between } from './picture-tube.ts';
import type { Box, Point } from './types.ts';

/** On the paper, the former is no smaller and no larger than this, mm of radius. */
const LEAST_FORMER = 5.5;
const MOST_FORMER = 15;

interface Fitted {
  readonly scene: Scene;
  readonly laying: Laying;
}

/**
 * The scale: all of it where the former stays large enough to see; else the straight in the tool is drawn shorter; and
 * where even that is not enough, what lies far from the tool leaves the picture.
 */
export function fitted(ask: SceneAsk, window: Box): Fitted {
  const radius = ask.plan.rows[ask.index]!.radius;
  const [least, most] = [LEAST_FORMER / radius, MOST_FORMER / radius];
  const whole = sceneOf(ask);
  if (fittingScale(whole, window) >= least) return lay(whole, window, { least, most });
  const shorter = sceneOf({ ...ask, mostStraight: Math.max(radius * 2, ask.od * 6) });
  return lay(shorter, window, { least, most });
}

/** Everything that should be in the picture. */
function places(scene: Scene): readonly Vec3[] {
  const { after, before, ghost, travel, former, radius, plane, od } = scene;
  const far = addScaled([0, 0, 0], former, 2 * radius);
  return [
    ...after,
    ...(before ?? []),
    ...ghost,
    scale(travel, stockLength(scene)),
    ...[1, -1].flatMap((side) => [
      addScaled(addScaled(far, travel, side * radius), plane, side * od),
      addScaled(addScaled(far, travel, side * radius), plane, -side * od),
    ]),
    addScaled([0, 0, 0], former, -2.4 * od),
  ];
}

/** How far the stock is drawn beyond the bend: room for the arrow behind the former. */
export const stockLength = ({ radius, od, inLine }: Scene): number =>
  inLine ? 3.6 * radius + 5 * od : 2 * radius + 4 * od;

const UNIT: Laying = { scale: 1, at: [0, 0] };

function fittingScale(scene: Scene, window: Box): number {
  const { low, high } = extent(seen(places(scene), { projection: scene.projection, laying: UNIT }));
  return Math.min(window.width / (high[0] - low[0]), window.height / (high[1] - low[1]));
}

/** The tool stays well inside the window even where the finished leg does not. */
const INSIDE = 0.3;

function lay(
  scene: Scene,
  window: Box,
  { least, most }: { readonly least: number; readonly most: number },
): Fitted {
  const by = Math.min(most, Math.max(least, fittingScale(scene, window) * 0.94));
  const { low, high } = extent(seen(places(scene), { projection: scene.projection, laying: UNIT }));
  const place = (axis: 0 | 1, from: number, size: number): number => {
    const middle = from + size / 2 - ((low[axis] + high[axis]) / 2) * by;
    return Math.min(from + size * (1 - INSIDE), Math.max(from + size * INSIDE, middle));
  };
  return {
    scene,
    laying: { scale: by, at: [place(0, window.x, window.width), place(1, window.y, window.height)] },
  };
}
/** Stretches that lie behind a depth, and those that do not. */
export function byDepth(
  spots: readonly Spot[],
  depth: number,
): Record<'behind' | 'front', readonly (readonly Spot[])[]> {
  const sorted: Record<'behind' | 'front', Spot[][]> = { behind: [], front: [] };
  let last: 'behind' | 'front' | null = null;
  for (let i = 0; i + 1 < spots.length; i++) {
    const [a, b] = [spots[i]!, spots[i + 1]!];
    const side = (a.depth + b.depth) / 2 > depth ? 'behind' : 'front';
    if (side === last) sorted[side].at(-1)!.push(b);
    else sorted[side].push([a, b]);
    last = side;
  }
  return sorted;
}

/** The part of a trace next to its last spot that stays inside the window. */
export function cutTo(
  spots: readonly Spot[],
  window: Box,
): { readonly spots: readonly Spot[]; readonly cut: boolean } {
  const kept: Spot[] = [];
  for (const spot of [...spots].reverse()) {
    const last = kept[0];
    if (last && !holds(window, spot.at)) return { spots: [atEdge(last, spot, window), ...kept], cut: true };
    kept.unshift(spot);
  }
  return { spots: kept, cut: false };
}

const holds = ({ x, y, width, height }: Box, [px, py]: Point): boolean =>
  px >= x && px <= x + width && py >= y && py <= y + height;

/** Where the stretch from a spot inside to one outside leaves the window. */
function atEdge(inside: Spot, outside: Spot, window: Box): Spot {
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (holds(window, between(inside.at, outside.at, middle))) low = middle;
    else high = middle;
  }
  return {
    at: between(inside.at, outside.at, low),
    depth: inside.depth + (outside.depth - inside.depth) * low,
  };
}
