import { arcPoint, arcRadial, arcTangent } from './arc.ts';
import { ANGLE_RAD, POINT_MM, ROUNDING, UNIT_OFF } from './numeric.ts';
import { advanceClock, turnBetween } from './turn.ts';
import type { Arc, Bend, Centreline, Piece, Straight, Vec3 } from './types.ts';
import { addScaled, angleBetween, cross, distance, dot, norm } from './vec.ts';

/**
 * The invariants of a Centreline that this one breaks, one sentence each; empty when it is sound.
 *
 * Checked: straight, arc, …, straight; pieces join in one point and in one direction; directions are unit and
 * square; each piece ends where its own figures say; distances chain and add up to the length; the bend table
 * says what the pieces say. Positions may be off by 1e-6 mm (a straight that short counts as 0) plus 16 ulp of the
 * largest coordinate, directions by the 1e-6° under which a turn counts as 0.
 * @example
 * import { fromRows, validate } from '@runback/geometry';
 * validate(fromRows([{ straightBefore: 40, turn: null, angle: 1, radius: 60 }], 30)); // => []
 */
export function validate(c: Centreline): readonly string[] {
  const order = orderFaults(c);
  if (order.length > 0) return order;
  const slack = POINT_MM + ROUNDING * sizeOf(c);
  return [
    ...c.pieces.flatMap((piece, i) => pieceFaults(piece, slack).map((fault) => `piece ${i}: ${fault}`)),
    ...c.pieces.slice(1).flatMap((piece, i) => jointFaults(c.pieces[i]!, piece, `joint ${i}–${i + 1}`)),
    ...distanceFaults(c),
    ...bendFaults(c),
  ];
}

function orderFaults({ pieces, bends }: Centreline): readonly string[] {
  const faults: string[] = [];
  if (pieces.length !== 2 * bends.length + 1)
    faults.push(`${bends.length} bends need ${2 * bends.length + 1} pieces, there are ${pieces.length}`);
  pieces.forEach((piece, i) => {
    const due = i % 2 === 0 ? 'straight' : 'arc';
    if (piece.kind !== due) faults.push(`piece ${i} must be a ${due}`);
  });
  return faults;
}

/** Largest number that positions are computed from: coordinates, and how far the pieces reach. */
function sizeOf({ pieces, length }: Centreline): number {
  const vectors = pieces.flatMap((piece) =>
    piece.kind === 'arc' ? [piece.from, piece.to, piece.centre] : [piece.from, piece.to],
  );
  return vectors.reduce((size, v) => Math.max(size, ...v.map(Math.abs)), length);
}

const pieceFaults = (piece: Piece, slack: number): readonly string[] =>
  piece.kind === 'straight' ? straightFaults(piece, slack) : arcFaults(piece, slack);

/** Keeps the sentences whose condition does not hold. NaN fails every condition, so it is always a fault. */
const failing = (conditions: readonly (readonly [boolean, string])[]): readonly string[] =>
  conditions.filter(([holds]) => !holds).map(([, sentence]) => sentence);

function straightFaults(s: Straight, slack: number): readonly string[] {
  const reached = addScaled(s.from, s.direction, s.length);
  return failing([
    [isUnit(s.direction), 'its direction is not a unit vector'],
    [s.length >= 0, `its length ${s.length} is negative`],
    [distance(reached, s.to) <= slack, `it does not end at its own length and direction`],
  ]);
}

function arcFaults(a: Arc, slack: number): readonly string[] {
  const far = slack + a.radius * ANGLE_RAD * (1 + a.angle);
  return failing([
    [a.radius > 0, `its radius ${a.radius} is not > 0`],
    [a.angle > 0 && a.angle < 2 * Math.PI, `its angle ${a.angle} is not between 0 and 2π`],
    [[a.u, a.v, a.normal].every(isUnit), 'its axes are not unit vectors'],
    [Math.abs(dot(a.u, a.v)) <= UNIT_OFF, 'its axes are not square'],
    [distance(cross(a.u, a.v), a.normal) <= UNIT_OFF, 'u × v is not its normal'],
    [Math.abs(a.length - a.radius * a.angle) <= ROUNDING * a.length, 'its length is not radius × angle'],
    [distance(addScaled(a.centre, a.u, a.radius), a.from) <= slack, 'it does not start on its circle'],
    [
      distance(addScaled(a.centre, arcRadial(a, a.angle), a.radius), a.to) <= far,
      'it does not end on its circle',
    ],
    [distance(arcPoint(a, a.angle), a.to) <= far, 'it does not end at its angle'],
  ]);
}

const isUnit = (a: Vec3): boolean => Math.abs(norm(a) - 1) <= UNIT_OFF;

function jointFaults(before: Piece, after: Piece, where: string): readonly string[] {
  const arriving = before.kind === 'arc' ? arcTangent(before, before.angle) : before.direction;
  const leaving = after.kind === 'arc' ? after.v : after.direction;
  return failing([
    [before.to.every((x, k) => x === after.from[k]), `${where}: the pieces do not share a point`],
    [angleBetween(arriving, leaving) <= 2 * ANGLE_RAD, `${where}: the pieces are not tangent`],
  ]);
}

function distanceFaults({ pieces, length }: Centreline): readonly string[] {
  const sum = pieces.reduce((total, piece) => total + piece.length, 0);
  const slack = ROUNDING * pieces.length * length;
  const chained = pieces.every((piece, i) => piece.start === (pieces[i - 1]?.end ?? 0));
  return failing([
    [chained, 'start and end do not chain'],
    [pieces.every((p) => Math.abs(p.start + p.length - p.end) <= slack), 'a piece is not end − start long'],
    [pieces.at(-1)!.end === length, 'the length is not the end of the last piece'],
    [Math.abs(sum - length) <= slack, 'the length is not the sum of the pieces'],
  ]);
}

function bendFaults({ pieces, bends }: Centreline): readonly string[] {
  let clock = 0;
  return bends.flatMap((bend, i) => {
    clock = advanceClock(clock, bend.turn ?? 0);
    const arc = pieces[2 * i + 1] as Arc;
    const straight = pieces[2 * i] as Straight;
    const before = bends[i - 1];
    return failing([
      [bend.piece === 2 * i + 1, `bend ${i}: its arc is piece ${2 * i + 1}, not ${bend.piece}`],
      [bend.points.length > 0, `bend ${i}: it names no point`],
      [
        bend.angle === arc.angle && bend.radius === arc.radius,
        `bend ${i}: angle or radius is not that of its arc`,
      ],
      [bend.start === arc.start && bend.end === arc.end, `bend ${i}: start or end is not that of its arc`],
      [bend.normal.every((x, k) => x === arc.normal[k]), `bend ${i}: its normal is not that of its arc`],
      [bend.straightBefore === straight.length, `bend ${i}: its straight is not that of the piece before it`],
      [
        turnHolds(bend, before, straight.direction),
        `bend ${i}: its turn ${bend.turn} is not that of its plane`,
      ],
      [bend.clock === clock, `bend ${i}: its clock ${bend.clock} is not the sum of the turns`],
    ]);
  });
}

function turnHolds({ turn, normal }: Bend, before: Bend | undefined, travel: Vec3): boolean {
  if (!before || turn === null) return !before && turn === null;
  const exact = turn > -Math.PI && turn <= Math.PI && !Object.is(turn, -0);
  const off = turnBetween(before.normal, normal, travel) - turn;
  return exact && Math.abs(off - 2 * Math.PI * Math.round(off / (2 * Math.PI))) <= 2 * ANGLE_RAD;
}
