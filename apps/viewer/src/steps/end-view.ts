/** The tube as one sees it on its end. Degrees are clockwise on the page from straight up. */
import { type BenchPlan, cross, dot, stanceOf, type ToolPose, type Vec3 } from 'runback';

export interface EndSeen {
  /** Behind the stock one looks from FREE, as the words do. */
  readonly from: 'START' | 'FREE';
  readonly former: number;
  readonly formerBefore: number;
  readonly pencilBefore: number;
  readonly pencilAfter: number;
  /** How far what moves goes round; `both` for a half turn, 0 for none. */
  readonly by: number | 'both';
  /** The side the operator stands on; null in line with the tube. */
  readonly you: 90 | -90 | null;
}

const UP: Vec3 = [0, 0, 1];
const DEGREES = 180 / Math.PI;

export function endSeen({ bench }: BenchPlan, pose: ToolPose): EndSeen {
  const { view } = stanceOf(bench);
  const from = view === 'behind-free' ? 'FREE' : 'START';
  const sense = from === 'START' ? 1 : -1;
  const right = cross(pose.travel, UP);
  const hour = (v: Vec3): number => Math.atan2(sense * dot(v, right), dot(v, UP)) * DEGREES;
  const toYou = sense * dot([0, -1, 0], right);
  return {
    from,
    former: hour(pose.former),
    formerBefore: hour(pose.formerBefore ?? pose.former),
    pencilBefore: hour(pose.pencil.before),
    pencilAfter: hour(pose.pencil.after),
    by: pose.turns === 'both' ? 'both' : (pose.turns ?? 0) * sense * pose.goes * DEGREES,
    you: view === 'side' ? (toYou > 0 ? 90 : -90) : null,
  };
}

/** The point `r` from the middle at so many degrees. */
export const spot = (r: number, degrees: number): readonly [number, number] => {
  const a = degrees / DEGREES;
  return [rounded(r * Math.sin(a)), rounded(-r * Math.cos(a))];
};

const rounded = (x: number): number => Math.round(x * 100) / 100;

/** The arc from one hour to another, the way the numbers run. */
export function arcPath(r: number, from: number, to: number): string {
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  return `M ${spot(r, from).join(' ')} A ${r} ${r} 0 ${large} ${to > from ? 1 : 0} ${spot(r, to).join(' ')}`;
}
