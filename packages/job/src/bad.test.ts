/** Every fixture in tests/fixtures/bad: just the faults it announces, at their place, in words. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { JobError, type JobIssue, parseJob } from './index.ts';

const FOLDER = new URL('../../../tests/fixtures/bad/', import.meta.url);
const names = readdirSync(FOLDER);
const jobs = names.filter((name) => name.endsWith('.job.json'));

interface Announced {
  readonly place: string;
  readonly path: string;
  readonly message: string;
}

/** `7:12 lines[0].tube | words`, in the file's first lines or beside it. */
function announced(name: string, text: string): readonly Announced[] {
  const beside = name.replace('.job.json', '.expect.txt');
  const source = names.includes(beside) ? readFileSync(new URL(beside, FOLDER), 'utf8') : text;
  const lines = source.split('\n').map((line) => line.replace(/^\/\/ expect /u, ''));
  return lines.flatMap((line) => {
    const match = /^(\d+:\d+) (\S+) \| (.+)$/u.exec(line);
    return match ? [{ place: match[1]!, path: match[2]!.replace(/^-$/u, ''), message: match[3]! }] : [];
  });
}

function faultsOf(text: string, file: string): readonly JobIssue[] {
  try {
    parseJob(text, { catalogue: testCatalogue, file });
  } catch (error) {
    if (error instanceof JobError) return error.issues;
    throw error;
  }
  return [];
}

/** Words of the schema library, which nobody at a bench should meet. */
const JARGON = /\b(zod|invalid|expected string|undefined|regex|union|received)\b/iu;

describe('jobs with faults', () => {
  test('there are at least thirty kinds', () => {
    expect(jobs.length).toBeGreaterThan(30);
  });

  test.each(jobs)('%s', (name) => {
    const text = readFileSync(new URL(name, FOLDER), 'utf8');
    const expected = announced(name, text);
    const issues = faultsOf(text, name);
    expect(expected.length).toBeGreaterThan(0);
    expect(issues.map(({ line, column, path }) => `${line}:${column} ${path}`)).toEqual(
      expected.map(({ place, path }) => `${place} ${path}`),
    );
    for (const [i, issue] of issues.entries()) {
      expect(issue.message).toContain(expected[i]!.message);
      expect(issue.expected).not.toBe('');
      expect(issue.got).not.toBe('');
      expect(`${issue.message} ${issue.expected} ${issue.got}`).not.toMatch(JARGON);
      expect(issue.file).toBe(name);
    }
  });
});

test('an error prints file:line:column: path: message (expected …, got …)', () => {
  const error = new JobError([
    {
      path: 'lines[0].tube',
      line: 7,
      column: 12,
      expected: '"t12"',
      got: '"t21"',
      message: 'there is no tube of this id',
      file: 'a.job.json',
    },
  ]);
  expect(String(error)).toBe(
    'a.job.json:7:12: lines[0].tube: there is no tube of this id (expected "t12", got "t21")',
  );
});
