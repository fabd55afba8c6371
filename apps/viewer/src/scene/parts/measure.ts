/** The shortest way between the chosen tube and what the selected finding names. */

import type { ClearanceRow } from 'runback';
import { type Group, Line } from 'three';
import { clear, groupIn, MadeFrom, placeAt, strokeGeometry } from './geometry.ts';
import type { Layer, Shown } from './kinds.ts';

const OVER = 13;

export class Measure implements Layer {
  private readonly group: Group;
  private readonly made = new MadeFrom();

  constructor(machine: Group) {
    this.group = groupIn(machine);
  }

  update(now: Shown): void {
    const row = now.stale ? null : rowOf(now);
    if (!this.made.changed(row, now.pose.origin, now.materials)) return;
    clear(this.group);
    if (!row) return;
    const stroke = new Line(strokeGeometry([row.point, row.other], row.point), now.materials.guide);
    stroke.renderOrder = OVER;
    placeAt(stroke, row.point, now.pose.origin);
    this.group.add(stroke);
  }

  dispose(): void {
    clear(this.group);
  }
}

function rowOf({ state: { selection }, line }: Shown): ClearanceRow | null {
  if (selection?.kind !== 'finding') return null;
  const finding = line.findings[selection.index];
  return line.clearance.find(({ to, at }) => to === finding?.to && at === finding.at) ?? null;
}
