/** The wrap strip: once round the tube, with a line for each stop. */
import type { LengthStyle } from '@runback/job';
import type { AidBody, AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { inside, type Label, type Placed, placeLabels, type Spot } from './aid-place.ts';
import { GLUE, jointName, type Segment, segmentsOf } from './aid-ribbon.ts';
import { roundDegrees, type Stop, stopDegrees, stopName, stopsOf } from './aid-stops.ts';
import { fine } from './aid-words.ts';
import { cell, joined, line, type Part, pen, rect, zone } from './set.ts';
import { type Paragraph, stack } from './stack.ts';
import type { Box, Item } from './types.ts';
import { size } from './words.ts';

/** Below this a pen line is so many degrees wide that the strip says nothing the eye does not. mm */
const SMALLEST_OD = 12;
const PAPER_THICK = 0.1;
const PEN = 0.5;
const HEIGHT = 40;
const APART = 5;
/** Along the edge towards START: degrees and the stops' lines. mm */
const SCALE = 9;

/** Length of a strip that goes once round: at the middle of the paper. mm */
export const wrapLength = (od: number): number => Math.PI * (od + PAPER_THICK);

export function stripPages(context: AidContext): Made {
  const { plan, worked } = context;
  const { od } = worked.line.tube;
  if (plan.rows.length < 2) return { bodies: [], why: 'wrap strip: this line has no turn' };
  const pen = penDegrees(od);
  if (od < SMALLEST_OD)
    return {
      bodies: [],
      why: `wrap strip: on ${size(od, plan.unit)} ${plan.unit} tube a pen line of ${fine(PEN, plan.unit)} is ${pen.toFixed(0)}° wide`,
    };
  const frame = aidFrame(context.paper, 'portrait');
  const stops = stopsOf(plan);
  const round = wrapLength(od);
  const segments = segmentsOf(round, frame.body.width - GLUE, plan.unit);
  const drawn = segments.map((segment) => drawPiece(stops, segment, { context, round }));
  const lost = drawn.flatMap((one) => one.left);
  const head = aidHow(frame.body, [
    ...howWords(context, segments.length),
    accuracy(round, pen, plan.unit),
    ...(lost.length > 0 ? [`No room for the number of stop ${lost.join(', ')}: see the list.`] : []),
  ]);
  const { x, y, width, height } = head.rest;
  const tall = drawn.length * (HEIGHT + APART);
  const list: Box = { x, y: y + tall, width, height: height - tall };
  const part = joined([
    head.part,
    ...drawn.map((one, i) => one.at(x, y + i * (HEIGHT + APART))),
    stopList(stops, { context, round, box: list }),
  ]);
  const body: AidBody = { title: 'WRAP STRIP', frame, part };
  return { bodies: [body] };
}

const penDegrees = (od: number): number => (PEN / wrapLength(od)) * 360;

function howWords({ plan }: AidContext, pieces: number): string[] {
  const carried = plan.bench?.moves === 'bender';
  return [
    `Cut out${pieces > 1 ? ', join the pieces at their letters' : ''}. Wrap it round the straight tube close to the tool, printed side out, arrow to FREE (END ${plan.free}), the line 0 on the pencil line; the other end meets it there, the glue tab under it. Does not meet? Wrong tube or print not true.`,
    carried
      ? 'Bend 1: bender on the pencil line; mark the bender there. Each bend: carry the bender until its mark stands at the line with the number of the bend.'
      : 'Bend 1: pencil line at the former; mark the tool beside line 1. Each bend: turn the tube, the way the sheet says, until the line with its number stands at that mark.',
    'Seen with the arrow pointing away from you, lines to the right are clockwise, seen from START.',
  ];
}

function accuracy(round: number, pen: number, unit: LengthStyle): string {
  return `Accuracy: 1° is ${fine(round / 360, unit)}; a pen line of ${fine(PEN, unit)} is ${pen.toFixed(1)}° wide. Read to half a line, ±${(pen / 2).toFixed(1)}° (common practice, no source).`;
}

interface Piece {
  readonly at: (x: number, y: number) => Part;
  readonly left: readonly string[];
}

function drawPiece(
  stops: readonly Stop[],
  segment: Segment,
  how: { readonly context: AidContext; readonly round: number },
): Piece {
  const { round, context } = how;
  const name = `wrap strip ${segment.number}`;
  const net = segment.to - segment.from;
  const last = segment.number === segment.count;
  const whole = net + GLUE;
  const place = (degrees: number): number => (degrees / 360) * round - segment.from;
  const here = (x: number): boolean => x >= 0 && (x < net || (last && x <= net));
  // From right to left, as on the tape.
  const mine = stops.filter((stop) => here(place(stop.degrees))).sort((a, b) => b.degrees - a.degrees);
  const area: Box = { x: 0, y: 8, width: net, height: HEIGHT - SCALE - 8 };
  const room = { zone: name, boxes: [], lines: [], allowed: (box: Box) => inside(box, area) };
  const labels = atOneSize((cap) =>
    placeLabels(
      mine.map((stop) => stopLabel(stop, place(stop.degrees), { area, cap })),
      room,
    ),
  );
  const items: Item[] = [
    rect({ x: 0, y: 0, width: whole, height: HEIGHT }, { stroke: pen(0.2) }),
    rect({ x: net, y: 0, width: GLUE, height: HEIGHT }, { fill: 0.94 }),
    {
      ...line([0, 0], [0, HEIGHT], pen(0.4)),
      name: last && segment.number === 1 ? 'strip-start' : `strip-from-${segment.number}`,
    },
    { ...line([net, 0], [net, HEIGHT], pen(0.4)), name: last ? 'strip-end' : `strip-to-${segment.number}` },
    ...degreesOf(place, here),
    ...mine.map((stop) => ({
      ...line([place(stop.degrees), HEIGHT - SCALE], [place(stop.degrees), HEIGHT], pen(PEN)),
      name: `strip-stop-${stop.bends.join('-')}`,
    })),
    ...toFree(name, { net, context }),
    ...cell(
      { name, x: net + 0.5, y: 14, width: GLUE - 1, height: 10 },
      last ? 'glue' : `glue ${jointName(segment.number)}`,
      { cap: 2, minCap: 1.4, lines: 2, anchor: 'middle' },
    ).items,
    ...labels.items,
  ];
  return {
    left: labels.left,
    at: (x, y) => ({
      zones: [{ name, x, y, width: whole, height: HEIGHT }],
      items: [{ kind: 'group', at: [x, y], name: `wrap-strip-${segment.number}`, items }],
    }),
  };
}

/** Every ten degrees, longer at quarters. */
const degreesOf = (place: (degrees: number) => number, here: (x: number) => boolean): Item[] =>
  Array.from({ length: 37 }, (_, i) => i * 10)
    .filter((degrees) => here(place(degrees)))
    .map((degrees) =>
      line([place(degrees), HEIGHT - (degrees % 90 === 0 ? 4 : 2)], [place(degrees), HEIGHT], pen(0.15)),
    );

const CAPS = [4, 3.4, 2.8, 2.2, 1.6] as const;

/** All numbers as large as they go together; when they go at no size, the smallest. */
function atOneSize(set: (cap: number) => Placed): Placed {
  const tries = CAPS.map(set);
  return tries.find((one) => one.left.length === 0) ?? tries.at(-1)!;
}

/** Over its own line, or beside its leader. */
function stopLabel(
  stop: Stop,
  x: number,
  { area, cap }: { readonly area: Box; readonly cap: number },
): Label {
  const text = stopName(stop);
  const rows = Array.from(
    { length: Math.floor((area.height - cap) / (cap * 1.3)) + 1 },
    (_, i) => area.y + area.height - 0.6 - i * cap * 1.3,
  );
  const spots = (['middle', 'start', 'end'] as const).flatMap((anchor) =>
    rows.map(
      (y): Spot => ({
        text,
        cap,
        weight: 'bold',
        x: x + (anchor === 'start' ? 0.6 : anchor === 'end' ? -0.6 : 0),
        y,
        anchor,
        leader: [
          [x, HEIGHT - SCALE],
          [x, anchor === 'middle' ? y + 0.4 : y - cap],
        ],
      }),
    ),
  );
  return { what: text, spots };
}

function toFree(
  name: string,
  { net, context: { plan } }: { readonly net: number; readonly context: AidContext },
): Item[] {
  const x = 3.5;
  return [
    { kind: 'path', fill: 0, steps: [['M', x - 1.8, 4], ['L', x, 1], ['L', x + 1.8, 4], ['Z']] },
    line([x, 4], [x, 7], pen(0.5)),
    ...cell({ name, x: 7, y: 1.2, width: net - 8, height: 5.6 }, `to FREE (END ${plan.free})`, {
      cap: 2.6,
      minCap: 1.4,
      lines: 2,
      weight: 'bold',
    }).items,
  ];
}

/** Each bend with its stop in degrees and along the strip, for whoever marks without the paper. */
function stopList(
  stops: readonly Stop[],
  how: { readonly context: AidContext; readonly round: number; readonly box: Box },
): Part {
  const { context, round, box } = how;
  const words = context.plan.rows.map(({ bend, words: { kind, head, amount } }): Paragraph => {
    const degrees = stopDegrees(stops, bend);
    const turn = kind === 'first' ? 'no turn' : kind === 'none' ? head : `${head} ${amount}`;
    return {
      text: `${bend}: ${degrees === 0 ? 'at the pencil line' : `${fine((degrees / 360) * round, context.plan.unit)} from 0, ${sideOf(degrees)}`}; ${turn}`,
    };
  });
  return stack(zone('stops', [box.x, box.y], [box.width, box.height]), words, {
    cap: 3,
    minCap: 1.7,
    columns: 2,
  }).part;
}

const sideOf = (degrees: number): string =>
  degrees === 180
    ? roundDegrees(degrees)
    : `${roundDegrees(degrees)} ${degrees < 180 ? 'clockwise' : 'anticlockwise'}`;
