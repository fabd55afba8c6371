/** Everything that is drawn, in one list. */
import type { Vec3 } from 'runback';
import { makeBead } from './parts/bead.ts';
import { Billboards } from './parts/billboards.ts';
import { makeFittings } from './parts/fittings.ts';
import { makeFlow } from './parts/flow.ts';
import { makeGnomon } from './parts/gnomon.ts';
import { makeGround } from './parts/ground.ts';
import type { EyeNow, Layer, Shown } from './parts/kinds.ts';
import { marksOf } from './parts/marks.ts';
import { Measure } from './parts/measure.ts';
import { Polygon } from './parts/polygon.ts';
import { makeShells } from './parts/shells.ts';
import { makeSolids } from './parts/solids.ts';
import { makeChosenTube, makeOtherTubes, makeOutline } from './parts/tubes.ts';
import type { Stage } from './stage.ts';
import type { AxisLock } from './types.ts';

export interface Held {
  readonly index: number;
  readonly at: Vec3;
}

export class Layers {
  readonly solids;
  readonly ground;
  readonly gnomon = makeGnomon();
  private readonly plain: readonly Layer[];
  private readonly marks: Billboards;
  private readonly polygon: Polygon;

  constructor({ machine, world }: Stage) {
    this.solids = makeSolids(machine);
    this.ground = makeGround(world);
    this.plain = [
      this.ground,
      this.solids,
      makeOtherTubes(machine),
      makeChosenTube(machine),
      makeOutline(machine),
      makeFittings(machine),
      makeShells(machine),
      new Measure(machine),
      makeFlow(world),
      makeBead(world),
    ];
    this.polygon = new Polygon(machine);
    this.marks = new Billboards(world);
  }

  update(now: Shown): void {
    for (const layer of this.plain) layer.update(now);
    this.gnomon.update(now);
  }

  /** Corners and their strokes: with a corner that is held, and what it is held to. */
  updateCorners(now: Shown, points: readonly Vec3[], lock: AxisLock): void {
    const { selection, axisLock } = now.state;
    const held = lock ?? (selection?.kind === 'point' ? axisLock : null);
    const guide = selection?.kind === 'point' && held ? { index: selection.index, lock: held } : null;
    this.polygon.show(now, { points, guide });
    this.marks.show(marksOf(now, points), now.labels);
  }

  place(eye: EyeNow, now: Shown): void {
    for (const layer of this.plain) layer.place?.(eye);
    this.polygon.place(eye, now.middle);
    this.marks.place(eye);
  }

  dispose(): void {
    for (const layer of this.plain) layer.dispose();
    this.polygon.dispose();
    this.gnomon.dispose();
  }
}
