/** The turn wheel: a disc on the tube whose stops come to a pointer that stays where it is. */

import type { LengthStyle } from '@runback/job';
import type { AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { roundDegrees, type Stop, sideWords, stopDegrees, stopsOf } from './aid-stops.ts';
import { drawWheel } from './aid-wheel-disc.ts';
import { WHEEL_RADIUS } from './aid-wheel-plan.ts';
import { drawPointer, POINTER } from './aid-wheel-pointer.ts';
import { fine } from './aid-words.ts';
import { endViewing } from './end-view.ts';
import { joined, type Part, zone } from './set.ts';
import { type Paragraph, stack } from './stack.ts';
import type { Box } from './types.ts';
import { size } from './words.ts';

/** On a larger tube the hole leaves too little of the disc, and the wrap strip reads finer anyway. mm */
const LARGEST_OD = 50;

export function wheelPages(context: AidContext): Made {
  const { plan, worked } = context;
  const { od } = worked.line.tube;
  if (plan.rows.length < 2) return { bodies: [], why: 'turn wheel: this line has no turn' };
  if (od > LARGEST_OD)
    return {
      bodies: [],
      why: `turn wheel: for tubes up to ${size(LARGEST_OD, plan.unit)} ${plan.unit} OD; take the wrap strip`,
    };
  const frame = aidFrame(context.paper, 'portrait');
  const stops = stopsOf(plan);
  const face = endViewing(plan.bench).from;
  const head = aidHow(frame.body, [...howWords(context, face), accuracy(od, plan.unit)]);
  const { x, y, width, height } = head.rest;
  const across = 2 * WHEEL_RADIUS + 2;
  const wheel = drawWheel(stops, { context, face, box: { x, y, width: across, height: across } });
  const list: Box = { x: x + across + 4, y, width: width - across - 4, height: across };
  const below = y + across + 3;
  const beside: Box = {
    x: x + POINTER.width + 5,
    y: below,
    width: width - POINTER.width - 5,
    height: y + height - below,
  };
  const part = joined([
    head.part,
    wheel.part,
    stopList(context, stops, { box: list, face }),
    drawPointer([x, below], plan.bench?.moves === 'bender'),
    ways(context, { face, box: beside, left: wheel.left }),
  ]);
  return { bodies: [{ title: 'TURN WHEEL', frame, part }] };
}

function howWords({ plan }: AidContext, face: 'START' | 'FREE'): string[] {
  const carried = plan.bench?.moves === 'bender';
  const end = face === 'START' ? plan.from : plan.free;
  return [
    'Glue to card. Cut the rim, the hole and the slit exactly on their lines: the hole must grip the tube.',
    `Slide it on the straight tube that is not bent yet, this face to ${face} (END ${end}), 0 at the pencil line. Bend 1: pencil line at the former, pointer at stop 1, pointer fixed to the ${carried ? 'BENDER' : 'bench'}.`,
    carried
      ? 'Each bend: carry the bender round until its pointer stands at the stop with the number of the bend. The tube and the wheel stay.'
      : 'Each bend: turn the tube, the way the list says, until the stop with its number stands at the pointer. Check with the flag.',
    'Wheel or pointer moved along the tube: the last number stands at the pointer before and after. Slipped: set 0 to the pencil line again.',
  ];
}

/** Arithmetic but for the last figure. */
function accuracy(od: number, unit: LengthStyle): string {
  const perDegree = (Math.PI * WHEEL_RADIUS) / 180;
  const play = 0.5;
  const off = (play / 2 / WHEEL_RADIUS) * (180 / Math.PI);
  return `Accuracy: 1° is ${fine(perDegree, unit)} at the rim and ${fine((Math.PI * od) / 360, unit)} on the tube. A hole ${fine(play, unit)} too wide reads up to ${off.toFixed(1)}° off. Cut by hand, ±2° (common practice, no source).`;
}

/** Beyond this a wheel is as soon there one way as the other, and only the stop counts. */
const HALF_ROUND_DEG = 150;

/** Every bend with its stop and how to get there. */
function stopList(
  { plan }: AidContext,
  stops: readonly Stop[],
  { box, face }: { box: Box; face: 'START' | 'FREE' },
): Part {
  const words = plan.rows.map(({ bend, turnDeg, words: { kind, head, amount } }): Paragraph => {
    const at = stopDegrees(stops, bend);
    const side = at === 0 || at === 180 ? '' : at < 180 === (face === 'START') ? ' right of 0' : ' left of 0';
    const far = Math.abs(turnDeg ?? 0) > HALF_ROUND_DEG;
    const turn = kind === 'first' ? 'no turn' : kind === 'none' ? head : `${head} ${amount}`;
    if (far) return { text: `${bend}: stop ${roundDegrees(at)}${side}; about half round, on to the stop` };
    return { text: `${bend}: stop ${roundDegrees(at)}${side}; ${turn}` };
  });
  const list = stack(zone('stops', [box.x, box.y], [box.width, box.height]), words, { cap: 3, minCap: 1.7 });
  if (list.left.length === 0) return list.part;
  const more: Paragraph = {
    text: `Bends ${words.length - list.left.length} to ${words.length}: turns on the sheet.`,
    weight: 'bold',
  };
  return stack(zone('stops', [box.x, box.y], [box.width, box.height]), [more, ...words], {
    cap: 1.7,
    minCap: 1.7,
  }).part;
}

/** The direction once more, apart from the numbers: it goes by where a stop is from the pointer, not from 0. */
function ways(
  { plan }: AidContext,
  { face, box, left }: { face: 'START' | 'FREE'; box: Box; left: readonly string[] },
): Part {
  const carried = plan.bench?.moves === 'bender';
  const right = face === 'START' ? 1 : -1;
  const way = (side: 'RIGHT' | 'LEFT', sign: 1 | -1): Paragraph => ({
    text: `${carried ? 'To a stop on the' : 'A stop on the'} ${side} of the pointer: ${sideWords(plan, sign).head}.`,
    weight: 'bold',
  });
  const words: Paragraph[] = [
    { text: 'Looking at the printed face, pointer up:' },
    way('RIGHT', right),
    way('LEFT', right === 1 ? -1 : 1),
    { text: 'A stop about opposite the pointer: either way round, on to the stop.' },
    { text: 'The wrong stop at the pointer = scrap, and end-to-end will not show it.' },
    ...(left.length === 0
      ? []
      : [{ text: `No room on the wheel for the numbers ${left.join('; ')}: see the list.` }]),
  ];
  return stack(zone('ways', [box.x, box.y], [box.width, box.height]), words, { cap: 3, minCap: 1.8 }).part;
}
