/** From worked lines to the pages that are shown, printed and saved: the same as `runback sheet` writes. */
import type { WorkedJob, WorkedLine } from 'runback';
import { aidPages, coverPages, type Page, sheetPages } from 'runback/sheet';
import { type SheetChoice, unitsOf } from './choice.ts';

/** The pages of one line, its aids behind them. */
export interface LineSheet {
  readonly worked: WorkedLine;
  readonly pages: readonly Page[];
  /** Why there are no pages, a sentence each. Empty when there are, and when none were asked for. */
  readonly why: readonly string[];
}

export interface SheetSet {
  readonly job: WorkedJob;
  readonly choice: SheetChoice;
  /** Only of a whole job. */
  readonly cover: readonly Page[];
  readonly lines: readonly LineSheet[];
}

export function lineSheet(worked: WorkedLine, job: WorkedJob, choice: SheetChoice): LineSheet {
  if (worked.centreline === null) {
    const fails = worked.findings.filter(({ verdict }) => verdict === 'fail');
    return { worked, pages: [], why: fails.map(({ message }) => message) };
  }
  const { from, paper, pages, aids } = choice;
  const { checksum, runs } = job;
  const options = { from, paper, pages, units: unitsOf(choice, job), checksum, runs };
  const behind = aids.length > 0 ? aidPages(worked, { ...options, aids }) : [];
  return { worked, pages: [...sheetPages(worked, options), ...behind], why: [] };
}

/** The cover of the whole job; none for one line. */
export const coverOf = (job: WorkedJob, choice: SheetChoice): readonly Page[] =>
  choice.which === 'all' ? coverPages(job, { paper: choice.paper, units: unitsOf(choice, job) }) : [];

/** The lines that are printed: all of the job, or the chosen one. */
export const linesOf = (job: WorkedJob, lineId: string | null, choice: SheetChoice): readonly WorkedLine[] =>
  choice.which === 'all' ? job.lines : job.lines.filter(({ line }) => line.id === lineId);

export function sheetSet(job: WorkedJob, lineId: string | null, choice: SheetChoice): SheetSet {
  const lines = linesOf(job, lineId, choice).map((worked) => lineSheet(worked, job, choice));
  return { job, choice, cover: coverOf(job, choice), lines };
}

export const pagesOf = ({ cover, lines }: Pick<SheetSet, 'cover' | 'lines'>): readonly Page[] => [
  ...cover,
  ...lines.flatMap(({ pages }) => pages),
];
