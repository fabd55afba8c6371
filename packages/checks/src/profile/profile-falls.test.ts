import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import { type AttitudeSet, SLOPE_RAD, slopeAt, upIn, type Vec3 } from '@runback/geometry';
import { parseJob, resolve } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aLine, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import type { WorkedJob, WorkedLine } from '../types.ts';
import { workJob } from '../work-job.ts';
import { workLine } from '../work-line.ts';
import { lineProfile } from './line-profile.ts';
import { profileFalls } from './profile-falls.ts';
import type { LineProfile, ProfileFall } from './types.ts';

const example = (name: string): WorkedJob => {
  const text = readFileSync(new URL(`../../../../docs/examples/${name}.job.json`, import.meta.url), 'utf8');
  return workJob(resolve(parseJob(text, { catalogue }), catalogue), { cures: false });
};
const JOBS = ['tender-7/tender-7', 'tender-7/first-try', 'inch/pump-set'].map(example);
const LINES = JOBS.flatMap(({ lines }) => lines)
  .filter(({ centreline }) => centreline !== null)
  .map((line) => [`${line.line.title}: ${line.line.id}`, line] as const);

const RADIANS = Math.PI / 180;
const EMPTY = { ...JOBS[0]!, lines: [] };
const profiled = (line: WorkedLine): LineProfile => lineProfile(line, EMPTY)!;
const fallsOf = (line: WorkedLine, up = line.line.axes.up): readonly ProfileFall[] =>
  profileFalls(profiled(line), line.line, up);

const findingAtRest = ({ findings }: WorkedLine) =>
  findings.find(({ check, message }) => check === 'slope' && message.startsWith('At rest'))!;

/** The same line with other attitudes. */
const worstIn = (line: WorkedLine, pitch: number, roll: number) => {
  const attitudes: AttitudeSet = { kind: 'box', pitch: [pitch, pitch], roll: [roll, roll] };
  return workLine({ ...line.line, attitudes }, { cures: false });
};

const verdicts = (falls: readonly ProfileFall[]) => new Set(falls.map(({ verdict }) => verdict));

/** Slopes of the places that are judged: of a line drained both ways not those inside the bend that holds the crest. */
function judgedSlopes(line: WorkedLine, falls: readonly ProfileFall[]): number[] {
  const { places } = profiled(line);
  const crest = places[falls.findIndex((f) => f.height === Math.max(...falls.map((o) => o.height)))]!.at;
  const bend =
    line.line.drain!.to === 'both'
      ? line.centreline!.bends.find(({ start, end }) => crest >= start && crest <= end)
      : undefined;
  const inside = (at: number): boolean => bend !== undefined && at > bend.start && at < bend.end;
  return falls.flatMap(({ slope }, i) => (inside(places[i]!.at) ? [] : [slope!]));
}

describe('falls at rest', () => {
  it.each(LINES)('%s: fails somewhere exactly when the slope check does', (_, line) => {
    if (line.line.drain === null) return expect(fallsOf(line)[0]!.verdict).toBeNull();
    expect(verdicts(fallsOf(line)).has('fail')).toBe(findingAtRest(line).verdict === 'fail');
  });

  it.each(LINES)('%s: the least of them is the least slope of the line', (_, line) => {
    if (line.slope === null) return expect(fallsOf(line)[0]!.slope).toBeNull();
    const least = Math.min(...judgedSlopes(line, fallsOf(line)));
    const { slope } = line.slope.rest;
    if (line.line.drain!.to !== 'both') expect(least).toBeGreaterThanOrEqual(slope - SLOPE_RAD);
    expect(least).toBeCloseTo(slope, 9);
  });

  it.each(LINES)('%s: heights and slopes as geometry has them', (_, line) => {
    const { up } = line.line.axes;
    const { places } = profiled(line);
    const falls = fallsOf(line);
    for (const [i, { slope, toward, height }] of falls.entries()) {
      const { at, point } = places[i]!;
      if (toward !== null)
        expect(slope).toBeCloseTo(slopeAt(line.centreline!, at, { up, drain: toward }), 14);
      expect(height - falls[0]!.height).toBeCloseTo(point[2] - places[0]!.point[2], 9);
    }
  });
});

const HUMP: readonly Vec3[] = [
  [0, 0, 0],
  [0, 0, 150],
  [150, 0, 180],
  [300, 0, 60],
  [300, 0, -40],
];
const hump = (spec: Partial<LineSpec>): WorkedLine => workLine(aLine({ points: HUMP, ...spec }));

describe('heights', () => {
  it.each([
    ['A', 0],
    ['Z', 40],
    ['both', 40],
  ] as const)('drained to %s: end A stands at %d', (to, height) => {
    const falls = fallsOf(hump({ drain: { to, minSlopeDeg: 1 } }));
    expect(falls[0]!.height).toBe(height);
    expect(falls.at(-1)!.height).toBe(height - 40);
  });

  it('without a drain stands over the lower end and judges nothing', () => {
    const falls = fallsOf(hump({}));
    expect(falls[0]!.height).toBe(40);
    expect(falls.every((f) => f.slope === null && f.toward === null && f.verdict === null)).toBe(true);
  });
});

describe('drained to both ends', () => {
  it('runs to A before the crest and to Z after it, and the crest bend is not judged', () => {
    const line = hump({ drain: { to: 'both', minSlopeDeg: 5 } });
    const falls = fallsOf(line);
    const { places, bends } = profiled(line);
    const crest = places[falls.findIndex((f) => f.height === Math.max(...falls.map((o) => o.height)))]!.at;
    expect(crest).toBeGreaterThan(bends[1]!.start);
    expect(crest).toBeLessThan(bends[1]!.end);
    for (const [i, { toward, slope, verdict }] of falls.entries()) {
      const { at } = places[i]!;
      if (at !== crest) expect(toward).toBe(at < crest ? 'A' : 'Z');
      expect(verdict).toBe('pass');
      if (at < bends[1]!.start || at > bends[1]!.end) expect(slope).toBeGreaterThan(5 * RADIANS);
    }
  });

  it('fails on a level straight at the top', () => {
    const level = workLine(
      aLine({
        points: [HUMP[0]!, HUMP[1]!, [150, 0, 150], [300, 0, 60], [300, 0, -40]],
        drain: { to: 'both', minSlopeDeg: 1 },
      }),
    );
    const falls = fallsOf(level);
    const { places, bends } = profiled(level);
    const failing = places.filter((_, i) => falls[i]!.verdict === 'fail').map(({ at }) => at);
    expect(failing).toContain(bends[0]!.end);
    expect(failing).toContain(bends[1]!.start);
    expect(findingAtRest(level).verdict).toBe('fail');
  });

  it.each([
    ['Z', [0, 0, 200] as Vec3, [200, 0, 150] as Vec3],
    ['A', [0, 0, 0] as Vec3, [200, 0, 50] as Vec3],
  ] as const)('a line that falls to %s all along runs there all along', (end, a, z) => {
    const line = workLine(aLine({ points: [a, z], drain: { to: 'both', minSlopeDeg: 1 } }));
    expect(new Set(fallsOf(line).map(({ toward }) => toward))).toEqual(new Set([end]));
    expect(verdicts(fallsOf(line))).toEqual(new Set(['pass']));
  });
});

describe('verdicts', () => {
  const slanted = (spec: Partial<LineSpec>): WorkedLine =>
    workLine(
      aLine({
        points: [
          [0, 0, 0],
          [200, 0, 10],
        ],
        ...spec,
      }),
    );
  /** Of slope atan(1/20), 2.86°. */
  const verdict = (spec: Partial<LineSpec>, up?: Vec3) => fallsOf(slanted(spec), up)[0]!.verdict;

  it('at rest goes by the limit at rest, tilted by the one in attitudes', () => {
    const drain = { to: 'A', minSlopeDeg: 2, tiltedDeg: 4 } as const;
    const axes = slanted({}).line.axes;
    expect(verdict({ drain })).toBe('pass');
    expect(verdict({ drain }, upIn(axes, 0, 0.5 * RADIANS))).toBe('fail');
    expect(verdict({ drain: { ...drain, minSlopeDeg: 4, tiltedDeg: 2 } })).toBe('fail');
    expect(verdict({ drain: { ...drain, tiltedDeg: 2 } }, upIn(axes, 0, 0.5 * RADIANS))).toBe('pass');
  });

  it('level is enough for a limit of 0 at rest, and not in an attitude', () => {
    const drain = { to: 'A', minSlopeDeg: 0, tiltedDeg: 0 } as const;
    const points: Vec3[] = [
      [0, 0, 0],
      [200, 0, 0],
    ];
    expect(verdict({ points, drain })).toBe('pass');
    expect(verdict({ points, drain }, upIn(slanted({}).line.axes, 0, 0.5 * RADIANS))).toBe('fail');
  });

  it('is a note where the service takes it for one', () => {
    const drain = { to: 'Z', minSlopeDeg: 1, tiltedDeg: 0 } as const;
    const tilted = upIn(slanted({}).line.axes, -RADIANS, 0);
    const notes = (check: string) => [{ check, reason: 'bled at rest' }];
    expect(verdict({ drain, notes: notes('slope') })).toBe('note');
    expect(verdict({ drain, notes: notes('slope') }, tilted)).toBe('note');
    expect(verdict({ drain, notes: notes('slope-tilted') })).toBe('fail');
    expect(verdict({ drain, notes: notes('slope-tilted') }, tilted)).toBe('note');
  });
});

/** Lines that hump, sag, turn over and run level, some of them good. */
const points = fc
  .array(
    fc.record({
      x: fc.integer({ min: 80, max: 160 }),
      y: fc.integer({ min: -60, max: 60 }),
      z: fc.constantFrom(-120, -50, -10, 0, 10, 50, 120),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((steps): readonly Vec3[] => {
    let at: Vec3 = [0, 0, 0];
    return [
      at,
      ...steps.map(({ x, y, z }): Vec3 => {
        at = [at[0] + x, at[1] + y, at[2] + z];
        return at;
      }),
    ];
  });

describe('any line', () => {
  const drains = fc.constantFrom<'A' | 'Z' | 'both'>('A', 'Z', 'both', 'both');
  const limits = fc.constantFrom(0, 1, 5);

  it('fails at rest, and in an attitude, exactly when the check does', () => {
    const seen = { pass: 0, fail: 0 };
    const check = fc.property(points, drains, limits, (list, to, minSlopeDeg) => {
      const drain = { to, minSlopeDeg, tiltedDeg: minSlopeDeg };
      const line = workLine(aLine({ points: list, radius: 15, drain }), { cures: false });
      if (line.centreline === null) return;
      const { verdict } = findingAtRest(line);
      seen[verdict as 'pass' | 'fail'] += 1;
      expect(verdicts(fallsOf(line))).toEqual(
        verdict === 'pass' ? new Set(['pass']) : expect.toSatisfy((all) => all.has('fail')),
      );
      const tilted = worstIn(line, 3 * RADIANS, -2 * RADIANS);
      const up = upIn(line.line.axes, 3 * RADIANS, -2 * RADIANS);
      const enough = tilted.slope!.worst.slope > minSlopeDeg * RADIANS + SLOPE_RAD;
      // Tilted, the least place inside a bend may lie between two of the profile; it may miss a failure, never invent one.
      if (enough) expect(verdicts(fallsOf(line, up))).toEqual(new Set(['pass']));
      if (tilted.slope!.worst.slope < minSlopeDeg * RADIANS - RADIANS)
        expect(verdicts(fallsOf(line, up)).has('fail')).toBe(true);
    });
    fc.assert(check, { seed: 20, numRuns: 600 });
    expect(Math.min(seen.pass, seen.fail)).toBeGreaterThan(60);
  });

  it('has the least slope of the line among its places', () => {
    const check = fc.property(points, fc.constantFrom<'A' | 'Z'>('A', 'Z'), (list, to) => {
      const line = workLine(aLine({ points: list, radius: 15, drain: { to, minSlopeDeg: 1 } }), {
        cures: false,
      });
      if (line.centreline === null) return;
      const least = Math.min(...fallsOf(line).map(({ slope }) => slope!));
      expect(least).toBeCloseTo(line.slope!.rest.slope, 9);
    });
    fc.assert(check, { seed: 21, numRuns: 300 });
  });
});
