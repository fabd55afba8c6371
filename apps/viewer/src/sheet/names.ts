/** Names of the files, as the command gives them. */
import { pageNames, sheetName, titleSlug } from 'runback/sheet';
import type { LineSheet, SheetSet } from './sheets.ts';

/** After the line, or for a whole job after its title. */
export function pdfName({ choice, lines: [first], job }: SheetSet): string {
  const of = choice.which === 'all' || !first ? titleSlug(job.title) : first.worked.line.id;
  return `${sheetName(of, choice.from)}.pdf`;
}

export const svgNames = ({ choice }: SheetSet, { worked, pages }: LineSheet): readonly string[] =>
  pageNames(sheetName(worked.line.id, choice.from), pages.length);

export const coverNames = ({ choice, job, cover }: SheetSet): readonly string[] =>
  pageNames(`${sheetName(titleSlug(job.title), choice.from)}-cover`, cover.length);

/** `tender-7.job.json` → `tender-7-bends.csv` */
export function besideJob(jobFile: string, what: string): string {
  const stem = jobFile.replace(/\.jsonc?$/i, '').replace(/\.job$/i, '');
  return `${stem === '' ? 'job' : stem}-${what}`;
}
