/** Planes to mirror across, in words of the machine. */
import type { MachineAxes, Vec3 } from 'runback';

const AXES = ['x', 'y', 'z'] as const;
const SQUARE = 0.999;

/** x, y and z, each with what it swaps where it is an axis of the machine. */
export function acrossChoices({ left, forward, up }: MachineAxes) {
  const swaps: readonly (readonly [Vec3, string])[] = [
    [left, 'left for right'],
    [forward, 'front for rear'],
    [up, 'top for bottom'],
  ];
  return AXES.map((value, k) => {
    const swap = swaps.find(([axis]) => Math.abs(axis[k]!) > SQUARE)?.[1];
    return { value, label: swap === undefined ? value : `${value} (${swap})` };
  });
}
