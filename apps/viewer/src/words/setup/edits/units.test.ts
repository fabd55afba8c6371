import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { editJob, type JobUnit, jobSchema, parseJob, type WorkedJob, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { LENGTH_PATHS } from './length-paths.ts';
import { unitEdits } from './units.ts';

const root = join(import.meta.dirname, '..', '..', '..', '..', '..', '..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const JOBS = ['docs/examples/tender-7/tender-7.job.json', 'docs/examples/inch/pump-set.job.json'];

/** Places where the schema has a length, as patterns. */
function lengthsIn(node: unknown, at = ''): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  const schema = node as Readonly<Record<string, unknown>>;
  if (schema.$ref === '#/$defs/length') return [at];
  const keys = Object.entries((schema.properties ?? {}) as object);
  const branches = [schema.anyOf, schema.oneOf].flat().filter((branch) => branch !== undefined);
  return [
    ...keys.flatMap(([key, inner]) => lengthsIn(inner, at === '' ? key : `${at}.${key}`)),
    ...branches.flatMap((branch) => lengthsIn(branch, at)),
    ...lengthsIn(schema.items, `${at}[]`),
    ...[schema.prefixItems].flat().flatMap((item) => lengthsIn(item, `${at}[]`)),
    ...lengthsIn(schema.additionalProperties, `${at}.*`),
  ];
}

/** What is the same whatever unit the job is written in: words in its units, cures and checksums are not. */
const WORDS = new Set(['units', 'message', 'cure', 'checksum', 'text', 'basis', 'caution']);

function compare(a: unknown, b: unknown, at = ''): readonly string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)) ? [] : [`${at}: ${a} and ${b}`];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return a === b ? [] : [`${at}: ${String(a)} and ${String(b)}`];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)].filter((key) => !WORDS.has(key)));
  return [...keys].flatMap((key) =>
    compare((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${at}.${key}`),
  );
}

const rewritten = (text: string, to: JobUnit): string => editJob(text, unitEdits(parseJob(text).written, to));

describe('unitEdits', () => {
  it('knows every place of the schema where a length stands, and no other', () => {
    expect([...new Set(lengthsIn(jobSchema()))].toSorted()).toEqual([...LENGTH_PATHS].toSorted());
  });

  it.each(JOBS)('leaves %s worked to the same', (file) => {
    const text = read(file);
    const before: WorkedJob = workUp(text);
    const to = before.units === 'mm' ? 'in' : 'mm';
    const after = workUp(rewritten(text, to));
    expect(after.units).toBe(to);
    expect(compare(before, after)).toEqual([]);
  });

  it('writes nothing when the job is in these units already', () => {
    const { written } = parseJob(read(JOBS[0]!));
    expect(unitEdits(written, 'mm')).toEqual([]);
  });

  it('gives what was bare its unit, and leaves the rest', () => {
    const { written } = parseJob(read(JOBS[1]!));
    const edits = new Map(
      unitEdits(written, 'mm').map((edit) => [edit.path, 'value' in edit ? edit.value : null]),
    );
    expect(edits.get('tubes.ss-3-8.wall')).toBe('0.035 in');
    expect(edits.get('tubes.ss-3-8.od')).toBe('3/8 in');
    expect(edits.get('surroundings[0].from[0]')).toBe('-6 in');
    expect(edits.has('tubes.ss-3-8.stock')).toBe(false);
    expect(edits.has('lines[0].points[0].at[0]')).toBe(false);
    expect(edits.get('lines[0].clips[0]')).toBe('4 in');
  });

  it('gives every length of a stick, a run and an end its unit, and leaves pressures, litres and falls', () => {
    const pan = { middle: [300, 0, -155], size: [540, 280] };
    const stick = {
      ...{ kind: 'links', enters: 'Z', thickness: 1.5, width: 6, link: 30, seat: 12, beyond: 75, pan },
      ...{ tip: { length: 40, thickness: 3, width: 5 }, friction: [0.1, 0.3] },
      ...{
        fills: [
          { litres: 9, at: 45 },
          { litres: 12, at: 64.5 },
        ],
        levels: [{ name: 'MIN', litres: 9 }],
      },
    };
    const line = {
      ...{ id: 'l', tube: 't', fluid: 'f', endA: { opening: 7 }, drain: { to: 'Z', minSlope: '1/4 in/ft' } },
      duty: { pressure: 0.4, flow: '2 gal/min', temperature: { highest: 110 }, safetyFactor: 4 },
      ...{ stick, points: [{ at: [0, 0, 0] }, { at: [0, 0, -9] }] },
    };
    const job = {
      ...{ format: 'runback-job', version: 1, units: 'mm', lines: [line] },
      tubes: { t: { material: 'copper', od: 10, wall: 1 } },
      fluids: { f: { density: 860, viscosity: 30, surfaceTension: 30 } },
      runs: [{ id: 'r', lines: ['l'], stick: { ...stick, kind: 'cable' } }],
    };
    const text = JSON.stringify(job);
    const { values, written } = parseJob(rewritten(text, 'in'));
    expect(compare(parseJob(text).values, values)).toEqual([]);
    const inch = JSON.stringify(written);
    for (const same of [`"duty":${JSON.stringify(line.duty)}`, '"minSlope":"1/4 in/ft"', '"litres":9'])
      expect(inch).toContain(same);
    expect(inch).toContain('"fills":[{"litres":9,"at":"45 mm"},{"litres":12,"at":"64.5 mm"}]');
    expect(inch).toContain('"pan":{"middle":["300 mm",0,"-155 mm"],"size":["540 mm","280 mm"]}');
    expect(inch.match(/"opening":"7 mm"/gu)).toHaveLength(1);
  });

  it('keeps any number the length it was', () => {
    fc.assert(
      fc.property(fc.double({ min: -9e6, max: 9e6, noNaN: true }), (x) => {
        const tube = { material: 'copper', od: 6, wall: 1 };
        const lines = [{ id: 'l', tube: 't', points: [{ at: [x, 0, 0] }, { at: [x, 0, 9] }] }];
        const job = { format: 'runback-job', version: 1, units: 'mm', tubes: { t: tube }, lines };
        const text = rewritten(JSON.stringify(job), 'in');
        const line = parseJob(text).values.lines[0]!;
        expect('points' in line && Math.abs(line.points[0]!.at[0] - x)).toBeLessThanOrEqual(1e-9);
      }),
      { seed: 5, numRuns: 40 },
    );
  });
});
