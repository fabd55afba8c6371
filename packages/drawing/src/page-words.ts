/** Exact figures and places in words, for the pages that are read and not bent by. */
import type { BenchPlan } from '@runback/bending';
import type { Finding, LineSlope, WorkedLine } from '@runback/checks';
import { type MachineAxes, POINT_MM, pitchAndRoll, type SlopeExtreme } from '@runback/geometry';
import { formatDegrees, formatLength, type LengthStyle } from '@runback/job';

/** Hundredths of a mm, thousandths of an inch; without the unit. */
export const exact = (mm: number, unit: LengthStyle): string =>
  formatLength(mm, unit, { decimals: unit === 'mm' ? 2 : 3, denominator: null, bare: true });

/** The same with every decimal written, so that figures under each other line up. */
export const exactInTable = (mm: number, unit: LengthStyle): string => {
  const decimals = unit === 'mm' ? 2 : 3;
  return (Number(exact(mm, unit)) + 0).toFixed(decimals);
};

/** With the unit: `28 mm`, `1.102 in`. */
export const exactUnit = (mm: number, unit: LengthStyle): string => `${exact(mm, unit)} ${unit}`;

/** Hundredths of a degree, with the sign for degrees. */
export const exactDegrees = (radians: number): string => `${formatDegrees(radians, 2)}°`;

/** A fall is rounded down and a rise up, to a hundredth, as in the proof: `16.15°` of a fall of 16.158°. */
function slopeSize(radians: number): string {
  const hundredths = Number(((Math.abs(radians) * 18000) / Math.PI).toFixed(6));
  return `${(radians > 0 ? Math.floor(hundredths) : Math.ceil(hundredths)) / 100}°`;
}

const tenths = (radians: number): string => `${formatDegrees(Math.abs(radians), 1)}°`;

/** Where a bend leaves, as seen from START: `59.31° clockwise`, `half turn`, `none`. Never a sign. */
export function leavesWords(turn: number | null): string {
  if (turn === null) return 'sets 12 o’clock';
  if (turn === 0) return 'none';
  if (turn === Math.PI) return 'half turn';
  return `${exactDegrees(Math.abs(turn))} ${turn > 0 ? 'clockwise' : 'anticlockwise'}`;
}

/** The bend's number on this sheet from its number counted from A. */
export const onSheet = (fromA: number, plan: BenchPlan): number =>
  plan.from === 'A' ? fromA : plan.rows.length + 1 - fromA;

/** `in bend 2`, `between bend 2 and END Z`: numbers as on this sheet. Where a bend meets a straight counts as straight. */
export function placeWords(
  at: number,
  { worked, plan }: { readonly worked: WorkedLine; readonly plan: BenchPlan },
): string {
  const bends = worked.centreline?.bends ?? [];
  const here = bends.findIndex((bend) => at > bend.start + POINT_MM && at < bend.end - POINT_MM);
  if (here >= 0) return `in bend ${onSheet(here + 1, plan)}`;
  const before = bends.filter((bend) => bend.end <= at + POINT_MM).length;
  const from = before === 0 ? 'END A' : `bend ${onSheet(before, plan)}`;
  const to = before === bends.length ? 'END Z' : `bend ${onSheet(before + 1, plan)}`;
  return `between ${from} and ${to}`;
}

/** That no fall was judged, and what is then to be done with a line that is bled. */
export const noFallWords = ({ service, bleed }: WorkedLine['line']): string =>
  `The job asks no fall of this line: how it drains is not judged.${service.bleeds || bleed !== null ? ' Bleed it until no air comes.' : ''}`;

/** What is judged: the fall everywhere at rest, and in the worst attitude. */
export function slopeWords(context: { readonly worked: WorkedLine; readonly plan: BenchPlan }): string {
  const { slope, line } = context.worked;
  if (slope === null) return noFallWords(line);
  const { unit } = context.plan;
  const toward = slope.toward === 'both' ? 'toward both ends from one crest' : `toward END ${slope.toward}`;
  const place = ({ at }: SlopeExtreme): string => `${placeWords(at, context)}, ${exact(at, unit)} from END A`;
  const wanted = line.drain ? ` (${exactDegrees(line.drain.minSlope.value)} asked)` : '';
  const { rest } = slope;
  const tilted = line.attitudes.kind === 'rest' ? '' : ` ${worstWords(slope, line.axes, place)}`;
  return `At rest ${fallWords(rest.slope, toward)}${wanted}; ${rest.slope < 0 ? 'the worst' : 'the least'} is ${place(rest)}.${tilted}`;
}

function fallWords(slope: number, toward: string): string {
  const said = slopeSize(slope);
  if (said === '0°') return `it falls ${toward}, but is level at its flattest`;
  return slope > 0
    ? `it falls at least ${said} ${toward} everywhere`
    : `it does NOT fall ${toward} everywhere: it rises by up to ${said}`;
}

function worstWords(
  { worst }: LineSlope,
  axes: MachineAxes,
  place: (extreme: SlopeExtreme) => string,
): string {
  const said = slopeSize(worst.slope);
  const fall = said === '0°' ? 'level' : worst.slope > 0 ? `still ${said}` : `it RISES ${said}`;
  return `${attitudeWords(worst, axes)}: ${fall}, ${place(worst)}.`;
}

/** `With nose down 5° and right side down 3°`. */
function attitudeWords({ attitude, up }: SlopeExtreme, axes: MachineAxes): string {
  const { pitch, roll } = attitude ?? pitchAndRoll(axes, up);
  const said = [
    tenths(pitch) === '0°' ? '' : `nose ${pitch > 0 ? 'down' : 'up'} ${tenths(pitch)}`,
    tenths(roll) === '0°' ? '' : `${roll > 0 ? 'right' : 'left'} side down ${tenths(roll)}`,
  ].filter((words) => words !== '');
  return said.length === 0 ? 'Level is the worst attitude' : `With ${said.join(' and ')}`;
}

/** `found 28 mm · limit 40 mm · 355.09 from END A`; empty where a finding measures nothing. */
export function figuresOf({ found, limit, unit, at }: Finding, units: LengthStyle): string {
  const said = (value: number): string => measured(Math.abs(value), unit, units);
  return [
    found === null || (unit === 'count' && limit === null)
      ? ''
      : `found ${said(found)}${found < 0 ? BELOW[unit] : ''}`,
    limit === null ? '' : `limit ${said(limit)}`,
    at === null ? '' : `${exact(at, units)} from END A`,
  ]
    .filter((words) => words !== '')
    .join(' · ');
}

/** A sign is never printed bare. */
const BELOW: Readonly<Record<Finding['unit'], string>> = {
  mm: ' too little (overlaps)',
  deg: ' the wrong way',
  count: ' below zero',
  ratio: ' below zero',
  percent: ' below zero',
  ml: ' below zero',
  MPa: ' below zero',
  '': ' below zero',
};

function measured(value: number, unit: Finding['unit'], units: LengthStyle): string {
  if (unit === 'mm') return exactUnit(value, units);
  const text = String(Math.round(value * 100) / 100 + 0);
  return {
    deg: `${text}°`,
    count: text,
    ratio: `${text} ×`,
    percent: `${text} %`,
    ml: `${text} ml`,
    MPa: `${text} MPa`,
    '': text,
  }[unit];
}
