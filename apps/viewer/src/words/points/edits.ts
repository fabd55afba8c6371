/** The edits of the job's text that change the points of a line. Lengths as written, in the job's units. */
import { DISTANCE_MM, formatLength, type JobEdit, type JobUnit, parseLength } from 'runback';
import { type WrittenLength, written } from '../parts/read.ts';

export interface WrittenPoint {
  readonly at: readonly [WrittenLength, WrittenLength, WrittenLength];
  readonly radius?: WrittenLength | undefined;
  readonly note?: string | undefined;
}

/** A line as its points are written: which of the job's lines, and the points. */
export interface WrittenPoints {
  readonly line: number;
  readonly units: JobUnit;
  readonly points: readonly WrittenPoint[];
}

const listOf = (line: number): string => `lines[${line}].points`;
const pathOf = (line: number, point: number): string => `${listOf(line)}[${point}]`;

export const setCoordinate = (
  { line }: WrittenPoints,
  { point, axis }: { readonly point: number; readonly axis: number },
  value: WrittenLength,
): readonly JobEdit[] => [{ path: `${pathOf(line, point)}.at[${axis}]`, value }];

/** Undefined: the die's radius holds again. */
export const setRadius = (
  { line }: WrittenPoints,
  point: number,
  value: WrittenLength | undefined,
): readonly JobEdit[] => [{ path: `${pathOf(line, point)}.radius`, value }];

export const setNote = (
  { line }: WrittenPoints,
  point: number,
  value: string | undefined,
): readonly JobEdit[] => [{ path: `${pathOf(line, point)}.note`, value }];

/**
 * A new point in the middle of the leg from point `leg` to the next: the line keeps its shape. Where no die gives new
 * corners their radius, it takes that of the nearest corner that has one.
 */
export function splitLeg(
  { line, units, points }: WrittenPoints,
  leg: number,
  dieGivesRadius: boolean,
): readonly JobEdit[] {
  const [from, to] = [points[leg]!, points[leg + 1]!];
  const half = (axis: 0 | 1 | 2): WrittenLength => middle(from.at[axis], to.at[axis], units);
  const radius = dieGivesRadius ? undefined : nearestRadius(points, leg);
  const value = { at: [half(0), half(1), half(2)], ...(radius !== undefined && { radius }) };
  return [{ path: listOf(line), insert: leg + 1, value }];
}

/** At least two points stay. */
export const removePoint = ({ line, points }: WrittenPoints, point: number): readonly JobEdit[] =>
  points.length > 2 ? [{ path: pathOf(line, point), value: undefined }] : [];

export const movePoint = ({ line }: WrittenPoints, point: number, to: number): readonly JobEdit[] => [
  { path: pathOf(line, point), move: to },
];

const mmOf = (value: WrittenLength, units: JobUnit): number => parseLength(written(value), units);

/** Of a number in the job's units: far below what would make a bend of a straight, and without the noise of halving. */
const DECIMALS = 10;

/** Half way between two coordinates, written as its neighbours are: the same text, a fraction of an inch, or a number. */
export function middle(a: WrittenLength, b: WrittenLength, units: JobUnit): WrittenLength {
  const [from, to] = [mmOf(a, units), mmOf(b, units)];
  if (from === to) return a;
  const mm = (from + to) / 2;
  if (units === 'in' && (typeof a === 'string' || typeof b === 'string')) {
    const text = formatLength(mm, 'in', { denominator: 64, bare: true });
    if (Math.abs(parseLength(text, 'in') - mm) <= DISTANCE_MM) return text;
  }
  const perUnit = parseLength('1', units);
  return Number((mm / perUnit).toFixed(DECIMALS)) + 0;
}

function nearestRadius(points: readonly WrittenPoint[], leg: number): WrittenLength | undefined {
  const near = points
    .map((point, index) => ({ radius: point.radius, away: Math.abs(index - leg - 0.5) }))
    .filter(({ radius }) => radius !== undefined)
    .toSorted((a, b) => a.away - b.away);
  return near[0]?.radius;
}
