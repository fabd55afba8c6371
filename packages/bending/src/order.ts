/** The order at the bench: what goes on the tube when, where the tape hooks, what is sawn off and formed last. */
import type { LengthStyle, Line, LineEnd } from '@runback/job';
import { endOf, formedBefore, formWord, hookOf, isFormed } from './ends.ts';
import { parksOf } from './park.ts';
import { roundLength } from './rounding.ts';
import { endWords, otherEnd, sayLength } from './say.ts';
import type { BenchOrder, BendPlan, EndName, OrderStep, PlanRow } from './types.ts';

/** Afterwards the tape no longer lies straight. */
const MARK_ALL = 'mark ALL bends now; arrows to FREE';

/**
 * The order at the bench for a plan: saw, tag, pencil line, what goes on and is formed first, hook the tape, bend,
 * check, trim, what goes on and is formed last.
 *
 * A nut and its sleeve go on over their own end just before it is formed: nut first, thread to the end, then the
 * sleeve. An end with `flareWhen: "before"` is formed before bending, its spare sawn off before that. The other
 * kind is trimmed after bending, so that the tube is offered up long.
 * @param unit lengths are rounded to 0.5 mm, or 1/32, 1/16 or 0.01 in; default the units of the line
 */
export function benchOrder(line: Line, plan: BendPlan, unit: LengthStyle = line.units): BenchOrder {
  const free = otherEnd(plan.from);
  const ends = [plan.from, free] as const;
  const first = ends.filter((end) => formedBefore(endOf(line, end)));
  const later = ends.filter((end) => !first.includes(end));
  const trim = trimOf(line, plan, unit);
  const hook = hookOf(line, plan.from);
  const steps: readonly OrderStep[] = [
    sawStep(plan, unit),
    step('tag', plan.from, { words: `flag ${endWords(plan.from)} (START)` }),
    step('pencil-line', null, { words: 'pencil line full length' }),
    ...first.flatMap((end) => [...cutFirst(line, end, unit), ...finishEnd(endOf(line, end), end)]),
    step('hook', plan.from, { words: `hook tape on ${hook.words}` }),
    ...(plan.rows.length > 0 ? [step('mark', null, { words: MARK_ALL })] : []),
    ...bendSteps(plan.rows),
    ...later.flatMap((end) => [
      ...trimSteps(line, { end, trim: end === free ? trim : null, unit }),
      ...finishEnd(endOf(line, end), end),
    ]),
  ];
  return { steps, parks: parksOf(line, plan, unit), hook, trim, notes: notesOf(line, later, plan) };
}

function step(
  kind: OrderStep['kind'],
  end: EndName | null,
  rest: { readonly words: string; readonly distance?: number; readonly because?: string },
): OrderStep {
  return { kind, end, distance: rest.distance ?? null, words: rest.words, because: rest.because ?? null };
}

function sawStep({ cutLength, developedLength }: BendPlan, unit: LengthStyle): OrderStep {
  const cut = roundLength(cutLength, unit);
  const finished = roundLength(developedLength, unit);
  const words = `SAW ${sayLength(cut, unit)} (finished ${sayLength(finished, unit)})`;
  return step('saw', null, { distance: cut, words });
}

/** Spare on an end that is formed first cannot wait. */
function cutFirst(line: Line, end: EndName, unit: LengthStyle): readonly OrderStep[] {
  const spare = endOf(line, end).spare.value;
  if (!(spare > 0)) return [];
  const because = `${endWords(end)} is formed before bending: its spare cannot be cut off later`;
  const words = `saw ${sayLength(spare, unit)} off ${endWords(end)}`;
  return [step('trim', end, { distance: spare, words, because })];
}

/** Nut, sleeve and forming of one end, in the order of the hands. */
function finishEnd(lineEnd: LineEnd, end: EndName): readonly OrderStep[] {
  const { nut, sleeve, fitting } = lineEnd;
  const name = endWords(end);
  const word = formWord(lineEnd);
  const because = isFormed(lineEnd)
    ? fitting.traps
      ? `before ${name} is ${word === 'FLARE' ? 'flared' : 'formed'}: it cannot go on over it`
      : `before ${name} is formed`
    : undefined;
  const why = because === undefined ? {} : { because };
  return [
    ...(nut ? [step('nut', end, { words: `NUT ${end} on, thread to ${name}`, ...why })] : []),
    ...(sleeve
      ? [step('sleeve', end, { words: `SLEEVE ${end} on, between NUT ${end} and ${name}`, ...why })]
      : []),
    ...(isFormed(lineEnd) ? [step('form', end, { words: `${word} ${end} (${fitting.name})` })] : []),
  ];
}

function bendSteps(rows: readonly PlanRow[]): readonly OrderStep[] {
  if (rows.length === 0) return [];
  const words = rows.length === 1 ? 'bend 1' : `bends 1 to ${rows.length}`;
  return [
    step('bend', null, { words }),
    step('check', null, { words: 'check end-to-end and heights, offer up' }),
  ];
}

/**
 * Where FREE is sawn off, from the end of the last bend: what forming uses is still on it then. `null` when it is
 * formed before bending, when it has no spare, and on a straight tube. mm.
 */
export function trimOf(line: Line, plan: BendPlan, unit: LengthStyle): number | null {
  const free = endOf(line, otherEnd(plan.from));
  if (formedBefore(free) || !(free.spare.value > 0) || plan.rows.length === 0) return null;
  return roundLength(plan.lastStraight + free.fitting.uses.value, unit);
}

interface Trimming {
  readonly end: EndName;
  readonly trim: number | null;
  readonly unit: LengthStyle;
}

function trimSteps(line: Line, { end, trim, unit }: Trimming): readonly OrderStep[] {
  const spare = endOf(line, end).spare.value;
  if (!(spare > 0)) return [];
  const words =
    trim === null
      ? `saw ${sayLength(spare, unit)} off ${endWords(end)}`
      : `trim ${endWords(end)} to ${sayLength(trim, unit)} from end of last bend`;
  return [step('trim', end, { distance: trim ?? spare, words })];
}

function notesOf(line: Line, later: readonly EndName[], plan: BendPlan): readonly string[] {
  const notes: string[] = [];
  if (later.length === 0)
    notes.push(
      `Both ends are formed before bending: nothing is left to trim, the sawn length decides where ${endWords(otherEnd(plan.from))} comes.`,
    );
  if (plan.from === 'Z') notes.push('Worked from END Z: START is END Z.');
  if (line.mirror) notes.push(`OPPOSITE HAND of ${line.mirror.of}.`);
  return notes;
}
