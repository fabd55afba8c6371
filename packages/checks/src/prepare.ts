import { bendPlan } from '@runback/bending';
import type { Centreline } from '@runback/geometry';
import type { Line } from '@runback/job';
import { selfRow, surroundingRows } from './clearance-rows.ts';
import { lineSlope } from './line-slope.ts';
import type { Work } from './work.ts';

/** Works out once what more than one check wants to know. */
export const prepare = (line: Line, centreline: Centreline): Work => ({
  line,
  centreline,
  plan: bendPlan(line, centreline),
  slope: lineSlope(line, centreline),
  surroundings: surroundingRows(line, centreline),
  self: once(() => selfRow(line, centreline)),
  tools: null,
});

/** Asks at most once and remembers the answer. */
function once<T>(ask: () => T): () => T {
  let known: { readonly answer: T } | null = null;
  return () => {
    known ??= { answer: ask() };
    return known.answer;
  };
}
