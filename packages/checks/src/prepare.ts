import { bendPlan } from '@runback/bending';
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import { selfRow, surroundingRows } from './clearance-rows.ts';
import { lineSlope } from './line-slope.ts';
import type { Work } from './work.ts';
import { estimatesOf } from './worked/estimates.ts';
import { pocketsOf } from './worked/pockets.ts';

export interface PrepareOptions {
  /** Whether the attitude in which most stays is searched for; default not. */
  readonly search?: boolean;
}

/** Works out once what more than one check wants to know. */
export function prepare(line: Line, centreline: Centreline, { search = false }: PrepareOptions = {}): Work {
  const slope = lineSlope(line, centreline);
  return {
    line,
    centreline,
    plan: bendPlan(line, centreline),
    slope,
    surroundings: surroundingRows(line, centreline),
    self: once(() => selfRow(line, centreline)),
    pockets: once(() => pocketsOf(line, centreline, { search, slope })),
    estimates: once(() => estimatesOf(line, centreline, slope)),
    tools: null,
  };
}

/** Asks at most once and remembers the answer. */
function once<T>(ask: () => T): () => T {
  let known: { readonly answer: T } | null = null;
  return () => {
    known ??= { answer: ask() };
    return known.answer;
  };
}
