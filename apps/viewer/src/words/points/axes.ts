/** What the three coordinates are called. */
import type { MachineAxes } from 'runback';

const is = (v: readonly number[], w: readonly number[]): boolean => v.every((x, i) => x === w[i]);

/** In words when the machine's axes are the usual ones, else by letter. */
export function axisNames({ forward, up }: MachineAxes): readonly [string, string, string] {
  return is(forward, [1, 0, 0]) && is(up, [0, 0, 1]) ? ['forward', 'left', 'up'] : ['x', 'y', 'z'];
}
