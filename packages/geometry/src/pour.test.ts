import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bent, lines, lipOn, spanOf, straightSpan, ups } from '../test-kit/runs.ts';
import { frameAt, pieceTangent, pointAt } from './path.ts';
import { trapped } from './pockets.ts';
import { pour } from './pour.ts';
import type { Vec3 } from './types.ts';
import { dot } from './vec.ts';

const UP: Vec3 = [0, 0, 1];
const sag = bent(
  [
    [-100, 0, 60],
    [0, 0, 0],
    [120, 0, 80],
  ],
  40,
);
const falling = straightSpan({ from: [0, 0, 0], along: [20, 0, -1], length: 200, bore: 16 });

describe('pour', () => {
  it('runs out of the end it falls to, and at once where it is let go at that mouth', () => {
    for (const at of [0, 70, 200])
      expect(pour([falling], { up: UP, at })).toEqual({ from: at, stops: 200, out: 'Z' });
    for (const at of [0, 70, 200])
      expect(pour([falling], { up: [0, 0, -1], at })).toEqual({ from: at, stops: 0, out: 'A' });
  });

  it('stops where the floor of a sag is lowest, from either side', () => {
    const run = [spanOf(sag, 12)];
    const { lowest } = trapped(run, { up: UP, outlets: 'both' }).pockets[0]!;
    for (const at of [0, 30, 150, sag.length]) {
      const poured = pour(run, { up: UP, at });
      expect(poured.out).toBeNull();
      expect(poured.stops).toBeCloseTo(lowest, 3);
    }
    expect(pour(run, { up: UP, at: lowest }).stops).toBeCloseTo(lowest, 3);
    // On its head the sag is a crest.
    expect(pour(run, { up: [0, 0, -1], at: lowest - 5 }).out).toBe('A');
    expect(pour(run, { up: [0, 0, -1], at: lowest + 5 }).out).toBe('Z');
  });

  it('stays where the floor is level, balanced on a crest, and where a slope ends in a level', () => {
    const level = straightSpan({ from: [0, 0, 0], along: [1, 0, 0], length: 100, bore: 10 });
    for (const at of [0, 40, 100])
      expect(pour([level], { up: UP, at })).toEqual({ from: at, stops: at, out: null });
    const ends = bent(
      [
        [0, 0, 50],
        [100, 0, 0],
        [300, 0, 0],
      ],
      40,
    );
    expect(pour([spanOf(ends, 10)], { up: UP, at: 10 })).toMatchObject({ out: null });
    expect(pour([spanOf(ends, 10)], { up: UP, at: 10 }).stops).toBeCloseTo(ends.bends[0]!.end, 3);
    const roof = bent(
      [
        [-100, 0, 0],
        [0, 0, 50],
        [100, 0, 0],
      ],
      40,
    );
    expect(pour([spanOf(roof, 10)], { up: UP, at: roof.length / 2 })).toMatchObject({
      stops: roof.length / 2,
      out: null,
    });
  });

  it('is held by a lip and by a smaller bore, not by a larger one', () => {
    const from = falling.pieces[0]!.to;
    const more = (bore: number) => straightSpan({ from, along: [20, 0, -1], length: 100, bore });
    for (const run of [
      [falling, lipOn(falling, 'Z', 10), more(16)],
      [falling, more(10)],
      [falling, lipOn(falling, 'Z', 10)],
    ])
      expect(pour(run, { up: UP, at: 50 })).toEqual({ from: 50, stops: 200, out: null });
    for (const run of [
      [falling, more(20)],
      [falling, lipOn(falling, 'Z', 18), more(16)],
    ])
      expect(pour(run, { up: UP, at: 50 })).toEqual({ from: 50, stops: 300, out: 'Z' });
  });

  it('passes a joint that meets as nearly as points do, and not one that is plainly off', () => {
    const [x, y, z] = falling.pieces[0]!.to;
    for (const [off, stays] of [
      [1e-7, false],
      [1e-3, true],
    ] as const) {
      const more = straightSpan({ from: [x, y, z + off], along: [20, 0, -1], length: 100, bore: 16 });
      expect(pour([falling, more], { up: UP, at: 50 }).out, `${off} mm`).toBe(stays ? null : 'Z');
    }
  });

  it('refuses a place that is not on the run', () => {
    for (const at of [-1, 201, Number.NaN])
      expect(() => pour([falling], { up: UP, at })).toThrow(/from 0 to 200/);
  });

  it('goes where a drop rolled step by step goes, over a step too', () => {
    const step = 0.05;
    fc.assert(
      fc.property(
        lines,
        ups,
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.constantFrom(8, 12, 20),
        (line, up, part, bore) => {
          const first = spanOf(line, 12);
          const end = line.pieces.at(-1)!;
          const along = pieceTangent(end, end.end);
          const run = [first, straightSpan({ from: end.to, along, length: 60, bore })];
          const whole = line.length + 60;
          const at = part * whole;
          fc.pre(Math.abs(at - line.length) > 1);
          // The floor from the centreline and its tangent alone.
          const floor = (s: number): number => {
            const beyond = Math.max(0, s - line.length);
            const onLine = Math.min(s, line.length);
            const t = frameAt(line, onLine).tangent;
            const steep = dot(t, up);
            const r = (s > line.length ? bore : 12) / 2;
            return (
              dot(pointAt(line, onLine), up) + beyond * steep - r * Math.sqrt(Math.max(0, 1 - steep * steep))
            );
          };
          const lower = (a: number, b: number): boolean => floor(a) < floor(b) - 1e-8 * step;
          const away = [-step, step].filter((by) => lower(at + by, at));
          fc.pre(away.length === 1);
          const [by] = away as [number];
          let here = at;
          while (here + by > 0 && here + by < whole && lower(here + by, here)) here += by;
          const out = here + by <= 0 ? 'A' : here + by >= whole ? 'Z' : null;
          const found = pour(run, { up, at });
          expect(found.out).toBe(out);
          if (out === null) expect(Math.abs(found.stops - here)).toBeLessThan(3 * step);
        },
      ),
      { seed: 42, numRuns: 40 },
    );
  });

  it('ends in a pocket or outside, never higher than it began, of any line', () => {
    fc.assert(
      fc.property(lines, ups, fc.double({ min: 0, max: 1, noNaN: true }), (line, up, part) => {
        const run = [spanOf(line, 12)];
        const { pockets } = trapped(run, { up, outlets: 'both' });
        const { from, stops, out } = pour(run, { up, at: part * line.length });
        const height = (s: number): number => pointAt(line, s).reduce((sum, x, i) => sum + x * up[i]!, 0);
        expect(height(stops)).toBeLessThanOrEqual(height(from) + 1e-3);
        if (out !== null) expect(stops).toBe(out === 'A' ? 0 : line.length);
        else if (stops !== from)
          expect(pockets.some((one) => stops >= one.from - 0.01 && stops <= one.to + 0.01)).toBe(true);
      }),
      { seed: 41, numRuns: 80 },
    );
  });
});
