/**
 * An independent answer for trapped volumes: the bore cut into small cubes, each joined to its neighbours, and for each
 * the least height that a way to an outlet must rise to (a bottleneck search). Knows no sill and no segment of a disc.
 */
import { piecePoint, pieceTangent } from '../src/path.ts';
import type { BoreSpan, TrapOptions } from '../src/pockets.ts';
import type { Vec3 } from '../src/types.ts';
import { dot, sub } from '../src/vec.ts';

interface FloodOptions extends TrapOptions {
  /** Edge of a cube, mm. */
  readonly cell: number;
}

interface Cube {
  readonly height: number;
  end: boolean;
  need: number;
}

/** mm³ of cubes. */
export interface Flooded {
  readonly stays: number;
  readonly drains: number;
}

export function flooded(run: readonly BoreSpan[], { up, outlets, cell }: FloodOptions): Flooded {
  const cubes = new Map<string, Cube>();
  const [atA, atZ] = [mouth(run[0]!), mouth(run.at(-1)!)];
  const tubes = run.filter((span) => !isLip(span));
  for (const span of tubes) {
    const { pieces, bore } = span;
    const [first, last] = [pieces[0]!.start, pieces.at(-1)!.end];
    const step = cell / 3;
    const count = Math.ceil((last - first) / step);
    for (let i = 0; i <= count; i++) {
      const s = i === count ? last : first + i * step;
      const piece = pieces.find((one) => s <= one.end) ?? pieces.at(-1)!;
      const slice = { centre: piecePoint(piece, s), tangent: pieceTangent(piece, s), r: bore / 2 };
      const axial = [s - step < first ? 0 : -cell, s + step > last ? 0 : cell] as const;
      const out = [
        ...(outlets !== 'Z' && span === tubes[0] && s <= first + cell ? [atA] : []),
        ...(outlets !== 'A' && span === tubes.at(-1) && s >= last - cell ? [atZ] : []),
      ];
      for (const [key, point, aside] of inSlice(slice, axial, cell)) {
        const cube = cubes.get(key) ?? { height: dot(point, up), end: false, need: Number.POSITIVE_INFINITY };
        cube.end ||= out.some((r) => aside <= r);
        cubes.set(key, cube);
      }
    }
  }
  for (const lip of run.filter(isLip))
    cutDisc(cubes, lip, { cell, widest: 2 * Math.max(...tubes.map(({ bore }) => bore)) });
  const stays = wet(cubes);
  return { stays: stays * cell ** 3, drains: (cubes.size - stays) * cell ** 3 };
}

const isLip = ({ pieces }: BoreSpan): boolean => pieces.every(({ length }) => length === 0);

/** How far from the middle of a mouth a way out may be: a lip leaves its hole. */
const mouth = (span: BoreSpan): number => (isLip(span) ? span.bore / 2 : Number.POSITIVE_INFINITY);

/** Takes out a disc with a hole, so thick that no cube on one side of it touches one on the other. */
function cutDisc(
  cubes: Map<string, Cube>,
  { pieces, bore }: BoreSpan,
  { cell, widest }: { readonly cell: number; readonly widest: number },
): void {
  const { from: centre } = pieces[0]!;
  const tangent = pieceTangent(pieces[0]!, pieces[0]!.start);
  for (const key of [...cubes.keys()]) {
    const v = sub(key.split(',').map((n) => Number(n) * cell) as unknown as Vec3, centre);
    const along = dot(v, tangent);
    const aside = dot(v, v) - along * along;
    if (Math.abs(along) <= (Math.sqrt(3) / 2) * cell && aside > (bore / 2) ** 2 && aside < widest ** 2)
      cubes.delete(key);
  }
}

/** The cubes whose centres lie in the bore beside a place of its centreline. */
function* inSlice(
  { centre, tangent, r }: { centre: Vec3; tangent: Vec3; r: number },
  [low, high]: readonly [number, number],
  cell: number,
): Generator<readonly [string, Vec3, number]> {
  const span = (k: 0 | 1 | 2): readonly number[] => {
    const from = Math.ceil((centre[k] - r - cell) / cell);
    const to = Math.floor((centre[k] + r + cell) / cell);
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
  };
  const [ys, zs] = [span(1), span(2)];
  for (const x of span(0))
    for (const y of ys)
      for (const z of zs) {
        const point: Vec3 = [x * cell, y * cell, z * cell];
        const v = sub(point, centre);
        const along = dot(v, tangent);
        if (along < low || along > high || dot(v, v) - along * along > r * r) continue;
        yield [`${x},${y},${z}`, point, Math.sqrt(Math.max(0, dot(v, v) - along * along))];
      }
}

/** Cubes below the least height at which a way leads out of them. */
function wet(cubes: Map<string, Cube>): number {
  const order = [...cubes.entries()].sort((a, b) => a[1].height - b[1].height);
  // Raise the level cube by cube; a cube drains once it is joined, under the level, to an outlet.
  const parent = new Map<string, string>();
  const open = new Set<string>();
  const root = (key: string): string => {
    let k = key;
    while (parent.get(k) !== k) {
      parent.set(k, parent.get(parent.get(k)!)!);
      k = parent.get(k)!;
    }
    return k;
  };
  const members = new Map<string, string[]>();
  const settle = (key: string, height: number): void => {
    for (const one of members.get(key) ?? []) cubes.get(one)!.need = height;
    members.set(key, []);
    open.add(key);
  };
  const join = (one: string, two: string, height: number): void => {
    if (one === two) return;
    if (open.has(one) !== open.has(two)) settle(open.has(one) ? two : one, height);
    const larger = members.get(one)!.length >= members.get(two)!.length;
    const [kept, gone] = larger ? [one, two] : [two, one];
    parent.set(gone, kept);
    for (const member of members.get(gone)!) members.get(kept)!.push(member);
    members.delete(gone);
    if (open.has(gone)) open.add(kept);
  };
  for (const [key, cube] of order) {
    parent.set(key, key);
    members.set(key, [key]);
    if (cube.end) settle(key, cube.height);
    const [x, y, z] = key.split(',').map(Number) as [number, number, number];
    for (let i = -1; i <= 1; i++)
      for (let j = -1; j <= 1; j++)
        for (let k = -1; k <= 1; k++) {
          const other = `${x + i},${y + j},${z + k}`;
          if (!parent.has(other) || other === key) continue;
          join(root(key), root(other), cube.height);
        }
  }
  return [...cubes.values()].filter(({ height, need }) => height < need).length;
}
