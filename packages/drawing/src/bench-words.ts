/** What is said at the bench besides the words of the plan: the same on paper and on a screen. */
import {
  type BenchPlan,
  type BenchRow,
  type EndName,
  type Side,
  sideOf,
  stanceOf,
  type TurnWords,
} from '@runback/bending';
import type { Bench, LengthStyle } from '@runback/job';
import { degrees, missWords, size } from './words.ts';

/** The caution without which nobody bends. */
export function turnCaution(bench: Bench | null, from: EndName): string {
  const wrong = 'Wrong side = scrap, and end-to-end will not show it.';
  if (bench?.moves === 'bender') return `Carry the BENDER, hold the tube; START is END ${from}. ${wrong}`;
  const place =
    bench?.stand === 'side' ? `START on your ${bench.startOn.toUpperCase()}` : `START is END ${from}`;
  return `Turn is of the TUBE, ${place}. ${wrong}`;
}

/** A turn made the wrong way shows after bend 2: before the next bend, or on the last one before anything is cut. */
export const holdWords = ({ rows }: BenchPlan): string | null =>
  rows.length < 2
    ? null
    : `After bend 2, hold the tube to picture 2 before ${rows.length > 2 ? 'bend 3' : 'you go on'}.`;

/** Findings name bends from A; worked from Z those are not the numbers of the rows. */
export const numberingWords = ({ from, rows }: BenchPlan): string | null =>
  from === 'A' || rows.length < 2
    ? null
    : `Findings count bends from END A: their B${rows.length} is bend 1 here.`;

/** Where to stand. */
export function placeWords(bench: Pick<Bench, 'stand' | 'startOn'>): string {
  if (bench.stand === 'side') return `Stand beside the tube, START on your ${bench.startOn.toUpperCase()}.`;
  if (bench.stand === 'at-start') return 'Stand at START, looking along the tube to FREE.';
  return 'Stand behind the stock at FREE, looking along the tube to START.';
}

const FORMER_WORDS: Readonly<Record<Side, string>> = {
  toward: 'on the near side',
  away: 'on the far side',
  above: 'above the tube',
  below: 'below the tube',
  left: 'on the left',
  right: 'on the right',
};

/** What the tool is like. */
export function toolWords(bench: Bench): string {
  if (bench.moves === 'bender')
    return 'The tube is held; you carry the BENDER round it. Turns are as seen from START, looking towards FREE.';
  return `Tool bends ${bench.plane}, former ${FORMER_WORDS[sideOf(stanceOf(bench).former)]}. You turn the TUBE.`;
}

/** How to stand, in two sentences; the first names the end worked from. */
export function standWords({
  bench,
  from,
}: Pick<BenchPlan, 'bench' | 'from'>): readonly [place: string, tool: string] {
  const tag = `START is END ${from}.`;
  if (bench) return [`${tag} ${placeWords(bench)}`, toolWords(bench)];
  return [
    `${tag} Stand at START and look along the tube towards FREE: turns are as seen from there.`,
    'The job does not say how you stand at the bender. Not sure: STOP.',
  ];
}

/** What to do to come into the next plane of bend, and how far. */
export function mainTurnWords({ kind, head, amount }: TurnWords): string {
  if (kind === 'first') return 'Pencil line at the former; no turn';
  if (kind === 'none') return head;
  if (kind === 'turn') return `${head} ${amount}`;
  return kind === 'half' ? `${head}: ${amount}` : `${head}, ${amount}`;
}

/** The check of the turn that the bench asks for where it serves, else the flag; null for the first bend. */
export function turnCheckWords({ turnCheck }: BenchRow, bench: Bench | null): string | null {
  if (turnCheck === null) return null;
  const { gauge, height, flagWords } = turnCheck;
  if (bench?.turnCheck === 'gauge' && gauge !== null) return gauge.words;
  if (bench?.turnCheck === 'height' && height !== null) return height.words;
  return flagWords;
}

/** What a plain half turn would do, where it is worth offering. */
export const flatWords = ({ words, flatJog }: BenchRow, unit: LengthStyle): string | null =>
  words.offerFlat && flatJog
    ? `a plain half turn puts the far end ${missWords(flatJog.distance, unit)} out`
    : null;

/** What stands at the dial: without a spring-back it is only the bend wanted, and that is not what to set. */
export const dialWords = ({ calibrated, dial }: BenchRow): string =>
  calibrated ? `DIAL ${degrees(dial)}°` : `BEND ${degrees(dial)}°, DIAL NOT SET`;

/** The bend wanted, named so that it is never taken for what is set on the dial. */
export function wantedWords(row: BenchRow, { rows, unit }: BenchPlan): string {
  const mixed = new Set(rows.map(({ radius }) => radius)).size > 1;
  const unset = !row.calibrated && rows.some(({ calibrated }) => calibrated) ? ', dial not set' : '';
  return `bend wanted ${degrees(row.exact.angle)}°${mixed ? ` on R ${size(row.radius, unit)}` : ''}${unset}`;
}

/** The signed check before a bend is pulled, which end-to-end cannot replace; null for the first bend. */
export function pullWords({ check: { words, tells } }: BenchRow): string | null {
  if (words === null) return null;
  return tells ? words : `${words}: cannot tell a wrong turn, go by the pencil line`;
}
