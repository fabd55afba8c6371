import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { benchOf } from '../parts/bench.ts';
import { jobWords, lineAfter, lineRows, runRows } from './rows.ts';

const file = join(import.meta.dirname, '../../../../../docs/examples/tender-7/tender-7.job.json');
const worked = workUp(readFileSync(file, 'utf8'));

describe('rows of lines', () => {
  const rows = lineRows(worked, 'mm');

  it('say tube, bends, cut length and which is an opposite hand', () => {
    expect(rows.map(({ id }) => id)).toEqual(worked.lines.map(({ line }) => line.id));
    const cut = benchOf(worked.lines[0]!, 'A', 'mm')!.cutLength;
    expect(rows[0]).toMatchObject({
      tube: 'ss-12x1',
      cut: `cut ${cut} mm`,
      oppositeHand: false,
      quantity: null,
    });
    expect(rows.find(({ id }) => id === 'dipstick-right')?.oppositeHand).toBe(true);
    expect(rows.find(({ id }) => id === 'brake-rear')?.quantity).toBe('make 2');
  });

  it('a line that fails has no cut length: nobody should saw it', () => {
    const failing = { ...worked.lines[0]!, verdict: 'fail' } as const;
    expect(lineRows({ ...worked, lines: [failing] }, 'mm')[0]).toMatchObject({ bends: '2 bends', cut: null });
  });

  it('a line that cannot exist has no cut length', () => {
    const none = { ...worked.lines[0]!, plan: null, centreline: null, verdict: 'fail' } as const;
    expect(lineRows({ ...worked, lines: [none] }, 'mm')[0]).toMatchObject({
      bends: 'cannot exist as drawn',
      cut: null,
    });
  });
});

it('the job is said in numbers, worst first', () => {
  const of = (...verdicts: readonly ('pass' | 'note' | 'fail')[]) => ({
    ...worked,
    lines: verdicts.map((verdict) => ({ ...worked.lines[0]!, verdict })),
  });
  expect(jobWords(of('pass'))).toBe('1 line: 1 passes');
  expect(jobWords(of('pass', 'fail', 'note', 'note'))).toBe('4 lines: 1 fails, 2 have notes, 1 passes');
});

it('arrows go through the lines and stop at both ends', () => {
  const ids = ['a', 'b', 'c'];
  expect(lineAfter(ids, 'a', 'ArrowDown')).toBe('b');
  expect(lineAfter(ids, 'b', 'ArrowLeft')).toBe('a');
  expect(lineAfter(ids, 'c', 'ArrowRight')).toBe('c');
  expect(lineAfter(ids, 'b', 'Home')).toBe('a');
  expect(lineAfter(ids, 'b', 'End')).toBe('c');
  expect(lineAfter(ids, 'b', 'x')).toBeNull();
});

it('runs say their lines in order and their verdict', () => {
  const [first, second] = worked.lines.map(({ line }) => line);
  const run = { id: 'r', name: 'Both', lines: [second!.id, first!.id], drain: null, stick: null, path: '' };
  const none = { pockets: null, passage: null, stick: null, facts: [], findings: [] };
  expect(runRows({ lines: worked.lines, runs: [{ ...none, run, verdict: 'note' }] })).toEqual([
    {
      id: 'r',
      name: 'Both',
      verdict: 'note',
      lines: `${second!.name} → ${first!.name}`,
      first: second!.id,
    },
  ]);
});
