import type { BenchPlan, EndName } from '@runback/bending';
import type { WorkedLine, WorkedRun } from '@runback/checks';
import type { LengthStyle } from '@runback/job';
import { type Frame, frames, type PaperName } from './frame.ts';

/** What a sheet needs besides the worked line. */
export interface SheetOptions {
  /** The end worked from; default A. */
  readonly from?: EndName;
  /** Units printed; default: those of the line. Marks are rounded to 0.5 mm, or 1/32, 1/16 or 0.01 in. */
  readonly units?: LengthStyle;
  /** Working numbers of bends near a half turn that are made flat. Default none. */
  readonly snap?: readonly number[];
  /** Short checksum of the job text, printed in the foot. */
  readonly checksum: string;
  /** Title of the job; default: the one the line carries. */
  readonly jobTitle?: string;
  /** BCP 47 language of the page; default `en`. */
  readonly lang?: string;
  /** Default A4. */
  readonly paper?: PaperName;
  /** Which side of a view its neighbour stands on; default first-angle in mm, third-angle in inches. */
  readonly projection?: 'first' | 'third';
  /** Which pages; default all. The bench pages stand first whatever the order here. */
  readonly pages?: readonly PageKind[];
  /** The runs of the job: the figures of those this line is part of are printed with its own. Default none. */
  readonly runs?: readonly WorkedRun[];
}

/** The table for the bender; a picture of each bend; the whole line in views; the exact values and findings. */
export type PageKind = 'bench' | 'pictures' | 'views' | 'values';

export const PAGE_KINDS: readonly PageKind[] = ['bench', 'pictures', 'views', 'values'];

/** The places on the paper of a sheet. */
export const frameOf = ({ paper = 'a4' }: Pick<SheetOptions, 'paper'>): Frame => frames[paper];

/** What every part of one page is drawn from. */
export interface SheetContext {
  readonly worked: WorkedLine;
  readonly plan: BenchPlan;
  readonly options: SheetOptions;
  /** 1, 2, … of `pages`. */
  readonly page: number;
  readonly pages: number;
}
