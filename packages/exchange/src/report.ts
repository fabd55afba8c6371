import type { BendPlan, PlanRow } from '@runback/bending';
import type { ClearanceRow, LineSlope, WorkedJob, WorkedLine } from '@runback/checks';
import type { Centreline, Piece } from '@runback/geometry';
import { deg, orNull, plain, triple } from './plain.ts';
import { flowReport, massReport, pressureReport, thermalReport } from './report-duty.ts';
import { reportFinding } from './report-finding.ts';
import type { ReportWorked } from './report-fluid-types.ts';
import type {
  Report,
  ReportArc,
  ReportBend,
  ReportClearance,
  ReportImpossibleLine,
  ReportLine,
  ReportSlope,
  ReportStraight,
} from './report-types.ts';
import { runReport, workedReport } from './report-worked.ts';
import { VERSION } from './version.ts';

/**
 * The report for machines: everything found out about a job, read from end A, in millimetres and degrees with the
 * unit in each name, unrounded. A line whose geometry cannot exist has only `id`, `verdict` and `findings`.
 * `reportSchema()` describes it.
 *
 * @example
 * ```ts
 * import { report } from '@runback/exchange';
 * const empty = { title: 'Pump', revision: null, units: 'mm', checksum: '', verdict: 'pass', lines: [], runs: [], surroundings: [] } as const;
 * report(empty).format; // => "runback-report"
 * ```
 */
export const report = (job: WorkedJob): Report => ({
  format: 'runback-report',
  version: 1,
  runback: VERSION,
  title: job.title,
  jobUnits: job.units,
  verdict: job.verdict,
  lines: job.lines.map(lineReport),
  runs: job.runs.map(runReport),
});

function lineReport(worked: WorkedLine): ReportLine | ReportImpossibleLine {
  const { line, centreline, plan, verdict } = worked;
  const findings = worked.findings.map(reportFinding);
  if (centreline === null || plan === null) return { id: line.id, verdict, findings };
  return { id: line.id, verdict, ...shape(worked, centreline, plan), ...fluid(worked), findings };
}

type Fluid = ReportWorked & Pick<ReportLine, 'pressure' | 'flow' | 'thermal' | 'mass'>;
type Shape = Omit<ReportLine, 'id' | 'verdict' | 'findings' | keyof Fluid>;

const shape = ({ line, slope, clearance }: WorkedLine, centreline: Centreline, plan: BendPlan): Shape => ({
  od_mm: plain(line.tube.od),
  bore_mm: plain(line.tube.bore),
  developedLength_mm: plain(plan.developedLength),
  cutLength_mm: plain(plan.cutLength),
  pieces: centreline.pieces.map(piece),
  bends: plan.rows.map(bend),
  lastStraight_mm: plain(plan.lastStraight),
  slope: orNull(slope, slopeReport),
  clearance: clearance.map(clearanceReport),
});

function fluid(worked: WorkedLine): Fluid {
  const { facts, ...found } = workedReport(worked, [worked.line.id]);
  return {
    ...found,
    pressure: orNull(worked.pressure, pressureReport),
    flow: orNull(worked.flow, flowReport),
    thermal: orNull(worked.thermal, thermalReport),
    mass: orNull(worked.mass, massReport),
    facts,
  };
}

function piece(p: Piece): ReportStraight | ReportArc {
  const ends = { from_mm: triple(p.from), to_mm: triple(p.to) };
  const along = { start_mm: plain(p.start), end_mm: plain(p.end) };
  if (p.kind === 'straight') return { kind: 'straight', ...ends, ...along };
  return {
    kind: 'arc',
    ...ends,
    centre_mm: triple(p.centre),
    normal: triple(p.normal),
    angle_deg: deg(p.angle),
    radius_mm: plain(p.radius),
    ...along,
  };
}

const bend = (row: PlanRow): ReportBend => ({
  bend: row.bendFromA,
  points: row.points,
  straightBefore_mm: plain(row.straightBefore),
  turn_deg: orNull(row.turn, deg),
  clock_deg: deg(row.clock),
  angle_deg: deg(row.angle),
  radius_mm: plain(row.radius),
  start_mm: plain(row.start),
  end_mm: plain(row.end),
  mark_mm: plain(row.mark),
  markFinished_mm: plain(row.markFinished),
  dial_deg: deg(row.dial),
});

const slopeReport = ({ toward, rest, worst, proof }: LineSlope): ReportSlope => ({
  toward,
  rest_deg: deg(rest.slope),
  rest_at_mm: plain(rest.at),
  worst_deg: deg(worst.slope),
  worst_at_mm: plain(worst.at),
  worst_attitude: orNull(worst.attitude, ({ pitch, roll }) => ({
    pitch_deg: deg(pitch),
    roll_deg: deg(roll),
  })),
  worst_up: triple(worst.up),
  proof: { holds: proof.holds, text: proof.text },
});

const clearanceReport = (row: ClearanceRow): ReportClearance => ({
  kind: row.kind,
  to: row.to,
  distance_mm: plain(row.distance),
  keepOff_mm: plain(row.keepOff),
  at_mm: plain(row.at),
});
