import type { BenchPlan, EndName } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { JobUnit } from '@runback/job';

/** What a sheet needs besides the worked line. */
export interface SheetOptions {
  /** The end worked from; default A. */
  readonly from?: EndName;
  /** Units printed; default: those of the line. Marks are rounded to 0.5 mm or 1/32 in. */
  readonly units?: JobUnit;
  /** Working numbers of bends near a half turn that are made flat. Default none. */
  readonly snap?: readonly number[];
  /** Short checksum of the job text, printed in the foot. */
  readonly checksum: string;
  /** Title of the job; default: the one the line carries. */
  readonly jobTitle?: string;
  /** BCP 47 language of the page; default `en`. */
  readonly lang?: string;
}

/** What every part of one page is drawn from. */
export interface SheetContext {
  readonly worked: WorkedLine;
  readonly plan: BenchPlan;
  readonly options: SheetOptions;
  /** 1, 2, … of `pages`. */
  readonly page: number;
  readonly pages: number;
}
