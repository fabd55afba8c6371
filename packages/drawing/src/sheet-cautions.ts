import type { Finding } from '@runback/checks';
import { holdWords, numberingWords, turnCaution } from './bench-words.ts';
import { joined, line, pen, zone } from './set.ts';
import { frameOf, type SheetContext } from './sheet-context.ts';
import { type Paragraph, type Stacked, stackOrPoint } from './stack.ts';
import { cautionsOf } from './words.ts';

/** How a turn goes wrong, what fails, the other cautions, how many checks pass, what notes, more: in two columns. */
export function cautions(
  context: SheetContext,
  { more, ...how }: { pointer: string; minCap: number; more: readonly Paragraph[] },
): Stacked {
  const { x, y, width, height } = frameOf(context.options).bands.cautions;
  const place = zone('cautions', [x, y + 1.8], [width, height - 3]);
  const { fails, rest } = findingWords(context.worked.findings);
  const words = [
    ...turning(context),
    ...fails,
    ...more,
    ...numbering(context),
    ...cautionWords(context),
    ...rest,
  ];
  const list = stackOrPoint(place, words, { cap: 3.5, columns: 2, ...how });
  return {
    ...list,
    part: joined([{ zones: [], items: [line([x, y], [x + width, y], pen(0.8))] }, list.part]),
  };
}

/** The caution without which no sheet is handed out: it stands first whatever else there is. */
function turning({ plan }: SheetContext): Paragraph[] {
  return plan.rows.length > 1 ? [{ text: turnCaution(plan.bench, plan.from), weight: 'bold' }] : [];
}

function numbering({ plan }: SheetContext): Paragraph[] {
  const text = numberingWords(plan);
  return text === null ? [] : [{ text, weight: 'bold' }];
}

/** The general ones, then those of the material, the service and the ends; each once. */
function cautionWords({ plan, worked: { line: of } }: SheetContext): Paragraph[] {
  const hold = holdWords(plan);
  return [...(hold === null ? [] : [hold]), ...cautionsOf([of])].map((text) => ({ text }));
}

/** What the checks found: failures, and apart from them how many passed and the notes. */
export function findingWords(findings: readonly Finding[]): Record<'fails' | 'rest', readonly Paragraph[]> {
  const of = (verdict: Finding['verdict']): readonly Finding[] =>
    findings.filter((f) => f.verdict === verdict);
  const passed = of('pass').length;
  return {
    fails: of('fail').map((f) => ({ text: `FAIL: ${f.message}`, weight: 'bold' })),
    rest: [
      { text: passed === 1 ? '1 check passes.' : `${passed} checks pass.`, weight: 'bold' },
      ...of('note').map((f) => ({ text: `NOTE: ${f.message}` })),
    ],
  };
}
