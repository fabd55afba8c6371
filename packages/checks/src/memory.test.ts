import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import { editJob, type JobEdit, parseJob, type ResolvedJob, resolve } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { WorkMemory } from './memory.ts';
import { sameData } from './same-data.ts';
import type { WorkedJob } from './types.ts';
import { workJob } from './work-job.ts';

const TENDER = readFileSync(
  new URL('../../../docs/examples/tender-7/tender-7.job.json', import.meta.url),
  'utf8',
);

const read = (text: string): ResolvedJob => resolve(parseJob(text, { catalogue }), catalogue);
const json = (job: WorkedJob): string => JSON.stringify(job);

/** Edits one after the other: points, a surrounding, a limit, the order of the lines, one less, a run, one more. */
const EDITS: readonly JobEdit[] = [
  { path: 'lines[0].points[2].at', value: [95, 190, 340] },
  { path: 'lines[2].points[1].at', value: [-380, 460, 637] },
  { path: 'lines[2].points[1].at', value: [-380, 460, 635] },
  { path: 'surroundings[3].keepOff', value: 60 },
  { path: 'lines[3].clearance', value: { lines: 25 } },
  { path: 'tubes["st-8x1"].wall', value: 1.5 },
  { path: 'lines[3]', move: 1 },
  { path: 'lines[5]', value: undefined },
  { path: 'lines[5].points[2].at', value: [-20, 205, 561] },
  { path: 'runs[0].drain', value: 'both' },
  { path: 'lines', insert: 5, value: { id: 'other-hand', mirrorOf: 'fuel-feed', across: 'y', offset: -20 } },
  { path: 'lines[0].points[1].at', value: [60, 130, 20] },
  { path: 'title', value: 'Tender 7, seen again' },
];

describe('a memory of what was worked', () => {
  it('gives the very same result as working everything again, edit after edit', () => {
    const memory = new WorkMemory();
    let text = TENDER;
    for (const [i, edit] of EDITS.entries()) {
      text = editJob(text, [edit]);
      const options = { cures: i === 4 };
      const job = read(text);
      expect(json(workJob(job, { ...options, memory })), edit.path).toBe(json(workJob(read(text), options)));
    }
  });

  it('holds results with and without cures side by side', () => {
    const memory = new WorkMemory();
    const text = editJob(TENDER, [{ path: 'lines[0].points[2].at', value: [90, 190, 300] }]);
    const [plain, cured] = [{ cures: false }, { cures: true }].map((options) => [
      json(workJob(read(text), options)),
      json(workJob(read(text), { ...options, memory })),
      json(workJob(read(text), { ...options, memory })),
    ]);
    expect(new Set(plain).size).toBe(1);
    expect(new Set(cured).size).toBe(1);
    expect(plain![0]).not.toBe(cured![0]);
    expect(json(workJob(read(text), { cures: false, memory }))).toBe(plain![0]);
  });

  it('works only what an edit changed, and its opposite hand', () => {
    const memory = new WorkMemory();
    const before = workJob(read(TENDER), { memory });
    const text = editJob(TENDER, [{ path: 'lines[0].points[2].at', value: [95, 190, 340] }]);
    const after = workJob(read(text), { memory });
    const kept = after.lines.map((line, i) => line.centreline === before.lines[i]!.centreline);
    const changed = after.lines.filter((_, i) => !kept[i]).map(({ line }) => line.id);
    expect(changed).toEqual(['dipstick', 'dipstick-right']);
  });

  it('measures two unchanged lines against each other once', () => {
    const memory = new WorkMemory();
    const rowOf = (job: WorkedJob) => job.lines[2]!.clearance.find((row) => row.to === 'fuel-feed');
    const before = rowOf(workJob(read(TENDER), { memory }));
    const text = editJob(TENDER, [{ path: 'lines[0].points[2].at', value: [95, 190, 340] }]);
    expect(before).toBeDefined();
    expect(rowOf(workJob(read(text), { memory }))).toBe(before);
  });

  it('works every line again when a surrounding moves', () => {
    const memory = new WorkMemory();
    const before = workJob(read(TENDER), { memory, cures: false });
    const text = editJob(TENDER, [{ path: 'surroundings[0].max', value: [580, 150, -1] }]);
    const after = workJob(read(text), { memory, cures: false });
    expect(after.lines.some((line, i) => line.centreline === before.lines[i]!.centreline)).toBe(false);
  });

  it('forgets a line that left the job', () => {
    const memory = new WorkMemory();
    const before = workJob(read(TENDER), { memory, cures: false });
    workJob(read(editJob(TENDER, [{ path: 'lines[3]', value: undefined }])), { memory, cures: false });
    const again = workJob(read(TENDER), { memory, cures: false });
    expect(again.lines[3]!.centreline).not.toBe(before.lines[3]!.centreline);
    expect(again.lines[0]!.centreline).toBe(before.lines[0]!.centreline);
  });
});

describe('plain data written alike', () => {
  it.each([
    [1, 1, true],
    [0, -0, false],
    [null, undefined, false],
    [null, {}, false],
    [[1, [2]], [1, [2]], true],
    [[1, 2], [1], false],
    [{ 0: 1 }, [1], false],
    [{ a: 1, b: { c: 'x' } }, { a: 1, b: { c: 'x' } }, true],
    [{ a: 1, b: 2 }, { b: 2, a: 1 }, false],
    [{ a: 1 }, { a: 1, b: undefined }, false],
  ])('%j and %j: %s', (a, b, same) => expect(sameData(a, b)).toBe(same));
});
