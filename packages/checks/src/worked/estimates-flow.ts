import { type DrainTime, drainTime, type PressureDrop, pressureDrop } from '@runback/bending';
import { type Centreline, dot, sub } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { LineFlow } from '../fluid-types.ts';
import type { LineSlope } from '../types.ts';
import { hasLip } from './pockets-bore.ts';

/** Radii of bend over bore that the table of bend losses has. */
const BENDS_OF_TABLE = [1, 20] as const;
/** The table needs a bore of more than this, mm. */
const LEAST_BORE = 1;

/** Pressure lost at the flow the job asks for, and the time to run out by gravity; `null` without either. */
export function flowOf(line: Line, centreline: Centreline, slope: LineSlope | null): LineFlow | null {
  const [drop, drain] = [dropOf(line, centreline), drainOf(line, centreline, slope)];
  return drop === null && drain === null ? null : { drop, drain };
}

/** False where a bend, or the bore, is outside the table of bend losses. */
export const inLossTable = ({ tube: { bore } }: Line, { bends }: Centreline): boolean =>
  bore > LEAST_BORE &&
  bends.every(({ radius }) => radius >= BENDS_OF_TABLE[0] * bore && radius <= BENDS_OF_TABLE[1] * bore);

function dropOf(line: Line, centreline: Centreline): PressureDrop | null {
  const { duty, fluid, tube } = line;
  if (!duty.flow || !fluid?.density || !fluid.viscosity || !inLossTable(line, centreline)) return null;
  const rise = riseOf(line, centreline);
  return pressureDrop({
    flowLMin: duty.flow.value,
    bore: tube.bore,
    viscosityMm2S: fluid.viscosity.value,
    densityKgM3: fluid.density.value,
    straights: centreline.pieces.flatMap((piece) => (piece.kind === 'straight' ? [piece.length] : [])),
    bends: centreline.bends.map(({ radius, angle }) => ({ radius, angle })),
    rise: duty.toward === 'Z' ? rise : -rise,
  });
}

/** Only of a line that falls everywhere to one end with nothing narrower at its ends: else it does not run out full. */
function drainOf(line: Line, centreline: Centreline, slope: LineSlope | null): DrainTime | null {
  const { viscosity } = line.fluid ?? { viscosity: null };
  if (slope === null || slope.toward === 'both' || slope.rest.slope <= 0 || viscosity === null) return null;
  if (hasLip(line, line.endA) || hasLip(line, line.endZ)) return null;
  return drainTime({
    bore: line.tube.bore,
    length: centreline.length,
    fall: Math.min(Math.abs(riseOf(line, centreline)), centreline.length),
    leastSlope: slope.rest.slope,
    viscosityMm2S: viscosity.value,
  });
}

/** End Z above end A at rest, mm. */
export function riseOf({ axes }: Line, { pieces }: Centreline): number {
  return dot(sub(pieces.at(-1)!.to, pieces[0]!.from), axes.up);
}
