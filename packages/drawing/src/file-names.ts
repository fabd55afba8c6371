/** What the files of a set of sheets are called, whoever writes them. */
import type { EndName } from '@runback/bending';

/** The longest name made of a title, in characters. */
const LONGEST = 60;

/** A title as a file name: letters and digits of any script, joined by hyphens. */
export function titleSlug(title: string): string {
  const words = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const name = [...words]
    .slice(0, LONGEST)
    .join('')
    .replace(/^-+|-+$/gu, '');
  return name === '' ? 'job' : name;
}

/** Of a line worked from an end, by its id; of a whole job, by the slug of its title. */
export const sheetName = (of: string, from: EndName): string => `${of}${from === 'Z' ? '-from-z' : ''}`;

/** A file for each page; a single page goes by the name of the sheet alone. */
export const pageNames = (sheet: string, pages: number): readonly string[] =>
  Array.from({ length: pages }, (_, i) => `${sheet}${pages > 1 ? `-${i + 1}` : ''}.svg`);
