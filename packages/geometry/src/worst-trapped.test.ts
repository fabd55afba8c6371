import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bent, lines, lipOn, spanOf, straightSpan } from '../test-kit/runs.ts';
import { patchOf, upIn } from './attitude.ts';
import { floorAt } from './bore.ts';
import { pieceTangent } from './path.ts';
import { type BoreSpan, trapped } from './pockets.ts';
import { placedBores } from './pockets-run.ts';
import { smallestSlope } from './slope.ts';
import { mirrored, moved } from './transform.ts';
import type { AttitudeSet, DrainEnd, MachineAxes, Vec3 } from './types.ts';
import { dot, negate } from './vec.ts';
import { type WorstAsk, worstTrapped } from './worst-trapped.ts';
import { mostTrapped } from './worst-trapped-bound.ts';
import { oneDirection } from './worst-trapped-cells.ts';
import { walkOf } from './worst-trapped-walk.ts';

const axes: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
const DEGREE = Math.PI / 180;
const box: AttitudeSet = {
  kind: 'box',
  pitch: [-5 * DEGREE, 5 * DEGREE],
  roll: [-3 * DEGREE, 3 * DEGREE],
};
const liquid = { axes, attitudes: box, of: 'liquid' } as const;

/** Lifted over a bracket on its way down. */
const belly = bent(
  [
    [0, -180, 420],
    [0, -180, 340],
    [-60, -260, 300],
    [-320, -300, 282],
    [-380, -330, 300],
    [-380, -330, 240],
  ],
  36,
);

const sure = ({ trapped: { volume }, atMost }: ReturnType<typeof worstTrapped>): boolean =>
  atMost - volume <= Math.max(1, 0.005 * volume);

describe('worstTrapped', () => {
  it('tips a level tube towards its shut end, as far as it may: πr²(L − r/tan α)', () => {
    const run = [straightSpan({ from: [0, 0, 0], along: [1, 0, 0], length: 200, bore: 10 })];
    const exact = Math.PI * 25 * (200 - 5 / Math.tan(5 * DEGREE));
    const found = worstTrapped(run, { ...liquid, outlets: 'Z' });
    expect(found.trapped.volume).toBeCloseTo(exact, 2);
    expect(found.attitude!.pitch).toBeCloseTo(-5 * DEGREE, 9);
    expect(sure(found)).toBe(true);
    const cone = worstTrapped(run, {
      ...liquid,
      outlets: 'Z',
      attitudes: { kind: 'cone', tilt: 5 * DEGREE },
      tries: 400,
    });
    expect(cone.attitude).toBeNull();
    expect(Math.abs(cone.trapped.volume - exact) / exact).toBeLessThan(0.003);
    expect(cone.atMost).toBeGreaterThanOrEqual(exact);
    // Air goes the other way: the shut end must be the high one.
    const air = worstTrapped(run, { ...liquid, of: 'air', outlets: 'Z' });
    expect(air.trapped.volume).toBeCloseTo(exact, 2);
    expect(air.attitude!.pitch).toBeCloseTo(5 * DEGREE, 9);
  });

  it('finds the worst corner of the box for a belly, in a handful of tries, and says so', () => {
    const run = [spanOf(belly, 10)];
    const found = worstTrapped(run, { ...liquid, outlets: 'Z' });
    const corner = upIn(axes, 5 * DEGREE, -3 * DEGREE);
    expect(found.trapped.volume).toBeCloseTo(trapped(run, { up: corner, outlets: 'Z' }).volume, 6);
    expect(found.trapped.volume).toBeGreaterThan(5 * trapped(run, { up: [0, 0, 1], outlets: 'Z' }).volume);
    expect(found.up).toEqual(corner);
    expect(sure(found)).toBe(true);
    expect(found.tries).toBeLessThan(60);
  });

  it('at rest is what stays at rest', () => {
    const run = [spanOf(belly, 10)];
    const found = worstTrapped(run, { ...liquid, outlets: 'Z', attitudes: { kind: 'rest' } });
    const rest = trapped(run, { up: [0, 0, 1], outlets: 'Z' });
    expect(found).toMatchObject({ trapped: rest, up: [0, 0, 1], attitude: { pitch: 0, roll: 0 }, tries: 1 });
    expect(found.atMost).toBeCloseTo(rest.volume, 1);
  });

  it('grows with the set of attitudes, and more tries leave no more doubt', () => {
    const run = [spanOf(belly, 10)];
    let before = 0;
    for (const tilt of [2, 5, 12].map((t) => t * DEGREE)) {
      const ask = { ...liquid, outlets: 'both', attitudes: { kind: 'cone', tilt } } as const;
      const [few, many] = [
        worstTrapped(run, { ...ask, tries: 12 }),
        worstTrapped(run, { ...ask, tries: 150 }),
      ];
      expect(many.atMost).toBeLessThanOrEqual(few.atMost + 1e-9);
      expect(many.trapped.volume).toBeLessThanOrEqual(few.atMost);
      expect(many.atMost).toBeGreaterThanOrEqual(before);
      before = many.trapped.volume;
    }
  });

  it('refuses what is no search', () => {
    const run = [spanOf(belly, 10)];
    expect(() => worstTrapped(run, { ...liquid, outlets: 'Z', tries: 0 })).toThrow(/whole number/);
    expect(() => worstTrapped([], { ...liquid, outlets: 'Z' })).toThrow(/at least one tube/);
    expect(() =>
      worstTrapped(run, { ...liquid, outlets: 'Z', attitudes: { kind: 'cone', tilt: 4 } }),
    ).toThrow(/tilt/);
  });
});

describe('a run that falls everywhere in every attitude', () => {
  const falling = bent(
    [
      [0, 0, 300],
      [0, 0, 200],
      [150, 60, 160],
      [260, 200, 100],
    ],
    40,
  );
  const crested = bent(
    [
      [0, 0, 0],
      [0, 0, 120],
      [200, 0, 80],
      [300, 50, -60],
    ],
    40,
  );
  const shut: AttitudeSet = { kind: 'cone', tilt: 10 * DEGREE };

  it('is proved dry without a try, by its slope', () => {
    for (const attitudes of [box, shut]) {
      expect(smallestSlope(falling, { drain: 'Z', axes, attitudes }).slope).toBeGreaterThan(0);
      const down = worstTrapped([spanOf(falling, 12)], { ...liquid, attitudes, outlets: 'Z' });
      expect(down).toMatchObject({ trapped: { volume: 0, pockets: [] }, atMost: 0, tries: 0 });
      // Air leaves by the upper end of the same line.
      const air = worstTrapped([spanOf(falling, 12)], { ...liquid, of: 'air', attitudes, outlets: 'A' });
      expect(air).toMatchObject({ atMost: 0, tries: 0 });
    }
    const both = worstTrapped([spanOf(crested, 12)], { ...liquid, outlets: 'both' });
    expect(both).toMatchObject({ trapped: { volume: 0 }, atMost: 0, tries: 0 });
    expect(worstTrapped([spanOf(falling, 12)], { ...liquid, outlets: 'A' }).trapped.volume).toBeGreaterThan(
      1000,
    );
  });

  it('is not taken for dry with a lip, or a smaller bore, in the way; a larger one is none', () => {
    const upper = spanOf(falling, 12);
    const end = upper.pieces.at(-1)!;
    const along = pieceTangent(end, end.end);
    const more = (bore: number): BoreSpan => straightSpan({ from: end.to, along, length: 100, bore });
    const ask: WorstAsk = { ...liquid, outlets: 'Z' };
    for (const run of [
      [upper, lipOn(upper, 'Z', 8)],
      [upper, more(8)],
    ]) {
      const found = worstTrapped(run, ask);
      expect(found.tries).toBeGreaterThan(0);
      expect(found.trapped.volume).toBeGreaterThan(10);
      expect(found.atMost).toBeGreaterThanOrEqual(found.trapped.volume);
    }
    expect(worstTrapped([upper, more(16)], ask)).toMatchObject({ atMost: 0, tries: 0 });
  });

  it('falls with its floor: on any bend the floor rises just where the tangent does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6.1, max: 80, noNaN: true }),
        fc.tuple(...[1, 2, 3].map(() => fc.double({ min: -1, max: 1, noNaN: true }))),
        fc.double({ min: 0.01, max: 2.9, noNaN: true }),
        (radius, [x, y, z], theta) => {
          const size = Math.hypot(x!, y!, z!);
          fc.pre(size > 0.1);
          const up: Vec3 = [x! / size, y! / size, z! / size];
          const line = bent(
            [
              [-500, 0, 0],
              [0, 0, 0],
              [500 * Math.cos(3), 500 * Math.sin(3), 0],
            ],
            Math.min(radius, 500 / Math.tan(1.5) - 1),
          );
          const [placed] = placedBores([spanOf(line, 12)], up, 'test').slice(1);
          const s = placed!.bore.piece.start + (placed!.bore.piece.length * theta) / 3;
          const rise = dot(pieceTangent(placed!.bore.piece, s), up);
          fc.pre(Math.abs(rise) > 0.01);
          const step = 1e-4;
          const risen = floorAt(placed!.bore, s + step) - floorAt(placed!.bore, s - step);
          expect(Math.sign(risen)).toBe(Math.sign(rise));
        },
      ),
      { seed: 31, numRuns: 300 },
    );
  });
});

const attitudeSets = fc.oneof(
  fc
    .tuple(
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: -20, max: 20 }),
    )
    .map(
      ([p, r, off]): AttitudeSet => ({
        kind: 'box',
        pitch: [(off - p) * DEGREE, (off + p) * DEGREE],
        roll: [-r * DEGREE, (r + off / 2 + 10) * DEGREE],
      }),
    ),
  fc.integer({ min: 1, max: 60 }).map((t): AttitudeSet => ({ kind: 'cone', tilt: t * DEGREE })),
);
const outletsOf: fc.Arbitrary<DrainEnd> = fc.constantFrom('A', 'Z', 'both');
const parts = fc.double({ min: 0, max: 1, noNaN: true });

/** Runs of a bent line, a lip perhaps, and a straight of another bore perhaps. */
const runs: fc.Arbitrary<readonly BoreSpan[]> = fc
  .tuple(lines, fc.constantFrom(null, 5, 9), fc.constantFrom(null, 6, 12, 18))
  .map(([line, hole, bore]) => {
    const first = spanOf(line, 12);
    const end = first.pieces.at(-1)!;
    const along = pieceTangent(end, end.end);
    return [
      first,
      ...(hole === null ? [] : [lipOn(first, 'Z', hole)]),
      ...(bore === null ? [] : [straightSpan({ from: end.to, along, length: 70, bore })]),
    ];
  });

describe('worstTrapped, of any run', () => {
  it('is certain: in no attitude of the set does more stay than it says', () => {
    fc.assert(
      fc.property(
        runs,
        attitudeSets,
        outletsOf,
        fc.constantFrom('liquid', 'air'),
        fc.constantFrom(1, 10, 60),
        fc.array(fc.tuple(parts, parts), { minLength: 4, maxLength: 4 }),
        (run, attitudes, outlets, of, tries, places) => {
          const found = worstTrapped(run, { axes, attitudes, outlets, of: of as 'air', tries });
          expect(found.atMost).toBeGreaterThanOrEqual(found.trapped.volume);
          expect(found.atMost).toBeLessThanOrEqual(found.trapped.capacity * 1.02 + 1);
          const patch = patchOf(axes, attitudes);
          for (const [p, r] of [[0, 0] as const, [1, 1] as const, ...places]) {
            const up = upIn(
              patch.axes,
              patch.p0 + p * (patch.p1 - patch.p0),
              patch.r0 + r * (patch.r1 - patch.r0),
            );
            const one = trapped(run, { up: of === 'air' ? negate(up) : up, outlets });
            expect(one.volume).toBeLessThanOrEqual(found.atMost + one.bound + 1e-6);
          }
        },
      ),
      { seed: 32, numRuns: 60 },
    );
  });

  it('bounds one direction by hardly more than what stays', () => {
    fc.assert(
      fc.property(runs, fc.tuple(parts, parts), outletsOf, (run, [p, r], outlets) => {
        const up = upIn(axes, (p - 0.5) * 3, (r - 0.5) * 6);
        const exact = trapped(run, { up, outlets });
        const most = mostTrapped(walkOf(placedBores(run, up, 'test')), oneDirection(up), outlets);
        expect(most).toBeGreaterThanOrEqual(exact.volume - exact.bound - 1e-6);
        expect(most).toBeLessThanOrEqual(1.004 * exact.volume + 0.0005 * exact.capacity + 1);
      }),
      { seed: 33, numRuns: 120 },
    );
  });

  it('is the same in the mirror and turned about up', () => {
    fc.assert(
      fc.property(lines, outletsOf, (line, outlets) => {
        const ask = {
          ...liquid,
          outlets,
          attitudes: { kind: 'cone', tilt: 15 * DEGREE },
          tries: 300,
        } as const;
        const [here, there, turned] = [
          line,
          mirrored(line, 1, 0),
          moved(line, {
            rotation: [
              [0.6, -0.8, 0],
              [0.8, 0.6, 0],
              [0, 0, 1],
            ],
            shift: [10, 20, 30],
          }),
        ].map((one) => worstTrapped([spanOf(one, 12)], ask));
        for (const other of [there!, turned!]) {
          expect(other.trapped.volume).toBeLessThanOrEqual(here!.atMost + 0.1);
          expect(here!.trapped.volume).toBeLessThanOrEqual(other.atMost + 0.1);
        }
      }),
      { seed: 34, numRuns: 15 },
    );
  });
});
