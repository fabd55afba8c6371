/** One part, said in different ways, is worked to the same result. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { validate, type WorkedJob, workUp } from 'runback';
import { report } from 'runback/exchange';
import { describe, expect, it } from 'vitest';
import { unsayable } from '../../packages/exchange/test/numbers.ts';
import { FIRST_TRY, ROOT, TENDER } from '../helpers/run.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const CONTRACT = join(ROOT, 'tests/fixtures/contract-example.job.json');
const INCH = join(ROOT, 'docs/examples/inch/pump-set.job.json');
const read = (path: string): WorkedJob => workUp(readFileSync(path, 'utf8'));

/** A small job as plain data: lengths are functions of a scale so that it can be said in mm and in inches. */
function job(
  units: 'mm' | 'in',
  change: { move?: (p: readonly number[]) => number[]; up?: number[]; forward?: number[] } = {},
): string {
  const k = units === 'mm' ? 1 : 1 / 25.4;
  const { move = (p: readonly number[]) => [...p] } = change;
  const at = (x: number, y: number, z: number): number[] => move([x, y, z]).map((n) => n * k);
  return JSON.stringify({
    format: 'runback-job',
    version: 1,
    units,
    ...(change.up ? { up: change.up, forward: change.forward } : {}),
    attitudes: { pitch: [-5, 5], roll: [-3, 3] },
    tubes: { t: { material: 'stainless-304', od: 12 * k, wall: 1 * k } },
    benders: {
      b: {
        dies: [{ od: 12 * k, radius: 36 * k, minStraight: 20 * k, minTail: 30 * k, markOffset: 3 * k }],
        springBack: { factor: 1.02, fixed: 0.4 },
        stretchPerDegree: 0.01 * k,
      },
    },
    surroundings: [
      { id: 'ball', shape: 'sphere', centre: at(100, 160, 200), diameter: 50 * k, keepOff: 10 * k },
    ],
    lines: [
      {
        id: 'one',
        tube: 't',
        bender: 'b',
        drain: { to: 'A', minSlope: 3 },
        points: [at(0, 0, 0), at(0, 0, 150), at(150, 60, 220), at(300, -40, 280), at(420, 0, 400)].map(
          (p) => ({ at: p }),
        ),
        clips: [60 * k, 400 * k],
      },
    ],
  });
}

/** Every number of two reports, side by side by its path; texts, paths and edits speak of the job and are left out. */
function numbers(value: Json, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (Array.isArray(value)) return value.flatMap((one, i) => numbers(one, `${path}[${i}]`));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value)
    .filter(([key]) => key !== 'cure')
    .flatMap(([key, one]) => numbers(one, `${path}.${key}`));
}

const line = (text: string): { [key: string]: Json } =>
  (report(workUp(text)) as unknown as { lines: { [key: string]: Json }[] }).lines[0]!;

function alike(a: [string, number][], b: [string, number][], within: number): void {
  expect(a.map(([path]) => path)).toEqual(b.map(([path]) => path));
  for (const [i, [path, value]] of a.entries()) {
    const scale = Math.max(1, Math.abs(value));
    expect(Math.abs(value - b[i]![1]) / scale, path).toBeLessThan(
      path.includes('at_mm') || path.includes('_at') ? 1e-3 : within,
    );
  }
}

describe('one part', () => {
  it('in mm and in inches', () => alike(numbers(line(job('mm'))), numbers(line(job('in'))), 1e-9));

  it('a kilometre away, everything but the places is the same', () => {
    const far = (p: readonly number[]): number[] => [p[0]! + 1e6, p[1]! - 1e6, p[2]! + 5e5];
    const keep = (found: [string, number][]): [string, number][] =>
      found.filter(([path]) => !/(from|to|centre|point)_mm/.test(path));
    alike(keep(numbers(line(job('mm')))), keep(numbers(line(job('mm', { move: far })))), 1e-7);
  });

  it('with the axes named otherwise: Y up, Z forward', () => {
    // X→Z, Y→X, Z→Y: the same machine, its axes called by other letters.
    const turn = (p: readonly number[]): number[] => [p[1]!, p[2]!, p[0]!];
    const other = line(job('mm', { move: turn, up: [0, 1, 0], forward: [0, 0, 1] }));
    const keep = (found: [string, number][]): [string, number][] =>
      found.filter(([path]) => !/(from|to|centre|point)_mm|normal|\bup\b|_up/.test(path));
    alike(keep(numbers(line(job('mm')))), keep(numbers(other)), 1e-9);
  });

  it('with gravity turned, only what gravity decides changes', () => {
    const tilted = line(job('mm', { up: [0.2, 0, 1], forward: [1, 0, 0] }));
    const level = line(job('mm'));
    for (const key of [
      'pieces',
      'bends',
      'cutLength_mm',
      'developedLength_mm',
      'clearance',
      'lastStraight_mm',
    ])
      expect(tilted[key], key).toEqual(level[key]);
    expect(tilted.slope).not.toEqual(level.slope);
  });

  it('in the mirror, every turn changes sign and nothing else of the bends', () => {
    const mirrored = line(job('mm', { move: (p) => [p[0]!, -p[1]!, p[2]!] }));
    type Row = { turn_deg: number | null; clock_deg: number };
    const rows = (l: { [key: string]: Json }): Row[] => l.bends as unknown as Row[];
    for (const [i, row] of rows(line(job('mm'))).entries()) {
      const other = rows(mirrored)[i]!;
      if (row.turn_deg === null) expect(other.turn_deg).toBeNull();
      else expect(other.turn_deg).toBeCloseTo(-row.turn_deg, 9);
      const rest = ({ turn_deg: _turn, clock_deg: _clock, ...more }: Row): object => more;
      alike(numbers(rest(row) as Json), numbers(rest(other) as Json), 1e-9);
    }
  });
});

describe('every whole job', () => {
  for (const path of [TENDER, FIRST_TRY, CONTRACT, INCH])
    it(`${path.slice(ROOT.length + 1)}: its centrelines keep every invariant, and its report says nothing unsayable`, () => {
      const job = read(path);
      for (const { centreline, line } of job.lines)
        if (centreline) expect(validate(centreline), line.id).toEqual([]);
      expect(unsayable(report(job))).toEqual([]);
      expect(JSON.stringify(report(job))).not.toMatch(/NaN|Infinity|undefined/);
      expect(Object.isFrozen(job.lines[0]?.findings)).toBe(true);
    });
});
