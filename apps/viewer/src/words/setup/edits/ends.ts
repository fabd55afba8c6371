/** Ends of a line, and its clips. */
import type { Catalogue, JobEdit, MachineAxes, Vec3 } from 'runback';
import type { WrittenLength } from '../../parts/read.ts';
import type { Answer } from './fall.ts';
import type { Choice } from './tubes.ts';
import { mmOf, path, type Written, type WrittenEnd } from './written.ts';

/** End fittings of the catalogue and the job by name. */
export function fittingChoices(job: Written, catalogue: Catalogue): readonly Choice[] {
  const names = Object.entries(catalogue.fittings).map(([id, { name }]) => [id, name] as const);
  const own = Object.entries(job.fittings ?? {}).map(([id, { name }]) => [id, name ?? id] as const);
  return [...new Map([...names, ...own])].map(([value, label]) => ({ value, label }));
}

/** Services of the catalogue and the job by name. */
export function serviceChoices(job: Written, catalogue: Catalogue): readonly Choice[] {
  const names = Object.entries(catalogue.services).map(([id, { name }]) => [id, name] as const);
  const own = Object.entries(job.services ?? {}).map(([id, { name }]) => [id, name ?? id] as const);
  return [...new Map([...names, ...own])].map(([value, label]) => ({ value, label }));
}

export type NutKey = 'length' | 'bore' | 'acrossFlats';

/** A size of the nut; its length taken out takes the nut out, for it cannot be without. `at` is the path of the end. */
export function nutEdit(at: string, change: readonly [NutKey, WrittenLength | undefined]): JobEdit {
  const [key, value] = change;
  return key === 'length' && value === undefined
    ? { path: `${at}.nut`, value: undefined }
    : { path: `${at}.nut.${key}`, value };
}

/** The length of the sleeve; taken out, there is none. */
export const sleeveEdit = (at: string, length: WrittenLength | undefined): JobEdit => ({
  path: `${at}.sleeve`,
  value: length === undefined ? undefined : { length },
});

/** Ways out of a port in plain words, about the axes of the machine. */
export const WAYS: readonly (readonly [string, string])[] = [
  ['up', 'straight up'],
  ['down', 'straight down'],
  ['forward', 'forward'],
  ['back', 'to the rear'],
  ['left', 'to the left'],
  ['right', 'to the right'],
];

/** The vector of a way, or null for one that is none of these. */
export function wayVector(way: string, { up, forward, left }: MachineAxes): Vec3 | null {
  const negative = ([x, y, z]: Vec3): Vec3 => [0 - x, 0 - y, 0 - z];
  const ways: Readonly<Record<string, Vec3>> = {
    up,
    down: negative(up),
    forward,
    back: negative(forward),
    left,
    right: negative(left),
  };
  return ways[way] ?? null;
}

/** What tells one way from another. */
const SAME = 1e-9;

/** The way a direction points, or null when it is none of the six. */
export function wayOf(direction: WrittenEnd['direction'], axes: MachineAxes): string | null {
  if (direction === undefined) return null;
  const size = Math.hypot(...direction);
  const found = WAYS.find(([way]) => {
    const vector = wayVector(way, axes);
    return vector?.every((part, k) => Math.abs(part - direction[k]! / size) < SAME) === true;
  });
  return found?.[0] ?? null;
}

const EXPECTED = 'three numbers like 0 0 1, not all 0';

/** Reads a direction: three plain numbers with spaces between them. */
export function readDirection(typed: string): Answer<readonly [number, number, number]> {
  const parts = typed
    .trim()
    .replaceAll('−', '-')
    .replace(/^\[|\]$/gu, '')
    .split(/[\s,]+/u);
  const [x, y, z] = parts.map(Number);
  const whole = parts.length === 3 && parts.every((part) => /^[-+]?(?:\d+\.?\d*|\.\d+)$/u.test(part));
  if (!whole || x === undefined || y === undefined || z === undefined || Math.hypot(x, y, z) === 0)
    return { ok: false, message: 'not a direction', expected: EXPECTED };
  return { ok: true, value: [x, y, z] };
}

/** One more clip, at its place along the line. `i` is the index of the line. */
export function addClip(job: Written, i: number, at: WrittenLength): readonly JobEdit[] {
  const line = job.lines[i];
  const clips = line === undefined || 'mirrorOf' in line ? [] : (line.clips ?? []);
  const mm = mmOf(at, job.units);
  const after = clips.findIndex((clip) => mmOf(clip, job.units) > mm);
  return [{ path: path('lines', i, 'clips'), insert: after < 0 ? clips.length : after, value: at }];
}
