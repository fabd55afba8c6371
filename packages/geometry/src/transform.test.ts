import { describe, expect, it } from 'vitest';
import {
  type Centreline,
  fromRows,
  type Mat3,
  mirrored,
  moved,
  reversed,
  reversedPieces,
  rowsOf,
  validate,
} from './index.ts';

const QUARTER = Math.PI / 2;
const line: Centreline = fromRows(
  [
    { straightBefore: 40, turn: null, angle: 0.8, radius: 60 },
    { straightBefore: 10, turn: 0.5, angle: QUARTER, radius: 60 },
    { straightBefore: 0, turn: Math.PI, angle: 1, radius: 50 },
    { straightBefore: 15, turn: 0, angle: 2, radius: 30 },
  ],
  30,
);
const aboutZ: Mat3 = [
  [0, -1, 0],
  [1, 0, 0],
  [0, 0, 1],
];

describe('reversed', () => {
  it('reverses rows and keeps every turn', () => {
    const back = reversed(line);
    expect(validate(back)).toEqual([]);
    expect(rowsOf(back)).toEqual({
      rows: [
        { straightBefore: 30, turn: null, angle: 2, radius: 30 },
        { straightBefore: 15, turn: 0, angle: 1, radius: 50 },
        { straightBefore: 0, turn: Math.PI, angle: QUARTER, radius: 60 },
        { straightBefore: 10, turn: 0.5, angle: 0.8, radius: 60 },
      ],
      lastStraight: 40,
    });
  });

  it('a bend keeps the numbers of its points', () => {
    expect(reversed(line).bends.map(({ points }) => points)).toEqual([[4], [3], [2], [1]]);
  });

  it('twice is the same line', () => {
    const twice = reversed(reversed(line));
    expect(rowsOf(twice)).toEqual(rowsOf(line));
    expect(twice.pieces.map(({ from }) => from)).toEqual(line.pieces.map(({ from }) => from));
    expect(reversedPieces(line.pieces)).toEqual(reversed(line).pieces);
  });
});

describe('mirrored', () => {
  it.each([0, 1, 2] as const)('across axis %d: turns change sign but half turns and zeros', (axis) => {
    const hand = mirrored(line, axis, 12.5);
    expect(validate(hand)).toEqual([]);
    expect(hand.bends.map(({ turn }) => turn)).toEqual([null, -0.5, Math.PI, 0]);
    expect(hand.pieces.at(-1)!.to[axis]).toBe(25 - line.pieces.at(-1)!.to[axis]);
    const strip = ({ turn: _, ...rest }: { turn: number | null }) => rest;
    expect(rowsOf(hand).rows.map(strip)).toEqual(rowsOf(line).rows.map(strip));
  });

  it('wrong call', () => {
    expect(() => mirrored(line, 0, Number.NaN)).toThrow('mirrored: offset must be finite, got NaN');
  });
});

describe('moved', () => {
  it('changes nothing in the rows', () => {
    const there = moved(line, { rotation: aboutZ, shift: [1e6, -5, 0.25] });
    expect(validate(there)).toEqual([]);
    expect(rowsOf(there)).toEqual(rowsOf(line));
    expect(there.pieces[0]).toMatchObject({
      from: [1e6, -5, 0.25],
      to: [1e6, 35, 0.25],
      direction: [0, 1, 0],
    });
  });

  it.each<[string, Mat3]>([
    [
      'a mirror',
      [
        [-1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
    ],
    [
      'a scaling',
      [
        [2, 0, 0],
        [0, 2, 0],
        [0, 0, 2],
      ],
    ],
    [
      'a shear',
      [
        [1, 1e-3, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
    ],
    [
      'NaN',
      [
        [1, 0, 0],
        [0, Number.NaN, 0],
        [0, 0, 1],
      ],
    ],
  ])('%s is a wrong call', (_, rotation) => {
    expect(() => moved(line, { rotation, shift: [0, 0, 0] })).toThrow(
      'moved: rotation must be a proper rotation',
    );
  });
});
