import { describe, expect, it } from 'vitest';
import { type Centreline, cornersOf, fillet, fromRows, type Row, rowsOf, validate } from './index.ts';

const DEG = Math.PI / 180;
const QUARTER = Math.PI / 2;
const row = (straightBefore: number, turn: number | null, degrees: number, radius = 60): Row => ({
  straightBefore,
  turn,
  angle: degrees * DEG,
  radius,
});

function refilleted(c: Centreline): Centreline {
  const filleted = fillet(cornersOf(c));
  if (!filleted.ok) throw new Error(JSON.stringify(filleted.misfits));
  expect(validate(filleted.centreline)).toEqual([]);
  return filleted.centreline;
}

describe('fromRows', () => {
  it('starts along +X and bends first toward +Y', () => {
    const c = fromRows([row(40, null, 90)], 40);
    expect(c.pieces.map(({ to }) => to)).toEqual([
      [40, 0, 0],
      [100, 60, 0],
      [100, 100, 0],
    ]);
    expect(validate(c)).toEqual([]);
  });

  it('a turn of +90° after a left bend goes up (right-hand about +Y takes Z to X, and X × Y = Z)', () => {
    expect(fromRows([row(40, null, 90), row(10, QUARTER, 90)], 40).pieces.at(-1)!.to).toEqual([
      100, 130, 100,
    ]);
    expect(fromRows([row(40, null, 90), row(10, -QUARTER, 90)], 40).pieces.at(-1)!.to).toEqual([
      100, 130, -100,
    ]);
  });

  it('gives back the rows it was made from, to the last bit', () => {
    const rows = [row(12.3, null, 33), row(0, 0.7, 91), row(45.6, Math.PI, 200), row(7, -2, 359)];
    const c = fromRows(rows, 8.9);
    expect(rowsOf(c)).toEqual({ rows, lastStraight: 8.9 });
    expect(validate(c)).toEqual([]);
  });

  it('stands where it is placed; the normal is made square', () => {
    const c = fromRows([row(40, null, 90)], 40, {
      origin: [1, 2, 3],
      direction: [0, 0, 2],
      normal: [5, 0, 7],
    });
    expect(c.pieces.map(({ to }) => to)).toEqual([
      [1, 2, 43],
      [1, 2 - 60, 103],
      [1, 2 - 100, 103],
    ]);
  });

  it('turns are brought into (−180°, 180°] and made exact', () => {
    const turns = [1.5 * Math.PI, -Math.PI, 1e-9, -1e-9, 2 * Math.PI].map(
      (turn) => fromRows([row(1, null, 90), row(10, turn, 90)], 1).bends[1]!.turn,
    );
    expect(turns).toEqual([-QUARTER, Math.PI, 0, 0, 0]);
  });

  it('the clock adds the turns and stays below a whole round', () => {
    const c = fromRows([row(1, null, 90), ...[-1, 1, 3, 3, 3].map((turn) => row(10, turn, 90))], 1);
    const clocks = c.bends.map(({ clock }) => clock);
    [0, 2 * Math.PI - 1, 0, 3, 6, 9 - 2 * Math.PI].forEach((hour, i) => {
      expect(clocks[i]).toBeCloseTo(hour, 14);
    });
  });

  it('the clock is 0, not almost a whole round, where turns cancel', () => {
    const c = fromRows([row(1, null, 90), row(10, 0.3, 90), row(10, -0.3 - 1e-9, 90), row(10, 2e-9, 90)], 1);
    expect(c.bends.map(({ clock }) => clock)).toEqual([0, 0.3, 0, 0]);
  });

  it('rows with no straight and no turn between them and one radius are one bend', () => {
    const c = fromRows([row(5, null, 100), row(0, 0, 100)], 5);
    expect(c.bends).toMatchObject([{ angle: 200 * DEG, points: [1, 2] }]);
    expect(validate(c)).toEqual([]);
  });

  it('a thousand bends stay sound', () => {
    const many = Array.from({ length: 1000 }, (_, i) => row(20, i === 0 ? null : (i % 7) - 3, 10 + (i % 90)));
    expect(validate(fromRows(many, 10))).toEqual([]);
  });

  it.each([
    ['straight before row 0 must be >= 0 mm, got -1', () => fromRows([row(-1, null, 90)], 1)],
    ['last straight must be >= 0 mm, got NaN', () => fromRows([], Number.NaN)],
    ['angle of row 0 must be between 0 and 2π, got 0', () => fromRows([row(1, null, 0)], 1)],
    ['angle of row 0 must be between 0 and 2π', () => fromRows([row(1, null, 360)], 1)],
    ['radius of row 0 must be > 0 mm, got 0', () => fromRows([row(1, null, 90, 0)], 1)],
    ['turn of row 0 must be null, got 1', () => fromRows([row(1, 1, 90)], 1)],
    ['turn of row 1 must be a number, got null', () => fromRows([row(1, null, 90), row(1, null, 90)], 1)],
    [
      'normal must not be parallel to direction',
      () => fromRows([], 1, { origin: [0, 0, 0], direction: [1, 0, 0], normal: [-2, 0, 0] }),
    ],
  ])('wrong call: %s', (message, call) => {
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });
});

describe('cornersOf', () => {
  it('gives back the points of a line', () => {
    const points = [
      { at: [0, 0, 0], radius: 0 },
      { at: [100, 0, 0], radius: 60 },
      { at: [100, 100, 0], radius: 0 },
    ] as const;
    const filleted = fillet(points);
    expect(filleted.ok && cornersOf(filleted.centreline)).toEqual(points);
  });

  it.each([
    [169.999, 1],
    [170, 2],
    [180, 2],
    [270, 2],
    [339, 2],
    [340, 3],
    [359, 3],
  ])('a bend of %d° becomes %d corners, which fillet makes one bend again', (degrees, parts) => {
    const c = fromRows([row(5000, null, degrees)], 5000);
    expect(cornersOf(c)).toHaveLength(parts + 2);
    const again = refilleted(c);
    expect(again.bends).toHaveLength(1);
    expect(again.bends[0]!.points).toEqual(c.bends[0]!.points);
    expect(again.bends[0]!.angle / DEG).toBeCloseTo(degrees, 9);
    expect(again.length).toBeCloseTo(c.length, 6);
  });

  it('a U-bend becomes two corners of 90°, exact', () => {
    const c = fromRows([row(50, null, 180)], 50);
    expect(cornersOf(c).map(({ at }) => at)).toEqual([
      [0, 0, 0],
      [110, 0, 0],
      [110, 120, 0],
      [0, 120, 0],
    ]);
  });

  it('bends name the corners that cornersOf gives', () => {
    const c = fromRows([row(50, null, 180), row(20, 1, 40), row(20, 1, 200)], 50);
    expect(c.bends.map(({ points }) => points)).toEqual([[1, 2], [3], [4, 5]]);
    expect(refilleted(c).bends.map(({ points }) => points)).toEqual([[1, 2], [3], [4, 5]]);
  });
});
