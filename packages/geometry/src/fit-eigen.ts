/** Eigenvalues and eigenvectors of a small symmetric matrix by Jacobi's rotations. */

export interface Eigen {
  readonly value: number;
  readonly vector: readonly number[];
}

/** Sweeps converge quadratically: 4×4 takes about five. */
const MOST_SWEEPS = 40;

/**
 * Eigenpairs of a symmetric matrix, largest value first, vectors orthonormal to rounding. Cyclic Jacobi: each step
 * turns two axes so that one off-diagonal term vanishes (Golub and Van Loan, Matrix Computations, section 8.5).
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): readonly Eigen[] {
  const a = matrix.map((row) => [...row]);
  const n = a.length;
  const v = a.map((_, i) => a.map((_, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < MOST_SWEEPS && !isDiagonal(a); sweep++)
    for (let p = 0; p < n - 1; p++) for (let q = p + 1; q < n; q++) clear(a, v, [p, q]);
  return a
    .map((row, i) => ({ value: row[i]!, vector: v.map((column) => column[i]!) }))
    .sort((x, y) => y.value - x.value);
}

/** True when every off-diagonal term is lost beside the two diagonal terms it joins. */
function isDiagonal(a: readonly (readonly number[])[]): boolean {
  return a.every((row, i) =>
    row.every((x, j) => {
      const beside = Math.abs(row[i]!) + Math.abs(a[j]![j]!);
      return i === j || beside + Math.abs(x) === beside;
    }),
  );
}

/** Turns axes p and q so that a[p][q] becomes 0; `v` follows. */
function clear(a: number[][], v: number[][], [p, q]: readonly [number, number]): void {
  const off = a[p]![q]!;
  if (off === 0) return;
  const half = (a[q]![q]! - a[p]![p]!) / (2 * off);
  const t = (half < 0 ? -1 : 1) / (Math.abs(half) + Math.hypot(half, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (const row of a) turn(row, p, q);
  const [rowP, rowQ] = [a[p]!, a[q]!];
  for (let i = 0; i < a.length; i++)
    [rowP[i], rowQ[i]] = [c * rowP[i]! - s * rowQ[i]!, s * rowP[i]! + c * rowQ[i]!];
  rowP[q] = 0;
  rowQ[p] = 0;
  for (const row of v) turn(row, p, q);

  function turn(row: number[], i: number, j: number): void {
    [row[i], row[j]] = [c * row[i]! - s * row[j]!, s * row[i]! + c * row[j]!];
  }
}
