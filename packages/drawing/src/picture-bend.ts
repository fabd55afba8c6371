/** One bend as the operator sees it: tool, tube, what is finished before and after the turn, the free leg when pulled. */
import { scale } from '@runback/geometry';
import { type Barrier, barriersOf, type LabelAsk, placeLabels } from './page-labels.ts';
import { byDepth, cutTo, fitted, stockLength } from './picture-fit.ts';
import type { Spot } from './picture-project.ts';
import type { Scene, SceneAsk } from './picture-scene.ts';
import { type Lens, seen } from './picture-shapes.ts';
import {
  breakMark,
  clampItems,
  formerBefore,
  formerCentre,
  formerDepth,
  formerInFront,
  formerItems,
  ghostItems,
  hubs,
  outline,
  turning,
} from './picture-tool.ts';
import { tubeItems } from './picture-tube.ts';
import type { Part } from './set.ts';
import type { Box, Item, Point, Zone } from './types.ts';

const LEAST_TUBE = 1;
const BEFORE_GREY = 0.62;

/** The picture in a zone of its own. */
export function bendPicture(
  ask: SceneAsk & { readonly start: string; readonly free: string },
  zone: Zone,
): Part {
  const window = { x: zone.x + 1, y: zone.y + 1, width: zone.width - 2, height: zone.height - 2 };
  const { scene, laying } = fitted(ask, window);
  const lens: Lens = { projection: scene.projection, laying };
  const drawn = drawing(scene, lens, window);
  const labels = placeLabels(labelAsks(ask, drawn), {
    bounds: zone,
    barriers: drawn.barriers,
    taken: [],
    zone: zone.name,
  });
  return { zones: [zone], items: [...drawn.items, ...labels.items] };
}

interface Drawn {
  readonly items: readonly Item[];
  readonly barriers: readonly Barrier[];
  readonly start: Point;
  readonly startCut: boolean;
  readonly free: Point;
  readonly former: Point;
  readonly before: Point | null;
}

function drawing(scene: Scene, lens: Lens, window: Box): Drawn {
  const width = Math.max(LEAST_TUBE, scene.od * lens.laying.scale);
  const after = cutTo(seen(scene.after, lens), window);
  const before = scene.before && cutTo(seen(scene.before, lens), window);
  const ghost = cutTo([...seen(scene.ghost, lens)].reverse(), window);
  const stock = seen([[0, 0, 0], scale(scene.travel, stockLength(scene))], lens);
  const solid = { width, as: 'solid' } as const;
  const turn = turning(scene, lens);
  const { behind, front } = byDepth(after.spots, formerDepth(scene, lens) + width * 0.4);
  const clamp = clampItems(scene, lens);
  const tube = [
    ...front.flatMap((run) => tubeItems(run, { ...solid, name: 'leg-after' })),
    ...tubeItems(stock, solid),
  ];
  const former = formerItems(scene, lens);
  const pale = formerBefore(scene, lens);
  const items: Item[] = [
    ...pale,
    ...(before ? tubeItems(before.spots, { ...solid, grey: BEFORE_GREY, name: 'leg-before' }) : []),
    ...(before ? endMark(before.spots, width, { name: 'end-before', grey: BEFORE_GREY }) : []),
    ...turn.behind,
    ...endMark(after.spots, width, { name: 'end-after', grey: 0 }),
    ...behind.flatMap((run) => tubeItems(run, { ...solid, name: 'leg-after' })),
    ...(clamp.nearer ? [] : clamp.items),
    ...(formerInFront(scene, lens) ? [...tube, ...former] : [...former, ...tube]),
    ...(clamp.nearer ? clamp.items : []),
    ...ghostItems(ghost.spots, width),
    ...(scene.broken ? breakMark(seen([scale(scene.travel, -scene.straight / 2)], lens)[0]!.at, width) : []),
    ...turn.front,
  ];
  const points = (spots: readonly Spot[]): readonly Point[] => spots.map((spot) => spot.at);
  return {
    items,
    barriers: [
      ...[after.spots, before?.spots ?? [], ghost.spots, stock].flatMap((spots) =>
        barriersOf(points(spots), width),
      ),
      ...[former, pale, clamp.items].flatMap((solidItems) => barriersOf(outline(solidItems), 0.4)),
      ...barriersOf(turn.path, 3),
      ...hubs(scene, lens),
    ],
    start: after.spots[0]!.at,
    startCut: after.cut,
    free: stock[1]!.at,
    former: seen([formerCentre(scene)], lens)[0]!.at,
    before: before ? (before.spots[0]?.at ?? null) : null,
  };
}

/** The round end of the tube at START, or where the picture cuts it off. */
function endMark(
  spots: readonly Spot[],
  width: number,
  how: { readonly name: string; readonly grey: number },
): Item[] {
  return spots
    .slice(0, 1)
    .map(({ at }) => ({ kind: 'circle', centre: at, radius: width / 2, fill: how.grey, name: how.name }));
}

const LABEL = 2.3;

function labelAsks(
  ask: { readonly start: string; readonly free: string },
  drawn: Drawn,
): readonly LabelAsk[] {
  const bold = { cap: LABEL, weight: 'bold' } as const;
  return [
    {
      ...bold,
      text: drawn.startCut ? `to START ${ask.start}` : `START ${ask.start}`,
      at: drawn.start,
      tag: true,
      name: 'start-tag',
    },
    { ...bold, text: `FREE ${ask.free}`, at: drawn.free },
    { cap: 2, text: 'former', at: drawn.former },
    ...(drawn.before ? [{ cap: 1.9, text: 'before the turn', at: drawn.before }] : []),
  ];
}
