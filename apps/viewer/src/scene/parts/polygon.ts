/** The points of the chosen line joined by straights, and the strokes that help while one is dragged. */

import { addScaled, sub, unit, type Vec3 } from 'runback';
import { type Group, Line, type LineDashedMaterial, LineSegments } from 'three';
import { legNeighbour } from '../math/drag.ts';
import { turnedBack } from '../math/tilt.ts';
import type { AxisLock } from '../types.ts';
import { clear, groupIn, MadeFrom, placeAt, strokeGeometry } from './geometry.ts';
import type { EyeNow, Shown } from './kinds.ts';
import { misfitPoints } from './misfit.ts';

const OVER = 12;
const GUIDE_REACH = 0.4;

export interface PolygonAsk {
  readonly points: readonly Vec3[];
  /** Corner that a guide is drawn through, and what it is held to. */
  readonly guide: { readonly index: number; readonly lock: AxisLock } | null;
}

export class Polygon {
  private readonly group: Group;
  private readonly made = new MadeFrom();
  private dashes: LineDashedMaterial | null = null;
  private back: Vec3 = [0, 0, 1];

  constructor(machine: Group) {
    this.group = groupIn(machine);
  }

  show(now: Shown, { points, guide }: PolygonAsk): void {
    const { pose, materials, line, radius } = now;
    const broken = line.centreline === null;
    const misfits = [...misfitPoints(line)];
    const towards = guide?.lock === 'leg' ? turnedBack(pose.turn, this.back) : null;
    if (!this.made.changed(points, guide, towards, misfits, broken, pose.origin, materials)) return;
    clear(this.group);
    this.dashes = materials.polygon;
    const origin = points[0] ?? pose.origin;
    const dashed = new Line(strokeGeometry(points, origin), materials.polygon);
    dashed.computeLineDistances();
    const strokes: Line[] = [dashed];
    const bad = misfits.flatMap((i) => [points[i - 1], points[i], points[i], points[i + 1]]);
    const whole = bad.filter((point) => point !== undefined);
    if (whole.length > 1) strokes.push(new LineSegments(strokeGeometry(whole, origin), materials.misfit));
    const along = guide && directionOf({ points, guide, view: towards });
    if (guide && along) {
      const at = points[guide.index]!;
      const [from, to] = [
        addScaled(at, along, -GUIDE_REACH * radius),
        addScaled(at, along, GUIDE_REACH * radius),
      ];
      strokes.push(new Line(strokeGeometry([from, to], origin), materials.guide));
    }
    for (const stroke of strokes) {
      stroke.renderOrder = OVER;
      placeAt(stroke, origin, pose.origin);
      this.group.add(stroke);
    }
  }

  /** Dashes keep their length on the screen. */
  place(eye: EyeNow, middle: Vec3): void {
    this.back = eye.back;
    if (this.dashes) this.dashes.scale = 1 / eye.mmPerPx(middle);
  }

  dispose(): void {
    clear(this.group);
  }
}

const AXES = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

interface DirectionAsk {
  readonly points: readonly Vec3[];
  readonly guide: NonNullable<PolygonAsk['guide']>;
  readonly view: Vec3 | null;
}

function directionOf({ points, guide: { index, lock }, view }: DirectionAsk): Vec3 | null {
  if (lock === null) return null;
  if (lock !== 'leg') return AXES[lock];
  const other = legNeighbour(points, index, view ?? [0, 0, 1]);
  return other && unit(sub(points[index]!, other));
}
