import { describe, expect, it } from 'vitest';
import { pitchAndRoll, upIn } from './attitude.ts';
import { fromRows } from './rows.ts';
import { slopeAt, smallestSlope } from './slope.ts';
import { lowerBound } from './slope-search.ts';
import { prepareCrests } from './slope-sines.ts';
import type { AttitudeSet, Centreline, DrainEnd, Row, Vec3 } from './types.ts';
import { cross, dot, norm, rotate, unit } from './vec.ts';

const DEG = Math.PI / 180;
const axes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
const rest: AttitudeSet = { kind: 'rest' };
const box = (pitch: readonly [number, number], roll: readonly [number, number] = [0, 0]): AttitudeSet => ({
  kind: 'box',
  pitch: [pitch[0] * DEG, pitch[1] * DEG],
  roll: [roll[0] * DEG, roll[1] * DEG],
});
const cone = (tilt: number): AttitudeSet => ({ kind: 'cone', tilt: tilt * DEG });

/** A straight of 100 mm from the origin. */
const straight = (direction: Vec3): Centreline =>
  fromRows([], 100, { origin: [0, 0, 0], direction, normal: [0.3, -0.5, 0.7] });
/** Rises at `rise` degrees towards +X, then bends down in the X-Z plane by `bends` degrees each. */
const humps = (rise: number, ...bends: readonly number[]): Centreline => {
  const rows: Row[] = bends.map((bend, i) => {
    const turn = i === 0 ? null : Math.sign(bend) === Math.sign(bends[i - 1]!) ? 0 : Math.PI;
    return { straightBefore: 50, turn, angle: Math.abs(bend) * DEG, radius: 40 };
  });
  const normal: Vec3 = [0, Math.sign(bends[0] ?? 1), 0];
  return fromRows(rows, 50, {
    origin: [0, 0, 0],
    direction: [Math.cos(rise * DEG), 0, Math.sin(rise * DEG)],
    normal,
  });
};
const slopeDeg = (c: Centreline, drain: DrainEnd, attitudes: AttitudeSet) =>
  smallestSlope(c, { drain, axes, attitudes }).slope / DEG;

describe('signs', () => {
  it('a line rising away from A drains to A', () => {
    const line = humps(10);
    expect(slopeAt(line, 20, { up: [0, 0, 1], drain: 'A' }) / DEG).toBeCloseTo(10, 12);
    expect(slopeAt(line, 20, { up: [0, 0, 1], drain: 'Z' }) / DEG).toBeCloseTo(-10, 12);
    expect(slopeDeg(line, 'A', rest)).toBeCloseTo(10, 12);
    expect(slopeDeg(line, 'Z', rest)).toBeCloseTo(-10, 12);
  });
  it('positive pitch is nose down: a line that rises forward from A rises less', () => {
    expect(slopeDeg(humps(10), 'A', box([4, 4]))).toBeCloseTo(6, 12);
    expect(slopeDeg(humps(10), 'A', box([-4, -4]))).toBeCloseTo(14, 12);
  });
  it('positive roll is right side down: a line that rises to the left from A rises more', () => {
    const line = straight([0, Math.cos(10 * DEG), Math.sin(10 * DEG)]);
    expect(slopeDeg(line, 'A', box([0, 0], [3, 3]))).toBeCloseTo(13, 12);
    expect(slopeDeg(line, 'A', box([0, 0], [-3, -3]))).toBeCloseTo(7, 12);
  });
  it('pitch comes before roll: at roll 90° and any pitch, up has no part along body up', () => {
    expect(upIn(axes, 0.4, Math.PI / 2)[2]).toBe(0);
    expect(upIn(axes, 0.4, Math.PI / 2)[0]).toBeCloseTo(-Math.sin(0.4), 15);
  });
  it('follows the axes of the machine', () => {
    // Forward is −X, so left is −Y: a line rising towards −X rises forward.
    const turned = { forward: [-1, 0, 0], left: [0, -1, 0], up: [0, 0, 1] } as const;
    const line = straight([-Math.cos(10 * DEG), 0, Math.sin(10 * DEG)]);
    const worst = smallestSlope(line, { drain: 'A', axes: turned, attitudes: box([-2, 5]) });
    expect(worst.slope / DEG).toBeCloseTo(5, 12);
    expect(worst.attitude).toEqual({ pitch: 5 * DEG, roll: 0 });
  });
});

describe('pitchAndRoll', () => {
  it('finds the pitch and roll that up was made from, whatever the axes', () => {
    const turned = { forward: [0, -1, 0], left: [1, 0, 0], up: [0, 0, 1] } as const;
    for (const of of [axes, turned])
      for (const pitch of [-1.4, -0.1, 0, 0.3])
        for (const roll of [-3, -0.2, 0, 0.05]) {
          const found = pitchAndRoll(of, upIn(of, pitch, roll));
          expect(found.pitch).toBeCloseTo(pitch, 14);
          expect(found.roll).toBeCloseTo(roll, 14);
        }
  });
});

describe('upIn', () => {
  it('is exact at multiples of 90° and never −0', () => {
    const q = Math.PI / 2;
    expect(upIn(axes, 0, 0)).toEqual([0, 0, 1]);
    expect(upIn(axes, q, 0)).toEqual([-1, 0, 0]);
    expect(upIn(axes, -q, 0)).toEqual([1, 0, 0]);
    expect(upIn(axes, 0, q)).toEqual([0, 1, 0]);
    expect(upIn(axes, 0, -q)).toEqual([0, -1, 0]);
    expect(upIn(axes, 0, 2 * q)).toEqual([0, 0, -1]);
  });
  it('is a unit vector', () => {
    expect(norm(upIn(axes, 0.3, -2))).toBeCloseTo(1, 15);
  });
});

describe('at rest', () => {
  it('finds the steepest place inside an arc', () => {
    // A plane tilted by 20° about X: a direction at angle a from X in it has sin(elevation) = sin 20°·sin a.
    const inPlane = (a: number): Vec3 => [
      Math.cos(a * DEG),
      Math.sin(a * DEG) * Math.cos(20 * DEG),
      Math.sin(a * DEG) * Math.sin(20 * DEG),
    ];
    const normal: Vec3 = [0, -Math.sin(20 * DEG), Math.cos(20 * DEG)];
    const rows = [{ straightBefore: 30, turn: null, angle: 60 * DEG, radius: 50 }];
    const line = fromRows(rows, 30, { origin: [0, 0, 0], direction: inPlane(60), normal });
    const worst = smallestSlope(line, { drain: 'Z', axes, attitudes: rest });
    expect(worst.slope / DEG).toBeCloseTo(-20, 12);
    expect(worst.at).toBeCloseTo(30 + 50 * 30 * DEG, 9);
    expect(worst.attitude).toEqual({ pitch: 0, roll: 0 });
    const toA = smallestSlope(line, { drain: 'A', axes, attitudes: rest });
    expect(toA.slope).toBeCloseTo(Math.asin(Math.sin(20 * DEG) * Math.sin(60 * DEG)), 12);
    expect(toA.at).toBe(0);
  });
  it('sees the dip in a bend between two straights that fall rightly', () => {
    // Rises 5°, bends right down past plumb and up again: 350° round, and the straights still rise at 5° and 15°.
    const worst = smallestSlope(humps(5, 350), { drain: 'A', axes, attitudes: rest });
    expect(worst.slope / DEG).toBeCloseTo(-90, 6);
    expect(worst.at).toBeCloseTo(50 + 40 * 95 * DEG, 5);
  });
  it('names the place nearest A where places are equal', () => {
    expect(smallestSlope(humps(0), { drain: 'Z', axes, attitudes: rest }).at).toBe(0);
    const level = fromRows([{ straightBefore: 20, turn: null, angle: 1, radius: 60 }], 20);
    expect(smallestSlope(level, { drain: 'A', axes, attitudes: rest })).toMatchObject({ slope: 0, at: 0 });
    // Rises 20°, 10°, 20°, 10°: the first of the two worst straights starts where the first arc ends.
    expect(smallestSlope(humps(20, 10, -10, 10), { drain: 'A', axes, attitudes: rest }).at).toBeCloseTo(
      50 + 400 * DEG,
      9,
    );
  });
  it('is plumb exactly', () => {
    expect(smallestSlope(straight([0, 0, 1]), { drain: 'A', axes, attitudes: rest }).slope).toBe(Math.PI / 2);
    expect(smallestSlope(straight([0, 0, -1]), { drain: 'A', axes, attitudes: rest }).slope).toBe(
      -Math.PI / 2,
    );
  });
  it('gives the same a kilometre from the origin and for a part of 5 mm', () => {
    const rows = [{ straightBefore: 1, turn: null, angle: 1, radius: 2 }];
    const worst = (origin: Vec3, drain: DrainEnd) =>
      smallestSlope(fromRows(rows, 1, { origin, direction: [0.3, 0.2, 0.4], normal: [1, 2, 0] }), {
        drain,
        axes,
        attitudes: box([-5, 5], [-3, 3]),
      }).slope;
    for (const drain of ['A', 'Z', 'both'] as const)
      expect(worst([1e6, -1e6, 1e6], drain)).toBeCloseTo(worst([0, 0, 0], drain), 12);
  });
});

describe('a cone of tilt', () => {
  it('takes the tilt off the slope at rest, in an attitude that really does', () => {
    const line = humps(10, 25, 30);
    const worst = smallestSlope(line, { drain: 'A', axes, attitudes: cone(7) });
    const still = smallestSlope(line, { drain: 'A', axes, attitudes: rest });
    expect(worst.slope).toBeCloseTo(still.slope - 7 * DEG, 13);
    expect(worst.at).toBe(still.at);
    expect(worst.attitude).toBeNull();
    expect(slopeAt(line, worst.at, { up: worst.up, drain: 'A' })).toBeCloseTo(worst.slope, 13);
    expect(Math.atan2(norm([worst.up[0], worst.up[1], 0]), worst.up[2]) / DEG).toBeCloseTo(7, 12);
  });
  it('stops at −90°, at the first place that gets there', () => {
    // Falls 70° to 89° along the arc; 12° of tilt bring the places beyond 78° to plumb: 8° into the arc.
    // Some way round about Z, so that the place has nothing to do with the axes.
    const plane = (x: number, z: number): Vec3 => [x * Math.cos(0.6), x * Math.sin(0.6), z];
    const rows = [{ straightBefore: 50, turn: null, angle: 19 * DEG, radius: 40 }];
    const direction = plane(Math.cos(70 * DEG), -Math.sin(70 * DEG));
    const normal: Vec3 = [-Math.sin(0.6), Math.cos(0.6), 0];
    const line = fromRows(rows, 50, { origin: [0, 0, 0], direction, normal });
    const worst = smallestSlope(line, { drain: 'A', axes, attitudes: cone(12) });
    expect(worst.slope / DEG).toBeCloseTo(-90, 6);
    expect(worst.at).toBeCloseTo(50 + 40 * 8 * DEG, 5);
  });
  it('of 0 is rest, of 180° turns everything over', () => {
    const line = humps(10, 25);
    expect(smallestSlope(line, { drain: 'A', axes, attitudes: cone(0) })).toEqual({
      ...smallestSlope(line, { drain: 'A', axes, attitudes: rest }),
      attitude: null,
    });
    expect(slopeDeg(straight([0, 0, 1]), 'A', cone(180))).toBeCloseTo(-90, 6);
  });
});

describe('a box of pitch and roll', () => {
  it('is worst inside the box where up can come down on the line', () => {
    // Going to A is up as it is at pitch 2°, roll 1°: there the line stands on its head.
    const line = straight(upIn(axes, 2 * DEG, 1 * DEG).map((x) => -x) as unknown as Vec3);
    const worst = smallestSlope(line, { drain: 'A', axes, attitudes: box([-5, 5], [-3, 3]) });
    expect(worst.slope).toBeCloseTo(-Math.PI / 2, 12);
    expect(worst.attitude!.pitch / DEG).toBeCloseTo(2, 12);
    expect(worst.attitude!.roll / DEG).toBeCloseTo(1, 12);
  });
  it('is worst on a side, not at a corner, where roll passes the line', () => {
    // Falls steeply to Z, leaning 30° forward and 4° aside: roll −4° sets it upright aside, pitch −5° does what it can.
    const away = upIn(axes, -30 * DEG, -4 * DEG);
    const worst = smallestSlope(straight(away), { drain: 'Z', axes, attitudes: box([-5, 5], [-20, 20]) });
    expect(worst.slope / DEG).toBeCloseTo(-65, 12);
    expect(worst.attitude!.pitch / DEG).toBe(-5);
    expect(worst.attitude!.roll / DEG).toBeCloseTo(-4, 12);
  });
  /** An arc of R 50 after 10 mm, 40° to both sides of a travel, passing it in the direction `aside`. */
  const passing = (travel: Vec3, aside: Vec3): Centreline => {
    const normal = cross(travel, aside);
    const rows = [{ straightBefore: 10, turn: null, angle: 80 * DEG, radius: 50 }];
    return fromRows(rows, 10, { origin: [0, 0, 0], direction: rotate(travel, normal, -40 * DEG), normal });
  };
  const halfWay = 10 + 50 * 40 * DEG;
  it.each([
    [-30, 1],
    [-30, -1],
    [30, 1],
    [30, -1],
  ])('is worst inside an arc and inside a side (travel leans %d°, passes to %d)', (lean, sense) => {
    // The arc leans 30° at most and the box begins at 55°: nearest are the middles of both, 25° apart.
    const pitch = lean > 0 ? ([55, 70] as const) : ([-70, -55] as const);
    const line = passing(upIn(axes, lean * DEG, 0), [0, sense, 0]);
    const worst = smallestSlope(line, { drain: 'Z', axes, attitudes: box(pitch, [-20, 20]) });
    expect(worst.slope / DEG).toBeCloseTo(-65, 12);
    expect(worst.at).toBeCloseTo(halfWay, 9);
    expect(worst.attitude!.pitch / DEG).toBeCloseTo(55 * Math.sign(lean), 12);
    expect(worst.attitude!.roll).toBeCloseTo(0, 12);
  });
  it.each([
    [-5, -3],
    [-5, 3],
    [5, -3],
    [5, 3],
  ])('is worst inside an arc and at the corner pitch %d°, roll %d°', (pitch, roll) => {
    // The arc passes 25° outside the corner, square to a way out of it that leads through no other corner.
    const corner = upIn(axes, pitch * DEG, roll * DEG);
    const hinge = unit(cross(upIn(axes, 0.3 * pitch * DEG, 0), corner));
    const line = passing(rotate(corner, hinge, 25 * DEG), hinge);
    const worst = smallestSlope(line, { drain: 'Z', axes, attitudes: box([-5, 5], [-3, 3]) });
    expect(worst.slope / DEG).toBeCloseTo(-65, 12);
    expect(worst.at).toBeCloseTo(halfWay, 9);
    expect(worst.attitude).toEqual({ pitch: pitch * DEG, roll: roll * DEG });
  });
  it.each([
    [-5, 1],
    [5, 1],
    [1, -3],
    [1, 3],
  ])('is plumb first where an arc comes in over the rim at pitch %d°, roll %d°', (pitch, roll) => {
    const rim = upIn(axes, pitch * DEG, roll * DEG);
    const inwards = cross(unit(cross(rim, upIn(axes, 0.2 * DEG, 0.3 * DEG))), rim);
    const worst = smallestSlope(passing(rim, inwards), {
      drain: 'Z',
      axes,
      attitudes: box([-5, 5], [-3, 3]),
    });
    expect(worst.slope).toBeCloseTo(-Math.PI / 2, 12);
    expect(worst.at).toBeCloseTo(halfWay, 9);
  });
  it('takes the full range of ±90° and ±180°', () => {
    const line = straight(unit([1, 2, 3]));
    expect(slopeDeg(line, 'A', box([-90, 90], [-180, 180]))).toBeCloseTo(-90, 6);
    expect(slopeDeg(line, 'Z', box([90, 90], [-180, 180]))).toBeCloseTo(
      Math.asin(1 / Math.sqrt(14)) / DEG,
      12,
    );
  });
  it('up is the up of its attitude', () => {
    const worst = smallestSlope(humps(10, 25, -20), { drain: 'A', axes, attitudes: box([-5, 5], [-3, 3]) });
    expect(worst.up).toEqual(upIn(axes, worst.attitude!.pitch, worst.attitude!.roll));
    expect(dot(worst.up, worst.up)).toBeCloseTo(1, 15);
  });
});

describe('draining to both ends', () => {
  const both = (c: Centreline, attitudes: AttitudeSet) =>
    smallestSlope(c, { drain: 'both', axes, attitudes });
  it('judges each side towards its own end and leaves the crest arc out', () => {
    expect(both(humps(20, 50), rest)).toMatchObject({ at: 0, attitude: { pitch: 0, roll: 0 } });
    expect(both(humps(20, 50), rest).slope / DEG).toBeCloseTo(20, 12);
    const shallow = both(humps(20, 35), rest);
    expect(shallow.slope / DEG).toBeCloseTo(15, 12);
    expect(shallow.at).toBeCloseTo(50 + 40 * 35 * DEG, 9);
  });
  it('counts a bend beside the crest', () => {
    // 30° up, 10° up, over to 25° down: the middle straight decides.
    expect(both(humps(30, 20, 35), rest).slope / DEG).toBeCloseTo(10, 12);
  });
  it('takes the worst attitude off each side', () => {
    const worst = both(humps(20, 40), box([-5, 5], [0, 0]));
    expect(worst.slope / DEG).toBeCloseTo(15, 12);
    expect(worst.at).toBe(0);
    expect(worst.attitude).toEqual({ pitch: 5 * DEG, roll: 0 });
    expect(both(humps(20, 40), cone(5)).slope / DEG).toBeCloseTo(15, 9);
  });
  it('lets the crest move to another bend with the attitude', () => {
    // At 15° nose down the crest goes from the second bend (10° up to 20° down) to the first (30° up to 10° up).
    const at15 = both(humps(30, 20, 30), box([15, 15]));
    expect(at15.slope / DEG).toBeCloseTo(5, 12);
    // Between them, at 10°, the middle straight is level: 0, and never a hair above it.
    const between = both(humps(30, 20, 30), box([9, 15])).slope;
    expect(between).toBeLessThanOrEqual(0);
    expect(between).toBeGreaterThan(-2e-9);
  });
  it('is 0 at worst where the crest runs off an end', () => {
    const worst = both(humps(20, 40), box([-25, 25]));
    expect(worst.slope).toBeCloseTo(0, 8);
    expect(Math.abs(worst.attitude!.pitch) / DEG).toBeCloseTo(20, 6);
    expect(both(humps(20, 40), cone(25)).slope).toBeCloseTo(0, 8);
  });
  it('drains to one end only when that is all it needs', () => {
    expect(both(humps(20), rest).slope / DEG).toBeCloseTo(20, 12);
    expect(both(humps(-20, 10), rest).slope / DEG).toBeCloseTo(20, 12);
  });
  it('is 0 on a level top', () => {
    expect(both(humps(20, 20, 20), rest).slope).toBeCloseTo(0, 12);
  });
  it('never forgives a dip', () => {
    // Down 20°, up 20°.
    expect(both(humps(-20, -40), rest).slope / DEG).toBeCloseTo(-20, 12);
    // Up 10°, down 5°, up 20°: cheapest as a line to A with a 5° fault.
    expect(both(humps(10, 15, -25), rest).slope / DEG).toBeCloseTo(-5, 12);
  });
  it('asks an arc over 180° for one crest and no dip', () => {
    // 45° up, 200° over: ends going back, 25° down. 270° over: a dip, and it comes up again at 45°.
    expect(both(humps(45, 200), rest).slope / DEG).toBeCloseTo(25, 12);
    expect(both(humps(45, 270), rest).slope / DEG).toBeLessThan(-40);
    // 1° down, 358° round, 1° up: as a crest this dip would be a fault of 1° only.
    expect(both(humps(-1, 358), rest).slope / DEG).toBeCloseTo(-90, 6);
  });
});

describe('lower bounds of the search', () => {
  const bound = (c: Centreline, [p0, p1, r0, r1]: readonly [number, number, number, number]) =>
    lowerBound(prepareCrests(c.pieces, axes), { p0, p1, r0, r1 });
  it.each([1, -1])(
    'hold in the middle of a parallel, which bulges out between its corners (pole %d)',
    (pole) => {
      // The line leans over the far side of the pole: of the near edge the middle is farthest from it, not the corners.
      const line = straight(upIn(axes, pole * 1.2, Math.PI));
      const range = pole > 0 ? ([1, 1.2, -0.5, 0.5] as const) : ([-1.2, -1, -0.5, 0.5] as const);
      const there = smallestSlope(line, {
        drain: 'both',
        axes,
        attitudes: { kind: 'box', pitch: [pole, pole], roll: [0, 0] },
      });
      expect(there.slope).toBeCloseTo(2.2 - Math.PI / 2, 12);
      expect(bound(line, range)).toBeLessThanOrEqual(there.slope + 1e-12);
      expect(bound(line, range)).toBeGreaterThan(there.slope - 0.2);
    },
  );
  it('hold inside a cell, where a slope below 0 is lower than at every corner', () => {
    // A hanging U is at −90° at rest whatever is taken for its crest.
    const hanging = humps(-90, -180);
    expect(smallestSlope(hanging, { drain: 'both', axes, attitudes: rest }).slope / DEG).toBeCloseTo(-90, 6);
    expect(bound(hanging, [-0.3, 0.3, -0.3, 0.3]) / DEG).toBeCloseTo(-90, 5);
  });
});

describe('wrong calls', () => {
  const call = (attitudes: AttitudeSet) => () => smallestSlope(humps(1), { drain: 'A', axes, attitudes });
  it.each([
    ['pitch beyond 90°', box([-91, 0])],
    ['roll beyond 180°', box([0, 0], [0, 181])],
    ['an upside-down range', box([2, 1])],
    ['no number', box([Number.NaN, 1])],
    ['a tilt below 0', cone(-1)],
    ['a tilt beyond 180°', cone(181)],
  ])('refuses %s', (_, attitudes) => {
    expect(call(attitudes)).toThrow(RangeError);
  });
  it('refuses a place off the line', () => {
    expect(() => slopeAt(humps(1), 51, { up: [0, 0, 1], drain: 'A' })).toThrow(RangeError);
  });
});
