/** From loose straights and arcs, in order, to a Centreline: bends merged, distances added up, bend table made. */
import { ANGLE_RAD, POINT_MM, RADIUS_MM } from './numeric.ts';
import { advanceClock, turnBetween } from './turn.ts';
import type { Arc, Bend, Centreline, Piece, Straight } from './types.ts';

export type LooseStraight = Omit<Straight, 'kind' | 'start' | 'end'>;

/** An arc that does not yet know where along the line it lies, with what its bend needs to know. */
export interface LooseArc extends Omit<Arc, 'kind' | 'start' | 'end' | 'length'> {
  readonly points: readonly number[];
  /** From the arc before it; `null` for the first. */
  readonly turn: number | null;
}

export interface LooseLine {
  /** One more than `arcs`. */
  readonly straights: readonly LooseStraight[];
  readonly arcs: readonly LooseArc[];
}

/** The Centreline of loose pieces in order: straight 0, arc 0, straight 1, …, last straight. */
export function assemble(loose: LooseLine): Centreline {
  const { straights, arcs } = mergeBends(loose);
  const pieces: Piece[] = [];
  const bends: Bend[] = [];
  let [at, clock] = [0, 0];
  straights.forEach((loose, i) => {
    const straight = placedStraight(loose, at);
    pieces.push(straight);
    at = straight.end;
    const looseArc = arcs[i];
    if (!looseArc) return;
    const arc = placedArc(looseArc, at);
    const { points, turn } = looseArc;
    clock = advanceClock(clock, turn ?? 0);
    const { angle, radius, start, end, normal } = arc;
    const straightBefore = straight.length;
    bends.push({
      piece: pieces.length,
      points,
      straightBefore,
      turn,
      clock,
      angle,
      radius,
      start,
      end,
      normal,
    });
    pieces.push(arc);
    at = end;
  });
  return { pieces, bends, length: at };
}

function placedStraight({ from, to, direction, length }: LooseStraight, start: number): Straight {
  return { kind: 'straight', from, to, direction, length, start, end: start + length };
}

function placedArc({ from, to, centre, normal, u, v, radius, angle }: LooseArc, start: number): Arc {
  const length = radius * angle;
  return { kind: 'arc', from, to, centre, normal, u, v, radius, angle, length, start, end: start + length };
}

/** A straight from −POINT_MM to POINT_MM is none. */
export const isNoLength = (length: number): boolean => Math.abs(length) <= POINT_MM;

/**
 * Neighbouring arcs with no straight and no turn between them and the same radius are one arc, as long as it
 * stays short of a whole turn. The turn is measured from the first of them, so that a thousand small ones
 * cannot creep out of its plane.
 */
function mergeBends({ straights, arcs }: LooseLine): LooseLine {
  const keptStraights: LooseStraight[] = straights.slice(0, 1);
  const keptArcs: LooseArc[] = [];
  arcs.forEach((arc, i) => {
    const before = straights[i]!;
    const last = keptArcs.at(-1);
    if (last && isNoLength(before.length) && goesOn(last, arc, before)) {
      keptArcs[keptArcs.length - 1] = joined(last, arc);
      keptStraights[keptStraights.length - 1] = straights[i + 1]!;
      return;
    }
    keptArcs.push(arc);
    keptStraights.push(straights[i + 1]!);
  });
  return { straights: keptStraights, arcs: keptArcs };
}

function goesOn(last: LooseArc, next: LooseArc, between: LooseStraight): boolean {
  return (
    Math.abs(last.radius - next.radius) <= RADIUS_MM &&
    last.angle + next.angle < 2 * Math.PI - ANGLE_RAD &&
    turnBetween(last.normal, next.normal, between.direction) === 0
  );
}

const joined = (first: LooseArc, second: LooseArc): LooseArc => ({
  ...first,
  to: second.to,
  angle: first.angle + second.angle,
  points: [...first.points, ...second.points],
});
