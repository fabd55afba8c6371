/** What every aid is drawn from. Millimetres; the plan is the one of the bend sheet, so that both say the same. */
import { type BenchPlan, type BendPlan, bendPlan, roundPlan } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { Centreline } from '@runback/geometry';
import type { AidFrame } from './aid-paper.ts';
import type { PaperName } from './frame.ts';
import type { Part } from './set.ts';
import type { SheetOptions } from './sheet-context.ts';

/** The aids there are, in the order they come in. */
export const AIDS = ['tape', 'wheel', 'strip', 'cards', 'side-views', 'stick'] as const;
export type Aid = (typeof AIDS)[number];

export interface AidOptions extends SheetOptions {
  /** Which aids to make; default all. */
  readonly aids?: readonly Aid[];
}

export interface AidContext {
  readonly worked: WorkedLine;
  readonly centreline: Centreline;
  /** From the end worked from, unrounded. */
  readonly exact: BendPlan;
  readonly plan: BenchPlan;
  readonly options: AidOptions;
  readonly paper: PaperName;
}

/** One page of an aid without its header and foot. */
export interface AidBody {
  readonly title: string;
  /** Which bends. */
  readonly detail?: string;
  readonly frame: AidFrame;
  readonly part: Part;
}

/** An aid's pages, or in one sentence why there are none. */
export type Made =
  | { readonly bodies: readonly AidBody[] }
  | {
      readonly bodies: readonly [];
      readonly why: string;
      /** Said only when nothing else is made: most lines have no use for it. */
      readonly quiet?: true;
    };

export function aidContext(worked: WorkedLine, centreline: Centreline, options: AidOptions): AidContext {
  const { from = 'A', units = worked.line.units, snap = [], paper = 'a4' } = options;
  const exact = bendPlan(worked.line, centreline, from);
  const plan = roundPlan(worked.line, exact, { unit: units, snap });
  return { worked, centreline, exact, plan, options, paper };
}
