import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import { frameAt, POINT_MM, pathToSolid, pointToPath, signedDistance } from '@runback/geometry';
import { parseJob, resolve } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aBall, aLine } from '../../../../tests/helpers/a-line.ts';
import { randomJobText } from '../../../../tests/helpers/random-job.ts';
import { seeded } from '../../../../tests/helpers/random-line.ts';
import type { WorkedJob, WorkedLine } from '../types.ts';
import { workJob } from '../work-job.ts';
import { workLine } from '../work-line.ts';
import { lineProfile } from './line-profile.ts';
import type { LineProfile, NearestThing } from './types.ts';

const worked = (text: string): WorkedJob =>
  workJob(resolve(parseJob(text, { catalogue }), catalogue), { cures: false });

const example = (name: string): WorkedJob =>
  worked(readFileSync(new URL(`../../../../docs/examples/${name}.job.json`, import.meta.url), 'utf8'));

const JOBS: readonly (readonly [string, WorkedJob])[] = [
  ['Tender 7', example('tender-7/tender-7')],
  ['first try', example('tender-7/first-try')],
  ['pump set', example('inch/pump-set')],
  ['many things', worked(randomJobText(seeded(7), { bends: 12, surroundings: 200 }))],
];

const LINES = JOBS.flatMap(([name, job]) =>
  job.lines
    .filter((line) => line.centreline !== null)
    .map((line): readonly [string, WorkedLine, WorkedJob] => [`${name}: ${line.line.id}`, line, job]),
);

const profiled = (line: WorkedLine, job: WorkedJob, step?: number): LineProfile =>
  lineProfile(line, job, step === undefined ? {} : { step })!;

const left = ({ distance, keepOff }: NearestThing): number => distance - keepOff;

describe('the places of a profile', () => {
  it.each(LINES)('%s: in order, no two farther apart than the step', (_, line, job) => {
    const { places, length } = profiled(line, job, 7);
    expect(places[0]!.at).toBe(0);
    expect(places.at(-1)!.at).toBe(length);
    const gaps = places.slice(1).map(({ at }, i) => at - places[i]!.at);
    expect(Math.min(...gaps)).toBeGreaterThan(0);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(7 + POINT_MM);
  });

  it.each(LINES)('%s: every joint, clip and place of a finding, on the line', (_, line, job) => {
    const { places, bends } = profiled(line, job, 1000);
    const ats = places.map(({ at }) => at);
    for (const { start, end } of bends) for (const at of [start, end]) expect(ats).toContain(at);
    const named = [...(line.line.clips ?? []), ...[...line.findings, ...line.clearance].map((f) => f.at)];
    for (const wanted of named.filter((at): at is number => at !== null))
      expect(Math.min(...ats.map((at) => Math.abs(at - wanted)))).toBeLessThanOrEqual(POINT_MM);
    for (const { at, point, tangent } of places)
      expect({ point, tangent }).toEqual({
        point: frameAt(line.centreline!, at).point,
        tangent: frameAt(line.centreline!, at).tangent,
      });
  });

  it('ends at the length of the line even where its last straight has none', () => {
    const line = aLine({
      points: [
        [0, 0, 0],
        [36, 0, 0],
        [36, 36, 0],
      ],
    });
    const job = { ...JOBS[0]![1], lines: [workLine(line)] };
    const { places, length } = profiled(job.lines[0]!, job);
    expect(places.at(-1)!.at).toBe(length);
    expect(places[0]!.at).toBe(0);
  });

  it('has none for a line that cannot exist, and refuses a step of nothing', () => {
    const line = workLine(
      aLine({
        points: [
          [0, 0, 0],
          [20, 0, 0],
          [20, 20, 0],
        ],
      }),
    );
    const job = { ...JOBS[0]![1], lines: [line] };
    expect(lineProfile(line, job)).toBeNull();
    expect(() => lineProfile(line, job, { step: 0 })).toThrow(RangeError);
    expect(() => lineProfile(line, job, { step: Number.NaN })).toThrow(RangeError);
  });
});

describe('what a place comes nearest to', () => {
  it.each(LINES)('%s: at its least as the clearance rows say', (_, line, job) => {
    const { places } = profiled(line, job);
    const least = Math.min(...places.flatMap(({ nearest }) => (nearest ? [left(nearest)] : [])));
    const rows = line.clearance.filter(({ kind }) => kind !== 'self');
    const said = Math.min(...rows.map((row) => row.distance - row.keepOff));
    expect(least - said).toBeGreaterThanOrEqual(-POINT_MM);
    expect(least).toBeCloseTo(said, 6);
  });

  it.each(LINES)('%s: nothing measured by hand is nearer', (_, line, job) => {
    const { places, length } = profiled(line, job, 23);
    const { line: own, centreline } = line;
    const mates = (id: string): boolean =>
      job.runs.some(({ run: { lines } }) => lines.includes(own.id) && lines.includes(id));
    for (const { at, point, nearest } of places) {
      const joined = (id: string): boolean =>
        (own.endA.joins.includes(id) && at < own.endA.free) ||
        (own.endZ.joins.includes(id) && at > length - own.endZ.free);
      const surroundings = own.surroundings
        .filter(({ id }) => !joined(id))
        .map((s) => ({
          to: s.id,
          left:
            signedDistance(s.solid, point) - own.tube.od / 2 - (own.clearance.to[s.id] ?? s.keepOff).value,
        }));
      // Lines of one run are compared by parts: how near the joint they may be is told elsewhere.
      const lines = job.lines
        .filter((other) => other !== line && other.centreline !== null && !mates(other.line.id))
        .map((other) => ({
          to: other.line.id,
          left:
            pointToPath(point, other.centreline!.pieces).distance -
            (own.tube.od + other.line.tube.od) / 2 -
            Math.max(own.clearance.lines.value, other.line.clearance.lines.value),
        }));
      const best = [...surroundings, ...lines].reduce((a, b) => (b.left < a.left ? b : a));
      if (mates(nearest!.to)) expect(left(nearest!)).toBeLessThanOrEqual(best.left);
      else {
        expect(nearest!.to).toBe(best.to);
        expect(left(nearest!)).toBeCloseTo(best.left, 9);
      }
    }
    expect(centreline).not.toBeNull();
  });

  it('leaves out what an end joins within its free part, and nothing beyond', () => {
    const port = aBall('port', [0, 0, 0], 20, 5);
    const line = aLine({
      points: [
        [0, 0, 0],
        [0, 0, 200],
      ],
      surroundings: [port],
      endA: { joins: ['port'], free: 50 },
    });
    const job = { ...JOBS[0]![1], lines: [workLine(line)] };
    const { places } = profiled(job.lines[0]!, job, 10);
    expect(places.filter(({ at }) => at < 50).every(({ nearest }) => nearest === null)).toBe(true);
    expect(places.find(({ at }) => at === 50)!.nearest).toEqual({
      ...{ kind: 'surrounding', to: 'port', distance: 50 - 20 - 6, keepOff: 5 },
    });
    expect(pathToSolid(job.lines[0]!.centreline!.pieces, port.solid).distance).toBe(-20);
  });

  it('lets two lines that join the same thing come as close as their ports there', () => {
    const from = (id: string, y: number) =>
      workLine(
        aLine({
          id,
          points: [
            [0, y, 0],
            [0, y, 100],
            [0, y * 10, 300],
          ],
          surroundings: [aBall('block', [0, 0, -100], 90, 1)],
          endA: { joins: ['block'], free: 60 },
        }),
      );
    const job = { ...JOBS[0]![1], lines: [from('left', 10), from('right', -10)] };
    const { places } = profiled(job.lines[0]!, job, 10);
    const at = (s: number) => places.find((place) => place.at === s)!.nearest;
    // Inside its free part the left one still looks at what of the right one is not free: from 60 on.
    expect(at(0)!.distance).toBeCloseTo(Math.hypot(20, 60) - 12, 9);
    expect(at(60)).toEqual({ kind: 'line', to: 'right', distance: 8, keepOff: 10 });
  });

  it('says nothing where nothing is given', () => {
    const line = workLine(
      aLine({
        points: [
          [0, 0, 0],
          [100, 0, 0],
        ],
      }),
    );
    const { places } = profiled(line, { ...JOBS[0]![1], lines: [line] });
    expect(places.every(({ nearest }) => nearest === null)).toBe(true);
  });
});
