import { fromRows } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { type AskAid, byName, plansOf, workedAid } from '../test/aids.ts';
import { words } from '../test/texts.ts';
import { stairs } from '../test/worked.ts';
import { aidContext } from './aid-context.ts';
import { aidPages } from './aid-pages.ts';
import { planarRuns, stretchesOf } from './aid-stretches.ts';
import { samples } from './aid-view-fit.ts';
import type { GroupItem, LineItem, Page, PathItem, Point } from './types.ts';

const options = { checksum: 'a1b2c3d4', aids: ['side-views'] } as const;
const pages = (ask: AskAid): readonly Page[] => aidPages(workedAid(ask), options);
const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Two flat bends, then one out of their plane. */
const flatThenUp: AskAid['points'] = [
  [0, 0, 0],
  [100, 0, 0],
  [100, 100, 0],
  [200, 100, 0],
  [200, 100, 90],
];
/** A flat zigzag larger than a page. */
const large: AskAid['points'] = [
  [0, 0, 0],
  [120, 0, 0],
  [120, 420, 0],
  [520, 420, 0],
  [520, 300, 0],
];

describe('side views', () => {
  it('take together the bends that lie in one plane', () => {
    expect(planarRuns(plansOf(workedAid({ points: flatThenUp, radius: 36 })).plan.rows)).toEqual([
      [1, 2],
      [3],
    ]);
    expect(planarRuns([])).toEqual([]);
  });

  it('are full size: every arc at R ± OD/2, every centreline as long as the line', () => {
    const ask: AskAid = { points: flatThenUp, radius: 36 };
    const shown = pages(ask).flatMap((page) =>
      byName(page.items, /^view-(outer|inner)-\d/),
    ) as readonly PathItem[];
    expect(shown).toHaveLength(6);
    for (const path of shown) {
      const wanted = path.name!.includes('outer') ? 42 : 30;
      expect(path.steps.filter((step) => step[0] === 'A').every((step) => step[1] === wanted)).toBe(true);
      // A quarter bend: its ends are √2 radii apart.
      const ends = [path.steps[0]!, path.steps.at(-1)!].map(
        (step): Point => [step.at(-2) as number, step.at(-1) as number],
      );
      expect(apart(ends[0]!, ends[1]!)).toBeCloseTo(wanted * Math.SQRT2, 9);
    }
    const straights = pages(ask).flatMap((page) =>
      byName(page.items, 'view-straight-1-2'),
    ) as readonly LineItem[];
    // 64, 28 and 28 beside the bends; the first and the last are drawn to 60.
    expect(
      straights.map((one) => Math.round(apart(one.from, one.to) * 1e6) / 1e6).sort((a, b) => a - b),
    ).toEqual([28, 28, 60]);
  });

  it('lie as the line does: distances between far places are the distances in space', () => {
    const work = workedAid({ points: large, radius: 36 });
    const [stretch] = stretchesOf(aidContext(work, work.centreline!, options));
    const design = fromRows(plansOf(work).exact.rows, 0);
    const [first, last] = [stretch!.pieces[1]!, stretch!.pieces.at(-2)!];
    expect(apart(first.from, last.to)).toBeCloseTo(
      Math.hypot(...design.pieces[1]!.from.map((c, i) => c - design.pieces.at(-2)!.to[i]!)),
      6,
    );
    for (const piece of stretch!.pieces) expect(apart(samples(piece).at(-1)!, piece.to)).toBe(0);
  });

  it('are looked at from the side where the rest of the tube stands up', () => {
    for (const up of [90, -90]) {
      const points = [...flatThenUp.slice(0, 4), [200, 100, up] as const];
      const work = workedAid({ points, radius: 36 });
      const [flat] = stretchesOf(aidContext(work, work.centreline!, options));
      expect(flat!.below).toBe(0);
      expect(flat!.above).toBeCloseTo(90, 6);
      expect(words(pages({ points, radius: 36 })[0]!)).toContain(
        'The rest stands up to 90 mm above the paper.',
      );
    }
  });

  it('say what hangs over the edge when one leg goes up and another down', () => {
    const points: AskAid['points'] = [
      [0, 0, -90],
      [0, 0, 0],
      [150, 0, 0],
      [150, 150, 0],
      [300, 150, 0],
      [300, 150, 140],
    ];
    expect(pages({ points, radius: 36 }).map(words).join(' ')).toMatch(/Part goes \d+(\.\d)? mm BELOW it/);
  });

  it('larger than a page: sheets that show the same crosses at the same places of the drawing', () => {
    const all = pages({ points: large, radius: 36 });
    expect(all.length).toBeGreaterThan(2);
    const crosses = new Map<string, Point[]>();
    for (const page of all) {
      const view = byName(page.items, /^side-view-/)[0] as GroupItem;
      const over = page.items.find(
        (item): item is GroupItem => item.kind === 'group' && byName(item.items, /^cross-/).length > 0,
      )!;
      expect(over.at).toEqual(view.at);
      for (const cross of byName(over.items, /^cross-/) as readonly LineItem[]) {
        crosses.set(cross.name!, [...(crosses.get(cross.name!) ?? []), cross.from]);
        const [x, y] = cross.from;
        const { clip } = view;
        expect(
          x >= clip!.x && x + 8 <= clip!.x + clip!.width && y >= clip!.y && y <= clip!.y + clip!.height,
        ).toBe(true);
      }
    }
    expect(crosses.size).toBeGreaterThanOrEqual(4);
    for (const [name, places] of crosses) {
      expect(places, name).toHaveLength(2);
      expect(apart(places[0]!, places[1]!), name).toBeLessThan(1e-9);
    }
  });

  it('are limited in paper, and name what is left out', () => {
    const far = large.map(([x, y, z]) => [x * 6, y * 6, z] as const);
    const shown = pages({ points: far, radius: 36 });
    expect(shown).toHaveLength(1);
    expect(words(shown[0]!)).toContain('Not made: side views: Not drawn, too much paper: bends 1–3.');
    expect(pages({ points: stairs(25), radius: 36 }).length).toBeLessThanOrEqual(12);
  });
});
