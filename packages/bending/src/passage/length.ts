/** How long a blade's way through a run can be, and what that and a tilt do to its mark. Millimetres and radians. */
import { addScaled, dot, norm, PARALLEL, scale, sub, unit, type Vec3 } from '@runback/geometry';
import { type LaidRun, layRun, mouthOf, type Run } from './run.ts';
import { tautLength } from './taut.ts';

export interface StickLength {
  /** Along the centrelines. */
  readonly centreline: number;
  /** The shortest way is no shorter than `low` and no longer than `high`. */
  readonly shortest: { readonly low: number; readonly high: number };
  /** Hugging the outside of every bend and crossing over between them. */
  readonly longest: number;
  /** Longest less shortest: how far a mark worked out beforehand may be off along the stick. */
  readonly uncertainty: number;
}

/**
 * The shortest and the longest way of a thin blade from mouth to mouth, mm, its ends anywhere across the bore. The
 * middle of the blade stays within r = (bore − thickness)/2 of the centreline. Pulled, it hugs the inside of bends: no
 * shorter than L − Σ r·θ, exactly that where all bends turn the same way in one plane and the bore is one; else a taut
 * string over discs at most 3° of arc apart brackets it. Pushed, it hugs the outside, L + Σ r·θ, and crosses the bore
 * between two bends that turn different ways: √(s² + c²) − s more over a straight s, c from outside to outside. An estimate:
 * a blade that snakes is longer still. A kink k at a joint counts 2·r·tan(k/2) either way. A wide blade has less room
 * than a thin one, so its bracket is wide, not wrong.
 *
 * @throws RangeError when the thickness is not > 0 mm or not under every bore, or as `layRun` does
 * @example
 * import { stickLength } from '@runback/bending';
 * import { fromRows } from '@runback/geometry';
 * const line = fromRows([{ straightBefore: 100, turn: null, angle: Math.PI / 2, radius: 60 }], 100);
 * stickLength([{ centreline: line, bore: 10 }], 1).uncertainty.toFixed(2); // => '14.14'
 */
export function stickLength(run: Run, thickness: number): StickLength {
  const laid = layRun(run);
  if (!(thickness > 0)) throw new RangeError(`stickLength: thickness must be > 0 mm, got ${thickness}`);
  for (const { bore } of run)
    if (!(thickness < bore))
      throw new RangeError(`stickLength: thickness must be under the bore, got ${thickness} in ${bore} mm`);
  const room = (bore: number): number => (bore - thickness) / 2;
  const gain = laid.bends.reduce((sum, b) => sum + room(b.bore) * b.arc.angle, 0) + inKinks(laid, room);
  const floor = Math.max(0, laid.length - gain);
  const shortest = hugsOneSide(laid) ? { low: floor, high: floor } : bracket(laid, room, floor);
  const longest = laid.length + gain + crossings(laid, room);
  return { centreline: laid.length, shortest, longest, uncertainty: longest - shortest.low };
}

type Room = (bore: number) => number;

const inKinks = ({ joints }: LaidRun, room: Room): number =>
  joints.reduce((sum, { kink, boreBefore, boreAfter }) => {
    return sum + 2 * room(Math.max(boreBefore, boreAfter)) * Math.tan(kink / 2);
  }, 0);

/** What going over from the outside of each bend to that of the next adds to the straight between. */
function crossings({ bends }: LaidRun, room: Room): number {
  return bends.slice(1).reduce((sum, b, i) => {
    const a = bends[i]!;
    const c = norm(sub(scale(b.arc.normal, room(b.bore)), scale(a.arc.normal, room(a.bore))));
    return sum + Math.hypot(b.before, c) - b.before;
  }, 0);
}

function bracket({ pieces, joints }: LaidRun, room: Room, floor: number): StickLength['shortest'] {
  const { low, high } = tautLength(pieces.map(({ piece, bore }) => ({ piece, room: room(bore) })));
  // Across a kink the two lines do not share one disc, so only the closed form bounds the way from below.
  const kinked = joints.some((j) => j.kink > PARALLEL);
  return { low: kinked ? floor : Math.max(low, floor), high: Math.max(high, floor) };
}

function hugsOneSide({ bends, joints }: LaidRun): boolean {
  const side = bends[0]?.arc.normal;
  return (
    joints.every((j) => j.boreBefore === j.boreAfter && j.kink <= PARALLEL) &&
    bends.every((b) => norm(sub(b.arc.normal, side!)) <= PARALLEL)
  );
}

export interface TiltedLevel {
  /** Place of the stick's tip, and the middle of the liquid's surface, about which it tilts. */
  readonly tip: Vec3;
  readonly middle: Vec3;
  /** Unit vector upward at rest. */
  readonly up: Vec3;
  /** Unit vector along the stick at its tip, either way. */
  readonly stick: Vec3;
  /** Radians, in [0, π/2). */
  readonly tilt: number;
}

/**
 * How far the level at the stick moves when the machine tilts the worst way, mm: plumb, horizontal distance·tan(tilt), and
 * along the stick, that over the sine of the stick's slope (to first order in the tilt). The surface stays plane and
 * tilts about its middle: a sump with upright walls. Infinity along a level stick.
 *
 * @throws RangeError when the tilt is not in [0, π/2) or a direction has no length
 * @example
 * import { levelShift } from '@runback/bending';
 * const at = { tip: [100, 0, 0], middle: [0, 0, 20], up: [0, 0, 1], stick: [0, 0, -1], tilt: Math.PI / 180 } as const;
 * levelShift(at).plumb.toFixed(2); // => '1.75'
 */
export function levelShift(level: TiltedLevel): { readonly plumb: number; readonly along: number } {
  const { tip, middle, tilt } = level;
  if (!(tilt >= 0 && tilt < Math.PI / 2))
    throw new RangeError(`levelShift: tilt must be from 0 to under π/2, got ${tilt}`);
  const [up, stick] = [unit(level.up), unit(level.stick)];
  const away = sub(tip, middle);
  const plumb = norm(addScaled(away, up, -dot(away, up))) * Math.tan(tilt);
  return { plumb, along: plumb === 0 ? 0 : plumb / Math.abs(dot(stick, up)) };
}

export interface PullOut {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit, out of the tube. */
  readonly direction: Vec3;
  readonly length: number;
}

/**
 * The straight space a stick needs to come out, mm: from the mouth at end `cap`, along the tangent there, as long as the
 * stick is beyond its seat; of a flexible stick only its stiff tip (`stiff`), since the rest bends aside.
 *
 * @throws RangeError when the stick is not > 0 mm long, or `stiff` is not from 0 to its length
 * @example
 * import { pullOutSpace } from '@runback/bending';
 * import { fromRows } from '@runback/geometry';
 * const run = [{ centreline: fromRows([], 300), bore: 10 }];
 * pullOutSpace(run, { cap: 'Z', stick: 400 }).to; // => [700, 0, 0]
 */
export function pullOutSpace(
  run: Run,
  of: { readonly cap: 'A' | 'Z'; readonly stick: number; readonly stiff?: number },
): PullOut {
  const { cap, stick, stiff: length = stick } = of;
  if (!(stick > 0)) throw new RangeError(`pullOutSpace: stick must be > 0 mm, got ${stick}`);
  if (!(length >= 0 && length <= stick))
    throw new RangeError(`pullOutSpace: stiff must be from 0 to ${stick} mm, got ${length}`);
  const { point, outward } = mouthOf(run, cap);
  return { from: point, to: addScaled(point, outward, length), direction: outward, length };
}
