/** What heat does, in words. */
import { CAUTION } from '@runback/bending';
import { dot, norm, type Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { Fact, LineThermal } from '../fluid-types.ts';
import { list, sayBoth, thickness } from '../words.ts';
import { growthStress } from './estimates-thermal.ts';
import { sayDifference, sayPressure, sayTemperature } from './facts-say.ts';

export const THERMAL_BASIS =
  'estimate: a guided cantilever √(3·E·D·Δ/S) as long as the line lies off the straight between its ends, handbooks of pipe stress, from memory; the whole line at one temperature, what holds it does not grow; a line in three dimensions gives otherwise';

const fact = (label: string, text: string, basis: string): Fact => ({
  group: 'thermal',
  label,
  text,
  basis,
  caution: CAUTION,
});

export function thermalFacts(line: Line, thermal: LineThermal): readonly Fact[] {
  const { deltaK, growth, movement } = thermal;
  const { units, duty, tube } = line;
  const fitted = duty.temperature!.fitted.value;
  const verb = growth < 0 ? 'shorter' : 'longer';
  const source = `α·ΔT·length, the whole line at one temperature; α ${tube.material.expansion?.source}, good to some 10 %`;
  return [
    fact(
      'growth along it',
      `${thickness(Math.abs(growth), units)} ${verb} from ${sayTemperature(fitted, units)} to ${sayTemperature(fitted + deltaK, units)} (${sayDifference(deltaK, units)})`,
      source,
    ),
    fact('end Z moves, end A held', moved(line, movement), source),
    ...legFact(line, thermal),
  ];
}

/** "1.90 mm: 1.70 mm forward and 0.90 mm down" */
function moved({ axes, units }: Line, movement: Vec3): string {
  const parts = (
    [
      [axes.forward, 'forward', 'aft'],
      [axes.left, 'left', 'right'],
      [axes.up, 'up', 'down'],
    ] as const
  ).flatMap(([axis, plus, minus]) => {
    const along = dot(movement, axis);
    const said = thickness(Math.abs(along), units);
    return Number.parseFloat(said) === 0 ? [] : [`${said} ${along > 0 ? plus : minus}`];
  });
  const whole = thickness(norm(movement), units);
  return parts.length === 0 ? whole : `${whole}: ${list(parts)}`;
}

function legFact(line: Line, { leg }: LineThermal): Fact[] {
  const stress = growthStress(line);
  if (!line.endA.rigid || !line.endZ.rigid)
    return [
      fact(
        'its bends take that',
        'not judged, as one of its ends can move',
        'the job: an end that is not rigid',
      ),
    ];
  if (leg === null || stress === null) return [];
  const [length, needed] = sayBoth(leg.length, leg.needed, line.units);
  const text = `${leg.takes ? 'yes' : 'NO'}: ${needed} off the straight needed, ${length} there; stress ${sayPressure(leg.stressMPa, line.units)}`;
  return [
    fact(
      'its bends take that',
      text,
      `${THERMAL_BASIS}; S ${sayPressure(stress.value, line.units)}, ${stress.source}`,
    ),
  ];
}
