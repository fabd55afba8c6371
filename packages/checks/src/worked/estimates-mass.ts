import { clipFrequency, tubeMass } from '@runback/bending';
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { LineMass } from '../fluid-types.ts';

/** Weight of the tube and of what fills it; `null` when the metal's density is not known. */
export function massOf(line: Line, { length }: Centreline): LineMass | null {
  const { tube, fluid } = line;
  const { density } = tube.material;
  if (density === null) return null;
  const filled = {
    od: tube.od,
    wall: tube.wall,
    densityKgM3: density.value,
    contentsKgM3: fluid?.density?.value ?? 0,
  };
  return {
    ...tubeMass({ ...filled, length }),
    contents: (Math.PI / 4) * tube.bore ** 2 * length,
    frequency: frequencyOf(line, length, filled),
  };
}

function frequencyOf(
  { tube, clips }: Line,
  length: number,
  filled: {
    readonly od: number;
    readonly wall: number;
    readonly densityKgM3: number;
    readonly contentsKgM3: number;
  },
): LineMass['frequency'] {
  const { youngs } = tube.material;
  const span = widestSpan(clips ?? [], length);
  if (youngs === null || span === null) return null;
  return { firstHz: clipFrequency({ ...filled, youngsMPa: youngs.value, span }).firstHz, span };
}

/** The widest gap between clips along the line, its ends counted as held. */
function widestSpan(clips: readonly number[], length: number): number | null {
  const on = clips.filter((at) => at >= 0 && at <= length);
  if (on.length === 0) return null;
  const held = [0, ...on, length].toSorted((a, b) => a - b);
  return Math.max(...held.slice(1).map((at, i) => at - held[i]!));
}
