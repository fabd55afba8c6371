/** Surroundings must be able to exist, and must say how far to keep off. */
import { describe } from '../issue.ts';
import { oneOf } from '../near.ts';
import { solidOf } from '../resolve/solid.ts';
import type { SurroundingValues } from '../schema/job.ts';
import { REASONS } from '../schema/tooling.ts';
import type { Look } from './look.ts';

type LooseSurrounding = NonNullable<NonNullable<Look['job']['surroundings']>[number]>;

const NEEDED: Readonly<Record<SurroundingValues['shape'], readonly string[]>> = {
  tube: ['points', 'od'],
  box: [],
  cylinder: ['from', 'to', 'diameter'],
  sphere: ['centre', 'diameter'],
  plane: ['point', 'normal'],
};

export function lookAtSurroundings(look: Look): void {
  look.job.surroundings?.forEach((values, i) => {
    if (values === undefined) return;
    const at = ['surroundings', i];
    const said = look.written([...at, 'keepOff']) ?? look.written([...at, 'because']);
    if (said === undefined)
      look.fault(at, 'how far to keep off is not said', {
        expected: `"keepOff", or "because" as ${oneOf(REASONS)}`,
        got: 'neither',
      });
    if (!isWhole(look, values, i)) return;
    const read = solidOf(values);
    if (read.ok) return;
    for (const fault of read.faults) {
      const got = fault.at.length === 0 ? { got: keysOf(look.written(at)) } : {};
      look.fault([...at, ...fault.at], fault.message, { expected: fault.expected, ...got });
    }
  });
}

/** True when nothing of it was faulty by itself, so that its solid can be tried. */
function isWhole(
  look: Look,
  values: LooseSurrounding,
  i: number,
): values is SurroundingValues & LooseSurrounding {
  const { shape } = values;
  if (shape === undefined) return false;
  const has = values as Readonly<Record<string, unknown>>;
  if (NEEDED[shape].some((key) => has[key] === undefined)) return false;
  if (shape === 'tube' && (values.points ?? []).includes(undefined)) return false;
  const written = look.written(['surroundings', i]);
  const keys = typeof written === 'object' && written !== null ? Object.keys(written) : [];
  return shape === 'tube' ? (values.points ?? []).length >= 2 : keys.every((key) => has[key] !== undefined);
}

const keysOf = (value: unknown): string =>
  typeof value === 'object' && value !== null ? Object.keys(value).join(', ') : describe(value);
