import type { Vec3 } from '@runback/geometry';
import type { Line, ResolvedJob, Run } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aLine, figure, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { WorkMemory } from '../memory.ts';
import type { Finding, WorkedJob } from '../types.ts';
import { workJob } from '../work-job.ts';

const run = (spec: Partial<Run> = {}): Run => ({
  id: 'dip',
  name: 'dip',
  lines: ['upper', 'lower'],
  drain: null,
  stick: null,
  path: 'runs[0]',
  ...spec,
});

const job = (lines: readonly Line[], runs: readonly Run[] = [run()]): ResolvedJob => ({
  title: 'Tender 7',
  revision: null,
  units: 'mm',
  axes: lines[0]!.axes,
  lines,
  runs,
  surroundings: [],
  checksum: 'abc',
});

const upper = (spec: Partial<LineSpec> = {}): Line =>
  aLine({
    id: 'upper',
    points: [
      [0, 0, 0],
      [200, 0, 0],
    ],
    ...spec,
  });
const lower = (spec: Partial<LineSpec> = {}): Line =>
  aLine({
    id: 'lower',
    index: 1,
    points: [
      [200, 0, 0],
      [400, 0, 0],
    ],
    od: 10,
    ...spec,
  });

const of = (worked: WorkedJob, id: string, check: string): Finding[] =>
  worked.lines.find(({ line }) => line.id === id)!.findings.filter((f) => f.check === check);

describe('a step at a joint', () => {
  const stick = {
    kind: 'cable',
    enters: 'A',
    material: null,
    thickness: 2,
    width: null,
    link: null,
    tip: null,
    seat: 0,
    beyond: 0,
    friction: null,
    pan: null,
    fills: [],
    levels: [],
    path: 'runs[0].stick',
  } as unknown as NonNullable<Run['stick']>;
  const stepOf = (spec: Partial<LineSpec>): string => {
    const worked = workJob(job([upper(), lower(spec)], [run({ stick })]));
    return of(worked, 'upper', 'passage').find((f) => f.message.includes('step'))!.message;
  };

  it('is chamfered where the wall of the narrower tube leaves metal, else led over by another part', () => {
    // 12 x 1 into 10 x 1: a step of 1 mm in a wall of 1 mm; into 11 x 1: of 0.5 mm.
    expect(stepOf({ od: 10 })).toContain(
      'the 1 mm wall of "lower" leaves nothing to chamfer; a reducer or a sleeve',
    );
    // The other way round it is the line before the joint that is cut.
    const wide = workJob(job([upper(), lower({ od: 13 })], [run({ stick })]));
    expect(of(wide, 'upper', 'passage').find((f) => f.message.includes('step'))!.message).toMatch(
      /catches the stick coming out: chamfer the mouth of "upper" inside/,
    );
    expect(stepOf({ od: 11 })).toContain('chamfer the mouth of "lower" inside, 15° to the axis, 1.9 mm long');
  });
});

describe('a joint of a run', () => {
  it('passes where end Z lies on end A and the lines run on', () => {
    const worked = workJob(job([upper(), lower()]));
    expect(of(worked, 'lower', 'run-joint')).toMatchObject([{ verdict: 'pass', at: 0, to: 'dip' }]);
    expect(worked.runs[0]!.findings[0]).toMatchObject({ check: 'run-joint', to: 'lower' });
    expect(worked.runs[0]!.pockets).not.toBeNull();
  });

  it('fails on the later line where they do not meet, with the edit that closes it, and works nothing else', () => {
    const apart = lower({
      points: [
        [200, 3, 4],
        [400, 0, 0],
      ],
    });
    const worked = workJob(job([upper(), apart]));
    const [bad] = of(worked, 'lower', 'run-joint');
    expect(bad).toMatchObject({ verdict: 'fail', found: 5, unit: 'mm', path: 'lines[1].points[0]' });
    expect(bad!.cure!.edits).toEqual([{ path: 'lines[1].points[0].at', value: [200, 0, 0] }]);
    expect(worked.runs[0]).toMatchObject({ verdict: 'fail', pockets: null, passage: null, facts: [] });
    expect(worked.runs[0]!.findings).toHaveLength(1);
    expect(workJob(job([upper(), apart]), { cures: false }).runs[0]!.findings[0]!.cure).toBeNull();
  });

  it('offers no cure for an opposite hand, nor where the line only lies the wrong way round', () => {
    const mirror = { of: 'other', axis: 1 as const, offset: 0 };
    const hand = lower({
      points: [
        [200, 5, 0],
        [400, 0, 0],
      ],
      mirror,
    });
    expect(of(workJob(job([upper(), hand])), 'lower', 'run-joint')[0]!.cure).toBeNull();
    const turned = lower({
      points: [
        [400, 0, 0],
        [200, 0, 0],
      ],
    });
    const [bad] = of(workJob(job([upper(), turned])), 'lower', 'run-joint');
    expect(bad!.message).toContain('turn the line round');
    expect(bad!.cure).toBeNull();
  });

  it('writes the cure in inches for a job in inches', () => {
    const inch = { units: 'in' as const };
    const apart = lower({
      points: [
        [200, 3, 0],
        [400, 0, 0],
      ],
      ...inch,
    });
    const [bad] = of(workJob(job([upper(inch), apart])), 'lower', 'run-joint');
    const [x] = bad!.cure!.edits[0]!.value as Vec3;
    expect(x * 25.4).toBeCloseTo(200, 9);
  });

  it('notes a kink over a degree', () => {
    const bent = lower({
      points: [
        [200, 0, 0],
        [400, 20, 0],
      ],
    });
    const [note] = of(workJob(job([upper(), bent])), 'lower', 'run-joint');
    expect(note!.verdict).toBe('note');
    expect(note!.found).toBeCloseTo((Math.atan2(20, 200) * 180) / Math.PI, 9);
  });

  it('is not judged when a line does not fit: a note on one that does', () => {
    const points: Vec3[] = [
      [200, 0, 0],
      [250, 0, 0],
      [250, 30, 0],
      [400, 30, 0],
    ];
    const worked = workJob(job([upper(), lower({ points })]));
    expect(of(worked, 'upper', 'run-joint')).toMatchObject([{ verdict: 'note', found: null }]);
    expect(worked.lines[1]!.findings.every((f) => f.check === 'corner-fit')).toBe(true);
    expect(worked.runs[0]!.pockets).toBeNull();
  });
});

describe('what stays in a run', () => {
  const drain = { to: 'Z' as const, minSlopeDeg: 0 };

  it('is what a step to a smaller bore holds back: a level segment of the larger tube', () => {
    // Bore 10 stepping down to 8: 1 mm deep over 200 mm.
    const worked = workJob(job([upper({ drain }), lower({ drain })], [run({ drain: 'Z' })]));
    const [r, depth] = [5, 1];
    const angle = Math.atan2(Math.sqrt(r ** 2 - (r - depth) ** 2), r - depth);
    const segment = r ** 2 * angle - (r - depth) * Math.sqrt(r ** 2 - (r - depth) ** 2);
    const { liquid, capacity } = worked.runs[0]!.pockets!;
    expect(Math.abs(liquid.volume - 200 * segment)).toBeLessThan(0.005 * 200 * segment);
    expect(capacity).toBeCloseTo(Math.PI * (25 + 16) * 200, 6);
    const [note] = of(worked, 'upper', 'pockets');
    expect(note).toMatchObject({ verdict: 'note', unit: 'ml', limit: 0, to: 'dip' });
    expect(note!.found).toBeCloseTo(liquid.volume / 1000, 12);
    expect(of(worked, 'lower', 'pockets')).toMatchObject([{ verdict: 'pass' }]);
  });

  it('is nothing when it drains the other way, over the larger bore', () => {
    const worked = workJob(job([upper(), lower()], [run({ drain: 'A' })]));
    expect(worked.runs[0]!.pockets!.liquid.volume).toBeLessThan(1e-6);
    expect(of(worked, 'upper', 'pockets')[0]!.verdict).toBe('pass');
  });

  it('counts a lip of a fitting in the joint', () => {
    const same = (opening?: number) => [
      upper({ drain, ...(opening ? { endZ: { opening } } : {}) }),
      lower({ drain, od: 12 }),
    ];
    const volume = (opening?: number): number =>
      workJob(job(same(opening), [run({ drain: 'Z' })])).runs[0]!.pockets!.liquid.volume;
    expect(volume()).toBeLessThan(1e-6);
    expect(volume(8)).toBeGreaterThan(500);
  });

  it('searches all attitudes only when cures are looked for', () => {
    const attitudes = { kind: 'cone' as const, tilt: 0.05 };
    const lines = [upper({ drain, attitudes }), lower({ drain, attitudes })];
    const { pockets, facts } = workJob(job(lines, [run({ drain: 'Z' })])).runs[0]!;
    expect(pockets!.worst!.volume).toBeGreaterThan(pockets!.liquid.volume);
    expect(pockets!.worst!.atMost).toBeGreaterThanOrEqual(pockets!.worst!.volume);
    expect(facts.find((f) => f.label === 'liquid that stays in the worst attitude')!.text).toMatch(
      /^\d+\.\d ml, nose up 2\.9° and left side down 0\.3°: between .*, over 400 mm of the line, [\d.]+ mm deep; certainly no more than \d+\.\d ml$/,
    );
    expect(workJob(job(lines), { cures: false }).runs[0]!.pockets!.worst).toBeNull();
    // Nothing drains: no attitude is asked for.
    const still = workJob(job([upper({ attitudes }), lower({ attitudes })])).runs[0]!;
    expect(still.pockets!.worst).toBeNull();
    expect(still.facts.map(({ label }) => label)).toEqual(['bore holds', 'liquid that stays at rest']);
  });

  it('is said on its lines once at rest, and once where most of it stays at worst, with the line', () => {
    const attitudes = { kind: 'cone' as const, tilt: 0.05 };
    const lines = [upper({ drain, attitudes }), lower({ drain, attitudes })];
    const worked = workJob(job(lines, [run({ drain: 'Z' })]));
    const [rest, worst, ...more] = of(worked, 'upper', 'pockets');
    expect(more).toEqual([]);
    expect(rest!.message).toMatch(
      /^In run "dip" at rest \d\.\d ml of liquid stays between end A and end Z of "upper", [\d.]+ mm from its end A; it cannot leave at end Z of the run\.$/,
    );
    expect(worst!.message).toMatch(
      /^In run "dip" in the worst attitude found, nose up 2\.9° and left side down 0\.3°, .*: found in \d+ tries, certainly no more than /,
    );
    expect(of(worked, 'lower', 'pockets').map((f) => f.message)).toEqual([
      'In run "dip" at rest no liquid stays in this line: all of it leaves at end Z of the run.',
    ]);
    expect(worked.runs[0]!.facts[1]!.text).toMatch(
      /^\d\.\d ml, between end A and end Z of "upper", [\d.]+ mm from its end A, over 200 mm of the line, 1 mm deep$/,
    );
  });

  it('is none in every attitude by a bound, without a search to the last mm³', () => {
    const attitudes = { kind: 'cone' as const, tilt: 0.05 };
    const plumb = (spec: Partial<LineSpec>, from: number): Partial<LineSpec> => ({
      ...spec,
      points: [
        [0, 0, from],
        [0, 0, from - 200],
      ],
    });
    const lines = [upper(plumb({ drain, attitudes }, 400)), lower(plumb({ drain, attitudes }, 200))];
    const worked = workJob(job(lines, [run({ drain: 'Z' })]));
    const { worst } = worked.runs[0]!.pockets!;
    expect(worst!.atMost).toBeLessThan(100);
    expect(worst!.tries).toBeGreaterThan(0);
    // The cells a cone starts with.
    expect(worst!.tries).toBeLessThanOrEqual(8);
    expect(of(worked, 'lower', 'pockets')[1]).toMatchObject({
      verdict: 'pass',
      message: 'In run "dip" in no attitude does 0.1 ml or more of liquid stay.',
    });
  });

  it('drains where the lines at its ends do, when the run does not say', () => {
    const outlets = (...to: readonly ('A' | 'Z' | 'both' | null)[]) => {
      const [first, last] = to.map((end) => (end === null ? {} : { drain: { to: end, minSlopeDeg: 0 } }));
      const worked = workJob(job([upper(first), lower(last)]));
      const judged = of(worked, 'upper', 'pockets').some((f) => f.message.startsWith('In run "dip"'));
      return [worked.runs[0]!.pockets!.outlets, judged];
    };
    expect(outlets('A', 'A')).toEqual(['A', true]);
    expect(outlets('A', 'Z')).toEqual(['both', true]);
    expect(outlets('Z', null)).toEqual(['both', false]);
    expect(outlets(null, null)).toEqual(['both', false]);
  });

  it('is air too when all its lines are bled, at the ends of the run that let it out', () => {
    const bled = { bleed: { to: 'Z' as const, tilted: false, path: null } };
    const lines = [
      { ...upper(), ...bled },
      { ...lower(), ...bled },
    ];
    const worked = workJob(job(lines));
    // The roof of the larger bore is 1 mm higher than that of the way out.
    expect(worked.runs[0]!.pockets!.air).toMatchObject({ outlets: 'Z' });
    expect(of(worked, 'upper', 'air')[0]!.verdict).toBe('note');
    expect(workJob(job([lines[0]!, lower()])).runs[0]!.pockets!.air).toBeNull();
  });
});

describe('a stick in a run', () => {
  const stick: Run['stick'] = {
    kind: 'cable',
    enters: 'A',
    material: null,
    thickness: 2,
    width: null,
    link: null,
    tip: { length: 40, thickness: 5, width: null },
    seat: 0,
    beyond: 0,
    friction: { low: figure(0.1), high: figure(0.2) },
    pan: null,
    fills: [],
    levels: [],
    path: 'runs[0].stick',
  };

  it('goes over the steps of its joints, said on the line before', () => {
    const worked = workJob(job([upper(), lower()], [run({ stick })]));
    const steps = of(worked, 'upper', 'passage').filter((f) => f.message.includes('step'));
    expect(steps).toMatchObject([{ verdict: 'note', at: 200, found: 1, point: [200, 0, 0] }]);
    expect(steps[0]!.message).toContain('at end Z of "upper" catches the stick going in');
    expect(worked.runs[0]!.stick!.seatToTip.middle).toBe(400);
    expect(worked.runs[0]!.passage!.push).toMatchObject({ angle: 0, low: 1, high: 1 });
    expect(worked.lines[0]!.stick).toBeNull();
  });

  it('puts what a bend says on the line of that bend, and its verdict in line, run and job', () => {
    const points: Vec3[] = [
      [200, 0, 0],
      [300, 0, 0],
      [300, 0, -200],
    ];
    const worked = workJob(job([upper(), lower({ points, radius: 30 })], [run({ stick })]), { cures: false });
    const [bad] = of(worked, 'lower', 'passage').filter((f) => f.verdict === 'fail');
    // 2·√(34² − 31²) = 27.9 for a tip of 40
    expect(bad).toMatchObject({ found: 40, bend: 1 });
    expect(bad!.limit).toBeCloseTo(2 * Math.sqrt(34 ** 2 - 31 ** 2), 9);
    expect(bad!.message).toContain('B1 of "lower"');
    expect([worked.lines[1]!.verdict, worked.runs[0]!.verdict, worked.verdict]).toEqual([
      'fail',
      'fail',
      'fail',
    ]);
  });
});

describe('two lines of a run beside each other', () => {
  it('touch in their joint without a failure, and fail without the run', () => {
    const lines = [upper(), lower()];
    expect(of(workJob(job(lines, [])), 'upper', 'line-to-line')[0]!.verdict).toBe('fail');
    expect(of(workJob(job(lines)), 'upper', 'line-to-line')[0]).toMatchObject({
      verdict: 'pass',
      to: 'lower',
    });
    expect(of(workJob(job(lines)), 'lower', 'line-to-line')[0]!.verdict).toBe('pass');
  });

  it('pass a plain bend at the joint and are caught where they come back', () => {
    const bend: Vec3[] = [
      [200, 0, 0],
      [250, 0, 0],
      [250, 200, 0],
    ];
    const back: Vec3[] = [
      [200, 0, 0],
      [250, 0, 0],
      [250, 20, 0],
      [0, 20, 0],
    ];
    const verdict = (points: Vec3[], radius: number) =>
      of(workJob(job([upper(), lower({ points, radius })])), 'lower', 'line-to-line')[0]!.verdict;
    expect(verdict(bend, 20)).toBe('pass');
    expect(verdict(back, 10)).toBe('fail');
  });

  it('are not judged with a short piece between them that keeps them near', () => {
    const piece = aLine({
      id: 'piece',
      index: 2,
      points: [
        [200, 0, 0],
        [210, 0, 0],
      ],
    });
    const after = lower({
      points: [
        [210, 0, 0],
        [400, 0, 0],
      ],
    });
    const three = job([upper(), after, piece], [run({ lines: ['upper', 'piece', 'lower'] })]);
    const worked = workJob(three);
    for (const id of ['upper', 'lower', 'piece'])
      expect(of(worked, id, 'line-to-line').every((f) => f.verdict === 'pass')).toBe(true);
  });

  it('say nothing when both are all joint', () => {
    const [a, b] = [
      upper({
        points: [
          [180, 0, 0],
          [200, 0, 0],
        ],
      }),
      lower({
        points: [
          [200, 0, 0],
          [220, 0, 0],
        ],
      }),
    ];
    const worked = workJob(job([a, b]));
    expect(of(worked, 'upper', 'line-to-line')).toEqual([]);
    expect(worked.lines[0]!.clearance).toEqual([]);
  });
});

describe('a memory of runs', () => {
  it('gives the same as without, and works a run again only when it or a line of it changed', () => {
    const memory = new WorkMemory();
    const lines = [
      upper(),
      lower(),
      aLine({
        id: 'far',
        index: 2,
        points: [
          [0, 300, 0],
          [300, 300, 0],
        ],
      }),
    ];
    const first = workJob(job(lines), { memory });
    const farther = aLine({
      id: 'far',
      index: 2,
      points: [
        [0, 320, 0],
        [300, 300, 0],
      ],
    });
    const second = workJob(job([lines[0]!, lines[1]!, farther]), { memory });
    expect(second.runs[0]).toBe(first.runs[0]);
    for (const changed of [
      job([lines[0]!, lower({ wall: 1.5 }), farther]),
      job([lines[0]!, lines[1]!, farther], [run({ drain: 'A' })]),
      job([lines[0]!, lines[1]!, farther], []),
      job(lines),
    ]) {
      const now = workJob(changed, { memory });
      expect(JSON.stringify(now)).toBe(JSON.stringify(workJob(changed)));
      expect(now.runs[0]).not.toBe(first.runs[0]);
    }
  });
});
