/** Pressure, flow, heat and weight of one line, from what its job says; each `null` where that is not enough. */
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { LineSlope, WorkedLine } from '../types.ts';
import { flowOf } from './estimates-flow.ts';
import { massOf } from './estimates-mass.ts';
import { pressureOf } from './estimates-pressure.ts';
import { thermalOf } from './estimates-thermal.ts';

export type Estimates = Pick<WorkedLine, 'pressure' | 'flow' | 'thermal' | 'mass'>;

export const estimatesOf = (line: Line, centreline: Centreline, slope: LineSlope | null): Estimates => ({
  pressure: pressureOf(line, centreline),
  flow: flowOf(line, centreline, slope),
  thermal: thermalOf(line, centreline),
  mass: massOf(line, centreline),
});
