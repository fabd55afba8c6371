/** A large job for benchmarks: many lines beside each other, each among its own surroundings. Seeded. */
import { randomJobText } from '../helpers/random-job.ts';

export interface LargeJob {
  readonly lines: number;
  readonly bends: number;
  /** In the whole job. */
  readonly surroundings: number;
}

type Tree = Readonly<Record<string, unknown>>;
interface Part extends Tree {
  readonly surroundings: readonly Tree[];
  readonly lines: readonly Tree[];
}

/** From one line to the next, mm: room for it and what stands around it. */
const ASIDE = 600;
const PLACES: ReadonlySet<string> = new Set(['at', 'centre', 'from', 'to']);

/** To the left by so much: every point, centre and end. */
function moved<T>(value: T, by: number): T {
  if (Array.isArray(value)) return value.map((one) => moved(one, by)) as T;
  if (typeof value !== 'object' || value === null) return value;
  const put = ([key, one]: [string, unknown]): [string, unknown] =>
    PLACES.has(key) && Array.isArray(one)
      ? [key, one.map((x: number, axis) => (axis === 1 ? x + by : x))]
      : [key, moved(one, by)];
  return Object.fromEntries(Object.entries(value).map(put)) as T;
}

/** The text of the job. */
export function largeJobText(random: () => number, { lines, bends, surroundings }: LargeJob): string {
  const parts = Array.from({ length: lines }, (_, i) => {
    const job = JSON.parse(randomJobText(random, { bends, surroundings: surroundings / lines })) as Part;
    const placed = (one: Tree): Tree => ({ ...moved(one, i * ASIDE), id: `${one.id}-${i}` });
    return { job, lines: job.lines.map(placed), surroundings: job.surroundings.map(placed) };
  });
  const whole = {
    ...parts[0]!.job,
    surroundings: parts.flatMap((part) => part.surroundings),
    lines: parts.flatMap((part) => part.lines),
  };
  return JSON.stringify(whole, null, 2);
}
