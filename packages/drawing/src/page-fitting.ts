/** The ends as they are made and fitted, and a blank record of the proof test. */
import { type BenchPlan, proofRules } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { Line, LineEnd } from '@runback/job';
import { type Block, heading, paragraph, space } from './page-flow.ts';
import { type TableColumn, tableBlocks } from './page-table.ts';
import { exact, exactDegrees } from './page-words.ts';
import { cell, joined, line, pen, rect, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';

const CAP = 2.5;

/** Ends, nuts, sleeves, ports: one column for A, one for Z. */
export function endBlocks({ worked, plan }: SheetContext, width: number): readonly Block[] {
  const { endA, endZ } = worked.line;
  const columns: readonly TableColumn[] = [
    { head: '', width: width * 0.22, weight: 'bold' },
    { head: 'END A', width: width * 0.39 },
    { head: 'END Z', width: width * 0.39 },
  ];
  const rows = FACTS.map(([name, say]) => [name, say(endA, plan), say(endZ, plan)]).filter(
    ([, a, z]) => a !== NONE || z !== NONE,
  );
  return [
    ...heading({ text: 'FITTING', width }),
    ...tableBlocks(columns, rows, { cap: CAP, minCap: 1.8 }),
    space(1),
  ];
}

const NONE = 'none';

type Fact = readonly [string, (end: LineEnd, plan: BenchPlan) => string];

const FACTS: readonly Fact[] = [
  ['end', ({ fitting }) => fitting.name],
  [
    'formed',
    ({ fitting, flareWhen }) =>
      fitting.uses.value === 0 && fitting.bar.value === 0 ? NONE : `${flareWhen} bending`,
  ],
  ['forming uses up', ({ fitting }, { unit }) => orNone(fitting.uses.value, unit)],
  ['spare, cut off last', ({ spare }, { unit }) => orNone(spare.value, unit)],
  ['nut', nutWords],
  ['sleeve', ({ sleeve }, { unit }) => (sleeve ? `${exact(sleeve.length, unit)} long` : NONE)],
  ['joins', ({ joins }) => (joins.length === 0 ? NONE : joins.join(', '))],
  [
    'out of the port',
    ({ direction }) =>
      direction
        ? `along ${direction.map((n) => Number(n.toFixed(3)) + 0).join(', ')} (job axes)`
        : 'not given',
  ],
  ['fitting forgives', ({ misfit }) => (misfit ? exactDegrees(misfit.value) : NONE)],
  ['far side', ({ rigid }) => (rigid ? 'rigid' : 'can move (hose)')],
];

const orNone = (mm: number, unit: BenchPlan['unit']): string => (mm === 0 ? NONE : exact(mm, unit));

function nutWords({ nut }: LineEnd, { unit }: BenchPlan): string {
  if (!nut) return NONE;
  return [
    `${exact(nut.length, unit)} long`,
    nut.bore === null ? '' : `bore ${exact(nut.bore, unit)}`,
    nut.acrossFlats === null ? '' : `${exact(nut.acrossFlats, unit)} across flats`,
  ]
    .filter((text) => text !== '')
    .join(', ');
}

const BOX = 13;
const FIELDS = ['pressure', 'medium', 'held for', 'joints dry?', 'by', 'date'] as const;

/** A service that is not proved by pressure, unless the job gives it one. */
const untested = ({ service, duty }: Line): boolean =>
  duty.pressure === null &&
  Object.entries(proofRules).some(([id, { multiple }]) => id === service.id && multiple === null);

/** The figure of the test, where there is one to write beside. */
function askedWords({ facts }: WorkedLine): string {
  const proof = facts.find(({ label }) => label === 'proof test');
  return proof === undefined ? '' : ` Asked: ${proof.text}.`;
}

/** To be written by hand; nothing in it is filled in by a machine. */
export function proofBlocks({ worked }: SheetContext, width: number): readonly Block[] {
  if (untested(worked.line)) return [];
  const words =
    'Test with LIQUID, never with air or gas: gas under pressure throws parts when a joint lets go. Vents and drains are not tested. Never tighten a joint under pressure. (Common practice, no source.)';
  return [
    ...heading({ text: 'PROOF TEST, to be filled in by hand', width }),
    ...paragraph(`${words}${askedWords(worked)}`, width, { cap: CAP, keep: true }),
    {
      height: BOX + 2,
      draw: ({ x, y, width: wide }, name) => {
        const each = wide / FIELDS.length;
        return joined([
          { zones: [], items: [rect({ x, y, width: wide, height: BOX }, { stroke: pen(0.3) })] },
          ...FIELDS.map((field, i) =>
            joined([
              {
                zones: [],
                items: i === 0 ? [] : [line([x + i * each, y], [x + i * each, y + BOX], pen(0.2))],
              },
              cell(zone(`${name} ${field}`, [x + i * each + 1, y + 0.8], [each - 2, 3]), field, {
                cap: 1.9,
                minCap: 1.4,
                at: 'top',
              }),
            ]),
          ),
        ]);
      },
    },
    space(1),
  ];
}
