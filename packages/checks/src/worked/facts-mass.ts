/** Weight and frequency, in words. */
import { CAUTION } from '@runback/bending';
import type { Line } from '@runback/job';
import type { Fact, LineMass } from '../fluid-types.ts';
import { say } from '../words.ts';
import { digits, sayMass, sayMassPerLength } from './facts-say.ts';

const SPAN =
  'π/(2L²)·√(EI/m), a straight span pinned at both ends, contents as added mass; ends of the line counted as held; clips that hold direction raise it up to 2.27 times, cushions and bends in the span lower it';

const fact = (label: string, text: string, basis: string): Fact => ({
  group: 'mass',
  label,
  text,
  basis,
  caution: CAUTION,
});

export function massFacts({ tube, fluid, units }: Line, mass: LineMass): readonly Fact[] {
  const basis = `section by geometry from nominal sizes, finished length; density of the tube: ${tube.material.density?.source}`;
  const empty = `${sayMass(mass.tubeKg, units)}, ${sayMassPerLength(mass.tubeKgPerM, units)}`;
  const full =
    fluid?.density == null
      ? []
      : [
          fact(
            `full of ${fluid.name}`,
            `${sayMass(mass.totalKg, units)}, contents ${sayMass(mass.contentsKg, units)}`,
            `${basis}; density of ${fluid.name}: ${fluid.density.source}`,
          ),
        ];
  const { frequency } = mass;
  const shakes =
    frequency === null
      ? []
      : [
          fact(
            'first natural frequency',
            `${digits(frequency.firstHz)} Hz over its longest span between clips, ${say(frequency.span, units)}${full.length > 0 ? ', full' : ', empty'}`,
            SPAN,
          ),
        ];
  return [fact('tube', empty, basis), ...full, ...shakes];
}
