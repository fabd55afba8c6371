import { readFileSync } from 'node:fs';
import { signal } from '@preact/signals';
import { pourIn, upIn, type Vec3, type WorkedLine, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY } from '../../../../tests/helpers/run.ts';
import { type Clock, makePouring } from './pour.ts';
import type { Drop } from './types.ts';

const DEGREE = Math.PI / 180;
const job = workUp(readFileSync(FIRST_TRY, 'utf8'));
const lineOf = (id: string): WorkedLine => job.lines.find(({ line }) => line.id === id)!;
const drain = lineOf('pump-drain');
const level = drain.line.axes.up;
const noseUp = upIn(drain.line.axes, -5 * DEGREE, 0);

/** A clock that stands until it is told to go on. */
function stopped(still: boolean) {
  let now = 0;
  let waiting: (() => void) | null = null;
  const clock: Clock = {
    still: () => still,
    now: () => now,
    frame: (run) => {
      waiting = run;
    },
  };
  const to = (ms: number): void => {
    now = ms;
    const run = waiting;
    waiting = null;
    run?.();
  };
  return { clock, to };
}

function poured(still = true) {
  const { clock, to } = stopped(still);
  const line = signal<WorkedLine | null>(drain);
  const up = signal<Vec3>(level);
  const stand = signal<number | null>(300);
  const pour = signal<Drop | null>(null);
  return { line, up, stand, pour, to, ...makePouring({ line, up, stand, bead: stand, pour }, clock) };
}

describe('a drop let go', () => {
  const stops = pourIn(drain, { up: level, at: 300 })!.stops;

  it('ends at once where the line says, where nothing should move', () => {
    const { letGo, pour } = poured();
    letGo();
    expect(pour.value).toEqual({ from: 300, at: stops, out: null, moving: false });
    expect(stops).toBeGreaterThan(400);
  });

  it('takes its time elsewhere, ever nearer, and is there at the end', () => {
    const { letGo, pour, to } = poured(false);
    letGo();
    expect(pour.value).toMatchObject({ from: 300, at: 300, moving: true });
    to(750);
    const half = pour.value!.at;
    expect(half).toBeGreaterThan(300);
    expect(half).toBeLessThan((300 + stops) / 2);
    to(1500);
    expect(pour.value).toEqual({ from: 300, at: stops, out: null, moving: false });
  });

  it('runs on from where it lies when the world is tilted', () => {
    const { letGo, pour, up } = poured();
    letGo();
    const lay = pour.value!.at;
    up.value = noseUp;
    const { stops: then, out } = pourIn(drain, { up: noseUp, at: lay })!;
    expect(pour.value).toEqual({ from: 300, at: then, out, moving: false });
    expect(then).not.toBeCloseTo(lay, 1);
  });

  it('lies still when the line is only worked again', () => {
    const { letGo, pour, line } = poured();
    letGo();
    const before = pour.value;
    line.value = structuredClone(drain);
    expect(pour.value).toBe(before);
  });

  it('goes with its line, and when it is taken away; a run that was given up shows nothing more', () => {
    const one = poured();
    one.letGo();
    one.line.value = lineOf('breather');
    expect(one.pour.value).toBeNull();
    const other = poured(false);
    other.letGo();
    other.takeDrop();
    other.to(1500);
    expect(other.pour.value).toBeNull();
  });

  it('falls out of an end, and is gone with the next tilt', () => {
    const { letGo, pour, up, stand } = poured();
    stand.value = 520;
    letGo();
    expect(pour.value).toMatchObject({ out: 'Z', moving: false });
    up.value = noseUp;
    expect(pour.value).toBeNull();
  });

  it('starts in the middle without a bead, and leaves one there', () => {
    const { letGo, pour, stand } = poured();
    stand.value = null;
    letGo();
    expect(stand.value).toBe(drain.centreline!.length / 2);
    expect(pour.value).not.toBeNull();
  });
});
