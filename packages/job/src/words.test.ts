/** The small helpers that faults are worded with: paths, near words, checksum. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checksum } from './checksum.ts';
import { JobError, describe as say } from './issue.ts';
import { editDistance, nearest } from './near.ts';
import { formatPath, parsePath } from './path.ts';

describe('paths', () => {
  test('are written as in the contract', () => {
    expect(formatPath(['lines', 0, 'drain', 'minSlope'])).toBe('lines[0].drain.minSlope');
    expect(formatPath(['tubes', 'ss-12x1', 'od'])).toBe('tubes.ss-12x1.od');
    expect(formatPath(['tubes', '3.8', 'od'])).toBe('tubes["3.8"].od');
    expect(formatPath([])).toBe('');
  });

  test('are read back as they were written', () => {
    const segment = fc.oneof(fc.string(), fc.nat());
    fc.assert(
      fc.property(fc.array(segment), (segments) => {
        expect(parsePath(formatPath(segments))).toEqual(segments);
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  test('what is no path is refused', () => {
    expect(() => parsePath('lines[0')).toThrow(RangeError);
  });
});

describe('near words', () => {
  test.each([
    ['raduis', 'radius'],
    ['Radius', 'radius'],
    ['center', 'centre'],
    ['min_slope', 'minSlope'],
    ['bnech', 'bench'],
  ])('%s is taken for %s', (word, meant) => {
    expect(nearest(word, ['radius', 'centre', 'minSlope', 'bench', 'at'])).toBe(meant);
  });

  test('nothing is suggested for something quite different', () => {
    expect(nearest('elephant', ['radius', 'at'])).toBe(null);
    expect(nearest('x', ['radius'])).toBe(null);
  });

  test('edit distance: symmetric, 0 only for equal words, never more than the longer word', () => {
    const word = fc.string({ maxLength: 12, unit: fc.constantFrom('a', 'b', 'c') });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const edits = editDistance(a, b);
        expect(edits).toBe(editDistance(b, a));
        expect(edits === 0).toBe(a === b);
        expect(edits).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
      { seed: 42, numRuns: 500 },
    );
  });
});

test('checksum gives the published FNV-1a values', () => {
  // Test vectors of Fowler, Noll and Vo for 32 bits, from memory; the function has no other free choice.
  expect(checksum('')).toBe('811c9dc5');
  expect(checksum('a')).toBe('e40c292c');
  expect(checksum('foobar')).toBe('bf9cf968');
});

test('checksum goes over UTF-8 bytes and tells texts apart', () => {
  const bytes = new TextEncoder().encode('4′ 2″ – größer 🛠');
  let hash = 0x811c9dc5;
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  expect(checksum('4′ 2″ – größer 🛠')).toBe(hash.toString(16).padStart(8, '0'));
  expect(checksum('{"od": 12}')).not.toBe(checksum('{"od": 13}'));
});

test('what stands in a job is said in words and cannot break a line', () => {
  expect(say('a\nb\u0085')).toBe('"a\\nb?"');
  expect(say(null)).toBe('null, which is nothing');
  expect(say([])).toBe('an empty list [ ]');
  expect(say([1, 'x'])).toBe('[1, "x"]');
  expect(say([1, 2, 3, 4])).toBe('a list of 4');
  expect(say(Number.POSITIVE_INFINITY)).toBe('a number too large to use');
  expect(say('x'.repeat(500)).length).toBeLessThan(70);
});

test('a long list of faults is cut in print, not in data', () => {
  const issue = { path: 'a', line: 1, column: 1, expected: 'b', got: 'c', message: 'd', file: null };
  const error = new JobError(Array.from({ length: 130 }, () => issue));
  expect(error.issues).toHaveLength(130);
  expect(String(error).split('\n').at(-1)).toBe('and 30 more');
});
