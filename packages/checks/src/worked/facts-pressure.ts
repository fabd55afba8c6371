/** Pressure estimates in words. */
import { CAUTION } from '@runback/bending';
import { formatMm, type Line } from '@runback/job';
import type { Fact, LinePressure } from '../fluid-types.ts';
import { thickness } from '../words.ts';
import { sayPressure } from './facts-say.ts';

export const PRESSURE_BASIS =
  'estimate: Barlow on the outside diameter from the tensile strength, ASME B31.3 (3a) with its bend factors from the allowable stress; surges, fatigue, dents, heat and fittings are not in it';

/** Lines on which people's lives hang. */
const WATCHED: ReadonlySet<string> = new Set(['brake', 'fuel', 'oxygen']);

const cautionOf = ({ service }: Line): string =>
  WATCHED.has(service.id) ? `${CAUTION}: defer to local codes and a competent person` : CAUTION;

export function pressureFacts(line: Line, pressure: LinePressure): readonly Fact[] {
  const caution = cautionOf(line);
  const fact = (label: string, text: string, basis: string): Fact => ({
    group: 'pressure',
    label,
    text,
    basis,
    caution,
  });
  const { working } = pressure;
  return [
    ...(working === null
      ? []
      : [fact('works at', sayPressure(working, line.units), line.duty.pressure?.source ?? 'the job')]),
    ...straightFacts(line, pressure, fact),
    ...codeFacts(line, pressure, fact),
    ...proofFacts(line, pressure, fact),
  ];
}

type Row = (label: string, text: string, basis: string) => Fact;

const percent = (part: number): string => `${formatMm(part * 100)} %`;

function straightFacts({ tube, duty, units }: Line, { straight }: LinePressure, row: Row): Fact[] {
  const { strength } = tube.material;
  if (straight === null || strength === null) return [];
  const { wallTolerance, safetyFactor } = duty;
  const basis =
    `straight tube; strength ${sayPressure(strength.value, units)} (${strength.source}) over ${formatMm(safetyFactor.value)} (${safetyFactor.source}), ` +
    `wall ${thickness(straight.wallLeft, units)} after ${percent(wallTolerance.value)} off (${wallTolerance.source}); ` +
    'formulas: Fluid Power Journal, "Sizing Tubes"; no surges, fatigue, dents, heat or fittings in it';
  return [
    row('working pressure by Barlow', sayPressure(straight.barlowMPa, units), basis),
    row(
      'working pressure by Boardman',
      `${sayPressure(straight.boardmanMPa, units)}${straight.thin ? '' : ', not to be used on so thick a wall'}`,
      basis,
    ),
    row('working pressure by Lamé', sayPressure(straight.lameMPa, units), basis),
  ];
}

function codeFacts({ tube, duty, units }: Line, { code }: LinePressure, row: Row): Fact[] {
  const { allowable } = tube.material;
  if (allowable === null) {
    const why = `not worked out: no allowable stress of ${tube.material.name} is known`;
    return [
      row('working pressure by the code formula, bends', why, 'ASME B31.3 para 304.1.2 (3a), (3d), (3e)'),
    ];
  }
  if (code === null) return [];
  const basis =
    `ASME B31.3 para 304.1.2 (3a) and the factors (3d), (3e) of the tightest bend, its outside wall thinned by geometry; ` +
    `allowable stress ${sayPressure(allowable.value, units)} (${allowable.source}), wall less ${percent(duty.wallTolerance.value)}; seamless, flattening not in it; not a design to that code`;
  const bends =
    code.bendInsideMPa === null || code.bendOutsideMPa === null
      ? []
      : [
          row(
            'working pressure by the code formula, tightest bend',
            `${sayPressure(code.bendInsideMPa, units)} inside it, ${sayPressure(code.bendOutsideMPa, units)} outside it`,
            basis,
          ),
        ];
  return [
    row('working pressure by the code formula, straight', sayPressure(code.straightMPa, units), basis),
    ...bends,
  ];
}

/** Said beside the figure of the test, not only in the record of it. */
const TEST_ONLY = 'for the test only: air out first, stand clear, never tighten under pressure';

function proofFacts({ units }: Line, { proof }: LinePressure, row: Row): Fact[] {
  if (proof === null) return [];
  if (proof.pressureMPa === null) return [row('proof test', 'not tested by pressure', proof.source)];
  const burst = proof.burstMPa === null ? '' : `; not bursting at ${sayPressure(proof.burstMPa, units)}`;
  return [
    row(
      'proof test',
      `${sayPressure(proof.pressureMPa, units)} with ${proof.medium}${burst}; ${TEST_ONLY}`,
      proof.mediumSource === proof.source ? proof.source : `${proof.source}; medium: ${proof.mediumSource}`,
    ),
  ];
}
