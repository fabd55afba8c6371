/** Whatever the text: a Job, or a JobError whose places lie inside it. Seeded. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { JobError, parseJob, resolve } from './index.ts';

const FOLDER = new URL('../../../tests/fixtures/', import.meta.url);
const example = readFileSync(new URL('contract-example.job.json', FOLDER), 'utf8');
const SEED = 42;
/** Generous: a busy machine takes a second; anything that grows with the square takes a minute. */
const SLOW_MS = 10_000;

const linesOf = (text: string): readonly string[] => text.replace(/^\uFEFF/u, '').split(/\r\n|\n|\r/u);

/** True when it was read; fails when anything but a JobError with sound places comes out. */
function readOrRefused(text: string): boolean {
  try {
    resolve(parseJob(text, { catalogue: testCatalogue }), testCatalogue);
    return true;
  } catch (error) {
    if (!(error instanceof JobError)) throw error;
    const lines = linesOf(text);
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { line, column, message } of error.issues) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(lines.length);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1);
      expect(message).not.toBe('');
    }
    return false;
  }
}

const TOKENS = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '\\',
  '/*',
  '//',
  '0',
  '-1',
  '1e999',
  'null',
  'true',
  '"x"',
  '{}',
  '[]',
  '\u0000',
  '\r',
];
const VALUES = [
  'null',
  'true',
  '0',
  '-7',
  '1e308',
  '1e-320',
  '""',
  '"1/0"',
  '"3 7/32"',
  '[]',
  '{}',
  '[0, 0, 0]',
  '[[1, 0, 0], [0, 1, 0]]',
  '"block"',
  '"dipstick"',
  '"A"',
  '{ "id": "x" }',
  '[null]',
  '{ "mirrorOf": 3 }',
];

const place = fc.double({ min: 0, max: 1, noNaN: true }).map((share) => Math.floor(share * example.length));
const edit = fc.oneof(
  fc.tuple(place, fc.integer({ min: 1, max: 30 })).map(
    ([at, n]) =>
      (text: string) =>
        text.slice(0, at) + text.slice(at + n),
  ),
  fc.tuple(place, fc.constantFrom(...TOKENS)).map(
    ([at, token]) =>
      (text: string) =>
        text.slice(0, at) + token + text.slice(at),
  ),
  fc.tuple(place, fc.constantFrom(...TOKENS)).map(
    ([at, token]) =>
      (text: string) =>
        text.slice(0, at) + token + text.slice(at + 1),
  ),
);

/** Where each value of the example stands: numbers, words, lists and objects without lists in them. */
const values = [
  ...example.matchAll(/(?<=[:[,{]\s*)(?:-?\d[\d.]*|"[^"\n]*"(?!\s*:)|\[[^[\]]*\]|\{[^{}]*\})/gu),
];

describe('texts with mistakes', () => {
  test('the example itself is read', () => {
    expect(readOrRefused(example)).toBe(true);
  });

  test(`characters lost, added and changed, seed ${SEED}`, () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
        readOrRefused(edits.reduce((text, change) => change(text), example));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test(`values swapped for others, seed ${SEED}`, () => {
    let read = 0;
    const swap = fc.tuple(fc.nat({ max: values.length - 1 }), fc.constantFrom(...VALUES));
    fc.assert(
      fc.property(fc.array(swap, { minLength: 1, maxLength: 4 }), (swaps) => {
        const text = swaps
          .toSorted((a, b) => b[0] - a[0])
          .reduce((so, [i, value]) => {
            const { index, 0: old } = values[i]!;
            return so.slice(0, index) + value + so.slice(index + old.length);
          }, example);
        if (readOrRefused(text)) read += 1;
      }),
      { seed: SEED, numRuns: 500 },
    );
    expect(read).toBeGreaterThan(0);
    expect(read).toBeLessThan(500);
  });

  test(`any text at all, seed ${SEED}`, () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (text) => {
        expect(readOrRefused(text)).toBe(false);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test.each([
    ['deep lists', '['.repeat(200_000)],
    ['mismatched brackets', '[}'.repeat(100_000)],
    ['mismatched brackets in a key', '{"a":]['.repeat(50_000)],
    ['deep objects', '{"a":'.repeat(100_000)],
    ['a deep job', `{"lines":${'['.repeat(31)}${']'.repeat(31)}}`],
    ['many unknown keys', `{${Array.from({ length: 20_000 }, (_, i) => `"key${i}":1`).join(',')}}`],
    ['one long key', `{"${'k'.repeat(500_000)}":1}`],
    ['one long length', `{"spareZ":"${'1 '.repeat(200_000)}"}`],
    ['a huge number', `{"spareZ":${'9'.repeat(100_000)}}`],
    ['nine million spaces', ' '.repeat(9_000_000)],
  ])('%s: refused, and not slowly', (_, text) => {
    const start = performance.now();
    const read = (): unknown => parseJob(text, { catalogue: testCatalogue });
    expect(read).toThrow(JobError);
    expect(performance.now() - start).toBeLessThan(SLOW_MS);
  });
});
