import { fillet, type Vec3 } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aLine } from '../../../../tests/helpers/a-line.ts';
import { type FullSpec, fullLine, OIL } from '../../test-kit/full-line.ts';
import type { Pockets } from '../fluid-types.ts';
import { workLine } from '../work-line.ts';
import { pocketsIn, pourIn } from './pockets.ts';

const RAD = Math.PI / 180;
const TILT = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;
const AREA = 25 * Math.PI;
const UP: Vec3 = [0, 0, 1];

/** Down 100, across, up 60: liquid stands in it up to the lower end. */
const SAG: readonly Vec3[] = [
  [0, 0, 100],
  [0, 0, 0],
  [300, 0, 0],
  [300, 0, 60],
];
const FALLING: readonly Vec3[] = [
  [0, 0, 100],
  [300, 0, 70],
  [600, 0, 10],
];

const pocketsOf = (spec: FullSpec): Pockets => workLine(fullLine(spec), { cures: false }).pockets!;

/** The bore of the sag up to the height of its upper end Z: all but the 40 mm of the leg at end A above that. */
const inSag = (radius = 36): number => {
  const c = fillet(SAG.map((at) => ({ at, radius })));
  if (!c.ok) throw new Error('the sag does not fit');
  return AREA * (c.centreline.length - 40);
};

describe('pockets of a line', () => {
  it('hold a whole sag up to the lower of its ends, and all of it when only the higher is open', () => {
    const both = pocketsOf({ points: SAG });
    expect(both.outlets).toBe('both');
    expect(both.capacity).toBeCloseTo(inSag() + 40 * AREA, 6);
    expect(both.liquid.volume).toBeCloseTo(inSag(), 1);
    expect(both.liquid.bound).toBeLessThan(1);
    expect(both.liquid.pockets).toHaveLength(1);
    expect(both.liquid.pockets[0]!.level).toBeCloseTo(60, 9);
    expect(both.liquid.pockets[0]!.point[2]).toBeCloseTo(0, 6);
    const shut = pocketsOf({ points: SAG, drain: { to: 'A', minSlopeDeg: 1 } });
    expect(shut.liquid.volume).toBeCloseTo(shut.capacity, 1);
  });

  it('hold nothing of a line that falls, but what a lip at its outlet holds back', () => {
    const spec = { points: FALLING, drain: { to: 'Z', minSlopeDeg: 1 } } as const;
    expect(pocketsOf(spec).liquid).toEqual({ volume: 0, bound: 0, pockets: [] });
    const lipped = pocketsOf({ ...spec, endZ: { opening: 6 } }).liquid;
    expect(lipped.volume).toBeGreaterThan(0);
    expect(lipped.pockets[0]!.to).toBeCloseTo(workLine(aLine(spec)).centreline!.length, 6);
    // A lip where nothing runs out holds nothing, and one as wide as the bore is none.
    expect(pocketsOf({ ...spec, endA: { opening: 6 } }).liquid.volume).toBe(0);
    expect(pocketsOf({ ...spec, endZ: { opening: 10 } }).liquid.volume).toBe(0);
  });

  it('hold a wedge behind a lip, as deep as the bore is wider: by the area of a segment', () => {
    // Level: the same depth all along, 2 mm over the floor of a bore of 10.
    const level: Vec3[] = [
      [0, 0, 0],
      [500, 0, 0],
    ];
    const { liquid } = pocketsOf({ points: level, endA: { opening: 6 }, endZ: { opening: 6 } });
    const half = Math.atan2(4, 3);
    expect(liquid.volume).toBeCloseTo(500 * (25 * half - 3 * 4), 1);
  });

  it('are searched for over the attitudes only when cures are', () => {
    const still = { points: SAG, attitudes: TILT } as const;
    const spec = { ...still, drain: { to: 'both', minSlopeDeg: 1 } } as const;
    expect(pocketsOf(spec).worst).toBeNull();
    // What does not drain asks no question of its attitudes.
    expect(workLine(fullLine(still)).pockets!.worst).toBeNull();
    const { worst, liquid } = workLine(fullLine(spec)).pockets!;
    expect(worst!.volume).toBeGreaterThan(liquid.volume);
    expect(worst!.atMost).toBeGreaterThanOrEqual(worst!.volume);
    expect(worst!.tries).toBeGreaterThan(0);
    const { pitch } = worst!.attitude!;
    expect(Math.abs(pitch)).toBeLessThanOrEqual(5 * RAD);
  });

  it('at worst are those at rest where that is the only attitude, proven where it falls', () => {
    const drain = { to: 'both', minSlopeDeg: 1 } as const;
    const level = { kind: 'box', pitch: [0, 0], roll: [0, 0] } as const;
    const sag = workLine(fullLine({ points: SAG, drain })).pockets!;
    expect(workLine(fullLine({ points: SAG, drain, attitudes: level })).pockets).toEqual(sag);
    expect(sag.worst).toMatchObject({ volume: sag.liquid.volume, tries: 1, attitude: { pitch: 0, roll: 0 } });
    const falls = workLine(fullLine({ points: FALLING, drain: { to: 'Z', minSlopeDeg: 1 } })).pockets!;
    expect(falls.worst).toMatchObject({ volume: 0, atMost: 0, tries: 0 });
  });

  it('hold as much air as the line upside down holds liquid, at its roof', () => {
    const hump = SAG.map(([x, y, z]): Vec3 => [x, y, -z]);
    const { air } = pocketsOf({ points: hump, service: 'brake' });
    expect(air!.volume).toBeCloseTo(inSag(), 1);
    expect(air!.pockets[0]!.point[2]).toBeCloseTo(0, 6);
    expect(air!.worst).toBeNull();
    expect(pocketsOf({ points: hump }).air).toBeNull();
    expect(pocketsOf({ points: FALLING, service: 'brake' }).air!.volume).toBe(0);
  });

  it('are searched for air where the job wants it bled in every attitude', () => {
    const bleed = { to: 'A', tilted: true, path: 'lines[0].bleed' } as const;
    const up = FALLING.toReversed();
    const { air } = workLine(fullLine({ points: FALLING, attitudes: TILT, bleed })).pockets!;
    expect(air!.outlets).toBe('A');
    expect(air!.volume).toBe(0);
    expect(air!.worst).toMatchObject({ volume: 0, tries: 0 });
    const other = workLine(fullLine({ points: up, attitudes: TILT, bleed })).pockets!.air!;
    expect(other.volume).toBeGreaterThan(AREA * 500);
  });

  it('are not worked out where a bend is tighter than half the bore', () => {
    const tight = { points: SAG, od: 12, radius: 4 } as const;
    const worked = workLine(fullLine({ ...tight, drain: { to: 'A', minSlopeDeg: 1 } }), { cures: false });
    expect(worked.pockets).toBeNull();
    expect(worked.findings.find((f) => f.check === 'pockets')).toMatchObject({
      verdict: 'note',
      found: null,
    });
    expect(pocketsIn(worked, UP)).toBeNull();
    expect(pourIn(worked, { up: UP, at: 0 })).toBeNull();
  });

  it('say what clings: √(σ/(ρg)), water 2.7 mm', () => {
    const water = {
      ...OIL,
      density: { ...OIL.density!, value: 998.2 },
      surfaceTension: { ...OIL.density!, value: 72.75 },
    };
    const { cling } = pocketsOf({ points: FALLING, fluid: water });
    expect(cling!.capillaryLength).toBeCloseTo(2.726, 3);
    expect(cling!.holds).toBe(false);
    // Bretherton: ρ·g·r²/σ under 0.842 holds, which is a bore under 5.003 mm here.
    const holds = (od: number, endZ = {}): boolean =>
      pocketsOf({ points: FALLING, fluid: water, od, endZ }).cling!.holds;
    expect([holds(7), holds(7.01), holds(12, { opening: 5 })]).toEqual([true, false, true]);
    expect(pocketsOf({ points: FALLING, fluid: { ...water, surfaceTension: null } }).cling).toBeNull();
    expect(pocketsOf({ points: FALLING, fluid: null }).cling).toBeNull();
  });
});

describe('the short way for a line that falls', () => {
  const leg = fc.integer({ min: -60, max: 60 });
  it('finds what measuring finds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(leg, leg), { minLength: 1, maxLength: 3 }),
        fc.constantFrom('A', 'Z', 'both') as fc.Arbitrary<'A' | 'Z' | 'both'>,
        (legs, to) => {
          const points: Vec3[] = [[0, 0, 0]];
          for (const [y, z] of legs)
            points.push([points.at(-1)![0] + 200, points.at(-1)![1] + y, points.at(-1)![2] + z]);
          const line = fullLine({
            points,
            drain: { to, minSlopeDeg: 1 },
            bleed: { to, tilted: false, path: null },
          });
          const worked = workLine(line, { cures: false });
          const measured = pocketsIn(worked, UP)!;
          expect(worked.pockets!.liquid.volume).toBeCloseTo(measured.liquid.volume, 3);
          expect(worked.pockets!.air!.volume).toBeCloseTo(measured.air!.volume, 3);
        },
      ),
      { seed: 5, numRuns: 60 },
    );
  });
});

describe('an attitude of the moment', () => {
  it('holds what the line holds at rest when up is as at rest', () => {
    const worked = workLine(fullLine({ points: SAG, service: 'brake' }), { cures: false });
    const now = pocketsIn(worked, UP)!;
    expect(now.liquid).toEqual(worked.pockets!.liquid);
    expect(now.air!.volume).toBeCloseTo(worked.pockets!.air!.volume, 6);
    // Upside down the sag is a hump: what was liquid is air.
    expect(pocketsIn(worked, [0, 0, -1])!.air!.volume).toBeCloseTo(now.liquid.volume, 6);
  });

  it('lets a drop run out where it falls, and stop at the bottom of a sag', () => {
    const falls = workLine(fullLine({ points: FALLING }), { cures: false });
    expect(pourIn(falls, { up: UP, at: 10 })).toMatchObject({ from: 10, out: 'Z' });
    const sag = workLine(fullLine({ points: SAG }), { cures: false });
    const stays = pourIn(sag, { up: UP, at: 10 })!;
    expect(stays.out).toBeNull();
    expect(stays.stops).toBeGreaterThan(60);
  });
});
