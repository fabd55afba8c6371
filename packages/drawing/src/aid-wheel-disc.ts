/** The disc of the turn wheel, as the face that is printed is looked at: degrees clockwise from straight up. */
import { sinCos } from '@runback/geometry';
import { toRadians } from '@runback/job';
import type { AidContext } from './aid-context.ts';
import { crosses, type Label, type Placed, placeLabels, type Spot } from './aid-place.ts';
import { roundDegrees, type Stop, sideWords, stopName } from './aid-stops.ts';
import { at } from './end-view.ts';
import { textWidth } from './measure.ts';
import { cell, line, type Part, pen, type Style } from './set.ts';
import type { Box, Item, Point } from './types.ts';

export const WHEEL_RADIUS = 60;
/** Rings from the rim inward: ticks, figures; inside them the stops' numbers. mm */
const TICKS = 3.6;
const RING = 9;
const ZONE = 'wheel';

export interface DrawnWheel {
  readonly part: Part;
  /** Stops there was no room to number. */
  readonly left: readonly string[];
}

interface Disc {
  readonly centre: Point;
  readonly hole: number;
  /** +1: clockwise seen from START is clockwise on the page; −1 on the face that looks to FREE. */
  readonly sense: 1 | -1;
  readonly stops: readonly Stop[];
}

export function drawWheel(
  stops: readonly Stop[],
  how: { readonly context: AidContext; readonly face: 'START' | 'FREE'; readonly box: Box },
): DrawnWheel {
  const { context, face, box } = how;
  const centre: Point = [box.x + box.width / 2, box.y + box.height / 2];
  const disc: Disc = {
    centre,
    hole: context.worked.line.tube.od / 2,
    sense: face === 'START' ? 1 : -1,
    stops,
  };
  const { words, slit, labels } = numbered(disc, wordsOn(disc, context, face));
  const items: Item[] = [
    { kind: 'circle', centre, radius: WHEEL_RADIUS, fill: 1, stroke: pen(0.25), name: 'wheel-rim' },
    { kind: 'circle', centre, radius: disc.hole, stroke: pen(0.25), name: 'wheel-hole' },
    { ...line(...slit, pen(0.25)), name: 'wheel-slit' },
    ...scale(disc),
    zeroMark(disc),
    ...stops.flatMap((stop) => stopMark(disc, stop)),
    ...words.flatMap((one) => one.items),
    ...labels.items,
  ];
  return { part: { zones: [{ name: ZONE, ...box }], items }, left: labels.left };
}

const pageAngle = ({ sense }: Disc, degrees: number): number => sense * degrees;

/** Degrees both ways from the pencil line, figures every ten. */
function scale(disc: Disc): Item[] {
  return Array.from({ length: 360 }, (_, degrees) => degrees).flatMap((degrees): Item[] => {
    const angle = pageAngle(disc, degrees);
    const tall = degrees % 10 === 0 ? TICKS : degrees % 5 === 0 ? 2.4 : 1.4;
    const tick = line(
      at(disc.centre, WHEEL_RADIUS - tall, angle),
      at(disc.centre, WHEEL_RADIUS, angle),
      pen(0.15),
    );
    if (degrees % 10 !== 0) return [tick];
    const [x, y] = at(disc.centre, WHEEL_RADIUS - 6.1, angle);
    const text = roundDegrees(degrees).slice(0, -1);
    return [
      tick,
      {
        kind: 'text',
        x,
        y: y + 0.9,
        cap: 1.8,
        weight: 'regular',
        anchor: 'middle',
        fill: 0,
        text,
        zone: ZONE,
      },
    ];
  });
}

/** Points at the pencil line, at the hole. */
function zeroMark({ centre, hole }: Disc): Item {
  const tip = at(centre, hole + 0.3, 0);
  return {
    kind: 'path',
    fill: 0,
    name: 'wheel-zero',
    steps: [['M', ...tip], ['L', tip[0] - 1.4, tip[1] - 2.6], ['L', tip[0] + 1.4, tip[1] - 2.6], ['Z']],
  };
}

function stopMark(disc: Disc, stop: Stop): Item[] {
  const angle = pageAngle(disc, stop.degrees);
  const { centre } = disc;
  return [
    {
      ...line(at(centre, WHEEL_RADIUS, angle), at(centre, WHEEL_RADIUS - TICKS, angle), pen(0.9)),
      name: `wheel-stop-${stop.bends.join('-')}`,
    },
    line(
      at(centre, WHEEL_RADIUS - RING + 0.6, angle),
      at(centre, WHEEL_RADIUS - RING - 1.6, angle),
      pen(0.9),
    ),
  ];
}

const CAPS = [4.5, 3.8, 3.2, 2.6, 2] as const;

interface Numbered {
  readonly words: readonly Words[];
  readonly slit: readonly [Point, Point];
  readonly labels: Placed;
}

/** All numbers as large as they go together; where they do not go, without the words on the ways round. */
function numbered(disc: Disc, words: readonly Words[]): Numbered {
  const tries = [words, words.slice(0, 1)].flatMap((some) => {
    const boxes = some.map((one) => one.box);
    const slit = slitAt(disc, boxes);
    const room = { zone: ZONE, boxes, lines: [slit], allowed: (box: Box) => inRing(box, disc) };
    return CAPS.map(
      (cap): Numbered => ({
        words: some,
        slit,
        labels: placeLabels(
          disc.stops.map((stop) => stopLabel(disc, stop, cap)),
          room,
        ),
      }),
    );
  });
  const fewest = Math.min(...tries.map((one) => one.labels.left.length));
  return tries.find((one) => one.labels.left.length === fewest)!;
}

/** As far out as there is room, on the stop's own spoke. */
function stopLabel(disc: Disc, stop: Stop, cap: number): Label {
  const text = stopName(stop);
  const angle = pageAngle(disc, stop.degrees);
  const outer = WHEEL_RADIUS - RING - 1.6;
  const [sine, cosine] = sinCos(toRadians(angle));
  // From the middle of the number to its edge, along the spoke.
  const wide = textWidth(text, cap, 'bold') / 2;
  const reach = Math.min(wide / Math.abs(sine), cap / 2 / Math.abs(cosine)) + 0.6;
  const steps = Math.max(0, Math.floor(outer - reach - disc.hole));
  const spots = Array.from({ length: steps }, (_, i): Spot => {
    const [x, y] = at(disc.centre, outer - reach - i, angle);
    const leader = [at(disc.centre, outer, angle), at(disc.centre, outer - i, angle)] as const;
    return { text, cap, weight: 'bold', x, y: y + cap / 2, anchor: 'middle', leader };
  });
  return { what: text, spots };
}

function inRing(box: Box, { centre, hole }: Disc): boolean {
  const xs = [box.x - centre[0], box.x + box.width - centre[0]] as const;
  const ys = [box.y - centre[1], box.y + box.height - centre[1]] as const;
  const far = Math.hypot(Math.max(-xs[0], xs[1]), Math.max(-ys[0], ys[1]));
  const near = Math.hypot(Math.max(0, xs[0], -xs[1]), Math.max(0, ys[0], -ys[1]));
  return far <= WHEEL_RADIUS - RING && near >= hole + 3.2;
}

interface Words {
  readonly box: Box;
  readonly items: readonly Item[];
}

/** Which face this is, large; and an arrow for either way round, with what the operator does to go that way. */
function wordsOn({ centre, hole }: Disc, { plan }: AidContext, face: 'START' | 'FREE'): Words[] {
  const [x, y] = centre;
  const end = face === 'START' ? plan.from : plan.free;
  const side = face === 'START' ? 1 : -1;
  const carried = plan.bench?.moves === 'bender';
  const inner = hole + 3.5;
  const wide = Math.min(23, WHEEL_RADIUS - RING - inner - BOW - 1);
  const style = { cap: 2.6, minCap: 1.1, lines: 4, first: 'wrap', weight: 'bold', anchor: 'middle' } as const;
  const said = (which: 1 | -1): string =>
    sideWords(plan, which)
      .head.replace(/:/u, '')
      .replace(/ FROM YOU| YOU$/u, '');
  const way = (right: boolean): Words => {
    const box = { x: right ? x + inner : x - inner - BOW - wide, y: y - 6.5, width: BOW + wide, height: 13 };
    const text = block(
      { ...box, x: right ? box.x + BOW : box.x, width: wide },
      said(right === (side === 1) ? 1 : -1),
      style,
    );
    // What is on the right comes up to the pointer anticlockwise; a bender goes down to it.
    return { box, items: [...bow(centre, hole + 5, { right, up: !carried }), ...text.items] };
  };
  return [
    block({ x: x - 19, y: y + inner + 3.5, width: 38, height: 13 }, `THIS FACE TO ${face} ${end}`, {
      cap: 4.4,
      minCap: 3,
      lines: 2,
      first: 'wrap',
      weight: 'bold',
      anchor: 'middle',
    }),
    way(true),
    way(false),
  ];
}

/** Room for the bow beside the hole, mm. */
const BOW = 4;

/** An arrow bowed round the hole, from below to above on its side or down. */
function bow(
  centre: Point,
  r: number,
  { right, up }: { readonly right: boolean; readonly up: boolean },
): Item[] {
  const reach = (6 / r) * (180 / Math.PI);
  const low = right ? 90 + reach : 270 - reach;
  const high = right ? 90 - reach : 270 + reach;
  const [from, to] = up ? [low, high] : [high, low];
  const way = Math.sign(to - from);
  const neck = to - way * (2.6 / r) * (180 / Math.PI);
  return [
    {
      kind: 'path',
      name: right ? 'wheel-way-right' : 'wheel-way-left',
      steps: [
        ['M', ...at(centre, r, from)],
        ['A', r, 0, way > 0 ? 1 : 0, ...at(centre, r, neck)],
      ],
      stroke: pen(0.6),
    },
    {
      kind: 'path',
      fill: 0,
      steps: [
        ['M', ...at(centre, r, to)],
        ['L', ...at(centre, r + 1.4, neck)],
        ['L', ...at(centre, r - 1.4, neck)],
        ['Z'],
      ],
    },
  ];
}

const block = (box: Box, text: string, style: Style): Words => ({
  box,
  items: cell({ ...box, name: ZONE }, text, style).items,
});

/** Where the slit goes: half way between figures, off the words, as far from any stop as can be. */
function slitAt(disc: Disc, boxes: readonly Box[]): readonly [Point, Point] {
  const { centre, hole, stops } = disc;
  const distance = (angle: number): number =>
    Math.min(
      ...stops.map((stop) => Math.abs(((((angle - pageAngle(disc, stop.degrees)) % 360) + 540) % 360) - 180)),
    );
  const candidates = Array.from({ length: 36 }, (_, i) => 5 + i * 10);
  const slit = (angle: number): readonly [Point, Point] => [
    at(centre, hole, angle),
    at(centre, WHEEL_RADIUS, angle),
  ];
  const clear = candidates.filter((angle) => !boxes.some((box) => crosses(slit(angle), box)));
  return slit(clear.reduce((best, angle) => (distance(angle) > distance(best) ? angle : best)));
}
