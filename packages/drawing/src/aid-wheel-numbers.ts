/** The numbers of the stops on the wheel, and the slit out of their way. */
import { sinCos } from '@runback/geometry';
import { toRadians } from '@runback/job';
import { crosses, type Label, type Placed, placeLabels, type Spot } from './aid-place.ts';
import { type Stop, stopName } from './aid-stops.ts';
import { type Disc, pageAngle, RING, WHEEL_RADIUS, WHEEL_ZONE } from './aid-wheel-plan.ts';
import type { Words } from './aid-wheel-words.ts';
import { at } from './end-view.ts';
import { textWidth } from './measure.ts';
import type { Box, Point } from './types.ts';

const CAPS = [4.5, 3.8, 3.2, 2.6, 2] as const;

interface Numbered {
  readonly words: readonly Words[];
  readonly slit: readonly [Point, Point];
  readonly labels: Placed;
}

/** All numbers as large as they go together; where they do not go, without the words on the ways round. */
export function numbered(disc: Disc, words: readonly Words[]): Numbered {
  // Short numbers first: a long list finds its place further in.
  const stops = [...disc.stops].sort((a, b) => a.bends.length - b.bends.length);
  const tries = [words, words.slice(0, 2)].flatMap((some) => {
    const boxes = some.map((one) => one.box);
    const slit = slitAt(disc, boxes);
    const room = { zone: WHEEL_ZONE, boxes, lines: [slit], allowed: (box: Box) => inRing(box, disc) };
    return CAPS.map(
      (cap): Numbered => ({
        words: some,
        slit,
        labels: placeLabels(
          stops.map((stop) => stopLabel(disc, stop, cap)),
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
