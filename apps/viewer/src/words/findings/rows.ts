/** Findings, worst first, and what each says in the units that are read. */
import {
  type Finding,
  formatLength,
  formatMm,
  type LengthStyle,
  type Verdict,
  type WorkedLine,
  type WorkedRun,
} from 'runback';
import { readable } from '../parts/read.ts';

export interface FindingRow {
  /** Among the line's findings: what a selection names it by. */
  readonly index: number;
  readonly finding: Finding;
}

export type Grouped = Readonly<Record<Verdict, readonly FindingRow[]>>;

/** By verdict, each in the order of the checks. */
export function grouped({ findings }: WorkedLine): Grouped {
  const rows = findings.map((finding, index) => ({ index, finding }));
  const of = (verdict: Verdict): readonly FindingRow[] =>
    rows.filter(({ finding }) => finding.verdict === verdict);
  return { fail: of('fail'), note: of('note'), pass: of('pass') };
}

/** As many decimals as two figures are ever told apart by. */
const MOST_DECIMALS = 6;

/** `found 28 mm, limit 40 mm`; null where nothing is measured, and where the message says both: a count, a fall rounded down. */
export function measured({ check, found, limit, unit }: Finding, style: LengthStyle): string | null {
  if (found === null || unit === '' || unit === 'count' || check === 'slope') return null;
  const say = (value: number, decimals: number): string => readable(figure(value, unit, { style, decimals }));
  let decimals = 1;
  while (
    limit !== null &&
    limit !== found &&
    decimals < MOST_DECIMALS &&
    say(found, decimals) === say(limit, decimals)
  )
    decimals += 1;
  const words = `found ${say(found, decimals)}`;
  return limit === null ? words : `${words}, limit ${say(limit, decimals)}`;
}

interface Figures {
  readonly style: LengthStyle;
  readonly decimals: number;
}

function figure(value: number, unit: Finding['unit'], { style, decimals }: Figures): string {
  if (unit === 'mm')
    return decimals === 1
      ? formatLength(value, style)
      : formatLength(value, style, { decimals, denominator: null });
  const plain = formatMm(value, unit === 'ratio' ? decimals + 1 : decimals);
  if (unit === 'deg') return `${plain}°`;
  if (unit === 'percent') return `${plain} %`;
  return unit === 'ml' || unit === 'MPa' ? `${plain} ${unit}` : plain;
}

/** Where it is: at an end or so far from A, which bend, of what. Null where it is about the line as a whole. */
export function where(finding: Finding, { centreline }: WorkedLine, style: LengthStyle): string | null {
  const { at, bend, to } = finding;
  const words = [
    at === null ? '' : placeWords(at, centreline?.length ?? null, style),
    bend === null ? '' : `B${bend}`,
    to ?? '',
  ].filter((part) => part !== '');
  return words.length === 0 ? null : words.join(' · ');
}

/** The finding with the name of its run in the place of the id, and whether there is anything of it to show. */
export function ofRun(
  finding: Finding,
  runs: readonly WorkedRun[],
): { readonly finding: Finding; readonly shows: boolean } {
  const run = runs.find((each) => each.run.id === finding.to)?.run;
  const place = finding.at !== null || finding.bend !== null || finding.point !== null;
  if (!run) return { finding, shows: place || finding.to !== null };
  return { finding: { ...finding, to: `run ${run.name}` }, shows: place };
}

function placeWords(at: number, length: number | null, style: LengthStyle): string {
  if (at === 0) return 'end A';
  return at === length ? 'end Z' : `${formatLength(at, style)} from A`;
}
