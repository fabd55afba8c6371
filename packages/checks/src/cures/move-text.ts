import type { Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import { say } from '../words.ts';

/** As many decimals of a coordinate as a person wants to read. */
const DECIMALS = 4;

/** "Move point 2 by 4.3 mm, to 10, 20, 30.", and in which line when that is another; `value` is in job units. */
export function moveText(line: Line, point: number, move: { by: number; value: Vec3 }): string {
  const where = line.mirror === null ? '' : ` in line "${line.mirror.of}", which this one mirrors`;
  const to = move.value.map((x) => Number(x.toFixed(DECIMALS)) + 0).join(', ');
  return `Move point ${point}${where} by ${say(move.by, line.units)}, to ${to}.`;
}
