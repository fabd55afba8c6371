/** What is drawn of one bend: places in the axes of whoever stands at the bench, mm. Pure. */
import {
  addScaled,
  type BenchPlan,
  cross,
  distance,
  moved,
  norm,
  type Piece,
  piecePoint,
  type RigidMotion,
  rotate,
  scale,
  subPath,
  type ToolPose,
  toolPose,
  type Vec3,
} from 'runback';

export interface BenchPlaces {
  readonly pose: ToolPose;
  readonly od: number;
  readonly radius: number;
  /** The finished tube from START to where the bend begins, in stretches: broken where its straight is drawn shorter. */
  readonly after: readonly (readonly Vec3[])[];
  /** The same before the turn; null where it did not move. */
  readonly before: readonly (readonly Vec3[])[] | null;
  /** The tube not yet bent, as it lies in the tool. */
  readonly stock: readonly Vec3[];
  /** The free leg when pulled, in dashes. */
  readonly ghost: readonly (readonly Vec3[])[];
  /** The way the finished leg goes in the turn: that of its place farthest out; null where it stays. */
  readonly sweep: Arrow | null;
  readonly arrows: readonly Arrow[];
  /** The pencil line leaves the middle of the tube this way at START, after the turn. */
  readonly pencil: Vec3;
  /** Where the finished tube begins, or where it leaves the picture: after the turn and before it. */
  readonly ends: { readonly after: Vec3; readonly before: Vec3 | null };
  /** Everything that should be in the picture. */
  readonly frame: readonly Vec3[];
  /** The bench top. */
  readonly floor: number;
  readonly inLine: boolean;
}

export interface Arrow {
  readonly shaft: readonly Vec3[];
  readonly tip: Vec3;
  /** Its highest place. */
  readonly over: Vec3;
}

export interface PlacesAsk {
  readonly plan: BenchPlan;
  /** 0 for bend 1. */
  readonly index: number;
  readonly od: number;
}

/** In radii of bend: what reaches farther than this from the tool has its straight drawn shorter. */
const WHOLE = 4.5;
/** What lies farther away than this may leave the picture. */
const NEAR = 4.5;
const CHORD = Math.PI / 36;

export function benchPlaces({ plan, index, od }: PlacesAsk): BenchPlaces {
  const pose = toolPose(plan, index);
  const { radius, straightBefore } = plan.rows[index]!;
  const start = plan.centreline.bends[index]!.start;
  const trace = (motion: RigidMotion): readonly Vec3[] =>
    placesAlong(subPath(moved(plan.centreline, motion), 0, start));
  const whole = trace(pose.after);
  const reach = Math.max(...whole.map(norm));
  const least = Math.max(2 * radius, 8 * od);
  const push = reach > WHOLE * radius && straightBefore > least ? straightBefore - least : 0;
  const pushed = (places: readonly Vec3[]): Broken => shorter(places, scale(pose.travel, push), od);
  const after = pushed(whole);
  const turned = pose.turns !== null && pose.formerBefore === null && index > 0;
  const stock = [[0, 0, 0] as Vec3, scale(pose.travel, stockLength(radius, od))];
  const ghost = ghostPlaces(pose, radius);
  const before = turned ? pushed(trace(pose.before)) : null;
  const within = NEAR * radius + 4 * od;
  const near = after.flatMap((stretch) => inside(stretch, within));
  const nearBefore = (before ?? []).flatMap((stretch) => inside(stretch, within));
  const arrows = arrowsOf(pose, { radius, od, straight: straightBefore - push });
  const frame = [
    ...near,
    ...nearBefore,
    ...stock,
    ...ghost,
    ...toolCorners(pose, radius, od),
    ...arrows.flatMap(({ shaft, tip }) => [...shaft, tip]),
  ];
  return {
    pose,
    od,
    radius,
    after,
    before,
    stock,
    ghost: dashes(ghost, od),
    sweep: sweepOf(pose, nearBefore, od),
    arrows,
    pencil: pencilAtStart(pose),
    ends: { after: near[0]!, before: nearBefore[0] ?? null },
    frame,
    floor: Math.min(...frame.map((place) => place[2])) - od,
    inLine: Math.abs(pose.travel[1]) > Math.abs(pose.travel[0]),
  };
}

/** What of a trace lies within a distance from the tool, and where it passes it. */
export function inside(trace: readonly Vec3[], within: number): readonly Vec3[] {
  return trace.flatMap((place, i) => {
    const here = norm(place) <= within;
    const next = trace[i + 1];
    const passes = next !== undefined && here !== norm(next) <= within;
    return [...(here ? [place] : []), ...(passes ? [crossing(place, next, within)] : [])];
  });
}

function crossing(a: Vec3, b: Vec3, within: number): Vec3 {
  let [low, high] = [0, 1];
  const at = (t: number): Vec3 => addScaled(a, addScaled(b, a, -1), t);
  const out = norm(a) > within;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (norm(at(middle)) > within === out) low = middle;
    else high = middle;
  }
  return at((low + high) / 2);
}

/** Places along pieces of a centreline, near enough to each other that chords pass for the arcs. */
function placesAlong(pieces: readonly Piece[]): readonly Vec3[] {
  const first = pieces[0]!;
  return [first.from, ...pieces.flatMap((piece) => (piece.kind === 'arc' ? arcPlaces(piece) : [piece.to]))];
}

function arcPlaces(piece: Piece & { kind: 'arc' }): readonly Vec3[] {
  const count = Math.max(2, Math.ceil(piece.angle / CHORD));
  return Array.from({ length: count }, (_, i) =>
    piecePoint(piece, i === count - 1 ? piece.end : piece.start + (piece.length * (i + 1)) / count),
  );
}

type Broken = readonly (readonly Vec3[])[];

/** All but the last place pushed along the tube, with a gap in the straight that is drawn too short then. */
function shorter(places: readonly Vec3[], push: Vec3, od: number): Broken {
  if (norm(push) === 0) return [places];
  const rest = places.slice(0, -1).map((place) => addScaled(place, push, 1));
  const [from, to] = [rest.at(-1)!, places.at(-1)!];
  const long = distance(from, to);
  const at = (s: number): Vec3 => addScaled(from, addScaled(to, from, -1), s / long);
  return [
    [...rest, at(long / 2 - od * 0.6)],
    [at(long / 2 + od * 0.6), to],
  ];
}

/** How far the unbent tube is drawn: room for the arrow behind the former. */
const stockLength = (radius: number, od: number): number => 1.8 * radius + 3 * od;

function ghostPlaces({ pulled, leaves }: ToolPose, radius: number): readonly Vec3[] {
  const arc = placesAlong([pulled]);
  const from = arc.at(-1)!;
  const straight = [0.4, 0.8, 1.2].map((part) => addScaled(from, leaves, part * radius));
  return [...arc, ...straight];
}

/** A trace cut into dashes as long as they are apart. */
export function dashes(places: readonly Vec3[], od: number): readonly (readonly Vec3[])[] {
  const found: Vec3[][] = [];
  const dash = od * 1.1;
  let [run, travelled]: [Vec3[], number] = [[places[0]!], 0];
  for (let i = 0; i + 1 < places.length; i++) {
    const [a, b] = [places[i]!, places[i + 1]!];
    const long = distance(a, b);
    for (let s = dash - (travelled % dash); s < long; s += dash) {
      const cut = addScaled(a, addScaled(b, a, -1), s / long);
      if (Math.round((travelled + s) / dash) % 2 === 1) found.push([...run, cut]);
      run = [cut];
    }
    run.push(b);
    travelled += long;
  }
  return found;
}

function sweepOf({ travel, turns, goes }: ToolPose, before: readonly Vec3[], od: number): Arrow | null {
  const out = (place: Vec3): number => norm(cross(travel, place));
  const from = before.reduce((best, place) => (out(place) > out(best) ? place : best), [0, 0, 0] as Vec3);
  if (turns === null || out(from) * goes < 8 * od) return null;
  const by = (turns === -1 ? -1 : 1) * goes;
  // The head is as long on the smallest circle as on the largest.
  const neck = Math.max(0, 1 - (1.6 * od) / (out(from) * goes));
  const count = Math.max(4, Math.ceil(goes / CHORD));
  const shaft = Array.from({ length: count + 1 }, (_, i) => rotate(from, travel, (by * neck * i) / count));
  return { shaft, tip: rotate(from, travel, by), over: from };
}

/** The shaft begins so far before the top and its head ends so far behind it, degrees. */
const TAIL = 130;
const NECK = 26;
const TIP = 66;

/** Round the tube, over the top of it; for a bender that is carried, over the side it comes to. */
function arrowsOf(
  { travel, former, formerBefore, turns }: ToolPose,
  { radius, od, straight }: { readonly radius: number; readonly od: number; readonly straight: number },
): readonly Arrow[] {
  if (turns === null) return [];
  const top: Vec3 = formerBefore === null ? [0, 0, 1] : former;
  const round = Math.max(2.6 * od, 0.62 * radius);
  // Round what the hand turns, the finished side; where that is too short, round the stock.
  const along = straight > 1.4 * radius ? -straight * 0.45 : stockLength(radius, od) * 0.72;
  const middle = scale(travel, along);
  const at = (degrees: number): Vec3 =>
    addScaled(middle, rotate(top, travel, (degrees * Math.PI) / 180), round);
  const one = (way: 1 | -1, tail: number): Arrow => ({
    shaft: Array.from({ length: 25 }, (_, i) => at(way * (((tail + NECK) * i) / 24 - tail))),
    tip: at(way * TIP),
    over: addScaled(middle, [0, 0, 1], round + 1.2 * od),
  });
  return turns === 'both' ? [one(1, 0), one(-1, 0)] : [one(turns, TAIL)];
}

/** The line is carried round each bend with the tube: what it is at the tool gives what it is at START. */
function pencilAtStart({ after }: ToolPose): Vec3 {
  const [x, y, z] = after.rotation;
  // In the START frame it lies on the side that bend 1 leaves to, which is Y.
  return [x[1], y[1], z[1]];
}

function toolCorners(
  { travel, former, formerBefore, plane }: ToolPose,
  radius: number,
  od: number,
): readonly Vec3[] {
  return [former, ...(formerBefore ? [formerBefore] : [])].flatMap((side) =>
    [0, 1].flatMap((along) =>
      [1, -1].map((thick) =>
        addScaled(addScaled(scale(side, 2 * radius), travel, along * radius), plane, thick * od),
      ),
    ),
  );
}
