/** The sticks of a line, and what stands where on their strips: distances from the end of the stick, mm. */
import type { Fact, StickMark, StickSheet } from '@runback/checks';
import { POINT_MM } from '@runback/geometry';
import { type LengthStyle, MM_PER_INCH, type Stick } from '@runback/job';
import type { AidContext } from './aid-context.ts';
import { cleanText } from './measure.ts';
import { runsOf } from './page-facts.ts';
import { length, missWords } from './words.ts';

/** How thick the stick is seen from one side: its tip, then the rest. */
export interface Outline {
  readonly name: 'broad' | 'edge';
  readonly tip: { readonly length: number; readonly tall: number } | null;
  readonly tall: number;
}

export interface StickPlan {
  /** Name of the run; `null` for the line's own stick. */
  readonly run: string | null;
  /** Where it goes in: `END A of Dipstick, upper`. */
  readonly mouth: string;
  readonly stick: Stick;
  readonly sheet: StickSheet;
  readonly facts: readonly Fact[];
  /** All marks; their numbers are places in this list from 1. */
  readonly marks: readonly StickMark[];
  /** From the end of the stick to where the strip ends. */
  readonly length: number;
  readonly outlines: readonly Outline[];
}

/** The sticks printed with this line, and why others of it are not. */
export interface Sticks {
  readonly plans: readonly StickPlan[];
  readonly why: readonly string[];
}

interface Found {
  readonly run: string | null;
  readonly home: string;
  readonly stick: Stick;
  readonly sheet: StickSheet | null;
  readonly facts: readonly Fact[];
}

/** A run's stick is printed once: with the line it goes in at. */
export function sticksOf(context: AidContext): Sticks {
  const { worked } = context;
  const found = [...ownStick(context), ...runsOf(context).flatMap(runStick)];
  const here = found.filter(({ home }) => home === worked.line.id);
  return {
    plans: here.flatMap((one) => (one.sheet === null ? [] : [planOf(one, one.sheet, worked.line.name)])),
    why: [
      ...here.flatMap(({ sheet }) =>
        sheet === null ? ['its stick could not be worked, see the findings'] : [],
      ),
      ...found
        .filter((one) => !here.includes(one))
        .map(({ home, run }) => `the stick of run “${run}” is printed with the line it goes in at, ${home}`),
    ],
  };
}

function ownStick({ worked: { line, stick: sheet, facts } }: AidContext): readonly Found[] {
  return line.stick === null ? [] : [{ run: null, home: line.id, stick: line.stick, sheet, facts }];
}

function runStick({ run, stick: sheet, facts }: ReturnType<typeof runsOf>[number]): readonly Found[] {
  const home = run.lines.at(run.stick?.enters === 'A' ? 0 : -1);
  return run.stick === null || home === undefined
    ? []
    : [{ run: run.name, home, stick: run.stick, sheet, facts }];
}

/** A strip is at least so long: shorter, its words have no room. */
const LEAST = 100;
/** Beyond the last thing on it. */
const MORE = 5;
const STEP = 10;
/** A stick broader than this leaves no room for the marks: then it is not drawn. Judgement, no source. */
const BROADEST = 40;

function planOf({ run, stick, facts }: Found, sheet: StickSheet, home: string): StickPlan {
  const far = Math.max(
    stick.tip?.length ?? 0,
    ...sheet.marks.filter((mark) => onStick(mark, sheet)).map(({ at, doubt }) => at + doubt),
  );
  return {
    run,
    mouth: `END ${stick.enters} of ${home}`,
    stick,
    sheet,
    facts: facts.filter(({ group }) => group === 'stick'),
    marks: [...sheet.marks].sort((a, b) => b.at - a.at),
    length: Math.max(LEAST, Math.ceil((far + MORE) / STEP) * STEP),
    outlines: outlinesOf(stick),
  };
}

function outlinesOf({ thickness, width, tip }: Stick): readonly Outline[] {
  const broad = width ?? thickness;
  const tipBroad = tip?.width ?? width ?? tip?.thickness ?? 0;
  const of = (name: Outline['name'], tall: number, tipTall: number): Outline => ({
    name,
    tall,
    tip: tip && { length: tip.length, tall: tipTall },
  });
  const all = [of('broad', broad, tipBroad), of('edge', thickness, tip?.thickness ?? 0)];
  const [first, second] = all;
  const round = first!.tall === second!.tall && first!.tip?.tall === second!.tip?.tall;
  if (all.some(({ tall, tip: end }) => Math.max(tall, end?.tall ?? 0) > BROADEST)) return [];
  return round ? [first!] : all;
}

/** False for a level below the end of the stick, or above the face its cap seats on. */
export const onStick = ({ at }: StickMark, { seatToTip }: StickSheet): boolean =>
  at >= 0 && at <= seatToTip.longest;

/** From its middle length to the farther of the shortest and the longest way. */
export const seatDoubt = ({ seatToTip: { shortest, middle, longest } }: StickSheet): number =>
  Math.max(longest - middle, middle - shortest);

/** A doubt is rounded up, never down, and has its unit. */
export function doubtWords(mm: number, unit: LengthStyle): string {
  const step = unit === 'mm' ? 0.1 : MM_PER_INCH / 100;
  return missWords(Math.ceil((mm - POINT_MM) / step) * step, unit);
}

export const litresWords = (litres: number): string => `${Number(litres.toFixed(2))} L`;

/** What a mark says on the strip, longest first; at the last only its number in the list. */
export function markLabels(mark: StickMark, number: number, unit: LengthStyle): readonly string[] {
  const name = cleanText(mark.name);
  const doubt = doubtWords(mark.doubt, unit);
  const named = name === '' ? litresWords(mark.litres) : name;
  const full = name === '' ? named : `${name} · ${litresWords(mark.litres)}`;
  return [
    `${full} · ${length(mark.at, unit)} ± ${doubt}`,
    `${full} ± ${doubt}`,
    `${named} ± ${doubt}`,
    named,
  ].concat(`no. ${number}`);
}

/** What the marks rest on: nobody cuts by them before the tube was filled. */
export const verifyWords = ({ marks }: StickPlan): string =>
  marks.length > 0 && marks.every(({ from }) => from === 'fills')
    ? 'VERIFY BY FILLING. Marks are from your fills, worked between them'
    : 'VERIFY BY FILLING. Marks are worked, not measured';
