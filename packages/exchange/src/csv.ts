/** Tables as RFC 4180: CRLF, quotes where needed, text that a spreadsheet would take for a formula guarded. */

/** A cell: text, an exact number, or nothing. */
export type Cell = string | number | null;

const FORMULA = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;

/** A cell as it stands in the file. Numbers are numbers: −59 needs no guard, the text "-59" does. */
export function cell(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`cell: number must be finite, got ${value}`);
    return String(value + 0);
  }
  const guarded = FORMULA.test(value) ? `'${value}` : value;
  return NEEDS_QUOTES.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** A whole table with its heads, each line ended with CRLF. */
export const csv = (heads: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [heads, ...rows].map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
