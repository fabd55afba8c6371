import type { JobIssue } from 'runback';
import { expect, it } from 'vitest';
import { sayIssues } from './issues.ts';

const issue = (message: string, expected: string): JobIssue => ({
  ...{ path: '', line: 0, column: 0, got: '', file: null },
  message,
  expected,
});

it('why an edit was refused is said once, with what was expected', () => {
  expect(sayIssues([issue('not a number', '20 or more'), issue('write litres', 'litres')])).toBe(
    'not a number (expected 20 or more); write litres',
  );
});
