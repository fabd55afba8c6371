/** From the schema library's issues to faults in plain words. */
import type { z } from 'zod';
import { describe, type Fault, quote } from '../issue.ts';
import { didYouMean, oneOf } from '../near.ts';
import type { Segment } from '../path.ts';

type Issue = z.core.$ZodIssue;

/** Kinds of line in the order the schema has them: a line with `mirrorOf` is meant as the second. */
const MEASURED = 0;
const MIRRORED = 1;

/** The value at a path of plain data, undefined when there is none. */
export function valueAt(data: unknown, at: readonly Segment[]): unknown {
  let value = data;
  for (const segment of at) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, segment)) return undefined;
    value = (value as Record<Segment, unknown>)[segment];
  }
  return value;
}

/** Faults of one issue found in `data`; several where several keys are unknown. */
export function faultsOf(issue: Issue, data: unknown, above: readonly Segment[] = []): readonly Fault[] {
  const at = [...above, ...issue.path.map((part) => (typeof part === 'number' ? part : String(part)))];
  const value = valueAt(data, at);
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(key, issue.message, at));
  if (issue.code === 'invalid_key') return [badId(issue.issues[0]?.message ?? 'an id', at)];
  if (issue.code === 'invalid_union' && issue.errors.length === 2 && at.length === 2 && at[0] === 'lines')
    return ofLine(issue.errors, data, at);
  const expected = expectedBy(issue);
  return [{ at, on: 'value', message: messageOf(issue, value), expected, got: describe(value) }];
}

function ofLine(
  errors: readonly (readonly Issue[])[],
  data: unknown,
  at: readonly Segment[],
): readonly Fault[] {
  const line = valueAt(data, at);
  const kind =
    typeof line === 'object' && line !== null && Object.hasOwn(line, 'mirrorOf') ? MIRRORED : MEASURED;
  const issues = errors[kind] ?? [];
  return issues.flatMap((issue) => faultsOf(issue, data, at));
}

function unknownKey(key: string, allowed: string, at: readonly Segment[]): Fault {
  const keys = allowed.split(', ');
  const message = `unknown key ${quote(key)}${didYouMean(key, keys)}`;
  return { at: [...at, key], on: 'key', message, expected: `one of ${keys.join(', ')}`, got: quote(key) };
}

const badId = (expected: string, at: readonly Segment[]): Fault => ({
  at,
  on: 'key',
  message: 'this id cannot be used',
  expected,
  got: quote(String(at.at(-1))),
});

function expectedBy(issue: Issue): string {
  if (issue.code === 'custom' && typeof issue.params?.expected === 'string') return issue.params.expected;
  if (issue.code === 'invalid_union' && 'options' in issue) return oneOf(optionsOf(issue.options));
  return issue.message;
}

const optionsOf = (options: unknown): readonly string[] =>
  Array.isArray(options) ? options.map(String) : [];

function messageOf(issue: Issue, value: unknown): string {
  if (value === undefined) return 'this key is missing';
  if (issue.code === 'custom' && issue.params !== undefined) return issue.message;
  if (issue.code === 'invalid_value')
    return `not one of the words used here${didYouMean(value, issue.values.map(String))}`;
  if (issue.code === 'invalid_union' && 'options' in issue)
    return `unknown shape${didYouMean(value, optionsOf(issue.options))}`;
  if (issue.code === 'too_small' || issue.code === 'too_big') return 'outside what can be';
  return 'not what belongs here';
}
