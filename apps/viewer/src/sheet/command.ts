/** The call of the command that writes the same PDF. */
import type { LengthStyle } from 'runback';
import { PAGE_KINDS } from 'runback/sheet';
import type { SheetChoice } from './choice.ts';

const UNITS: Readonly<Record<LengthStyle, readonly string[]>> = {
  mm: ['--units', 'mm'],
  in: ['--units', 'in'],
  'in-16': ['--units', 'in', '--inch', '16'],
  'in-decimal': ['--units', 'in', '--inch', 'decimal'],
};

/** Its words, one by one: `sheet tender-7.job.json --line dipstick …`. What is as the command has it is left out. */
export function sheetCall(jobFile: string, lineId: string | null, choice: SheetChoice): readonly string[] {
  const { which, from, units, paper, pages, aids } = choice;
  const whole = which === 'all' || lineId === null;
  return [
    'sheet',
    jobFile,
    ...(whole ? ['--one'] : ['--line', lineId]),
    ...(from === 'Z' ? ['--from', 'z'] : []),
    ...(paper === 'a4' ? [] : ['--paper', paper]),
    ...(units === null ? [] : UNITS[units]),
    ...(pages.length === PAGE_KINDS.length ? [] : ['--pages', pages.join(',') || 'none']),
    ...(aids.length === 0 ? [] : ['--aids', aids.join(',')]),
  ];
}

const PLAIN = /^[\w@%+=:,./-]+$/;

/** The call as it is typed into a shell. */
export const typed = (words: readonly string[]): string =>
  ['runback', ...words]
    .map((word) => (PLAIN.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`))
    .join(' ');
