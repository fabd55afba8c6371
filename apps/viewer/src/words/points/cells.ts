/** Moving between the cells of the points as on a form: arrows and Enter; Tab is the browser's own. */

const at = (cell: string): readonly [number, number] => {
  const [row = 0, column = 0] = cell.split(':').map(Number);
  return [row, column];
};

/** How a key moves: rows and columns, or null when it does not. */
export function stepOf(key: string, caret: Caret): readonly [number, number] | null {
  if (key === 'Enter' || key === 'ArrowDown') return [1, 0];
  if (key === 'ArrowUp') return [-1, 0];
  if (key === 'ArrowLeft' && caret.atStart) return [0, -1];
  if (key === 'ArrowRight' && caret.atEnd) return [0, 1];
  return null;
}

/** Whether the caret stands at an end of what is typed, so that an arrow has nowhere left to go in it. */
export interface Caret {
  readonly atStart: boolean;
  readonly atEnd: boolean;
}

export const cellName = (row: number, column: number): string => `${row}:${column}`;

/** The nearest cell that way among those there are; ends have no radius, so a column may skip a row. */
export function nextCell(
  cells: readonly string[],
  from: string,
  [down, right]: readonly [number, number],
): string | null {
  const [row, column] = at(from);
  const ahead = cells
    .map(at)
    .filter(([r, c]) =>
      down === 0 ? r === row && (c - column) * right > 0 : c === column && (r - row) * down > 0,
    )
    .toSorted((a, b) => (down === 0 ? (a[1] - b[1]) * right : (a[0] - b[0]) * down));
  return ahead[0] ? cellName(...ahead[0]) : null;
}
