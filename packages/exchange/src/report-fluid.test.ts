/** What the report says of the liquid and the stick, from literals: every field in its unit, and its schema. */
import { readFileSync } from 'node:fs';
import { type WorkedJob, workJob } from '@runback/checks';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { aLine } from '../../../tests/helpers/a-line.ts';
import { aRun, FACTS, withEverything } from '../test/worked-fluid.ts';
import { report, reportSchema } from './index.ts';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(reportSchema());

const points = [
  [0, 0, 100],
  [200, 0, 90],
  [200, 200, 0],
  [400, 200, -20],
] as const;

function everything(): WorkedJob {
  const lines = ['upper', 'lower'].map((id, index) =>
    aLine({ id, index, points, drain: { to: 'Z', minSlopeDeg: 1 } }),
  );
  const job = workJob({
    title: 'Tender 7',
    revision: null,
    units: 'mm',
    axes: lines[0]!.axes,
    lines,
    runs: [],
    surroundings: [],
    checksum: 'abc',
  });
  const [upper, lower] = job.lines;
  return { ...job, lines: [withEverything(upper!), lower!], runs: [aRun(upper!, 'lower')] };
}

const written = () => JSON.parse(JSON.stringify(report(everything())));

describe('a line with everything', () => {
  it('keeps to the schema, as does the run', () => {
    validate(written());
    expect(validate.errors).toBeNull();
  });

  it('has the new fields after the old ones, the findings last', () => {
    const [line] = written().lines;
    expect(Object.keys(line).slice(-9)).toEqual([
      'pockets',
      'passage',
      'stick',
      'pressure',
      'flow',
      'thermal',
      'mass',
      'facts',
      'findings',
    ]);
    expect(line.slope.proof).toEqual({
      holds: true,
      text: 'Falls everywhere toward end Z in every attitude.',
    });
    expect(line.facts).toEqual(FACTS);
  });

  it('gives what stays in ml, where in mm, the attitude in degrees', () => {
    const { pockets } = written().lines[0];
    const place = { from_mm: 101, to_mm: 141, lowest_mm: 121, level_mm: 33, depth_mm: 4 };
    const kept = {
      bound_ml: 0.0005,
      pockets: [{ ...place, volume_ml: 3.4, point_mm: [120, 0, 29] }],
    };
    const worst = { ...kept, volume_ml: 5.2, atMost_ml: 5.3, up: [0, 0.6, 0.8], tries: 41 };
    expect(pockets).toEqual({
      outlets: 'Z',
      capacity_ml: 61,
      liquid: { ...kept, volume_ml: 3.4 },
      worst: { ...worst, attitude: { pitch_deg: expect.closeTo(5, 12), roll_deg: expect.closeTo(-3, 12) } },
      air: { outlets: 'both', ...kept, volume_ml: 0.7, worst: { ...worst, attitude: null } },
      cling: { capillaryLength_mm: 1.9, holds: false },
    });
  });

  it('names lines, counts bends from 1, and has null where a cone jams', () => {
    const { passage } = written().lines[0];
    expect(passage).toEqual({
      enters: 'Z',
      stiff_mm: 24,
      tips: [{ line: 'upper', bend: 1, at_mm: 164, longest_mm: 38, alone: true }],
      blade: {
        play_mm: 2.5,
        bends: [{ line: 'upper', bend: 2, at_mm: 349, radius_mm: 31, strain: 0.004, takesSet: true }],
        twists: [{ fromBend: 1, twist_deg: 45, straight_mm: 128, needs_mm: 72, enough: true }],
      },
      steps: [
        {
          line: 'upper',
          at_mm: 512,
          step_mm: 1,
          catches: 'going in',
          lead: { length_mm: 3.7, push: 0.56 },
        },
        {
          line: 'upper',
          at_mm: 513,
          step_mm: 2,
          catches: 'coming out',
          lead: { length_mm: 7.4, push: null },
        },
      ],
      push: { angle_deg: 180, low: 1.6, high: 2.2 },
    });
  });

  it('gives the stick in mm', () => {
    expect(written().lines[0].stick).toEqual({
      way: {
        centreline_mm: 569,
        shortestLow_mm: 551,
        shortestHigh_mm: 552,
        longest_mm: 586,
        uncertainty_mm: 35,
      },
      seatToTip: { shortest_mm: 561, middle_mm: 579, longest_mm: 596 },
      marks: [
        { name: 'low', litres: 3.5, at_mm: 12, doubt_mm: 17.5, perDegree_mm: 2.3, from: 'fills' },
        { name: 'full', litres: 5, at_mm: 31, doubt_mm: 18.5, perDegree_mm: null, from: 'pan' },
      ],
      pullOut: { from_mm: [1, 2, 3], to_mm: [1, 2, 30], direction: [0, 0, 1], length_mm: 27 },
      tip_mm: [400, 200, 7],
    });
  });

  it('gives pressure and flow in MPa and s, each estimate with its caution', () => {
    const { pressure, flow } = written().lines[0];
    const caution = 'estimate, not approval';
    expect(pressure).toEqual({
      working_MPa: 10,
      straight: {
        barlow_MPa: 20.56,
        boardman_MPa: 23,
        lame_MPa: 23.16,
        least_MPa: 20.57,
        allowable_MPa: 77.5,
        safetyFactor: 4,
        wallLeft_mm: 0.63,
        thin: true,
        caution,
      },
      code: {
        straight_MPa: 24.63,
        bendInside_MPa: 22.5,
        bendOutside_MPa: null,
        least_MPa: 22.39,
        allowable_MPa: 137.9,
        safetyFactor: 1,
        caution,
      },
      proof: {
        pressure_MPa: 20,
        burst_MPa: null,
        medium: 'water or oil',
        source: 'a rule',
        mediumSource: 'common practice, no source',
        caution,
      },
    });
    expect(flow).toEqual({
      drop: {
        velocity_mPerS: 2.1,
        reynolds: 707,
        friction: { regime: 'laminar', factor: 0.091, low: 0.09, high: 0.092 },
        straights_MPa: 0.011,
        bends_MPa: 0.002,
        rise_MPa: -0.0021,
        total_MPa: 0.0109,
        least_MPa: 0.0108,
        caution,
      },
      drain: { least_s: 6.2, even_s: 12.4, most_s: null, assumptions: ['full bore'], caution },
    });
  });

  it('gives heat in K and mm, mass in kg and ml', () => {
    const { thermal, mass } = written().lines[0];
    const caution = 'estimate, not approval';
    expect(thermal).toEqual({
      delta_K: 100,
      growth_mm: 1.72,
      movement_mm: [1.1, -0.2, 0],
      leg: { length_mm: 250, needed_mm: 346, takes: false, stress_MPa: 191, allowable_MPa: 101, caution },
    });
    expect(mass).toEqual({
      tube_kgPerM: 0.275,
      contents_kgPerM: 0.067,
      tube_kg: 0.156,
      contents_kg: 0.038,
      total_kg: 0.194,
      contents_ml: 44.7,
      frequency: { first_hz: 301, span_mm: 300 },
      caution,
    });
  });

  it('has the runs after the lines, places named by the line they are in', () => {
    const [run] = written().runs;
    expect(Object.keys(run)).toEqual([
      'id',
      'name',
      'lines',
      'drain',
      'verdict',
      'pockets',
      'passage',
      'stick',
      'facts',
      'findings',
    ]);
    expect(run).toMatchObject({ id: 'filler', lines: ['upper', 'lower'], drain: 'Z', verdict: 'note' });
    expect(run.passage.tips).toEqual([{ line: 'lower', bend: 3, at_mm: 700, longest_mm: 39, alone: false }]);
    expect(run.findings).toHaveLength(1);
  });

  it('has null for what was not worked', () => {
    const job = everything();
    const bare = { passage: null, stick: null, pressure: null, flow: null, thermal: null, mass: null };
    const lines = job.lines.map((line) => ({ ...line, ...bare, pockets: null, facts: [] }));
    const found = JSON.parse(JSON.stringify(report({ ...job, lines })));
    expect(found.lines[0]).toMatchObject({ ...bare, pockets: null, facts: [] });
    expect(validate(found)).toBe(true);
  });

  it('never writes −0', () => {
    const none = (value: unknown): boolean =>
      typeof value === 'object' ? Object.values(value ?? {}).every(none) : !Object.is(value, -0);
    expect(none(report(everything()))).toBe(true);
  });
});

interface Node {
  readonly [key: string]: unknown;
}

const UNIT = /_(mm|deg|ml|MPa|kg|kgPerM|s|mPerS|K|hz)$/;
const TOLD = /\b(no unit|litres|counted|unit vector|unit named)\b/i;

/** A number, or one that may be null, or a list of them. */
function isNumber(schema: Node): boolean {
  if (schema.type === 'number' || schema.type === 'integer') return true;
  const inside = [schema.items, schema.anyOf, schema.prefixItems].flat() as (Node | false | undefined)[];
  return inside.some((one) => one && isNumber(one));
}

/** Numbers anywhere below whose name does not end in a unit and whose words tell none. */
function untold(schema: Node, place: string): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const named = Object.entries((schema.properties ?? {}) as Record<string, Node>)
    .filter(([name, s]) => isNumber(s) && !UNIT.test(name) && !TOLD.test(String(s.description)))
    .map(([name]) => `${place}.${name}`);
  return [
    ...named,
    ...Object.entries(schema).flatMap(([key, inner]) => untold(inner as Node, `${place}.${key}`)),
  ];
}

describe('the schema', () => {
  it('says the unit of every figure, in its name or in words', () => {
    expect(untold(reportSchema(), 'report')).toEqual([]);
    const speed = { type: 'number', description: 'How fast.' };
    expect(untold({ properties: { speed, found: { anyOf: [speed] } } }, 'planted')).toEqual([
      'planted.speed',
      'planted.found',
    ]);
  });

  it('has a sentence about everything of the liquid and the stick', () => {
    const defs = reportSchema().$defs as Record<string, Node>;
    const named = ['pocket', 'kept', 'worstKept', 'air', 'pockets', 'passage', 'stick', 'pressure'];
    for (const name of [...named, 'flow', 'thermal', 'mass', 'fact', 'run', 'slope'])
      expect(defs[name]?.description, name).toEqual(expect.stringMatching(/\.$/));
  });

  it('and the page about the report name the same keys', () => {
    const page = readFileSync(new URL('../../../docs/report.md', import.meta.url), 'utf8');
    const told = new Set(page.match(/[A-Za-z]\w*/g));
    expect(keysOf(reportSchema()).filter((key) => !told.has(key))).toEqual([]);
    const keys = new Set(keysOf(reportSchema()));
    const named = page.match(/`[a-zA-Z]+_(?:mm|deg|ml|MPa|kg|kgPerM|s|mPerS|K|hz)`/g) ?? [];
    expect(named.length).toBeGreaterThan(50);
    expect(named.filter((name) => !keys.has(name.slice(1, -1)))).toEqual([]);
  });
});

/** Names of all properties anywhere below. */
function keysOf(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties = {} } = schema as { readonly properties?: object };
  return [...Object.keys(properties), ...Object.values(schema).flatMap(keysOf)];
}

describe('the schema finds planted faults', () => {
  const faults: readonly (readonly [what: string, path: readonly (string | number)[], value: unknown])[] = [
    ['a volume below nothing', ['lines', 0, 'pockets', 'liquid', 'volume_ml'], -1],
    ['text for a level', ['lines', 0, 'pockets', 'liquid', 'pockets', 0, 'level_mm'], '33'],
    ['an outlet nobody has', ['lines', 0, 'pockets', 'outlets'], 'B'],
    ['bend 0', ['lines', 0, 'passage', 'tips', 0, 'bend'], 0],
    ['a tip without its length', ['lines', 0, 'passage', 'tips', 0], { line: 'upper', bend: 1 }],
    ['a mark from nowhere', ['lines', 0, 'stick', 'marks', 0, 'from'], 'a guess'],
    ['an estimate without its caution', ['lines', 0, 'mass', 'caution'], undefined],
    ['a regime nobody knows', ['lines', 0, 'flow', 'drop', 'friction', 'regime'], 'brisk'],
    ['a key too many', ['lines', 0, 'thermal', 'delta_F'], 180],
    ['a group nobody knows', ['lines', 0, 'facts', 0, 'group'], 'wind'],
    ['a proof that does not say', ['lines', 0, 'slope', 'proof', 'text'], undefined],
    ['a run without lines', ['runs', 0, 'lines'], []],
    ['no runs', ['runs'], undefined],
  ];

  it.each(faults)('%s', (_, path, value) => {
    const found = written();
    expect(validate(found)).toBe(true);
    const holder = path.slice(0, -1).reduce((at, key) => at[key], found);
    holder[path.at(-1)!] = value;
    expect(validate(JSON.parse(JSON.stringify(found)))).toBe(false);
  });

  it('knows the units of the findings', () => {
    const found = written();
    for (const unit of ['ml', 'MPa']) {
      found.lines[0].findings[0].unit = unit;
      expect(validate(found)).toBe(true);
    }
  });
});
