/** The screens at the bench, in the order of the hands. Everything in them is the plan's. */
import {
  type BenchPlan,
  type BenchRow,
  bendPlan,
  type Centreline,
  type EndName,
  type LengthStyle,
  type Line,
  type OrderStep,
  roundPlan,
  type WorkedLine,
} from 'runback';
import {
  cautionsOf,
  degreeWords,
  flatWords,
  heightWords,
  holdWords,
  numberingWords,
  pullWords,
  standWords,
  tapeWords,
  tubeWords,
  turnCaution,
  turnCheckWords,
  wantedWords,
} from 'runback/sheet';
import { type Bench, withBench } from './bench-choice.ts';
import { orderWords, splitOrder } from './bench-words.ts';

/** One thing to do or to check, ticked when it is done. */
export interface Item {
  /** Unique among all steps of the line. */
  readonly id: string;
  /** `MARK`, `DIAL` …; null for a line of a list. */
  readonly label: string | null;
  /** To be read at arm's length and more. */
  readonly figure: string | null;
  /** Said before the words, smaller: what moves, how it lies. */
  readonly lead: string | null;
  readonly words: string | null;
  /** Said after the words, larger: how far to turn. */
  readonly amount: string | null;
  readonly notes: readonly string[];
  /** A thing not to be missed: what the tape hooks on. */
  readonly loud: boolean;
}

export interface Step {
  readonly id: string;
  readonly kind: 'saw' | 'before' | 'marks' | 'stand' | 'bend' | 'ends' | 'final' | 'cautions';
  readonly title: string;
  readonly items: readonly Item[];
  /** What to be careful about, under the items. */
  readonly cautions: readonly string[];
  /** For a bend: 0 for the first one made. */
  readonly index: number | null;
}

export interface Asked {
  readonly line: Line;
  readonly centreline: Centreline;
  readonly from: EndName;
  readonly unit: LengthStyle;
  /** How the operator stands; null: as seen from START. */
  readonly bench: Bench | null;
}

/** The plan for whoever stands so. */
export function planFor({ line, centreline, from, unit, bench }: Asked): BenchPlan {
  const there = withBench(line, bench);
  return roundPlan(there, bendPlan(there, centreline, from), { unit });
}

/** All screens of a line. */
export function stepList(plan: BenchPlan, worked: WorkedLine): readonly Step[] {
  const { line, findings } = worked;
  const { before, mark, after } = splitOrder(plan.order.steps);
  const steps: readonly (Step | null)[] = [
    sawStep(plan, worked),
    listStep('before', 'Before you bend', { steps: before.filter(({ kind }) => kind !== 'saw'), plan }),
    mark && marksStep(plan, mark),
    plan.rows.length > 0 ? standStep(plan, line) : null,
    ...plan.rows.map((row) => bendStep(plan, row)),
    listStep('ends', plan.rows.length > 0 ? 'After bending' : 'After sawing', { steps: after, plan }),
    finalStep(plan, line),
    cautionStep(plan, line, findings),
  ];
  return steps.filter((step) => step !== null);
}

const item = (id: string, more: Partial<Item>): Item => ({
  id,
  label: null,
  figure: null,
  lead: null,
  words: null,
  amount: null,
  notes: [],
  loud: false,
  ...more,
});

const step = (kind: Step['kind'], title: string, more: Partial<Step>): Step => ({
  id: kind,
  kind,
  title,
  items: [],
  cautions: [],
  index: null,
  ...more,
});

const said = (...words: readonly (string | null)[]): readonly string[] =>
  words.filter((one) => one !== null && one !== '') as readonly string[];

/** A line that fails gives no length to saw. */
function sawStep(plan: BenchPlan, { line, verdict }: WorkedLine): Step | null {
  const saw = plan.order.steps.find(({ kind }) => kind === 'saw');
  if (!saw) return null;
  const fails = verdict === 'fail';
  const notes = said(
    fails ? null : `finished ${tapeWords(plan.finishedLength, plan.unit)}`,
    tubeWords(line, plan.unit),
    line.quantity > 1 ? `${line.quantity} of these` : null,
    plan.hand === 'OPPOSITE HAND' ? plan.hand : null,
  );
  const what = fails
    ? { words: 'do not saw, do not bend' }
    : { figure: tapeWords(saw.distance ?? plan.cutLength, plan.unit) };
  return step('saw', 'Saw', {
    items: [item('saw', { label: 'SAW', ...what, notes })],
    cautions: plan.order.notes,
  });
}

interface Listed {
  readonly steps: readonly OrderStep[];
  readonly plan: BenchPlan;
}

function listStep(kind: 'before' | 'ends', title: string, { steps, plan }: Listed): Step | null {
  if (steps.length === 0) return null;
  const items = steps.map((one) => {
    const park = plan.order.parks.find(({ end, part }) => end === one.end && part === one.kind);
    return item([kind, one.kind, one.end ?? ''].join(' ').trim(), {
      words: one.words,
      notes: said(one.because, park?.words ?? null),
      loud: one.kind === 'hook',
    });
  });
  return step(kind, title, { items });
}

function marksStep(plan: BenchPlan, mark: OrderStep): Step {
  const items = plan.rows.map((row) =>
    item(`mark ${row.bend}`, { label: `bend ${row.bend}`, figure: tapeWords(row.mark, plan.unit) }),
  );
  const hook = plan.order.steps.find(({ kind }) => kind === 'hook');
  return step('marks', 'Mark', { items, cautions: said(mark.words, hook?.words ?? null) });
}

function standStep(plan: BenchPlan, { tube }: Line): Step {
  const [place = '', ...more] = standWords(plan);
  const turning = plan.rows.length > 1 ? said(turnCaution(plan.bench, plan.from), holdWords(plan)) : [];
  return step('stand', 'How to stand', {
    items: [item('stand', { words: place, notes: more, loud: true })],
    cautions: [...turning, ...tube.material.cautions],
  });
}

function bendStep(plan: BenchPlan, row: BenchRow): Step {
  const { words } = row;
  const id = (what: string): string => `bend ${row.bend} ${what}`;
  const check = turnCheckWords(row, plan.bench);
  const pull = pullWords(row);
  const mark = tapeWords(row.mark, plan.unit);
  const items = [
    item(id('mark'), { label: 'MARK', figure: mark, notes: [`from ${plan.hook.words}`] }),
    item(id('turn'), {
      label: 'TURN',
      ...ledWords(orderWords(words)),
      amount: words.kind === 'turn' ? words.amount : null,
      notes: said(words.confirmation, flatWords(row, plan.unit)),
    }),
    ...(check ? [item(id('turn-check'), { label: 'CHECK THE TURN', words: check })] : []),
    item(id('dial'), {
      label: 'DIAL',
      figure: degreeWords(row.dial),
      notes: said(wantedWords(row, plan), row.calibrated ? null : 'NOT CALIBRATED'),
    }),
    ...(pull ? [item(id('pull'), { label: 'CHECK BEFORE PULLING', words: pull })] : []),
  ];
  return step('bend', `Bend ${row.bend} of ${plan.rows.length}`, {
    id: `bend ${row.bend}`,
    items,
    cautions: row.turn === null ? [] : [turnCaution(plan.bench, plan.from)],
    index: row.bend - 1,
  });
}

/** `TURN TUBE: TOP AWAY FROM YOU` is called out in two parts. */
function ledWords(words: string): Pick<Item, 'lead' | 'words'> {
  const cut = words.indexOf(': ');
  return cut === -1 ? { lead: null, words } : { lead: words.slice(0, cut + 1), words: words.slice(cut + 2) };
}

function finalStep({ final, unit }: BenchPlan, { clips }: Line): Step {
  const list =
    clips === null || clips.length === 0 ? null : clips.map((at) => tapeWords(at, unit)).join(' · ');
  return step('final', 'Check the tube', {
    items: [
      item('end-to-end', {
        label: 'END TO END WHEN FINISHED',
        figure: heightWords(final.endToEnd, unit),
        notes: ['centre to centre'],
      }),
      ...final.heights.map(({ words }, i) =>
        item(`height ${i + 1}`, { label: 'HEIGHT', ...ledWords(words) }),
      ),
      ...(list ? [item('clips', { label: 'CLIPS FROM FINISHED END A', words: list })] : []),
    ],
  });
}

function cautionStep(plan: BenchPlan, line: Line, findings: WorkedLine['findings']): Step | null {
  const notes = findings.filter(({ verdict }) => verdict === 'note').map(({ message }) => `NOTE: ${message}`);
  const numbering = notes.length > 0 ? numberingWords(plan) : null;
  const cautions = said(...cautionsOf([line]), numbering, ...notes);
  return cautions.length === 0 ? null : step('cautions', 'Cautions', { cautions });
}
