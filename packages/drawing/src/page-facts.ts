/** What the liquid and the stick do, in the words of the checks: figures, what they are not, what they rest on. */
import type { Fact, FactGroup, WorkedRun } from '@runback/checks';
import { fitLines } from './fit.ts';
import { blockHeight, evened } from './lines.ts';
import { textWidth } from './measure.ts';
import { basisLines, basisNotes } from './page-basis.ts';
import { type Block, heading, paragraph, space } from './page-flow.ts';
import { cell, joined, type Style, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';

const CAP = 2.5;
const SMALL = 2.1;
const INDENT = 4;
const ESTIMATE = 'estimate, not approval';

/** Sections in the order they are printed; the stick and its way through the tube stand together. */
const SECTIONS: readonly { readonly title: string; readonly groups: readonly FactGroup[] }[] = [
  { title: 'POCKETS', groups: ['pockets'] },
  { title: 'STICK AND PASSAGE', groups: ['passage', 'stick'] },
  { title: `PRESSURE (${ESTIMATE})`, groups: ['pressure'] },
  { title: 'FLOW', groups: ['flow'] },
  { title: 'HEAT', groups: ['thermal'] },
  { title: 'WEIGHT', groups: ['mass'] },
];

/** The runs this line is part of, in the order of the job. */
export const runsOf = ({ worked, options }: Pick<SheetContext, 'worked' | 'options'>): readonly WorkedRun[] =>
  (options.runs ?? []).filter(({ run }) => run.lines.includes(worked.line.id));

/** Every figure known of the line, then of the runs it is part of, group by group. */
export function factBlocks(context: SheetContext, width: number): readonly Block[] {
  return [
    ...sections(context.worked.facts, { width, of: '' }),
    ...runsOf(context).flatMap((run) => runBlocks(run, context, width)),
  ];
}

function runBlocks({ run, facts }: WorkedRun, { worked }: SheetContext, width: number): readonly Block[] {
  if (facts.length === 0) return [];
  const place = run.lines.indexOf(worked.line.id) + 1;
  const text =
    run.lines.length === 1
      ? 'This line alone.'
      : `Lines joined end to end: ${run.lines.join(', ')}. This is number ${place} of ${run.lines.length}. What follows is of all together.`;
  return [
    ...heading({ text: `RUN: ${run.name}`, width }),
    ...paragraph(text, width, { cap: CAP, keep: true }),
    ...sections(facts, { width, of: `, RUN ${run.name}` }),
  ];
}

function sections(facts: readonly Fact[], how: { readonly width: number; readonly of: string }): Block[] {
  return SECTIONS.flatMap(({ title, groups }) => {
    const rows = groups.flatMap((group) => facts.filter((fact) => fact.group === group));
    if (rows.length === 0) return [];
    const estimate = factLots(rows).shared.includes(ESTIMATE) && !title.includes(ESTIMATE);
    const named = estimate ? `${title} (${ESTIMATE})` : title;
    return [
      ...heading({ text: `${named}${how.of}`, width: how.width }),
      ...factRows(rows, named, how.width),
      space(1),
    ];
  });
}

/** Figures one after the other that rest on the same, and what is to be heeded with them. */
export interface FactLot {
  readonly facts: readonly Fact[];
  readonly basis: string;
  readonly cautions: readonly string[];
}

/** Those that rest on the same together. A caution of half the lots or more stands before them all, once; else with each that has it. */
export function factLots(facts: readonly Fact[]): {
  readonly shared: readonly string[];
  readonly lots: readonly FactLot[];
} {
  const lots: Fact[][] = [];
  for (const fact of facts) {
    const last = lots.at(-1);
    if (last?.[0]?.basis === fact.basis) last.push(fact);
    else lots.push([fact]);
  }
  const said = lots.map((lot) => [...new Set(lot.flatMap(({ caution }) => (caution ? [caution] : [])))]);
  const shared = [...new Set(said.flat())].filter(
    (caution) => 2 * said.filter((of) => of.includes(caution)).length >= lots.length,
  );
  return {
    shared,
    lots: lots.map((lot, i) => ({
      facts: lot,
      basis: lot[0]!.basis,
      cautions: said[i]!.filter((caution) => !shared.includes(caution)),
    })),
  };
}

/** A caution, bold and kept with what follows; it stands in where it is of the figure above it. */
export const cautionRow = (text: string, width: number, indent = 0): readonly Block[] =>
  paragraph(text, width, {
    cap: CAP,
    weight: 'bold',
    keep: true,
    ...(indent > 0 ? { indent, gap: 0.35 } : {}),
  });

/** What is to be heeded for several first; then the figures, and last what they rest on, each note once. */
function factRows(facts: readonly Fact[], title: string, width: number): readonly Block[] {
  const { shared, lots } = factLots(facts);
  const notes = basisNotes(facts);
  const several = notes.length > 1;
  const refs = (fact: Fact): string => {
    const own = notes.flatMap(({ of }, i) => (of.includes(facts.indexOf(fact)) ? [i + 1] : []));
    return several && own.length > 0 ? `basis ${own.join(', ')}` : '';
  };
  const room = Math.max(0, ...facts.map((fact) => textWidth(refs(fact), SMALL, 'regular') + 2));
  const same = (a: FactLot, b: FactLot | undefined): boolean =>
    a.cautions.join('\n') === b?.cautions.join('\n');
  return together([
    ...shared.filter((text) => !title.includes(text)).flatMap((text) => cautionRow(text, width)),
    ...lots.flatMap((lot, i) => [
      ...lot.facts.flatMap((fact) => figure(fact, { text: refs(fact), wide: room }, width)),
      ...(same(lot, lots[i + 1]) ? [] : lot.cautions.flatMap((text) => cautionRow(text, width, INDENT))),
    ]),
    ...basisLines(notes).flatMap((text) => paragraph(text, width, { cap: SMALL, indent: INDENT, gap: 0.35 })),
    space(0.5),
  ]);
}

/** A section no taller than this stays on one page, mm; in a taller one no figure parts from its caution. */
const ONE_PAGE = 75;

function together(blocks: readonly Block[]): readonly Block[] {
  const tall = blocks.reduce((sum, { height }) => sum + height, 0);
  if (tall > ONE_PAGE) return blocks;
  return blocks.map((block, i) => ({ ...block, keep: i < blocks.length - 1 }));
}

/** Of the width; between them stands the figure. */
const LABEL = 0.3;
const GUTTER = 3;
const LINES = 4;
const PAD = 0.5;

interface Refs {
  readonly text: string;
  /** Of the column they stand in, mm. */
  readonly wide: number;
}

/** Label, figure and the notes it rests on side by side where they are short, else one after the other. */
function figure({ label, text }: Fact, refs: Refs, width: number): readonly Block[] {
  const running = (said: string): readonly Block[] =>
    paragraph(refs.text === '' ? said : `${said} (${refs.text})`, width, { cap: CAP, gap: 0.35, keep: true });
  if (label === '' || text === '') return running(`${label}${text}`);
  const style: Style = { cap: CAP, lines: LINES, at: 'top' };
  const columns = [
    { text: label, left: 0, wide: LABEL * width - GUTTER, style },
    { text, left: LABEL * width, wide: (1 - LABEL) * width - refs.wide, style: { ...style, weight: 'bold' } },
    {
      text: refs.text,
      left: width - Math.max(refs.wide, 1),
      wide: Math.max(refs.wide, 1),
      style: { ...style, cap: SMALL, anchor: 'end' },
    },
  ] as const;
  const set = columns.map((one) => fitLines(one.text, { ...one.style, width: one.wide }));
  if (set.some(({ cut }) => cut)) return running(`${label}: ${text}`);
  const tall = Math.max(...set.map(({ lines, cap }) => blockHeight(lines.map(evened)) * cap)) + SLACK;
  return [
    {
      height: tall + PAD,
      keep: true,
      draw: ({ x, y }, name) =>
        joined(
          columns.map(({ left, wide: own, ...one }, i) =>
            cell(zone(`${name} ${i + 1}`, [x + left, y], [own, tall]), one.text, one.style),
          ),
        ),
    },
  ];
}

/** A place exactly as tall as its text may be short of it by the last bit of a sum. mm */
const SLACK = 0.01;
