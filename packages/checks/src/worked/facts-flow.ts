/** Flow and time to run out, in words. */
import { CAUTION, type PressureDrop } from '@runback/bending';
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { Fact, LineFlow } from '../fluid-types.ts';
import { inLossTable } from './estimates-flow.ts';
import {
  digits,
  sayFlow,
  sayPressure,
  saySeconds,
  saySecondsAtLeast,
  saySecondsAtMost,
  sayVelocity,
} from './facts-say.ts';

const LOSS =
  'Darcy–Weisbach with Colebrook (64/Re while laminar), drawn tube of 0.0015 mm roughness (from memory); bends by Crane TP-410, page A-29; ends, fittings and valves are not in it; Colebrook is good to some 5 %';
const DRAIN = 'Hagen–Poiseuille on an even slope, with bounds for any other course';

const fact = (label: string, text: string, basis: string): Fact => ({
  group: 'flow',
  label,
  text,
  basis,
  caution: CAUTION,
});

export function flowFacts(line: Line, centreline: Centreline, flow: LineFlow | null): readonly Fact[] {
  return [...lossFacts(line, centreline, flow?.drop ?? null), ...drainFacts(line, flow)];
}

function lossFacts(line: Line, centreline: Centreline, drop: PressureDrop | null): Fact[] {
  const { duty, fluid, units } = line;
  if (duty.flow === null) return [];
  const flow = `${sayFlow(duty.flow.value, units)} toward end ${duty.toward}`;
  if (drop === null) {
    const why = inLossTable(line, centreline)
      ? 'density and viscosity of the liquid are not both known'
      : 'a bend is outside the table of bend losses, 1 to 20 bores';
    return [fact('pressure lost', `not worked out at ${flow}: ${why}`, LOSS)];
  }
  const basis = `${LOSS}; ${fluid?.name}: ${fluid?.viscosity?.value} mm²/s, ${fluid?.density?.value} kg/m³ (${fluid?.viscosity?.source})`;
  const { friction, reynolds, velocityMPerS } = drop;
  const regime = friction.regime === 'unsure' ? 'neither surely laminar nor turbulent' : friction.regime;
  return [
    fact(
      'flow',
      `${flow}: ${sayVelocity(velocityMPerS, units)}, Reynolds number ${digits(reynolds)}, ${regime}`,
      basis,
    ),
    fact('pressure lost', lost(drop, line), basis),
  ];
}

function lost(
  { leastMPa, totalMPa, straightsMPa, bendsMPa, riseMPa }: PressureDrop,
  { units }: Line,
): string {
  const said = (mpa: number): string => sayPressure(Math.abs(mpa), units);
  const total =
    totalMPa < 0
      ? `none: its fall gives ${said(totalMPa)} more than it loses`
      : leastMPa > 0 && said(leastMPa) !== said(totalMPa)
        ? `${said(leastMPa)} to ${said(totalMPa)}`
        : said(totalMPa);
  const height =
    riseMPa === 0 ? '' : riseMPa > 0 ? `, rise ${said(riseMPa)}` : `, its fall gives ${said(riseMPa)}`;
  return `${total} (straights ${said(straightsMPa)}, bends ${said(bendsMPa)}${height})`;
}

function drainFacts({ drain: asked }: Line, flow: LineFlow | null): Fact[] {
  const drain = flow?.drain;
  if (!drain) return [];
  const most = drain.mostS === null ? ' or more' : ` to ${saySecondsAtMost(drain.mostS)}`;
  const even = drain.evenS === null ? 'no figure, it would not be laminar' : saySeconds(drain.evenS);
  return [
    fact(
      `runs out of end ${asked?.to} in`,
      `${saySecondsAtLeast(drain.leastS)}${most}; on an even slope: ${even}`,
      [DRAIN, ...drain.assumptions].join('; '),
    ),
  ];
}
