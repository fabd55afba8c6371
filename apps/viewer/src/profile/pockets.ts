/** What stays in the bore: the filled stretch, its sign and how much it is. */
import { dot, type PocketPlace } from 'runback';
import { amountText, shownPockets, signScale } from '../pockets/index.ts';
import { curveY } from './curve.ts';
import { xOf, yOf } from './frame.ts';
import { isAtRest } from './limit.ts';
import { isFree, label, lineHeight, tidy } from './measure.ts';
import { placeBefore, readingAt } from './readings.ts';
import type { Box, Frame, Label, Pocket, PocketFill, ProfileInput, Spot } from './types.ts';

/** Half the size of the plain sign, in parts of the lettering. */
const RADIUS = 0.62;
/** From the line up to the middle of the plain sign, in parts of the lettering. */
const OVER = 1.05;
/** A bore that is thinner than this in the drawing is all line, pixels. */
const THIN = 9;
/** Then a strip beside the line shows the stretch: from here to there, pixels from the middle of the line. */
const STRIP = [2.8, 5.6] as const;
/** Places along a filled stretch. */
const STEPS = 24;

/** Where liquid and air stay as the machine is tipped now. At rest they are those that the checks speak of. */
export function pocketsOf(frame: Frame, input: ProfileInput, spots: readonly Spot[]): readonly Pocket[] {
  if (input.pockets === null) return [];
  const { liquid, air } = input.pockets;
  const of = (kind: Pocket['kind'], places: readonly PocketPlace[]): readonly Pocket[] =>
    places.map((place) => {
      const x = xOf(frame, place.lowest);
      const findings = isAtRest(input) ? findingsOf(input, kind, place) : [];
      return {
        kind,
        at: place.lowest,
        volume: place.volume,
        x,
        y: curveY(spots, x),
        times: signScale(place.volume),
        fill: fillOf(frame, input, { kind, place }),
        findings,
        selected: isChosen(input, findings),
      };
    });
  return [...of('liquid', shownPockets(liquid)), ...of('air', shownPockets(air))];
}

const CHECKS = { liquid: 'pockets', air: 'air' } as const;

/** One finding may tell of all pockets of a kind, with the place of one; others lie in the very stretch. */
function findingsOf(
  { worked }: ProfileInput,
  kind: Pocket['kind'],
  { from, to }: PocketPlace,
): readonly number[] {
  const about = worked.findings.map((finding, index) => ({ ...finding, index }));
  const told = about.find(
    ({ check, at, verdict }) => check === CHECKS[kind] && at !== null && verdict !== 'pass',
  );
  const here = about.filter(
    ({ check, unit, at }) => isPoint(check, unit) && at !== null && at >= from && at <= to,
  );
  return [...(told ? [told] : []), ...here].map(({ index }) => index);
}

/** A low or a high point of the line, as the check of its fall tells of it. */
const isPoint = (check: string, unit: string): boolean => check === 'slope' && unit === 'count';

export const isChosen = (
  { selection }: Pick<ProfileInput, 'selection'>,
  findings: readonly number[],
): boolean => selection?.kind === 'finding' && findings.includes(selection.index);

interface Filled {
  readonly kind: Pocket['kind'];
  readonly place: PocketPlace;
}

/** The bore at a place: heights of its floor and its roof. */
interface Bore {
  readonly x: number;
  readonly floor: number;
  readonly roof: number;
}

/** The bore between the ends of a pocket, up to the level of liquid, down to the level of air. */
function fillOf(frame: Frame, input: ProfileInput, { kind, place }: Filled): PocketFill {
  const { bore } = input.worked.line.tube;
  if (bore * frame.perMm * frame.exaggeration < THIN) return stripOf(frame, input, { kind, place });
  const { from, to, lowest, depth } = place;
  const deepest = boreAt(frame, input, lowest);
  const level = kind === 'liquid' ? deepest.floor + depth : deepest.roof - depth;
  const bores = Array.from({ length: STEPS + 1 }, (_, i) =>
    boreAt(frame, input, from + ((to - from) * i) / STEPS),
  );
  const wet = bores.map(({ x, floor, roof }) =>
    kind === 'liquid'
      ? { x, low: floor, high: Math.max(floor, Math.min(roof, level)) }
      : { x, low: Math.min(roof, Math.max(floor, level)), high: roof },
  );
  const spot = (x: number, height: number): string => `${tidy(x)} ${tidy(yOf(frame, height))}`;
  const over = wet.map(({ x, high }) => spot(x, high));
  const under = wet.toReversed().map(({ x, low }) => spot(x, low));
  const open = bores.filter(({ floor, roof }) => floor <= level && level <= roof);
  const [first, last] = [open[0], open.at(-1)];
  const surface = first && last ? `M${spot(first.x, level)}H${tidy(last.x)}` : '';
  return { area: `M${[...over, ...under].join('L')}Z`, surface };
}

/** Under the line for liquid, over it for air. */
function stripOf(frame: Frame, input: ProfileInput, { kind, place: { from, to } }: Filled): PocketFill {
  const way = kind === 'liquid' ? 1 : -1;
  const line = Array.from({ length: STEPS + 1 }, (_, i) => {
    const at = from + ((to - from) * i) / STEPS;
    return { x: xOf(frame, at), y: yOf(frame, readingAt(input, at).height) };
  });
  const side = (off: number, spots: readonly Spot[]): readonly string[] =>
    spots.map(({ x, y }) => `${tidy(x)} ${tidy(y + way * off)}`);
  return {
    area: `M${[...side(STRIP[0], line), ...side(STRIP[1], line.toReversed())].join('L')}Z`,
    surface: '',
  };
}

/** How far floor and roof are apart upright follows from how steep the tube lies. */
function boreAt(frame: Frame, input: ProfileInput, at: number): Bore {
  const { places } = input.profile;
  const climb = dot(places[placeBefore(places, at, (place) => place.at)]!.tangent, input.up);
  const half = (input.worked.line.tube.bore / 2) * Math.sqrt(Math.max(0, 1 - climb * climb));
  const { height } = readingAt(input, at);
  return { x: xOf(frame, at), floor: height - half, roof: height + half };
}

/** A drop lies in the sag, a bubble on the crest: both over the line. */
export const pocketSign = (text: number, { x, y, times }: Pick<Pocket, 'x' | 'y' | 'times'>): Spot => ({
  x,
  y: y - text * OVER * times,
});

export const pocketBoxes = ({ size }: Frame, pockets: readonly Pocket[]): readonly Box[] =>
  pockets.map((pocket) => {
    const radius = size.text * RADIUS * pocket.times;
    const { x, y } = pocketSign(size.text, pocket);
    return { x: x - radius, y: y - radius * 1.2, width: 2 * radius, height: radius * 2.2 };
  });

/** How much it is, about its sign where there is room, the largest first. */
export function pocketLabels(
  frame: Frame,
  pockets: readonly Pocket[],
  taken: readonly Box[],
): readonly Label[] {
  const labels: Label[] = [];
  for (const pocket of pockets.toSorted((a, b) => b.volume - a.volume)) {
    const boxes = [...taken, ...labels.map(({ box }) => box)];
    const made = seatsFor(frame, pocket).find(({ box }) => isInside(frame, box) && isFree(box, boxes, 2));
    if (made) labels.push(made);
  }
  return labels;
}

/** Where the figure may stand, the best first. */
function seatsFor({ size: { text: size } }: Frame, pocket: Pocket): readonly Label[] {
  const { kind, at, volume, times, x, y } = pocket;
  const sign = pocketSign(size, pocket);
  const radius = size * RADIUS * times;
  const made = (across: number, down: number, anchor: Label['anchor']): Label =>
    label({
      key: `${kind}-${at}`,
      text: amountText(kind, volume),
      x: across,
      y: down,
      size,
      anchor,
      bold: true,
      halo: true,
    });
  const over = sign.y - radius * 1.2 - 3;
  return [
    made(sign.x, over, 'middle'),
    made(sign.x - radius - 2, sign.y + size * 0.3, 'end'),
    made(sign.x + radius + 2, sign.y + size * 0.3, 'start'),
    made(sign.x, over - lineHeight(size), 'middle'),
    made(x, y + size * 1.5, 'middle'),
    made(x, y + size * 1.5 + lineHeight(size), 'middle'),
  ];
}

const isInside = ({ rows, left, right }: Frame, { x, y, width, height }: Box): boolean =>
  y >= rows.plot.top && y + height <= rows.plot.bottom && x >= left && x + width <= right + 12;
