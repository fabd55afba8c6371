/** Paths into a job file: `lines[0].points[2].at`, `tubes["12.5"].od`. */

export type Segment = string | number;

const PLAIN_KEY = /^[A-Za-z_][A-Za-z0-9_-]*$/u;
const STEP = /^(?:\.?([A-Za-z_][A-Za-z0-9_-]*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\])/u;

/**
 * Writes a path.
 * @example
 * ```ts
 * import { formatPath } from '@runback/job';
 * formatPath(['lines', 0, 'points', 2, 'at']); // => "lines[0].points[2].at"
 * ```
 */
export function formatPath(segments: readonly Segment[]): string {
  return segments.reduce<string>((path, segment) => {
    if (typeof segment === 'number') return `${path}[${segment}]`;
    if (!PLAIN_KEY.test(segment)) return `${path}[${JSON.stringify(segment)}]`;
    return path === '' ? segment : `${path}.${segment}`;
  }, '');
}

/**
 * Reads a path that `formatPath` wrote.
 * @throws RangeError when it is none.
 * @example
 * ```ts
 * import { parsePath } from '@runback/job';
 * parsePath('lines[0].points[2].at'); // => ["lines", 0, "points", 2, "at"]
 * ```
 */
export function parsePath(path: string): readonly Segment[] {
  const segments: Segment[] = [];
  let rest = path;
  while (rest !== '') {
    const match = STEP.exec(rest);
    if (!match) throw new RangeError(`parsePath: not a path into a job: ${JSON.stringify(path)}`);
    const [step, key, index, quoted] = match;
    segments.push(key ?? (quoted === undefined ? Number(index) : (JSON.parse(quoted) as string)));
    rest = rest.slice(step.length);
  }
  return segments;
}
