/** The way a stick takes: one or more lines joined end to end, each with its bore. Millimetres and radians. */
import {
  type Arc,
  angleBetween,
  type Centreline,
  distance,
  type Piece,
  POINT_MM,
  pieceTangent,
  type Vec3,
} from '@runback/geometry';

/** One line of the way and its inside diameter, mm. */
export interface RunPart {
  readonly centreline: Centreline;
  readonly bore: number;
  /** Smallest inside diameter of what is on its ends, mm. A lip where it is smaller than the bore, else without effect. */
  readonly openingA?: number | null;
  readonly openingZ?: number | null;
}

/** Lines joined end to end: end Z of each lies on end A of the next. */
export type Run = readonly RunPart[];

/** Where two lines of a run meet. */
export interface RunJoint {
  /** Index of the line before it. */
  readonly line: number;
  /** Distance from the start of the run, mm. */
  readonly at: number;
  /** Change of direction across the joint, radians: 0 where the lines run on straight. */
  readonly kink: number;
  readonly boreBefore: number;
  readonly boreAfter: number;
}

/** A bend of a run. `bend` counts from 0 in its own line. */
export interface RunBend {
  readonly line: number;
  readonly bend: number;
  readonly arc: Arc;
  readonly bore: number;
  /** Distance of its start from the start of the run, mm. */
  readonly at: number;
  /** Straight from the bend before and to the bend after, across joints, mm. Infinity beyond the first and last. */
  readonly before: number;
  readonly after: number;
}

export interface LaidRun {
  /** Pieces longer than 0, in order, each with the bore it has. */
  readonly pieces: readonly { readonly piece: Piece; readonly bore: number }[];
  readonly bends: readonly RunBend[];
  readonly joints: readonly RunJoint[];
  /** Length along the centrelines, mm. */
  readonly length: number;
  /** Everything it turns through, bends and kinks, radians. */
  readonly angle: number;
}

/**
 * The pieces, bends and joints of a run in order, distances in mm from its start.
 * @throws RangeError on an empty run, a bore or an opening not > 0 mm, a bend whose radius is not over half the bore, or lines that
 * do not meet within 1e-6 mm
 */
export function layRun(run: Run): LaidRun {
  if (run.length === 0) throw new RangeError('layRun: a run needs at least one line, got 0');
  const starts: number[] = [];
  let length = 0;
  for (const part of run) {
    checkPart(part);
    starts.push(length);
    length += part.centreline.length;
  }
  const joints = run.slice(1).map((after, i) => jointOf(run, { after, line: i, at: starts[i + 1]! }));
  const bends = withStraights(
    run.flatMap((part, line) => bendsOf(part, line, starts[line]!)),
    run,
  );
  const pieces = run.flatMap(({ centreline, bore }) =>
    centreline.pieces.filter((piece) => piece.length > 0).map((piece) => ({ piece, bore })),
  );
  const angle = bends.reduce((sum, b) => sum + b.arc.angle, 0) + joints.reduce((sum, j) => sum + j.kink, 0);
  return { pieces, bends, joints, length, angle };
}

function checkPart({ bore, centreline, openingA, openingZ }: RunPart): void {
  if (!(bore > 0 && bore < Number.POSITIVE_INFINITY))
    throw new RangeError(`layRun: bore must be > 0 mm, got ${bore}`);
  for (const opening of [openingA, openingZ])
    if (!((opening ?? bore) > 0)) throw new RangeError(`layRun: opening must be > 0 mm, got ${opening}`);
  for (const { radius } of centreline.bends)
    if (!(radius > bore / 2))
      throw new RangeError(
        `layRun: bend radius must be over half the bore, got ${radius} with bore ${bore} mm`,
      );
}

const first = (c: Centreline): Piece => c.pieces[0]!;
const last = (c: Centreline): Piece => c.pieces[c.pieces.length - 1]!;

interface Meeting {
  readonly after: RunPart;
  readonly line: number;
  readonly at: number;
}

function jointOf(run: Run, { after, line, at }: Meeting): RunJoint {
  const before = run[line]!;
  const [out, into] = [last(before.centreline), first(after.centreline)];
  const gap = distance(out.to, into.from);
  if (!(gap <= POINT_MM))
    throw new RangeError(`layRun: lines ${line} and ${line + 1} must meet end to end, got ${gap} mm apart`);
  const kink = angleBetween(pieceTangent(out, out.end), pieceTangent(into, into.start));
  return { line, at, kink, boreBefore: before.bore, boreAfter: after.bore };
}

type BareBend = Omit<RunBend, 'before' | 'after'>;

const bendsOf = ({ centreline, bore }: RunPart, line: number, start: number): BareBend[] =>
  centreline.bends.map((b, bend) => {
    const arc = centreline.pieces[b.piece] as Arc;
    return { line, bend, arc, bore, at: start + b.start };
  });

function withStraights(bends: readonly BareBend[], run: Run): RunBend[] {
  const gap = (i: number): number => {
    const [a, b] = [bends[i], bends[i + 1]];
    if (!a || !b) return Number.POSITIVE_INFINITY;
    if (a.line === b.line) return run[a.line]!.centreline.bends[b.bend]!.straightBefore;
    return Math.max(0, b.at - (a.at + a.arc.length));
  };
  return bends.map((bend, i) => ({ ...bend, before: gap(i - 1), after: gap(i) }));
}

/** A stretch of a run that is equally wide all along; a lip has no length. */
export interface RunWidth {
  /** Index of its line; of a lip at a joint, the line before it. */
  readonly line: number;
  /** Where it begins, from the start of the run, mm. */
  readonly at: number;
  readonly diameter: number;
}

/**
 * How wide a run is from end A to end Z, lips at its mouths and joints included, mm.
 * @throws RangeError as `layRun` does
 * @example
 * import { runWidths } from '@runback/bending';
 * import { fromRows } from '@runback/geometry';
 * const run = [{ centreline: fromRows([], 200), bore: 10, openingZ: 8 }];
 * runWidths(run).map(({ at, diameter }) => [at, diameter]); // => [[0, 10], [200, 8]]
 */
export function runWidths(run: Run): readonly RunWidth[] {
  const { length } = layRun(run);
  let at = 0;
  const widths: RunWidth[] = [];
  run.forEach((part, i) => {
    const lip = lipOf(run[i - 1], part);
    if (lip !== null) widths.push({ line: Math.max(0, i - 1), at, diameter: lip });
    widths.push({ line: i, at, diameter: part.bore });
    at += part.centreline.length;
  });
  const end = lipOf(run.at(-1), undefined);
  return end === null ? widths : [...widths, { line: run.length - 1, at: length, diameter: end }];
}

/** What is narrower than the bore it sits on, between two lines or at a mouth. */
function lipOf(before: RunPart | undefined, after: RunPart | undefined): number | null {
  const narrower = (opening: number | null | undefined, part: RunPart | undefined): number =>
    part && (opening ?? part.bore) < part.bore ? opening! : Number.POSITIVE_INFINITY;
  const lip = Math.min(narrower(before?.openingZ, before), narrower(after?.openingA, after));
  return Number.isFinite(lip) ? lip : null;
}

/**
 * An end of a run: where it opens, mm, and the unit direction out of the tube.
 * @throws RangeError as `layRun` does
 */
export function mouthOf(run: Run, end: 'A' | 'Z'): { readonly point: Vec3; readonly outward: Vec3 } {
  layRun(run);
  if (end === 'A') {
    const piece = first(run[0]!.centreline);
    const [x, y, z] = pieceTangent(piece, piece.start);
    return { point: piece.from, outward: [-x, -y, -z] };
  }
  const piece = last(run[run.length - 1]!.centreline);
  return { point: piece.to, outward: pieceTangent(piece, piece.end) };
}
