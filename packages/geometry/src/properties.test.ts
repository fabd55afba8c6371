/** What must hold for any line: the same seed every run, printed by fast-check when one fails. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Centreline,
  cornersOf,
  fillet,
  frameAt,
  fromRows,
  type Mat3,
  mirrored,
  moved,
  pointAt,
  type Row,
  reversed,
  rowsOf,
  subPath,
  type Vec3,
  validate,
} from './index.ts';

const RUNS = { seed: 42, numRuns: 150, endOnFailure: true };
const DEG = Math.PI / 180;
/** Steps of a thousandth, as one reads them off a rule or a protractor; exact values come up often enough to matter. */
const between = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const degrees = (min: number, max: number) => between(min, max).map((a) => a * DEG);

const straight = fc.oneof(fc.constant(0), between(5, 300));
const turn = fc.oneof(fc.constantFrom(0, Math.PI, Math.PI / 2, -Math.PI / 2), degrees(-179, 179));
const angle = fc.oneof(
  fc.constantFrom(Math.PI / 2, Math.PI / 4, Math.PI),
  degrees(5, 169),
  degrees(170, 330),
);
const someRow = fc.record({ straightBefore: straight, turn, angle, radius: between(5, 100) });
const someLine = fc
  .tuple(fc.array(someRow, { minLength: 0, maxLength: 8 }), between(1, 200))
  .map(([rows, last]) =>
    fromRows(
      rows.map((row, i): Row => (i === 0 ? { ...row, turn: null } : row)),
      last,
    ),
  );
const someRotation = fc.tuple(...[0, 1, 2, 3].map(() => between(-1, 1))).map((q): Mat3 => {
  const n = Math.hypot(...q);
  const [w, x, y, z] = n < 0.1 ? [1, 0, 0, 0] : q.map((c) => c / n);
  return rotationOf(w!, x!, y!, z!);
});

/** Rotation matrix of a unit quaternion. */
function rotationOf(w: number, x: number, y: number, z: number): Mat3 {
  return [
    [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
    [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
    [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
  ];
}

function sound(c: Centreline): Centreline {
  expect(validate(c)).toEqual([]);
  return c;
}

function refilleted(points: ReturnType<typeof cornersOf>): Centreline {
  const filleted = fillet(points);
  if (!filleted.ok) throw new Error(JSON.stringify(filleted.misfits));
  return sound(filleted.centreline);
}

const round = 2 * Math.PI;
const turnsApart = (a: number, b: number) => Math.abs(a - b - round * Math.round((a - b) / round));

/** Same rows to `within` mm and rad; turns compared round the circle. */
function expectRows(
  found: Centreline,
  due: { rows: readonly Row[]; lastStraight: number },
  within: number,
): void {
  const { rows, lastStraight } = rowsOf(found);
  expect(rows.length).toBe(due.rows.length);
  expect(Math.abs(lastStraight - due.lastStraight)).toBeLessThan(within);
  rows.forEach((row, i) => {
    const other = due.rows[i]!;
    expect(Math.abs(row.straightBefore - other.straightBefore)).toBeLessThan(within);
    expect(Math.abs(row.angle - other.angle)).toBeLessThan(within);
    expect(Math.abs(row.radius - other.radius)).toBeLessThan(within);
    if (other.turn === null) expect(row.turn).toBeNull();
    else expect(turnsApart(row.turn!, other.turn)).toBeLessThan(within);
  });
}

const apart = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const scaled = (points: ReturnType<typeof cornersOf>, k: number) =>
  points.map(({ at, radius }) => ({ at: [at[0] * k, at[1] * k, at[2] * k] as const, radius: radius * k }));

describe('any line', () => {
  it('is sound', () => {
    fc.assert(
      fc.property(someLine, (c) => {
        sound(c);
      }),
      RUNS,
    );
  });

  it('rows → points → rows is the identity', () => {
    fc.assert(
      fc.property(someLine, (c) => expectRows(refilleted(cornersOf(c)), rowsOf(c), 1e-8)),
      RUNS,
    );
  });

  it('a rigid motion changes nothing in the rows, here or a kilometre away', () => {
    fc.assert(
      fc.property(someLine, someRotation, fc.constantFrom(0, 100, 1e6), (c, rotation, far) => {
        const there = sound(moved(c, { rotation, shift: [far, -far, far / 3] }));
        expect(rowsOf(there)).toEqual(rowsOf(c));
        expectRows(refilleted(cornersOf(there)), rowsOf(c), far > 1e3 ? 1e-5 : 1e-8);
      }),
      RUNS,
    );
  });

  it('mirroring negates every turn but half turns and zeros, and nothing else', () => {
    fc.assert(
      fc.property(someLine, fc.constantFrom(0, 1, 2), between(-50, 50), (c, axis, offset) => {
        const hand = sound(mirrored(c, axis as 0 | 1 | 2, offset));
        const { rows, lastStraight } = rowsOf(c);
        const due = rows.map((row): Row => {
          const kept = row.turn === null || row.turn === 0 || row.turn === Math.PI;
          return kept ? row : { ...row, turn: -row.turn! };
        });
        expect(rowsOf(hand)).toEqual({ rows: due, lastStraight });
        expectRows(refilleted(cornersOf(hand)), { rows: due, lastStraight }, 1e-8);
      }),
      RUNS,
    );
  });

  it('read from Z, rows reverse and turns stay', () => {
    fc.assert(
      fc.property(someLine, (c) => {
        const { rows, lastStraight } = rowsOf(c);
        const straights = [...rows.map(({ straightBefore }) => straightBefore), lastStraight].reverse();
        const turns = [
          null,
          ...rows
            .slice(1)
            .map((row) => row.turn)
            .reverse(),
        ];
        const due = rows.toReversed().map(
          (row, i): Row => ({
            ...row,
            straightBefore: straights[i]!,
            turn: turns[i]!,
          }),
        );
        const back = sound(reversed(c));
        expect(rowsOf(back)).toEqual({ rows: due, lastStraight: straights.at(-1) });
        expectRows(
          refilleted(cornersOf(c).toReversed()),
          { rows: due, lastStraight: straights.at(-1)! },
          1e-8,
        );
        expect(apart(pointAt(back, back.length / 3), pointAt(c, (c.length * 2) / 3))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('scaling scales lengths and keeps angles', () => {
    fc.assert(
      fc.property(someLine, fc.constantFrom(0.01, 1 / 25.4, 25.4, 1000), (c, k) => {
        const { rows, lastStraight } = rowsOf(c);
        const due = rows.map((row) => ({
          ...row,
          straightBefore: row.straightBefore * k,
          radius: row.radius * k,
        }));
        const found = refilleted(scaled(cornersOf(c), k));
        expectRows(found, { rows: due, lastStraight: lastStraight * k }, 1e-8 * Math.max(1, k));
      }),
      RUNS,
    );
  });

  it('functions that should agree do', () => {
    fc.assert(
      fc.property(someLine, between(0, 1), between(0, 1), (c, p, q) => {
        const [from, to] = [Math.min(p, q) * c.length, Math.max(p, q) * c.length];
        const part = subPath(c, from, to);
        expect(apart(part[0]!.from, pointAt(c, from))).toBeLessThan(1e-9);
        expect(apart(part.at(-1)!.to, pointAt(c, to))).toBeLessThan(1e-9);
        expect(part.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(to - from, 8);
        expect(frameAt(c, from).point).toEqual(pointAt(c, from));
        const { tangent, normal } = frameAt(c, from);
        expect(
          Math.abs(tangent[0] * normal[0] + tangent[1] * normal[1] + tangent[2] * normal[2]),
        ).toBeLessThan(1e-12);
        const sum = c.pieces.reduce((total, { length }) => total + length, 0);
        expect(c.length).toBeCloseTo(sum, 8);
      }),
      RUNS,
    );
  });
});
