/** The words that the bend sheet prints beside those of the plan, said here the same: a test holds the two together. */
import {
  type BenchPlan,
  type BenchRow,
  type EndName,
  formatLength,
  type LengthStyle,
  type Line,
  type OrderStep,
  type TurnWords,
} from 'runback';
import { type Bench, formerSide } from './bench-choice.ts';

/** A length as the tape reads it, without unit: half millimetres or the steps of an inch, never more. */
export const tapeWords = (mm: number, unit: LengthStyle): string =>
  formatLength(unit === 'mm' ? Math.round(mm * 2) / 2 : mm, unit, { decimals: 1, bare: true });

/** A check dimension: whole millimetres, or steps of an inch. */
export const heightWords = (mm: number, unit: LengthStyle): string =>
  formatLength(mm, unit, { decimals: 0, bare: true });

/** Half degrees, without the sign for degrees. */
export const degreeWords = (radians: number): string => String(Math.round((radians * 360) / Math.PI) / 2 + 0);

/** The unit, said once for a whole screen. */
export const unitWord = (unit: LengthStyle): 'mm' | 'in' => (unit === 'mm' ? 'mm' : 'in');

const sizeWords = (mm: number, unit: LengthStyle): string =>
  formatLength(mm, unit, { ...(unit === 'mm' ? {} : { denominator: null }), decimals: 3, bare: true });

/** `12 × 1 Stainless 304` */
export const tubeWords = ({ tube }: Line, unit: LengthStyle): string =>
  `${sizeWords(tube.od, unit)} × ${sizeWords(tube.wall, unit)} ${tube.material.name}`;

/** How far rounding moves an end: small, so finer than the tape and with its unit. */
export const missWords = (mm: number, unit: LengthStyle): string =>
  unit === 'mm'
    ? formatLength(mm, unit, { decimals: 1 })
    : formatLength(mm, unit, { denominator: null, decimals: 2 });

/** The check of the turn that the bench asks for where it serves, else the flag. */
export function turnCheckWords({ turnCheck }: BenchRow, bench: Bench | null): string | null {
  if (turnCheck === null) return null;
  const { gauge, height, flagWords } = turnCheck;
  if (bench?.turnCheck === 'gauge' && gauge !== null) return gauge.words;
  if (bench?.turnCheck === 'height' && height !== null) return height.words;
  return flagWords;
}

/** What to do to come into the next plane; how far is said apart only where it is one angle. */
export function orderWords({ kind, head, amount }: TurnWords): string {
  if (kind === 'first') return `${head}; ${amount}`;
  if (kind === 'half') return `${head}: ${amount}`;
  return kind === 'near-half' ? `${head}, ${amount}` : head;
}

/** The same at the arrow of a picture, short. */
export const arrowWords = ({ kind, head, amount }: TurnWords): string =>
  kind === 'near-half' ? head.slice(head.indexOf(': ') + 2) : amount;

/** The bend wanted, named so that it is never taken for what is set. */
export function wantedWords(row: BenchRow, plan: BenchPlan): string {
  const mixed = new Set(plan.rows.map(({ radius }) => radius)).size > 1;
  const on = mixed ? ` on R ${sizeWords(row.radius, plan.unit)}` : '';
  return `bend wanted ${degreeWords(row.exact.angle)}°${on}`;
}

/** What a plain half turn would do, where it is worth offering. */
export const flatWords = ({ words, flatJog }: BenchRow, unit: LengthStyle): string | null =>
  words.offerFlat && flatJog
    ? `a plain half turn would put the far end ${missWords(flatJog.distance, unit)} out`
    : null;

/** The signed check before a bend is pulled. */
export function pullWords({ check: { words, tells } }: BenchRow): string | null {
  if (words === null) return null;
  return tells ? words : `${words}: cannot tell a wrong turn, go by the pencil line`;
}

/** The caution without which nobody bends. */
export function turnCaution(bench: Bench | null, from: EndName): string {
  const wrong = 'Wrong side = scrap, and end-to-end will not show it.';
  if (bench?.moves === 'bender') return `Carry the BENDER, hold the tube; START is END ${from}. ${wrong}`;
  const place =
    bench?.stand === 'side' ? `START on your ${bench.startOn.toUpperCase()}` : `START is END ${from}`;
  return `Turn is of the TUBE, ${place}. ${wrong}`;
}

/** A turn made the wrong way shows here, while the tube can still be saved. */
export const HOLD_WORDS = 'After bend 2, hold the tube to picture 2 before bend 3.';

/** Where to stand. */
export function placeWords(bench: Pick<Bench, 'stand' | 'startOn'>): string {
  if (bench.stand === 'side') return `Stand beside the tube, START on your ${bench.startOn.toUpperCase()}.`;
  if (bench.stand === 'at-start') return 'Stand at START, looking along the tube to FREE.';
  return 'Stand behind the stock at FREE, looking along the tube to START.';
}

/** How one stands, as short as it can be said. */
export function standShort({ bench }: Pick<BenchPlan, 'bench'>): string {
  if (bench === null) return 'as seen from START';
  if (bench.moves === 'bender') return 'you carry the BENDER';
  if (bench.stand === 'side') return `on your ${bench.startOn.toUpperCase()}`;
  return bench.stand === 'at-start' ? 'you stand at START' : 'you stand at FREE';
}

const FORMER_WORDS = {
  toward: 'on the near side',
  away: 'on the far side',
  above: 'above the tube',
  below: 'below the tube',
  left: 'on the left',
  right: 'on the right',
} as const;

/** What the tool is like. */
export function toolWords(bench: Bench): string {
  if (bench.moves === 'bender')
    return 'The tube is held; you carry the BENDER round it. Turns are as seen from START, looking towards FREE.';
  return `Tool bends ${bench.plane}, former ${FORMER_WORDS[formerSide(bench)]}. You turn the TUBE.`;
}

/** How to stand, in lines; the first names the end. */
export function standWords({ bench, from }: Pick<BenchPlan, 'bench' | 'from'>): readonly string[] {
  const tag = `START is END ${from}.`;
  if (!bench)
    return [
      `${tag} Stand at START and look along the tube towards FREE: turns are as seen from there.`,
      'The job does not say how you stand at the bender. Not sure: STOP.',
    ];
  return [`${tag} ${placeWords(bench)}`, toolWords(bench)];
}

/** What is to be careful about with this line, material first, then the service and the ends; each once. */
export function cautionsOf({ tube, service, endA, endZ }: Line): readonly string[] {
  return [
    ...new Set([
      ...tube.material.cautions,
      ...service.cautions,
      ...endA.fitting.cautions,
      ...endZ.fitting.cautions,
    ]),
  ];
}

/** Findings name bends from A; worked from Z those are not the numbers of the steps. */
export const numberingWords = ({ from, rows }: BenchPlan): string | null =>
  from === 'A' || rows.length < 2
    ? null
    : `Findings count bends from END A: their B${rows.length} is bend 1 here.`;

/** The steps of the order list before the first bend, without the marks, and those behind the last. */
export function splitOrder(steps: readonly OrderStep[]): {
  readonly before: readonly OrderStep[];
  readonly mark: OrderStep | null;
  readonly after: readonly OrderStep[];
} {
  const hook = steps.findIndex(({ kind }) => kind === 'hook');
  const last = steps.findLastIndex(({ kind }) => kind === 'bend' || kind === 'hook' || kind === 'mark');
  return {
    before: steps.slice(0, hook + 1),
    mark: steps.find(({ kind }) => kind === 'mark') ?? null,
    after: steps.slice(last + 1).filter(({ kind }) => kind !== 'check'),
  };
}
