import { FLOW, MASS, PRESSURE, THERMAL } from './duty.ts';
import { AIR, FACT, KEPT, PASSAGE, POCKET, POCKETS, STICK, WORST_KEPT } from './fluid.ts';
import { ARC, BEND, CLEARANCE, FINDING, IMPOSSIBLE, LINE, RUN, SLOPE, STRAIGHT } from './line.ts';
import { about, exactly, listOf, type Schema, TEXT, VERDICT } from './parts.ts';

const REPORT = exactly(
  {
    format: { const: 'runback-report' },
    version: { const: 1 },
    runback: about(TEXT, 'Version of Runback that wrote this.'),
    title: TEXT,
    jobUnits: about(
      { enum: ['mm', 'in'] },
      'Units of the job file and of the values in cures; the report itself is in mm.',
    ),
    verdict: about(VERDICT, 'The worst of the lines.'),
    lines: listOf({ anyOf: [{ $ref: '#/$defs/line' }, { $ref: '#/$defs/impossibleLine' }] }),
    runs: listOf({ $ref: '#/$defs/run' }),
  },
  'What Runback found out about a job: lengths in mm, angles in degrees, always read from end A.',
);

/**
 * JSON Schema (draft 2020-12) of the report.
 * @example
 * ```ts
 * import { reportSchema } from '@runback/exchange';
 * reportSchema().$schema; // => "https://json-schema.org/draft/2020-12/schema"
 * ```
 */
export const reportSchema = (): Schema => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  $id: 'urn:runback:report:1',
  title: 'Runback report',
  ...REPORT,
  $defs: {
    line: LINE,
    impossibleLine: IMPOSSIBLE,
    straight: STRAIGHT,
    arc: ARC,
    bend: BEND,
    slope: SLOPE,
    clearance: CLEARANCE,
    finding: FINDING,
    run: RUN,
    pocket: POCKET,
    kept: KEPT,
    worstKept: WORST_KEPT,
    air: AIR,
    pockets: POCKETS,
    passage: PASSAGE,
    stick: STICK,
    pressure: PRESSURE,
    flow: FLOW,
    thermal: THERMAL,
    mass: MASS,
    fact: FACT,
  },
});
