import type { Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aBall, aDie, aLine, FLARE, frozen, type LineSpec } from '../../../tests/helpers/a-line.ts';
import { applyEdits } from '../../../tests/helpers/apply-edits.ts';
import type { Finding } from './types.ts';
import { workLine } from './work-line.ts';

/** Checks that speak of every line that exists. `slope` and `stock` are asked for by the job. */
const ALWAYS = [
  'corner-fit',
  'straights',
  'die',
  'clearance',
  'self-clearance',
  'rigid-ends',
  'clips',
  'wall',
  'nuts',
  'port-direction',
];

const coordinate = fc.integer({ min: -60, max: 60 }).map((n) => n * 10);
const points = fc
  .array(fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>, { minLength: 2, maxLength: 4 })
  .filter((all) => all.every((p, i) => i === 0 || p.some((x, k) => x !== all[i - 1]![k])));

const spec: fc.Arbitrary<LineSpec> = fc.record({
  points,
  radius: fc.constantFrom(20, 36),
  surroundings: fc.constantFrom([], [aBall('ball', [50, 0, 0], 30)]),
  clips: fc.constantFrom([100], []),
  stock: fc.constantFrom(null, 500),
  endA: fc.constantFrom({}, { fitting: FLARE, direction: [1, 0, 0] as Vec3, misfitDeg: 3 }),
  spacing: fc.constantFrom(null, 300),
});

describe('every line', () => {
  it('hears from every check, frozen or not, with a place to look and a basis', () => {
    fc.assert(
      fc.property(spec, (s) => {
        const worked = workLine(frozen(aLine({ ...s, drain: { to: 'Z', minSlopeDeg: 3 } })), {
          cures: false,
        });
        if (worked.centreline === null) {
          expect(worked.verdict).toBe('fail');
          expect(new Set(worked.findings.map((f) => f.check))).toEqual(new Set(['corner-fit']));
          return;
        }
        const heard = new Set(worked.findings.map((f) => f.check));
        expect(
          [...ALWAYS, 'slope', ...(s.stock === null ? [] : ['stock'])].filter((c) => !heard.has(c)),
        ).toEqual([]);
        for (const f of worked.findings) sound(f, worked.centreline.length);
      }),
      { seed: 42, numRuns: 40 },
    );
  });

  it('has the worst verdict of its findings', () => {
    const line = aLine({
      points: [
        [0, 0, 0],
        [300, 0, 0],
        [300, 300, 0],
      ],
      clips: [150, 450],
    });
    const worked = workLine(line);
    expect(worked.findings.some((f) => f.verdict === 'fail')).toBe(false);
    expect(worked.verdict).toBe('note');
  });
});

function sound(f: Finding, length: number): void {
  expect(f.message).toMatch(/[.!]$/);
  expect(f.message).not.toMatch(/NaN|undefined|Infinity|-0 /);
  expect(f.basis).not.toBe('');
  if (f.verdict !== 'note') expect(f.found).not.toBeNull();
  for (const n of [f.found, f.limit, f.at]) expect(n === null || Number.isFinite(n)).toBe(true);
  if (f.at !== null) {
    expect(f.at).toBeGreaterThanOrEqual(-1e-6);
    expect(f.at).toBeLessThanOrEqual(length + 1e-6);
  }
  expect(f.at === null).toBe(f.point === null);
}

describe('cures', () => {
  const faulty: readonly LineSpec[] = [
    {
      points: [
        [0, 0, 0],
        [200, 0, 0],
        [200, 90, 0],
        [400, 90, 0],
      ],
    },
    {
      points: [
        [0, 0, 0],
        [70, 0, 0],
        [70, 200, 60],
      ],
      drain: { to: 'A', minSlopeDeg: 2 },
    },
    {
      points: [
        [0, 0, 100],
        [300, 0, 99],
        [600, 100, 10],
      ],
      drain: { to: 'Z', minSlopeDeg: 3 },
      units: 'in',
    },
    {
      points: [
        [0, 0, 0],
        [400, 0, 0],
        [400, 400, 0],
      ],
      surroundings: [aBall('hot', [300, 60, 0], 20)],
      clips: [380],
    },
    {
      points: [
        [0, 0, 0],
        [400, 0, 0],
        [400, 400, 0],
      ],
      radius: 50,
      die: aDie({ radius: 36 }),
      clips: [100],
    },
  ];

  it('really cure, and make nothing else fail', () => {
    let cures = 0;
    for (const s of faulty) {
      const line = aLine(s);
      const before = workLine(line).findings;
      for (const f of before.filter((x) => x.cure !== null && x.verdict === 'fail')) {
        cures++;
        const after = workLine(applyEdits(line, f.cure!.edits)).findings;
        expect(fails(after).length, `${f.message} ${f.cure!.text}`).toBeLessThan(fails(before).length);
        expect(fails(after).filter((check) => !fails(before).includes(check))).toEqual([]);
      }
    }
    expect(cures).toBeGreaterThanOrEqual(6);
  });

  it('are not looked for when not wanted', () => {
    const findings = workLine(aLine(faulty[0]!), { cures: false }).findings;
    expect(findings.some((f) => f.verdict === 'fail')).toBe(true);
    expect(findings.every((f) => f.cure === null)).toBe(true);
  });
});

const fails = (all: readonly Finding[]): string[] =>
  all.filter((f) => f.verdict === 'fail').map((f) => f.check);

describe('the opposite hand', () => {
  const POINTS: readonly Vec3[] = [
    [0, 20, 0],
    [200, 30, 0],
    [220, 110, 10],
    [400, 90, 60],
  ];
  const across = ([x, y, z]: Vec3): Vec3 => [x, 100 - y, z];
  const direction: Vec3 = [1, 0, 0];
  const rules = {
    endA: { direction, misfitDeg: 1 },
    clips: [150, 380],
    drain: { to: 'A', minSlopeDeg: 1 },
  } as const;

  const right: Line = aLine({
    id: 'right',
    points: POINTS,
    ...rules,
    surroundings: [aBall('b', [100, 60, 0], 10)],
  });
  const left: Line = aLine({
    id: 'left',
    index: 1,
    source: 'lines[0]',
    points: POINTS.map(across),
    mirror: { of: 'right', axis: 1, offset: 50 },
    surroundings: [aBall('b', [100, 40, 0], 10)],
    ...rules,
  });

  it('has the same findings at the same places, and its cures are written on the line it mirrors', () => {
    const [r, l] = [workLine(right).findings, workLine(left).findings];
    expect(l.map((f) => [f.check, f.verdict, f.bend, f.unit])).toEqual(
      r.map((f) => [f.check, f.verdict, f.bend, f.unit]),
    );
    l.forEach((f, i) => {
      if (f.found !== null) expect(f.found).toBeCloseTo(r[i]!.found!, 6);
    });
    const cured = l.filter((f) => f.verdict === 'fail' && f.cure !== null);
    expect(cured.length).toBeGreaterThan(0);
    for (const f of cured) {
      expect(f.cure!.edits[0]!.path).toMatch(/^lines\[0\]\.points/);
      expect(fails(workLine(applyEdits(left, f.cure!.edits)).findings).length).toBeLessThan(fails(l).length);
    }
  });
});
