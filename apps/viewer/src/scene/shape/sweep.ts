/** The surface of a tube: a circle swept along straights and arcs, with its ends closed. */
import { type Piece, scale } from 'runback';
import { circle, spokes, strip } from './circle.ts';
import { MeshBuilder, type MeshData, type Rgb } from './mesh.ts';
import { type Ring, ringsAlong, sidesWithin } from './rings.ts';
import { coloursAt, type Stops } from './stops.ts';
import { closeEnd, type EndShape } from './sweep-end.ts';

export interface SweepAsk {
  /** Outer radius, mm. */
  readonly outer: number;
  /** How far the mesh may lie inside the true surface, mm. */
  readonly chord: number;
  readonly ends: EndShape;
  /** Colours along the line; left out: white. */
  readonly stops?: Stops;
}

const WHITE: Rgb = [1, 1, 1];

/** Mesh of a tube. Half of the chord goes round the tube, half along its bends, so that together they keep it. */
export function sweptTube(pieces: readonly Piece[], { outer, chord, ends, stops = [] }: SweepAsk): MeshData {
  const cuts = stops.map(({ at }) => at);
  const rings = ringsAlong(pieces, { outer, chord: chord / 2, cuts });
  const sides = sidesWithin(outer, chord / 2);
  const builder = new MeshBuilder();
  const [first, last] = [rings[0], rings[rings.length - 1]];
  if (first === undefined || last === undefined) return builder.finish();
  wall(builder, rings, { outer, sides, stops });
  const end = { outer, sides, shape: ends };
  closeEnd(builder, { ...end, ring: turnedRound(first), straight: straightOf(pieces[0]!) });
  closeEnd(builder, { ...end, ring: last, straight: straightOf(pieces[pieces.length - 1]!) });
  return builder.finish();
}

const straightOf = (piece: Piece): number => (piece.kind === 'straight' ? piece.length : 0);

/** The ring at end A as seen by somebody who leaves the line there. */
const turnedRound = (ring: Ring): Ring => ({ ...ring, tangent: scale(ring.tangent, -1) });

interface Wall {
  readonly outer: number;
  readonly sides: number;
  readonly stops: Stops;
}

function wall(builder: MeshBuilder, rings: readonly Ring[], { outer, sides, stops }: Wall): void {
  let before: readonly number[] | null = null;
  for (const ring of rings) {
    const out = spokes(ring, sides);
    const { before: near, after: far } =
      stops.length === 0 ? { before: WHITE, after: WHITE } : coloursAt(stops, ring.at);
    const here = circle(builder, ring.point, { radius: outer, out, colour: near, tube: outer });
    if (before) strip(builder, before, here);
    const hard = near.some((value, i) => value !== far[i]);
    before = hard ? circle(builder, ring.point, { radius: outer, out, colour: far, tube: outer }) : here;
  }
}
