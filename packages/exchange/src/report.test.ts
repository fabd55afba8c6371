import { readFileSync } from 'node:fs';
import { workJob } from '@runback/checks';
import type { Vec3 } from '@runback/geometry';
import type { Line, ResolvedJob } from '@runback/job';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { aBall, aDie, aLine, FLARE } from '../../../tests/helpers/a-line.ts';
import { report, reportSchema, VERSION } from './index.ts';

const RAD = Math.PI / 180;
const L: readonly Vec3[] = [
  [0, 0, 100],
  [200, 0, 90],
  [200, 200, 0],
  [400, 200, 0],
];
const STEP: readonly Vec3[] = [
  [0, 0, 0],
  [150, 0, 0],
  [150, 60, 0],
  [300, 60, 0],
];

const jobOf = (lines: readonly Line[], units: 'mm' | 'in' = 'mm'): ResolvedJob => ({
  title: 'Tender 7',
  revision: 'C',
  units,
  axes: lines[0]!.axes,
  lines,
  runs: [],
  surroundings: [],
  checksum: 'abc',
});

const box = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;
const fixtures: Readonly<Record<string, readonly Line[]>> = {
  'one straight': [
    aLine({
      points: [
        [0, 0, 0],
        [100, 0, 0],
      ],
    }),
  ],
  'a drain among surroundings': [
    aLine({
      points: L,
      drain: { to: 'Z', minSlopeDeg: 12 },
      attitudes: box,
      surroundings: [aBall('hot', [100, 40, 95], 10)],
    }),
  ],
  'a cone of attitudes': [
    aLine({ points: L, drain: { to: 'both', minSlopeDeg: 1 }, attitudes: { kind: 'cone', tilt: 0.1 } }),
  ],
  'two lines': [
    aLine({ id: 'a', points: L }),
    aLine({ id: 'b', index: 1, points: L.map(([x, y, z]): Vec3 => [x, y, z + 15]) }),
  ],
  'one that does not exist': [
    aLine({ id: 'a', points: L }),
    aLine({ id: 'b', index: 1, points: STEP, units: 'in' }),
  ],
  'flares, nuts and clips': [
    aLine({
      points: L,
      endA: { fitting: FLARE, nut: { length: 18, bore: 12.3, acrossFlats: 22 }, flareWhen: 'before' },
      endZ: { fitting: FLARE, spare: 40, direction: [-1, 0, 0], misfitDeg: 2 },
      die: aDie({ springBack: { factor: 1.028, fixedDeg: 0.4 }, stretchPerDegree: 0.01, markOffset: 12 }),
      clips: [100, 220],
      stock: 6000,
    }),
  ],
};

const ajv = new Ajv2020({ strict: true, allErrors: true });
const validate = ajv.compile(reportSchema());
const plainReport = (lines: readonly Line[]) => JSON.parse(JSON.stringify(report(workJob(jobOf(lines)))));

describe('report', () => {
  it.each(Object.entries(fixtures))('keeps to its schema: %s', (_, lines) => {
    validate(plainReport(lines));
    expect(validate.errors).toBeNull();
  });

  it('has the names and the order of the format', () => {
    const r = plainReport(fixtures['a drain among surroundings']!);
    expect(Object.keys(r)).toEqual([
      'format',
      'version',
      'runback',
      'title',
      'jobUnits',
      'verdict',
      'lines',
      'runs',
    ]);
    expect(Object.keys(r.lines[0])).toEqual([
      'id',
      'verdict',
      'od_mm',
      'bore_mm',
      'developedLength_mm',
      'cutLength_mm',
      'pieces',
      'bends',
      'lastStraight_mm',
      'slope',
      'clearance',
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
    expect(Object.keys(r.lines[0].pieces[1])).toEqual([
      'kind',
      'from_mm',
      'to_mm',
      'centre_mm',
      'normal',
      'angle_deg',
      'radius_mm',
      'start_mm',
      'end_mm',
    ]);
    expect(Object.keys(r.lines[0].bends[0])).toEqual([
      'bend',
      'points',
      'straightBefore_mm',
      'turn_deg',
      'clock_deg',
      'angle_deg',
      'radius_mm',
      'start_mm',
      'end_mm',
      'mark_mm',
      'markFinished_mm',
      'dial_deg',
    ]);
    expect(Object.keys(r.lines[0].slope)).toEqual([
      'toward',
      'rest_deg',
      'rest_at_mm',
      'worst_deg',
      'worst_at_mm',
      'worst_attitude',
      'worst_up',
      'proof',
    ]);
    expect(Object.keys(r.lines[0].clearance[0])).toEqual([
      'kind',
      'to',
      'distance_mm',
      'keepOff_mm',
      'at_mm',
    ]);
    expect(Object.keys(r.lines[0].findings[0])).toEqual([
      'check',
      'verdict',
      'message',
      'found',
      'limit',
      'unit',
      'at_mm',
      'point_mm',
      'bend',
      'to',
      'path',
      'cure',
      'basis',
    ]);
  });

  it('gives a plain 90° step in exact millimetres and degrees', () => {
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, 0],
      [200, 200, 0],
      [400, 200, 0],
    ];
    const die = aDie({ springBack: { factor: 1.1, fixedDeg: 1 }, stretchPerDegree: 0.02, markOffset: 10 });
    const [line] = plainReport([aLine({ points, die, endZ: { spare: 40 }, endA: { spare: 5 } })]).lines;
    const arc = 18 * Math.PI;
    expect(line.developedLength_mm).toBeCloseTo(164 + 128 + 164 + 2 * arc, 9);
    expect(line.cutLength_mm).toBeCloseTo(164 + 128 + 164 + 2 * arc + 45 - 2 * 90 * 0.02, 9);
    const [first, second] = line.bends;
    expect(first).toMatchObject({
      bend: 1,
      points: [1],
      straightBefore_mm: 164,
      turn_deg: null,
      clock_deg: 0,
      angle_deg: 90,
    });
    expect(second).toMatchObject({
      bend: 2,
      points: [2],
      straightBefore_mm: 128,
      turn_deg: 180,
      clock_deg: 180,
      angle_deg: 90,
    });
    expect(first.mark_mm).toBeCloseTo(164 + 5 - 10, 9);
    expect(first.markFinished_mm).toBeCloseTo(164 - 10, 9);
    expect(second.mark_mm).toBeCloseTo(164 + arc + 128 - 1.8 + 5 - 10, 9);
    expect(first.dial_deg).toBeCloseTo(100, 9);
    expect(line.pieces[1].centre_mm).toEqual([164, 36, 0]);
    expect(line.slope).toBeNull();
  });

  it('never writes −0', () => {
    const text = (value: unknown): boolean =>
      typeof value === 'object' ? Object.values(value ?? {}).every(text) : !Object.is(value, -0);
    const points: Vec3[] = [
      [0, -0, 0],
      [-200, -0, 0],
      [-200, -200, -0],
    ];
    expect(text(report(workJob(jobOf([aLine({ points, drain: { to: 'A', minSlopeDeg: 0 } })]))))).toBe(true);
  });

  it('has only id, verdict and findings for a line that cannot exist, and works the others', () => {
    const [a, b] = plainReport(fixtures['one that does not exist']!).lines;
    expect(Object.keys(b)).toEqual(['id', 'verdict', 'findings']);
    expect(b.verdict).toBe('fail');
    expect(a.pieces.length).toBeGreaterThan(1);
  });

  it('changes nothing of what it is given', () => {
    const worked = workJob(jobOf(fixtures['two lines']!));
    const before = JSON.stringify(worked);
    report(worked);
    expect(JSON.stringify(worked)).toBe(before);
  });
});

const GONE = Symbol('gone');

/** Sets the value at a path like `lines.0.bends.1.turn_deg`, or takes the key away. */
function plant(root: object, path: string, value: unknown): void {
  const keys = path.split('.');
  const last = keys.pop()!;
  const holder = keys.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], root);
  if (value === GONE) Reflect.deleteProperty(holder as object, last);
  else Reflect.set(holder as object, last, value);
}

describe('the schema finds planted faults', () => {
  const faults: readonly (readonly [what: string, path: string, value: unknown])[] = [
    ['a key too many', 'lines.0.extra', 1],
    ['a key too few', 'lines.0.cutLength_mm', GONE],
    ['a verdict of its own', 'verdict', 'warn'],
    ['text for a number', 'lines.0.bends.0.angle_deg', '90'],
    ['a turn of −180', 'lines.0.bends.1.turn_deg', -180],
    ['a point of two numbers', 'lines.0.pieces.0.from_mm', [0, 0]],
    ['a point of four numbers', 'lines.0.pieces.0.from_mm', [0, 0, 0, 0]],
    ['an arc without its centre', 'lines.0.pieces.1.centre_mm', GONE],
    ['a unit nobody knows', 'lines.0.findings.0.unit', 'inch'],
    ['bend 0', 'lines.0.findings.0.bend', 0],
    ['another version', 'version', 2],
    ['an impossible line that does not say why', 'lines.0', { id: 'b', verdict: 'fail', findings: [] }],
  ];

  it.each(faults)('%s', (_, path, value) => {
    const r = plainReport(fixtures['a drain among surroundings']!);
    expect(validate(r)).toBe(true);
    plant(r, path, value);
    expect(validate(r)).toBe(false);
  });
});

it('names the version of the package', () => {
  const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
  expect(VERSION).toBe(manifest.version);
});
