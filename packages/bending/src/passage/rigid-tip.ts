/** How long a rigid tip may be to pass a bend, and where a joint catches it. Millimetres and radians. */
import { POINT_MM } from '@runback/geometry';
import { layRun, type Run, type RunBend, runWidths } from './run.ts';

export interface TipInBend {
  /** Centreline radius of the bend. */
  readonly radius: number;
  readonly bore: number;
  /** Of the tip, in the plane of the bend. */
  readonly thickness: number;
  /** Of the tip, square to the plane of the bend; a thin tip in mid-bore when left out. */
  readonly width?: number;
  /** Bend angle; an arc longer than the tip when left out. */
  readonly angle?: number;
}

/**
 * The longest straight stiff tip that passes one bend with straights at both ends, mm; 0 where it does not enter the
 * bore at all. It lies with both ends on the outer wall and its middle on the inner: with Ro = R + d/2 and
 * h = R − d/2 + t that is 2·√(Ro² − h²) while the ends lie in the arc, and 2·(Ro − h·cos ½θ)/sin ½θ once they lie in the
 * straights. A tip of width w finds only √(d² − w²) of the bore. Source: plane geometry; the position square to the
 * bisector is the tightest, since the reach on either side is a convex function of the angle left on that side.
 * Doubt: a rounded nose passes a little more, a burr or a flattened bend less.
 *
 * @throws RangeError when a size is not > 0 mm, the radius not over half the bore, or the angle not > 0
 * @example
 * import { longestTip } from '@runback/bending';
 * longestTip({ radius: 75, bore: 7, thickness: 5 }).toFixed(1); // => '35.2'
 */
export function longestTip(tip: TipInBend): number {
  checkTip(tip);
  const { radius, bore, thickness, width = 0, angle = Number.POSITIVE_INFINITY } = tip;
  const open = Math.sqrt(Math.max(0, bore * bore - width * width));
  if (thickness >= open) return 0;
  return 2 * halfChord(walls(radius, open, thickness), angle / 2);
}

interface Walls {
  /** Radius of the outer wall. */
  readonly outer: number;
  /** Radius the outer edge of the tip has at its middle, its inner edge on the inner wall. */
  readonly edge: number;
}

const walls = (radius: number, open: number, thickness: number): Walls => ({
  outer: radius + open / 2,
  edge: radius - open / 2 + thickness,
});

function halfChord({ outer, edge }: Walls, half: number): number {
  const inArc = Math.sqrt((outer - edge) * (outer + edge));
  if (half >= Math.atan2(inArc, edge)) return inArc;
  return (outer - edge * Math.cos(half)) / Math.sin(half);
}

function checkTip({ radius, bore, thickness, width = 0, angle = 1 }: TipInBend): void {
  for (const [name, value] of Object.entries({ radius, bore, thickness }))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`longestTip: ${name} must be > 0 mm, got ${value}`);
  if (!(width >= 0)) throw new RangeError(`longestTip: width must be >= 0 mm, got ${width}`);
  if (!(radius > bore / 2))
    throw new RangeError(`longestTip: radius must be over half the bore, got ${radius} with bore ${bore} mm`);
  if (!(angle > 0)) throw new RangeError(`longestTip: angle must be > 0, got ${angle}`);
}

export interface TipPassage {
  readonly line: number;
  readonly bend: number;
  /** Start of the bend from the start of the run. */
  readonly at: number;
  readonly longest: number;
  /** False where a neighbour is so near that the tip is held shorter than in this bend alone. */
  readonly alone: boolean;
}

/**
 * The longest stiff tip through each bend of a run, in order, mm. Where another bend, a smaller bore or a lip is near, it
 * is the longer of two that surely pass: one that never reaches that neighbour, and one that passes an endless arc of the
 * narrowest bore in reach. Doubt: of close bends in different planes the second is not sure. A kink at a joint is not
 * looked at.
 * @throws RangeError as `longestTip` and `layRun` do
 */
export function tipPassage(
  run: Run,
  { thickness, width = 0 }: { readonly thickness: number; readonly width?: number },
): readonly TipPassage[] {
  const stretches = stretchesOf(run);
  return layRun(run).bends.map((bend) => {
    const { before, after, bore } = bend;
    const tip = { radius: bend.arc.radius, bore, thickness, width, angle: bend.arc.angle };
    const open = longestTip(tip);
    const near = narrowsNear(bend, stretches);
    const short = clearOf(tip, Math.min(before, near.before), Math.min(after, near.after));
    const narrowest = near.within(open);
    const { angle: _, ...endless } = { ...tip, bore: narrowest };
    const longest = Math.max(short, longestTip(endless), clearOf({ ...tip, bore: narrowest }, before, after));
    return { line: bend.line, bend: bend.bend, at: bend.at, longest, alone: longest >= open };
  });
}

/**
 * The longest tip that passes a bend without reaching farther than `before` and `after` from it. Where it touches the
 * inner wall the angle β of the bend is left on one side and θ − β on the other, and it may reach f(β) and f(θ − β); f is
 * convex and falls. So what it finds on both sides together is least where both are equal, or where one side is cut off
 * and the other has the whole angle left.
 */
function clearOf(tip: TipInBend & { readonly angle: number }, before: number, after: number): number {
  const whole = longestTip({ ...tip, angle: 2 * tip.angle }) / 2;
  return Math.min(longestTip(tip), before + whole, after + whole, before + after);
}

/** A stretch of a run of one diameter; a lip has its `from` at its `to`. */
interface Wide {
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
}

function stretchesOf(run: Run): readonly Wide[] {
  const { length } = layRun(run);
  const widths = runWidths(run);
  return widths.map(({ at, diameter }, i) => ({ from: at, to: widths[i + 1]?.at ?? length, diameter }));
}

interface Narrows {
  /** How far the nearest smaller bore or lip is on either side of the bend, mm. */
  readonly before: number;
  readonly after: number;
  /** The narrowest bore or lip no farther from the bend than that. */
  readonly within: (reach: number) => number;
}

function narrowsNear({ at, arc, bore }: RunBend, stretches: readonly Wide[]): Narrows {
  const smaller = stretches.filter(({ diameter }) => diameter < bore);
  const end = at + arc.length;
  const behind = ({ to }: Wide): number => (to <= at + POINT_MM ? Math.max(0, at - to) : FAR);
  const ahead = ({ from }: Wide): number => (from >= end - POINT_MM ? Math.max(0, from - end) : FAR);
  return {
    before: Math.min(FAR, ...smaller.map(behind)),
    after: Math.min(FAR, ...smaller.map(ahead)),
    within: (reach) =>
      smaller
        .filter((one) => Math.min(behind(one), ahead(one)) < reach)
        .reduce((least, { diameter }) => Math.min(least, diameter), bore),
  };
}

const FAR = Number.POSITIVE_INFINITY;

export interface JointStep {
  /** Index of the line it is on; of a step at a joint, the line before it. */
  readonly line: number;
  readonly at: number;
  /** Height of the step all round, half the difference of the two diameters, mm. */
  readonly step: number;
  /** Which way the edge faces: it catches a stick going in, or one coming out. */
  readonly catches: 'going in' | 'coming out';
}

/**
 * Where the way through a run steps, mm: at joints of two bores and at both edges of every lip; `enters` is the end the
 * stick goes in at. Where it grows narrower on the way in, it catches the end going in; where it grows wider, it catches
 * a tip, a ferrule or a crimp coming out. Equal bores make no step here; real tubes are never quite in line.
 * @throws RangeError as `layRun` does
 */
export function jointSteps(run: Run, enters: 'A' | 'Z'): readonly JointStep[] {
  const widths = runWidths(run);
  return widths.slice(1).flatMap((after, i) => {
    const before = widths[i]!;
    if (before.diameter === after.diameter) return [];
    const narrows = before.diameter > after.diameter === (enters === 'A');
    return [
      {
        line: before.line,
        at: after.at,
        step: Math.abs(before.diameter - after.diameter) / 2,
        catches: narrows ? ('going in' as const) : ('coming out' as const),
      },
    ];
  });
}

export interface Lead {
  /** Length of the cone along the tube, mm. */
  readonly length: number;
  /** Push along the tube for each unit the cone pushes sideways: tan(angle + atan μ). Infinity where it jams. */
  readonly push: number;
}

/**
 * The chamfer or reducer that cures a step: a cone at `angle` to the axis of the tube (half its included angle), as long
 * as step/tan(angle), mm. The stick slides up it while angle + atan μ < 90°: one contact, a stick free to move sideways.
 * 15° is a lead a blade follows easily; near 90° it is still a step.
 *
 * @throws RangeError when the step is not > 0 mm, the angle not in (0, π/2), or the friction negative
 * @example
 * import { leadIn } from '@runback/bending';
 * leadIn({ step: 1, angle: Math.PI / 12, friction: 0.25 }).length.toFixed(2); // => '3.73'
 */
export function leadIn(of: {
  readonly step: number;
  readonly angle: number;
  readonly friction: number;
}): Lead {
  const { step, angle, friction } = of;
  if (!(step > 0)) throw new RangeError(`leadIn: step must be > 0 mm, got ${step}`);
  if (!(angle > 0 && angle < Math.PI / 2))
    throw new RangeError(`leadIn: angle must be between 0 and π/2, got ${angle}`);
  if (!(friction >= 0)) throw new RangeError(`leadIn: friction must be >= 0, got ${friction}`);
  const lean = angle + Math.atan2(friction, 1);
  return {
    length: step / Math.tan(angle),
    push: lean < Math.PI / 2 ? Math.tan(lean) : Number.POSITIVE_INFINITY,
  };
}
