/** Faults of a job file, in words for the person who wrote it. */
import { formatPath, type Segment } from './path.ts';

/** One fault of a job file. Lines and columns count from 1. */
export interface JobIssue {
  /** `lines[0].points[2].radius`; an empty text for the file as a whole. */
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly expected: string;
  readonly got: string;
  readonly message: string;
  /** Name of the file as handed in, or null. */
  readonly file: string | null;
}

/** A fault before its place in the text is looked up. */
export interface Fault {
  readonly at: readonly Segment[];
  /** Whether to point at the value or at its key. */
  readonly on: 'value' | 'key';
  readonly message: string;
  readonly expected: string;
  readonly got: string;
}

const MOST_PRINTED = 100;

/** `file:line:column: path: message (expected …, got …)` */
export function formatIssue(issue: JobIssue): string {
  const { file, line, column, path, message, expected, got } = issue;
  const place = `${file ?? 'job'}:${line}:${column}: ${path === '' ? '' : `${path}: `}`;
  return `${place}${message} (expected ${expected}, got ${got})`;
}

/** Thrown for a job that cannot be understood, with every fault found. `toString` prints one per line. */
export class JobError extends Error {
  override readonly name = 'JobError';
  readonly issues: readonly JobIssue[];

  constructor(issues: readonly JobIssue[]) {
    const printed = issues.slice(0, MOST_PRINTED).map(formatIssue);
    const more = issues.length - printed.length;
    super([...printed, ...(more > 0 ? [`and ${more} more`] : [])].join('\n'));
    this.issues = issues;
  }

  override toString(): string {
    return this.message;
  }
}

const LONGEST_QUOTE = 60;

/** Text from a job, quoted, shortened, and without control characters. */
export function quote(text: string): string {
  const short = text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}…` : text;
  return JSON.stringify(short).replace(/[\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, '?');
}

const SHORT_LIST = 3;

/** A list of up to three plain values is shown, a longer one counted. */
function describeList(list: readonly unknown[]): string {
  if (list.length === 0) return 'an empty list [ ]';
  const plain = list.every((item) => typeof item !== 'object' || item === null);
  return plain && list.length <= SHORT_LIST
    ? `[${list.map(describe).join(', ')}]`
    : `a list of ${list.length}`;
}

/** What stands in the job, in words. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null, which is nothing';
  if (typeof value === 'string') return quote(value);
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'a number too large to use';
  if (Array.isArray(value)) return describeList(value);
  return typeof value === 'object' ? 'an object { … }' : String(value);
}

export const faultPath = (fault: Fault): string => formatPath(fault.at);
