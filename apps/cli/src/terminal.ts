import { styleText } from 'node:util';

/** Text from a job with everything a terminal would obey taken out: control and direction-changing characters. */
export const plain = (text: string): string =>
  text.replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, ' ');

type Style = 'bold' | 'dim' | 'red' | 'green' | 'yellow';

/** Colour only on a terminal, and never against NO_COLOR. */
export const coloured = (stream: { isTTY?: boolean } = process.stdout): boolean =>
  stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb';

export function painter(on: boolean): (style: Style, text: string) => string {
  return (style, text) => (on ? styleText(style, text, { validateStream: false }) : text);
}

/** Columns lined up on their right, the first on its left; two spaces between, one where the terminal is narrow. */
export function table(rows: readonly (readonly string[])[], columns: number): string[] {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => width(row[i] ?? ''))));
  const wide = widths.reduce((sum, cell) => sum + GAP.length + cell, 0);
  const gap = wide > columns ? ' ' : GAP;
  const pad = (cell: string, i: number): string => {
    const space = ' '.repeat(Math.max(0, (widths[i] ?? 0) - width(cell)));
    return i === 0 ? cell + space : space + cell;
  };
  return rows.map((row) => `${GAP}${row.map(pad).join(gap)}`.trimEnd());
}

const GAP = '  ';
const width = (text: string): number => [...text].length;

/** Breaks a sentence into lines of at most `columns`, later lines pushed in by `indent`. */
export function wrap(text: string, columns: number, indent: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/)) {
    if (line && width(line) + 1 + width(word) > columns - (lines.length ? indent.length : 0)) {
      lines.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, line].join(`\n${indent}`);
}
