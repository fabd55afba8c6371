import { NO_CREST } from './slope-sines.ts';

/**
 * The largest m for which some F_k, or some mixture λ·F_k + (1 − λ)·F_j, is at least m at every corner.
 * `corners[v][k]` is F_k at corner v; a k that is no crest at some corner is left out.
 */
export function bestMixture(corners: readonly Float64Array[]): number {
  const lines: number[][] = [];
  for (let k = 0; k < corners[0]!.length; k++) {
    const values = corners.map((corner) => corner[k]!);
    if (!values.includes(NO_CREST)) lines.push(values);
  }
  let most = Math.max(...lines.map((values) => Math.min(...values)));
  for (let k = 1; k < lines.length; k++)
    for (let j = 0; j < k; j++) most = Math.max(most, mixtureOfTwo(lines[k]!, lines[j]!, most));
  return most;
}

/** The largest, over λ in [0, 1], of the smallest λ·a + (1 − λ)·b; at least `most`, or anything below it. */
function mixtureOfTwo(a: readonly number[], b: readonly number[], most: number): number {
  // No mixture beats the better of the two at the corner where that is lowest.
  if (a.some((value, v) => Math.max(value, b[v]!) <= most)) return most;
  let best = most;
  for (let v = 1; v < a.length; v++)
    for (let w = 0; w < v; w++) {
      // Where the lines of two corners cross over λ: the smallest of all can only turn there.
      const slope = a[v]! - b[v]! - (a[w]! - b[w]!);
      const share = (b[w]! - b[v]!) / slope;
      if (share > 0 && share < 1) best = Math.max(best, smallestAt(share, a, b));
    }
  return best;
}

function smallestAt(share: number, a: readonly number[], b: readonly number[]): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (let v = 0; v < a.length; v++) smallest = Math.min(smallest, share * a[v]! + (1 - share) * b[v]!);
  return smallest;
}
