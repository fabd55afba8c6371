/** Sines of the slopes of a line for every choice of crest, at one up: the inner loop of slope-search.ts. */
import { inAxes } from './slope-piece.ts';
import type { MachineAxes, Piece, Vec3 } from './types.ts';
import { dot, sinCos } from './vec.ts';

/** Says that an arc cannot be the crest: below every sine. */
export const NO_CREST = -2;

/** One piece in machine axes. A straight has angle 0. */
interface Run {
  readonly tangent: Vec3;
  /** Unit vector from the centre to the start of the arc. */
  readonly outward: Vec3;
  readonly angle: number;
  readonly sine: number;
  readonly cosine: number;
}

export interface Crests {
  readonly runs: readonly Run[];
  /** Number of choices: end A, each arc, end Z. */
  readonly choices: number;
}

export function prepareCrests(pieces: readonly Piece[], axes: MachineAxes): Crests {
  const runs = pieces.map((piece): Run => {
    if (piece.kind === 'straight')
      return { tangent: inAxes(axes, piece.direction, 1), outward: [0, 0, 0], angle: 0, sine: 0, cosine: 1 };
    const [sine, cosine] = sinCos(piece.angle);
    const [tangent, outward] = [inAxes(axes, piece.v, 1), inAxes(axes, piece.u, 1)];
    return { tangent, outward, angle: piece.angle, sine, cosine };
  });
  return { runs, choices: runs.filter((run) => run.angle > 0).length + 2 };
}

/** Sine of F_k for every choice k at the vector `up` (in machine axes), NO_CREST for an arc that cannot be one. */
export function crestSines(crests: Crests, up: Vec3): Float64Array {
  const { runs, choices } = crests;
  const sines = new Float64Array(choices).fill(Number.POSITIVE_INFINITY);
  const barred = new Array<boolean>(choices).fill(false);
  let arcs = 0;
  // Forward: what the pieces before each arc give towards A. Then back: what those after it give towards Z.
  let toA = Number.POSITIVE_INFINITY;
  for (const run of runs) {
    const start = dot(run.tangent, up);
    const turn = -dot(run.outward, up);
    if (run.angle > 0) {
      arcs++;
      sines[arcs] = toA;
      barred[arcs] = run.angle > Math.PI && !(start >= 0 && run.cosine * start + run.sine * turn <= 0);
    }
    toA = Math.min(toA, lowest(run, start, turn));
  }
  sines[choices - 1] = toA;
  let toZ = Number.POSITIVE_INFINITY;
  for (let i = runs.length - 1; i >= 0; i--) {
    const run = runs[i]!;
    const start = -dot(run.tangent, up);
    const turn = dot(run.outward, up);
    if (run.angle > 0) {
      sines[arcs] = barred[arcs] ? NO_CREST : Math.min(sines[arcs]!, toZ);
      arcs--;
    }
    toZ = Math.min(toZ, lowest(run, start, turn));
  }
  sines[0] = toZ;
  return sines;
}

/** Smallest of start·cos x + turn·sin x over the piece. */
function lowest(run: Run, start: number, turn: number): number {
  if (run.angle > 0) {
    const bottom = Math.atan2(-turn, -start);
    if ((bottom < 0 ? bottom + 2 * Math.PI : bottom) < run.angle)
      return -Math.sqrt(start * start + turn * turn);
  }
  return Math.min(start, run.cosine * start + run.sine * turn);
}

export const highest = (values: Float64Array): number => {
  let most = values[0]!;
  for (const value of values) most = Math.max(most, value);
  return most;
};
