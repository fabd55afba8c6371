/** The whole drawing of the run profile, laid out in pixels. Pure: the same input gives the same drawing. */
import { alongAxis, heightAxis, heightCaption, rowNames } from './axes.ts';
import { bendsOf } from './bends.ts';
import { curveSpan, spotsOf, stretchesOf } from './curve.ts';
import { fallsOf } from './falls.ts';
import { frameOf, small, xOf, yOf } from './frame.ts';
import { laneOf } from './lane.ts';
import { type Limit, limitOf } from './limit.ts';
import { isFree, label } from './measure.ts';
import { pocketBoxes, pocketLabels, pocketsOf } from './pockets.ts';
import { seatsOf } from './seats.ts';
import { legOf, straightsOf } from './straights.ts';
import { endBoxes, endsOf, flagBoxes, flagsOf } from './tags.ts';
import type { Box, Frame, Label, ProfileInput, ProfilePicture, Spot } from './types.ts';

/** Lays out the run profile of a line that can exist. */
export function profilePicture(input: ProfileInput): ProfilePicture {
  const heights = input.falls.map(({ height }) => height);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const frame = frameOf(input.size, { length: input.profile.length, low, high });
  const spots = spotsOf(frame, input);
  const caption = heightCaption(frame, input);
  const bends = bendsOf(frame, input, Math.max(...caption.map(({ box }) => box.x + box.width)) + 8);
  const [along, height] = [alongAxis(frame, input), heightAxis(frame, input)];
  const line = onTheLine(frame, input, spots);
  const straights = straightsOf(frame, input, flagBoxes(frame, line.signs.flags));
  const seats = seatsOf(frame, input, spots);
  const lane = laneOf(frame, input);
  return {
    frame,
    spots,
    stretches: stretchesOf(frame, input, spots),
    bands: bends.bands,
    along: along.ticks,
    heights: height.ticks,
    datum: yOf(frame, 0),
    rules: straights.rules,
    seats: seats.seats,
    ...line.signs,
    lane: lane.lane,
    chosen: chosenOf(frame, input),
    labels: [
      ...caption,
      ...rowNames(frame, seats.seats.length > 0),
      ...height.labels,
      ...along.labels,
      ...bends.labels,
      ...straights.labels,
      ...seats.labels,
      ...lane.labels,
      ...line.labels,
    ],
  };
}

type Signs = Pick<ProfilePicture, 'ends' | 'pockets' | 'flags' | 'flows' | 'limit'>;

/** Everything that stands on or at the line: the signs first, then words where the signs leave room. */
function onTheLine(
  frame: Frame,
  input: ProfileInput,
  spots: readonly Spot[],
): { readonly signs: Signs; readonly labels: readonly Label[] } {
  const { ends, labels: names } = endsOf(frame, input, spots);
  const pockets = pocketsOf(frame, input, spots);
  const flags = flagsOf(frame, input, { spots, pockets });
  const signs = [...endBoxes(frame, ends), ...pocketBoxes(frame, pockets), ...flagBoxes(frame, flags)];
  const amounts = pocketLabels(frame, pockets, signs);
  const taken = [...signs, ...amounts.map(({ box }) => box)];
  const falls = fallsOf(frame, input, { spots, taken });
  const limit = limitOf(frame, input, spots);
  const words =
    limit && limitWords(frame, limit, { spots, taken: [...taken, ...falls.labels.map(({ box }) => box)] });
  return {
    signs: { ends, pockets, flags, flows: falls.flows, limit: limit?.triangle ?? null },
    labels: [...names, ...amounts, ...falls.labels, ...(words ? [words] : [])],
  };
}

interface Around {
  readonly spots: readonly Spot[];
  readonly taken: readonly Box[];
}

/** The fall wanted in words by its triangle, clear of the line. */
function limitWords(frame: Frame, { seats, words }: Limit, { spots, taken }: Around): Label | null {
  const size = small(frame.size);
  for (const { x, y } of seats) {
    const made = label({ key: 'limit', text: words, x, y: y + size * 0.3, size, ink: 'muted', halo: true });
    const { box } = made;
    const [top, bottom] = curveSpan(spots, box.x, box.x + box.width);
    const clear = box.y > bottom + 2 || box.y + box.height < top - 2;
    const inside =
      box.x >= frame.left && box.x + box.width <= frame.right && box.y + box.height <= frame.rows.plot.bottom;
    if (clear && inside && isFree(box, taken, 3)) return made;
  }
  return null;
}

/** From where to where what is selected reaches, unless it is a bend. */
function chosenOf(frame: Frame, input: ProfileInput): readonly [number, number] | null {
  const leg = legOf(input);
  return leg ? [xOf(frame, leg.start), xOf(frame, leg.end)] : null;
}
