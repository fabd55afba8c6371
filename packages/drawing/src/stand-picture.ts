/** How to stand: the bench from above and the tube on its end, 60 × 20 mm. */
import type { BenchPlan } from '@runback/bending';
import type { Bench } from '@runback/job';
import { at, endViewing, former as formerBlock, pencil, person, personOut } from './end-view.ts';
import { pen } from './set.ts';
import type { Anchor, Box, GroupItem, Item, PathStep, Point, TextItem } from './types.ts';

export const STAND_SIZE: readonly [number, number] = [60, 20];

const LABEL = 1.9;
const TUBE = 1.5;
const PLAN_WIDTH = 39;

interface Label {
  readonly anchor?: Anchor;
  readonly cap?: number;
  readonly white?: boolean;
}

/** The picture with its top left corner at `corner`; its words belong to the zone named. */
export function standPicture(plan: Standing, corner: Point, zone: string): GroupItem {
  const { bench } = plan;
  const draw: Draw = (text, where, label = {}) => ({
    kind: 'text',
    x: where[0],
    y: where[1],
    cap: label.cap ?? LABEL,
    weight: 'bold',
    anchor: label.anchor ?? 'middle',
    fill: label.white ? 1 : 0,
    text,
    zone,
  });
  return {
    kind: 'group',
    at: corner,
    name: 'stand',
    items: [...fromAbove(plan, draw), ...onEnd(bench, draw)],
  };
}

/** What the picture is of. */
export type Standing = Pick<BenchPlan, 'bench' | 'from' | 'free'>;

/** The side of the tube the former is on, as the operator says it: near and far only from the side. */
function formerSide(bench: Bench): Bench['former'] | 'left' | 'right' {
  if (bench.plane === 'upright' || bench.stand === 'side') return bench.former;
  return endViewing(bench).former === 90 ? 'right' : 'left';
}

type Draw = (text: string, where: Point, label?: Label) => TextItem;

function fromAbove(standing: Standing, draw: Draw): Item[] {
  const { bench } = standing;
  if (bench?.stand !== 'side') return inLine(standing, draw);
  const y = 7.4;
  const startLeft = bench.startOn === 'left';
  // Tags stand on the side of the tube where the former is not.
  const tagsBelow = bench.former !== 'near' || bench.moves === 'bender';
  const tagY = tagsBelow ? y + 1.6 : y - 1.6 - 3.2;
  const [startX, freeX] = startLeft ? [0.5, PLAN_WIDTH - 0.5] : [PLAN_WIDTH - 0.5, 0.5];
  return [
    ...tool(bench, { at: [PLAN_WIDTH / 2, y], left: 0.5 }, draw),
    ...(bench.moves === 'bender' ? [vice([startX + (startLeft ? 3.2 : -3.2), y])] : []),
    ...startTag([startLeft ? 0.5 : PLAN_WIDTH - 0.5 - TAG[0], tagY], standing.from, draw),
    draw(`FREE ${standing.free}`, [freeX, tagY + 2.6], { anchor: startLeft ? 'end' : 'start' }),
    ...operatorAbove([PLAN_WIDTH / 2, 17.6], 0),
    draw('YOU', [PLAN_WIDTH / 2 + 5.6, 19.2], { anchor: 'start' }),
  ];
}

/** The operator stands in line with the tube, at either end, and looks along it to the right. */
function inLine({ bench, from, free }: Standing, draw: Draw): Item[] {
  const y = 9.6;
  const left = 7;
  const right = PLAN_WIDTH - 0.5;
  const atStart = bench?.stand !== 'behind-free';
  // Tags stand on the side of the tube where the former is not.
  const tagY =
    bench && formerSide(bench) === 'right'
      ? y - TUBE - TAG[1] + 0.2
      : y + TUBE + (bench?.moves === 'bender' ? 1.6 : -0.2);
  const tag = startTag([atStart ? left : right - TAG[0], tagY], from, draw);
  const other = draw(`FREE ${free}`, [atStart ? right : left, tagY + 2.6], {
    anchor: atStart ? 'end' : 'start',
  });
  const held = bench?.moves === 'bender' ? [vice([atStart ? left + 4 : PLAN_WIDTH - 4, y])] : [];
  return [
    ...(bench ? tool(bench, { at: [PLAN_WIDTH / 2 + 4.5, y], left }, draw) : tube(left, y)),
    ...held,
    ...tag,
    other,
    ...operatorAbove([2.6, y], 90),
    draw(bench ? 'YOU' : 'LOOK', [0, y + 7.6], { anchor: 'start' }),
    ...sight([left, y - 3.4], PLAN_WIDTH - 18, bench === null),
  ];
}

function sight(from: Point, length: number, shown: boolean): Item[] {
  if (!shown) return [];
  const [x, y] = from;
  return [
    { kind: 'line', from, to: [x + length, y], stroke: { width: 0.35, grey: 0, dash: [1.4, 0.9] } },
    triangle([x + length + 1.8, y], 90, 1.8),
  ];
}

function tube(left: number, y: number): Item[] {
  return [
    {
      kind: 'rect',
      x: left,
      y: y - TUBE / 2,
      width: PLAN_WIDTH - 0.5 - left,
      height: TUBE,
      fill: 1,
      stroke: pen(0.3),
    },
  ];
}

/** The tool from above, the tube in it. `tool` knows four formers; what lies under the tube is drawn first. */
function tool(bench: Bench, { at: [x, y], left }: { at: Point; left: number }, draw: Draw): Item[] {
  const stock = tube(left, y);
  const side = formerSide(bench);
  const label = (where: Point, anchor: Anchor): Item => draw(`former ${side}`, where, { anchor, cap: 1.8 });
  const turning = bench.moves === 'bender' ? carried([x + 7.6, y]) : [];
  if (bench.plane === 'flat' && bench.moves === 'tube') {
    // Down the page is the near side for somebody at the side, the right hand for somebody at the left end.
    const down = side === 'near' || side === 'right' ? 1 : -1;
    const centre: Point = [x, y + down * (TUBE / 2 + 2.6)];
    return [
      wheel(centre, 2.5),
      dot(centre),
      ...stock,
      ...turning,
      label([x + 3.6, centre[1] + 0.9], 'start'),
    ];
  }
  const block: Box = { x: x - 3.2, y: y - 1.4, width: 6.4, height: 2.8 };
  const body: Item = { kind: 'rect', ...block, fill: 0.72, stroke: pen(0.25), round: 0.4 };
  const named =
    bench.moves === 'bender' ? draw('bender', [x, y - 3], { cap: 1.8 }) : label([x, y - 3], 'middle');
  return bench.moves === 'bender' || bench.former === 'above'
    ? [...stock, body, ...turning, named]
    : [body, ...stock, ...turning, named];
}

const wheel = (centre: Point, radius: number): Item => ({
  kind: 'circle',
  centre,
  radius,
  fill: 0.72,
  stroke: pen(0.25),
});
const dot = (centre: Point): Item => ({ kind: 'circle', centre, radius: 0.5, fill: 0 });

/** The jaws that hold the tube still while the bender is carried round it. */
function vice([x, y]: Point): Item {
  const jaw = (top: number): PathStep[] => [
    ['M', x - 1.8, top],
    ['L', x + 1.8, top],
    ['L', x + 1.8, top + 1.3],
    ['L', x - 1.8, top + 1.3],
    ['Z'],
  ];
  return { kind: 'path', steps: [...jaw(y - TUBE / 2 - 1.3), ...jaw(y + TUBE / 2)], fill: 0 };
}

/** A loop round the tube: the bender is what turns. */
function carried([x, y]: Point): Item[] {
  return [
    {
      kind: 'path',
      steps: [
        ['M', x - 0.9, y - 1.9],
        ['A', 2.1, 0, 1, x - 0.9, y + 1.9],
      ],
      stroke: pen(0.5),
    },
    triangle([x - 2, y + 2], 265, 1.7),
  ];
}

const TAG: readonly [number, number] = [13.2, 3.3];

function startTag([x, y]: Point, from: string, draw: Draw): Item[] {
  const [width, height] = TAG;
  return [
    { kind: 'rect', x, y, width, height, fill: 0 },
    draw(`START ${from}`, [x + width / 2, y + (height + LABEL) / 2], { white: true }),
  ];
}

/** A person from above, looking `facing` degrees clockwise from up the page: shoulders, head, nose. */
function operatorAbove([x, y]: Point, facing: number): Item[] {
  return [
    {
      kind: 'group',
      at: [x, y],
      turn: facing,
      items: [
        {
          kind: 'path',
          steps: [
            ['M', -4.4, 0.9],
            ['C', -4.4, -1.6, 4.4, -1.6, 4.4, 0.9],
            ['C', 4.4, 2.4, -4.4, 2.4, -4.4, 0.9],
            ['Z'],
          ],
          fill: 0.72,
          stroke: pen(0.25),
        },
        { kind: 'circle', centre: [0, 0], radius: 1.6, fill: 0 },
        triangle([0, -2.5], 0, 1.5),
      ],
    },
  ];
}

/** A small arrow head with its tip at `tip`, pointing so many degrees clockwise from up. */
function triangle(tip: Point, facing: number, size: number): Item {
  const left = at(tip, size, facing + 155);
  const right = at(tip, size, facing - 155);
  return { kind: 'path', steps: [['M', ...tip], ['L', ...left], ['L', ...right], ['Z']], fill: 0 };
}

/** The same bench seen along the tube: former, pencil line on it, which way is up, where the operator is. */
function onEnd(bench: Bench | null, draw: Draw): Item[] {
  const viewing = endViewing(bench);
  const centre: Point = [49.4, 9.6];
  const r = 3.3;
  const items: Item[] = [
    formerBlock(centre, r, { at: viewing.former, grey: 0.72 }),
    { kind: 'circle', centre, radius: r, fill: 1, stroke: pen(0.35) },
    ...pencil(centre, r, { at: viewing.former, grey: 0 }),
    draw(!bench ? 'FORMER' : bench.moves === 'bender' ? 'PENCIL LINE' : 'TOP', [centre[0], 3], { cap: 1.8 }),
    draw(`seen from ${viewing.from}`, [centre[0], 19.2], { cap: 1.78 }),
  ];
  if (viewing.you === null) return items;
  const side = viewing.you === 90 ? 1 : -1;
  return [
    ...items,
    ...person(centre, personOut(viewing, r), viewing.you),
    draw('YOU', [centre[0] + side * 7.2, centre[1] + 4.4], { cap: 1.8 }),
  ];
}
