/** What the liquid and the stick do, in the words of the checks: figure, what it rests on, what it is not. */
import type { Fact, FactGroup, WorkedRun } from '@runback/checks';
import { fitLines } from './fit.ts';
import { blockHeight, evened } from './lines.ts';
import { type Block, heading, paragraph, space } from './page-flow.ts';
import { cell, joined, type Style, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';

const CAP = 2.5;
const SMALL = 2.1;
const INDENT = 4;

/** Sections in the order they are printed; the stick and its way through the tube stand together. */
const SECTIONS: readonly { readonly title: string; readonly groups: readonly FactGroup[] }[] = [
  { title: 'POCKETS', groups: ['pockets'] },
  { title: 'STICK AND PASSAGE', groups: ['passage', 'stick'] },
  { title: 'PRESSURE (estimate, not approval)', groups: ['pressure'] },
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
    return [
      ...heading({ text: `${title}${how.of}`, width: how.width }),
      ...factRows(rows, title, how.width),
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

/** What is to be heeded for several first; then the figures, under the last of each lot its caution and what it rests on. */
function factRows(facts: readonly Fact[], title: string, width: number): readonly Block[] {
  const { shared, lots } = factLots(facts);
  return [
    ...shared.filter((text) => !title.includes(text)).flatMap((text) => cautionRow(text, width)),
    ...lots.flatMap(({ facts: lot, basis, cautions }) => [
      ...lot.flatMap((fact, i) =>
        figure(fact, width, i < lot.length - 1 || basis !== '' || cautions.length > 0),
      ),
      ...cautions.flatMap((text) => cautionRow(text, width, INDENT)),
      ...(basis === '' ? [] : paragraph(`basis: ${basis}`, width, { cap: SMALL, indent: INDENT, gap: 0.6 })),
    ]),
  ];
}

/** Of the width; the rest is the figure's. */
const LABEL = 0.3;
const GUTTER = 3;
const LINES = 4;
const PAD = 0.5;

/** Label and figure side by side where both are short, else one after the other. */
function figure({ label, text }: Fact, width: number, keep: boolean): readonly Block[] {
  if (label === '' || text === '') return paragraph(`${label}${text}`, width, { cap: CAP, gap: 0.35, keep });
  const style: Style = { cap: CAP, lines: LINES, at: 'top' };
  const columns = [
    { text: label, left: 0, wide: LABEL * width - GUTTER, style },
    { text, left: LABEL * width, wide: (1 - LABEL) * width, style: { ...style, weight: 'bold' } },
  ] as const;
  const set = columns.map((one) => fitLines(one.text, { ...one.style, width: one.wide }));
  if (set.some(({ cut }) => cut)) return paragraph(`${label}: ${text}`, width, { cap: CAP, gap: 0.35, keep });
  const tall = Math.max(...set.map(({ lines }) => blockHeight(lines.map(evened)) * CAP)) + SLACK;
  return [
    {
      height: tall + PAD,
      keep,
      draw: ({ x, y }, name) =>
        joined(
          columns.map(({ left, wide, ...one }, i) =>
            cell(zone(`${name} ${i + 1}`, [x + left, y], [wide, tall]), one.text, one.style),
          ),
        ),
    },
  ];
}

/** A place exactly as tall as its text may be short of it by the last bit of a sum. mm */
const SLACK = 0.01;
