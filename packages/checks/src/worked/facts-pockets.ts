/** Liquid and air that stay, as rows. */
import type { DrainEnd } from '@runback/geometry';
import type { JobUnit } from '@runback/job';
import type { Fact, Kept, Pockets, WorstKept } from '../fluid-types.ts';
import { onlyLevel } from '../only-level.ts';
import { restOnly, say, sayAttitude, thickness } from '../words.ts';
import { inMl, isNone, sayMl, sayMlAtMost } from './facts-say.ts';
import { type PlaceWords, POCKET_MODEL, spots } from './pocket-words.ts';
import { type Bored, HANGING_LENGTHS, HANGS, narrowestOf } from './pockets.ts';

const WAY: Readonly<Record<DrainEnd, string>> = {
  A: 'end A open',
  Z: 'end Z open',
  both: 'both ends open',
};

interface Ask {
  readonly pockets: Pockets;
  readonly bored: Bored;
  readonly place: PlaceWords;
  readonly units: JobUnit;
}

const fact = (label: string, text: string, basis: string): Fact => ({
  group: 'pockets',
  label,
  text,
  basis,
  caution: null,
});

/** Rows on what stays in a bore, of one line or of several joined. */
export function pocketFacts(ask: Ask): readonly Fact[] {
  const { outlets, liquid, worst, air, capacity } = ask.pockets;
  const { drains, bleed } = ask.bored;
  return [
    fact('bore holds', sayMl(capacity), 'geometry, nominal bore'),
    ...stays(ask, { what: 'liquid', kept: liquid, worst, outlets, everyAttitude: drains }),
    ...(air ? stays(ask, { ...air, what: 'air', kept: air, everyAttitude: bleed?.tilted ?? false }) : []),
    ...clingFact(ask),
  ];
}

interface Staying {
  readonly what: 'liquid' | 'air';
  readonly kept: Kept;
  readonly worst: WorstKept | null;
  readonly outlets: DrainEnd;
  /** Whether the job asks for every attitude: then it is said where it has none. */
  readonly everyAttitude: boolean;
}

function stays(ask: Ask, staying: Staying): Fact[] {
  const { what, kept, outlets, everyAttitude } = staying;
  const text = `${keptWords(kept, ask)}${everyAttitude ? restOnly(ask.bored.attitudes) : ''}`;
  return [fact(`${what} that stays at rest`, text, restBasis(outlets, kept)), ...worstFact(ask, staying)];
}

const keptWords = (kept: Kept, ask: Ask): string =>
  isNone(kept.volume) ? 'none' : `${sayMl(kept.volume)}, ${placesWords(kept, ask)}`;

/** "in bend B3, 312 mm from end A, over 135 mm of the line, 6.6 mm deep", or how much in each of several places. */
function placesWords({ pockets }: Kept, { place, units }: Ask): string {
  const [only] = pockets;
  if (pockets.length > 1) return `in ${pockets.length} places: ${spots(pockets, place).join('; ')}`;
  return `${place(only!)}, over ${say(only!.to - only!.from, units)} of the line, ${say(only!.depth, units)} deep`;
}

const restBasis = (outlets: DrainEnd, { bound }: Kept): string =>
  `${POCKET_MODEL}; ${WAY[outlets]}; off by at most ${(Math.ceil(Math.max(1, inMl(bound) * 100)) / 100).toFixed(2)} ml`;

function worstFact(ask: Ask, { what, worst, outlets }: Staying): Fact[] {
  const label = `${what} that stays in the worst attitude`;
  if (worst === null || onlyLevel(ask.bored.attitudes)) return [];
  if (worst.tries === 0)
    return [fact(label, 'none', `${WAY[outlets]}; proven by its fall in every attitude`)];
  const basis = `${POCKET_MODEL}; ${WAY[outlets]}; branch and bound over the attitudes, ${worst.tries} looked at and a bound for the rest`;
  if (isNone(worst.atMost)) return [fact(label, 'none', basis)];
  const most = `certainly no more than ${sayMlAtMost(worst.atMost)}`;
  const found = isNone(worst.volume)
    ? 'none found'
    : `${sayMl(worst.volume)}, ${sayAttitude(worst, ask.bored.axes)}: ${placesWords(worst, ask)}`;
  return [fact(label, `${found}; ${most}`, basis)];
}

const CLING_BASIS =
  `capillary length √(σ/(ρ·g)); in a bore under ${HANGING_LENGTHS.toFixed(3)} of them (ρ·g·r²/σ under ${HANGS}) a long bubble does not rise, ` +
  'not even in a plumb tube: F. P. Bretherton, J. Fluid Mech. 10 (1961), from memory; a clean wetted wall, all at rest: slope, dirt and shaking are not in it';

/** σ and the limit itself are not known better than this: as far as that nothing is said for sure. */
const NEAR = 0.1;

function clingFact({ pockets: { cling }, bored, units }: Ask): Fact[] {
  if (cling === null) return [];
  const bore = narrowestOf(bored);
  const limit = HANGING_LENGTHS * cling.capillaryLength;
  const name = bored.fluid?.name ?? 'the liquid';
  const sizes =
    `narrowest bore ${thickness(bore, units)}, limit ${thickness(limit, units)} ` +
    `(${HANGING_LENGTHS.toFixed(3)} capillary lengths of ${name}, ${thickness(cling.capillaryLength, units)})`;
  const flush = bored.bleed === null ? '' : '; only flow drives bubbles out of it, a fall does not';
  const text =
    bore > limit * (1 + NEAR)
      ? `a film; wide enough for a bubble to rise in it: ${sizes}`
      : `a film, and a plug or a bubble may stand still in it whatever its fall${flush}: ${sizes}${bore < limit * (1 - NEAR) ? '' : ', too near to be sure'}`;
  return [fact('clings by surface tension', text, CLING_BASIS)];
}
