/** Every finding with what was found, the limit, where it comes from and what cures it; then the cautions. */
import type { Finding, Verdict } from '@runback/checks';
import { type Block, heading, paragraph, space } from './page-flow.ts';
import { figuresOf } from './page-words.ts';
import type { SheetContext } from './sheet-context.ts';
import { cautionsOf } from './words.ts';

const CAP = 2.5;
const SMALL = 2.1;
const INDENT = 4;
const ORDER: readonly Verdict[] = ['fail', 'note', 'pass'];
const WORD: Readonly<Record<Verdict, string>> = { fail: 'FAIL', note: 'NOTE', pass: 'pass' };

/** Failures first, then notes, then what passes. */
export function findingBlocks({ worked, plan }: SheetContext, width: number): readonly Block[] {
  const count = (verdict: Verdict): number => worked.findings.filter((f) => f.verdict === verdict).length;
  const title = `FINDINGS: ${count('fail')} fail, ${count('note')} to note, ${count('pass')} pass`;
  const numbers =
    plan.from === 'Z' && plan.rows.length > 1
      ? paragraph(
          `Findings are read from END A: their B1 is bend ${plan.rows.length} of this sheet, their B${plan.rows.length} is bend 1.`,
          width,
          { cap: CAP, weight: 'bold', keep: true },
        )
      : [];
  const list = ORDER.flatMap((verdict) => worked.findings.filter((finding) => finding.verdict === verdict));
  return [
    ...heading({ text: title, width }),
    ...numbers,
    ...list.flatMap((finding) => oneFinding(finding, plan.unit, width)),
    space(1),
  ];
}

function oneFinding(finding: Finding, unit: SheetContext['plan']['unit'], width: number): readonly Block[] {
  const { verdict, message, cure, basis } = finding;
  const figures = figuresOf(finding, unit);
  const basics = [figures, basis === '' ? '' : `basis: ${basis}`].filter((text) => text !== '').join(' · ');
  const blocks = [
    ...paragraph(`${WORD[verdict]}: ${message}`, width, {
      cap: CAP,
      weight: verdict === 'fail' ? 'bold' : 'regular',
      gap: 0.35,
      keep: cure !== null || basics !== '',
    }),
    ...(cure === null
      ? []
      : paragraph(`Cure: ${cure.text}`, width, { cap: CAP, indent: INDENT, gap: 0.35, keep: basics !== '' })),
    ...paragraph(basics, width, { cap: SMALL, indent: INDENT, gap: 0.4 }),
  ];
  return [...blocks, space(0.7)];
}

/** All that was said to be careful about, each once. */
export function cautionBlocks({ worked: { line } }: SheetContext, width: number): readonly Block[] {
  const once = cautionsOf([line]);
  if (once.length === 0) return [];
  return [
    ...heading({ text: 'CAUTIONS', width }),
    ...once.flatMap((text) => paragraph(text, width, { cap: CAP })),
  ];
}
