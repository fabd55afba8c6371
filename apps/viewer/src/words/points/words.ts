/** How points are called in labels. */
import type { PointRow } from './rows.ts';

export const pointWords = ({ name, end }: Pick<PointRow, 'name' | 'end'>): string =>
  end ? `end ${name}` : `point ${name}`;
