/** The disc of the turn wheel, as the face that is printed is looked at: degrees clockwise from straight up. */
import type { AidContext } from './aid-context.ts';
import { roundDegrees, type Stop } from './aid-stops.ts';
import { numbered } from './aid-wheel-numbers.ts';
import { type Disc, pageAngle, RING, TICKS, WHEEL_RADIUS, WHEEL_ZONE } from './aid-wheel-plan.ts';
import { wordsOn } from './aid-wheel-words.ts';
import { at } from './end-view.ts';
import { line, type Part, pen } from './set.ts';
import type { Box, Item, Point } from './types.ts';

export interface DrawnWheel {
  readonly part: Part;
  /** Stops there was no room to number. */
  readonly left: readonly string[];
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
  return { part: { zones: [{ name: WHEEL_ZONE, ...box }], items }, left: labels.left };
}

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
        zone: WHEEL_ZONE,
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
