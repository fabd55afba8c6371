/** The rows of the points: what is written, what is wrong with it, and the leg after it. Millimetres where not as written. */
import { distance, type Finding, fillet, type Job, type WorkedLine } from 'runback';
import { pointName, pointOf } from '../parts/chosen.ts';
import type { WrittenPoint, WrittenPoints } from './edits.ts';

export interface PointRow {
  readonly index: number;
  /** A, 1, 2, …, Z. */
  readonly name: string;
  readonly end: boolean;
  readonly written: WrittenPoint | null;
  /** Failures and notes about this very point. */
  readonly findings: readonly Finding[];
  /** For a corner that does not fit: the largest radius that does, its neighbours held, mm. */
  readonly largestRadius: number | null;
  /** The leg to the next point; `null` after Z. */
  readonly leg: LegRow | null;
}

export interface LegRow {
  /** Point to point, mm. */
  readonly length: number;
  readonly straight: StraightLeft;
}

/** What is left straight of a leg between its bends, mm. */
export type StraightLeft =
  | { readonly kind: 'straight'; readonly left: number }
  /** One straight over several legs, with points it runs straight through. */
  | { readonly kind: 'shared'; readonly left: number; readonly from: string; readonly to: string }
  /** Both its corners are of one bend. */
  | { readonly kind: 'bent' }
  | { readonly kind: 'short'; readonly needed: number }
  /** The line cannot exist, but not because of this leg. */
  | { readonly kind: 'unknown' };

type Written = Job['written'];

/** Where the points of a line are written; `null` for the opposite hand of another, which has none of its own. */
export function writtenPoints(written: Written, id: string): WrittenPoints | null {
  const line = written.lines.findIndex((each) => each.id === id);
  const found = written.lines[line];
  return found && 'points' in found ? { line, units: written.units, points: found.points } : null;
}

export function pointRows(worked: WorkedLine, written: WrittenPoints | null): readonly PointRow[] {
  const { corners } = worked.line;
  const about = worked.findings.filter((finding) => finding.verdict !== 'pass');
  const misfits = misfitsOf(worked);
  return corners.map((_, index) => ({
    index,
    name: pointName(index, corners.length),
    end: index === 0 || index === corners.length - 1,
    written: written?.points[index] ?? null,
    findings: about.filter((finding) => pointOf(worked, finding) === index),
    largestRadius:
      misfits.find(({ point, largestRadius }) => point === index && largestRadius > 0)?.largestRadius ?? null,
    leg: index === corners.length - 1 ? null : legRow(worked, index, misfits),
  }));
}

type Misfits = Extract<ReturnType<typeof fillet>, { ok: false }>['misfits'];

function misfitsOf({ line, centreline }: WorkedLine): Misfits {
  if (centreline !== null) return [];
  const rounded = fillet(line.corners, { cures: false });
  return rounded.ok ? [] : rounded.misfits;
}

function legRow(worked: WorkedLine, leg: number, misfits: Misfits): LegRow {
  const { corners } = worked.line;
  const length = distance(corners[leg]!.at, corners[leg + 1]!.at);
  return { length, straight: straightOf(worked, leg, misfits) };
}

function straightOf({ line, centreline }: WorkedLine, leg: number, misfits: Misfits): StraightLeft {
  if (centreline === null) {
    const misfit = misfits.find(({ leg: [from, to] }) => from <= leg && leg < to);
    return misfit && misfit.reason === 'leg-too-short'
      ? { kind: 'short', needed: misfit.needed }
      : { kind: 'unknown' };
  }
  const { bends, pieces } = centreline;
  const bent = bends.some(({ points }) => points.includes(leg) && points.includes(leg + 1));
  if (bent) return { kind: 'bent' };
  const before = bends.filter(({ points }) => points.at(-1)! <= leg).length;
  const left = pieces[2 * before]!.length;
  const from = bends[before - 1]?.points.at(-1) ?? 0;
  const to = bends[before]?.points[0] ?? line.corners.length - 1;
  const name = (index: number): string => pointName(index, line.corners.length);
  return to - from === 1
    ? { kind: 'straight', left }
    : { kind: 'shared', left, from: name(from), to: name(to) };
}
