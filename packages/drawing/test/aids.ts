/** Lines for the tests of the aids, and where items stand on the paper. */
import { type BenchPlan, type BendPlan, bendPlan, roundPlan } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { Box, Item, LineItem, Page, Point } from '@runback/drawing';
import type { Die, LineEnd } from '@runback/job';
import { type Ask, worked } from './worked.ts';

export interface AskAid extends Ask {
  readonly od?: number;
  readonly die?: Partial<Die>;
  readonly endA?: Partial<LineEnd>;
  readonly endZ?: Partial<LineEnd>;
}

/** A worked line with another tube, die or ends than those of the sheet's tests. */
export function workedAid(ask: AskAid): WorkedLine {
  const base = worked(ask);
  const { line, centreline } = base;
  if (centreline === null) throw new RangeError('workedAid: the line must exist');
  const changed = {
    ...line,
    tube: { ...line.tube, od: ask.od ?? line.tube.od },
    corners: line.corners.map((corner) => ({ ...corner, die: corner.die && { ...corner.die, ...ask.die } })),
    endA: { ...line.endA, ...ask.endA },
    endZ: { ...line.endZ, ...ask.endZ },
  };
  return { ...base, line: changed, plan: bendPlan(changed, centreline) };
}

export function plansOf(
  work: WorkedLine,
  from: 'A' | 'Z' = 'A',
): { readonly exact: BendPlan; readonly plan: BenchPlan } {
  const exact = bendPlan(work.line, work.centreline!, from);
  return { exact, plan: roundPlan(work.line, exact) };
}

export const lineOf = (items: readonly Item[], name: string): LineItem => {
  const found = byName(items, name).find((item) => item.kind === 'line');
  if (found?.kind !== 'line') throw new RangeError(`no line named ${name}`);
  return found;
};

export function byName(items: readonly Item[], name: string | RegExp): readonly Item[] {
  const is = (one: string): boolean => (typeof name === 'string' ? one === name : name.test(one));
  return items.flatMap((item) => [
    ...(item.name !== undefined && is(item.name) ? [item] : []),
    ...(item.kind === 'group' ? byName(item.items, name) : []),
  ]);
}

/** The boxes of everything drawn but words and the stamp, on the page, clipped where a group clips. */
export function inked(page: Page): readonly Box[] {
  return collect(
    page.items.filter((item) => item.name !== 'do-not-bend'),
    [0, 0],
  );
}

function collect(items: readonly Item[], [x, y]: Point): Box[] {
  return items.flatMap((item): Box[] => {
    if (item.kind === 'group') {
      const inner = collect(item.items, [x + item.at[0], y + item.at[1]]);
      if (!item.clip) return inner;
      const clip = { ...item.clip, x: item.clip.x + x + item.at[0], y: item.clip.y + y + item.at[1] };
      return inner.flatMap((box) => cut(box, clip));
    }
    return pointsOf(item).map(([px, py]) => ({ x: x + px, y: y + py, width: 0, height: 0 }));
  });
}

function cut(box: Box, clip: Box): Box[] {
  const on =
    box.x >= clip.x && box.x <= clip.x + clip.width && box.y >= clip.y && box.y <= clip.y + clip.height;
  return on ? [box] : [];
}

function pointsOf(item: Item): Point[] {
  if (item.kind === 'line') return [item.from, item.to];
  if (item.kind === 'rect')
    return [
      [item.x, item.y],
      [item.x + item.width, item.y + item.height],
    ];
  if (item.kind === 'circle')
    return [
      [item.centre[0] - item.radius, item.centre[1] - item.radius],
      [item.centre[0] + item.radius, item.centre[1] + item.radius],
    ];
  if (item.kind === 'path')
    return item.steps.flatMap((step): Point[] =>
      step[0] === 'Z' ? [] : [[step.at(-2) as number, step.at(-1) as number]],
    );
  return [];
}
