/** Whatever the text: a Job, or a JobError whose places lie inside it. Seeded. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { WET_JOB } from '../test-jobs.ts';
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
  '"1/4 in/ft"',
  '"1:0"',
  '"60 psi"',
  '[{ "litres": 1 }, null]',
];

/** One change: characters lost, put in, or put in place of one. */
const change = fc.oneof(
  fc.record({ gone: fc.integer({ min: 1, max: 30 }), come: fc.constant('') }),
  fc.record({ gone: fc.constantFrom(0, 1), come: fc.constantFrom(...TOKENS) }),
);
/** A change at a share of the length of a text. */
const edit = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), change)
  .map(([share, { gone, come }]) => (text: string): string => {
    const at = Math.floor(share * text.length);
    return text.slice(0, at) + come + text.slice(at + gone);
  });

/** Where each value stands: numbers, words, lists and objects without lists in them. */
const valuesOf = (text: string): readonly RegExpExecArray[] => [
  ...text.matchAll(/(?<=[:[,{]\s*)(?:-?\d[\d.]*|"[^"\n]*"(?!\s*:)|\[[^[\]]*\]|\{[^{}]*\})/gu),
];

const swapped = (text: string, swaps: readonly (readonly [RegExpExecArray, string])[]): string =>
  swaps
    .toSorted(([a], [b]) => b.index - a.index)
    .reduce(
      (so, [{ index, 0: old }, value]) => so.slice(0, index) + value + so.slice(index + old.length),
      text,
    );

describe.each([
  ['the contract example', example],
  ['liquid, duty, sticks and runs', WET_JOB],
])('texts with mistakes: %s', (_, sound) => {
  test('it is read itself', () => {
    expect(readOrRefused(sound)).toBe(true);
  });

  test(`characters lost, added and changed, seed ${SEED}`, () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
        readOrRefused(edits.reduce((text, change) => change(text), sound));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test(`values swapped for others, seed ${SEED}`, () => {
    let read = 0;
    const swap = fc.tuple(fc.constantFrom(...valuesOf(sound)), fc.constantFrom(...VALUES));
    fc.assert(
      fc.property(fc.array(swap, { minLength: 1, maxLength: 4 }), (swaps) => {
        if (readOrRefused(swapped(sound, swaps))) read += 1;
      }),
      { seed: SEED, numRuns: 500 },
    );
    expect(read).toBeGreaterThan(0);
    expect(read).toBeLessThan(500);
  });
});

describe('other texts', () => {
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
