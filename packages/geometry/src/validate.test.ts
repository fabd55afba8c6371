import { describe, expect, it } from 'vitest';
import {
  type Arc,
  type Bend,
  type Centreline,
  fromRows,
  type Piece,
  type Straight,
  validate,
} from './index.ts';

const sound: Centreline = fromRows(
  [
    { straightBefore: 40, turn: null, angle: 0.8, radius: 60 },
    { straightBefore: 10, turn: 0.5, angle: 1.2, radius: 60 },
  ],
  30,
);
const withPiece = (i: number, change: object): Centreline => ({
  ...sound,
  pieces: sound.pieces.map((piece, k): Piece => (k === i ? ({ ...piece, ...change } as Piece) : piece)),
});
const withBend = (i: number, change: Partial<Bend>): Centreline => ({
  ...sound,
  bends: sound.bends.map((bend, k) => (k === i ? { ...bend, ...change } : bend)),
});
const [straight, arc] = sound.pieces as readonly [Straight, Arc];
const [x, y, z] = arc.to;

describe('validate', () => {
  it('finds nothing on a sound line', () => {
    expect(validate(sound)).toEqual([]);
  });

  it.each<[string, string, Centreline]>([
    ['no last straight', 'pieces', { ...sound, pieces: sound.pieces.slice(0, -1) }],
    ['two straights in a row', 'piece 1 must be a arc', withPiece(1, straight)],
    ['a gap', 'joint 1–2: the pieces do not share a point', withPiece(2, { from: [x, y, z + 1e-9] })],
    [
      'a kink',
      'joint 0–1: the pieces are not tangent',
      withPiece(0, { direction: [Math.cos(1e-6), Math.sin(1e-6), 0] }),
    ],
    [
      'a direction that is not unit',
      'its direction is not a unit vector',
      withPiece(0, { direction: [1.00001, 0, 0] }),
    ],
    [
      'a straight longer than its points',
      'does not end at its own length',
      withPiece(0, { length: 40.00001 }),
    ],
    ['a negative straight', 'is negative', withPiece(0, { length: -1 })],
    ['a wrong centre', 'does not start on its circle', withPiece(1, { centre: [40, 60.00001, 0] })],
    ['a wrong radius', 'length is not radius × angle', withPiece(1, { radius: 60.00001 })],
    ['a radius of 0', 'is not > 0', withPiece(1, { radius: 0 })],
    ['a wrong angle', 'does not end at its angle', withPiece(1, { angle: 0.80001, length: 60 * 0.80001 })],
    ['an angle of a whole turn', 'is not between 0 and 2π', withPiece(1, { angle: 7 })],
    ['a flipped normal', 'u × v is not its normal', withPiece(1, { normal: [0, 0, -1] })],
    [
      'axes that are not square',
      'its axes are not square',
      withPiece(1, { v: [Math.cos(1e-6), -Math.sin(1e-6), 0] }),
    ],
    ['axes that are not unit', 'its axes are not unit vectors', withPiece(1, { u: [0, -1.00001, 0] })],
    ['an end off its circle', 'does not end on its circle', withPiece(1, { to: [x + 0.001, y, z] })],
    ['NaN', 'does not end at its own length', withPiece(0, { to: [Number.NaN, 0, 0] })],
    ['distances that do not chain', 'start and end do not chain', withPiece(2, { start: arc.end + 1e-9 })],
    ['an end that is not start + length', 'end − start', withPiece(4, { length: 30.00001 })],
    ['a wrong total', 'the length is not', { ...sound, length: sound.length + 1e-6 }],
    ['a bend of the wrong piece', 'bend 0: its arc is piece 1', withBend(0, { piece: 3 })],
    ['a bend without a point', 'bend 0: it names no point', withBend(0, { points: [] })],
    ['a bend of another angle', 'bend 1: angle or radius', withBend(1, { angle: 1.2000001 })],
    ['a bend of another radius', 'bend 1: angle or radius', withBend(1, { radius: 61 })],
    ['a bend elsewhere', 'bend 1: start or end', withBend(1, { start: 3 })],
    ['a bend of another plane', 'bend 0: its normal', withBend(0, { normal: [0, 0, -1] })],
    ['another straight before it', 'bend 0: its straight', withBend(0, { straightBefore: 41 })],
    ['one flipped sign of a turn', 'bend 1: its turn', withBend(1, { turn: -0.5, clock: 2 * Math.PI - 0.5 })],
    ['a turn before the first bend', 'bend 0: its turn', withBend(0, { turn: 0 })],
    ['no turn after it', 'bend 1: its turn', withBend(1, { turn: null, clock: 0 })],
    ['a clock that is not the sum', 'bend 1: its clock', withBend(1, { clock: 0.4 })],
  ])('%s goes red', (_, sentence, faulty) => {
    expect(validate(faulty).some((fault) => fault.includes(sentence))).toBe(true);
  });

  it('a turn of −0 goes red', () => {
    const flat = fromRows(
      [
        { straightBefore: 1, turn: null, angle: 1, radius: 9 },
        { straightBefore: 1, turn: 0, angle: 1, radius: 9 },
      ],
      1,
    );
    const [first, second] = flat.bends;
    expect(validate(flat)).toEqual([]);
    expect(validate({ ...flat, bends: [first!, { ...second!, turn: -0 }] })).toHaveLength(1);
  });
});
