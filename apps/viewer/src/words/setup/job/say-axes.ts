/** Which way the axes of the job point, in words. */
import type { Written } from '../edits/written.ts';

const NAMES = ['X', 'Y', 'Z'] as const;

/** "Z", "minus Z", or the numbers of a direction along no axis. */
function sayDirection(direction: readonly number[]): string {
  const along = NAMES.findIndex((_, k) => direction.every((part, j) => (j === k) === (part !== 0)));
  if (along < 0) return direction.join(' ');
  return `${direction[along]! < 0 ? 'minus ' : ''}${NAMES[along]}`;
}

export function sayAxes({ up = [0, 0, 1], forward = [1, 0, 0] }: Pick<Written, 'up' | 'forward'>): string {
  return `Up is ${sayDirection(up)}, forward is ${sayDirection(forward)}, as the file says.`;
}
