/** What to print and how. Remembered on the device; nothing of it stands in the job. */
import type { EndName, LengthStyle, WorkedJob } from 'runback';
import { AIDS, type Aid, PAGE_KINDS, type PageKind, type PaperName } from 'runback/sheet';

export interface SheetChoice {
  readonly which: 'line' | 'all';
  /** The end worked from. */
  readonly from: EndName;
  /** `null`: as the job. */
  readonly units: LengthStyle | null;
  readonly paper: PaperName;
  readonly pages: readonly PageKind[];
  readonly aids: readonly Aid[];
  readonly zoom: 'width' | 'actual';
}

export const AT_FIRST: SheetChoice = {
  which: 'line',
  from: 'A',
  units: null,
  paper: 'a4',
  pages: PAGE_KINDS,
  aids: [],
  zoom: 'width',
};

export const UNITS: readonly LengthStyle[] = ['mm', 'in', 'in-16', 'in-decimal'];

/** What was kept, with everything that is not understood as at first. */
export function readChoice(kept: unknown): SheetChoice {
  const from = typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  const one = <T>(key: keyof SheetChoice, known: readonly T[], otherwise: T): T =>
    known.includes(from[key] as T) ? (from[key] as T) : otherwise;
  const some = <T>(key: keyof SheetChoice, known: readonly T[], otherwise: readonly T[]): readonly T[] => {
    const list = from[key];
    return Array.isArray(list) ? known.filter((item) => list.includes(item)) : otherwise;
  };
  return {
    which: one('which', ['line', 'all'], AT_FIRST.which),
    from: one('from', ['A', 'Z'], AT_FIRST.from),
    units: one('units', [null, ...UNITS], AT_FIRST.units),
    paper: one('paper', ['a4', 'letter'], AT_FIRST.paper),
    pages: some('pages', PAGE_KINDS, AT_FIRST.pages),
    aids: some('aids', AIDS, AT_FIRST.aids),
    zoom: one('zoom', ['width', 'actual'], AT_FIRST.zoom),
  };
}

export const unitsOf = ({ units }: SheetChoice, job: WorkedJob): LengthStyle => units ?? job.units;

/** The list with one more or one less, in the order the pages come in. */
export function switched<T>(known: readonly T[], list: readonly T[], item: T): readonly T[] {
  return known.filter((one) => (one === item ? !list.includes(one) : list.includes(one)));
}
