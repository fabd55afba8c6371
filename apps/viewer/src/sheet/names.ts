/** Names of the files, as the command gives them. */
import type { LineSheet, SheetSet } from './sheets.ts';

const ending = ({ choice }: SheetSet): string => (choice.from === 'Z' ? '-from-z' : '');

/** A title as a file name: letters and digits of any script, joined by hyphens. */
export function slug(title: string): string {
  const words = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const name = [...words]
    .slice(0, 60)
    .join('')
    .replace(/^-+|-+$/gu, '');
  return name === '' ? 'job' : name;
}

/** After the line, or for a whole job after its title. */
export function pdfName(set: SheetSet): string {
  const [first] = set.lines;
  const name = set.choice.which === 'all' || !first ? slug(set.job.title) : first.worked.line.id;
  return `${name}${ending(set)}.pdf`;
}

/** One for each page of a line; a line of one page is named after the line alone. */
export function svgNames(set: SheetSet, { worked, pages }: LineSheet): readonly string[] {
  return numbered(`${worked.line.id}${ending(set)}`, pages.length);
}

export const coverNames = (set: SheetSet): readonly string[] =>
  numbered(`${slug(set.job.title)}${ending(set)}-cover`, set.cover.length);

const numbered = (name: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `${name}${count > 1 ? `-${i + 1}` : ''}.svg`);

/** `tender-7.job.json` → `tender-7-bends.csv` */
export function besideJob(jobFile: string, what: string): string {
  const stem = jobFile.replace(/\.jsonc?$/i, '').replace(/\.job$/i, '');
  return `${stem === '' ? 'job' : stem}-${what}`;
}
