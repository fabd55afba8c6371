/** docs/job-format.md: its jobs are read, and it names every key there is. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { jobSchema, parseJob, resolve } from './index.ts';

const page = readFileSync(new URL('../../../docs/job-format.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```jsonc\n([\s\S]*?)```/gu)].map((match) => match[1]!);
const jobs = blocks.filter((block) => block.includes('"format"'));

function keysOf(schema: unknown, keys = new Set<string>()): ReadonlySet<string> {
  if (Array.isArray(schema)) for (const each of schema) keysOf(each, keys);
  else if (typeof schema === 'object' && schema !== null)
    for (const [key, value] of Object.entries(schema)) {
      if (key === 'properties') for (const name of Object.keys(value)) keys.add(name);
      keysOf(value, keys);
    }
  return keys;
}

describe('docs/job-format.md', () => {
  test('has jobs in it', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(2);
  });

  test.each(jobs)('job %#', (text) => {
    const resolved = resolve(parseJob(text, { catalogue: testCatalogue }), testCatalogue);
    expect(resolved.lines).toHaveLength(1);
  });

  test.each([...keysOf(jobSchema())])('names the key %s', (key) => {
    expect(page).toMatch(new RegExp(`[\`"]${key.replace('$', '\\$')}[\`"]`, 'u'));
  });
});
