import { cross, dot, fromRows, type MachineAxes, type Vec3 } from '@runback/geometry';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contextOf, randomPoints } from '../test/context.ts';
import { named, texts, words, wordsIn } from '../test/texts.ts';
import { dipstick, stairs, worked } from '../test/worked.ts';
import { layoutFaults, textBoxes } from './boxes.ts';
import { touches } from './page-labels.ts';
import { pageOf } from './page-paper.ts';
import { isometric, oblique, type Projection, project } from './picture-project.ts';
import { crossings } from './picture-tube.ts';
import type { Box, Page, Point } from './types.ts';
import { viewBodies } from './views-page.ts';
import { scaleWords, standardScale } from './views-scale.ts';
import { projectionSymbol } from './views-symbol.ts';
import { lookFrom, viewPlaces } from './views-three.ts';

const AXES: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
/** A machine whose nose points along −Y of the job. */
const TURNED: MachineAxes = { forward: [0, -1, 0], left: [1, 0, 0], up: [0, 0, 1] };

const on = (v: Vec3, projection: Projection): Point => project(v, projection).at;

describe('the projections', () => {
  it('isometric: the axes at 120° to each other, two of them 30° to level, all equally long', () => {
    for (const axes of [AXES, TURNED]) {
      const projection = isometric(axes);
      const [forward, left, up] = [axes.forward, axes.left, axes.up].map((axis) => on(axis, projection));
      for (const arm of [forward, left, up]) expect(Math.hypot(...arm!)).toBeCloseTo(1, 12);
      // Paper y runs down: forward goes down to the left, left down to the right, up up.
      expect(forward![0]).toBeCloseTo(-Math.cos(Math.PI / 6), 12);
      expect(forward![1]).toBeCloseTo(0.5, 12);
      expect(left![0]).toBeCloseTo(Math.cos(Math.PI / 6), 12);
      expect(left![1]).toBeCloseTo(0.5, 12);
      expect(up![0]).toBeCloseTo(0, 12);
      expect(up![1]).toBeCloseTo(-1, 12);
    }
  });

  it('are never mirrored: right × up on the paper looks back at the looker', () => {
    const all = [
      isometric(AXES),
      oblique(0.5, 38),
      ...(['left', 'above', 'front'] as const).map((side) => lookFrom(side, TURNED)),
    ];
    for (const { right, up, into } of all) expect(dot(cross(right, up), into)).toBeLessThan(0);
  });

  it('what lies along the sight is one place on the paper, and deeper', () => {
    for (const projection of [isometric(AXES), oblique(0.5, 38), lookFrom('front', AXES)]) {
      const spot = project(projection.into, projection);
      expect(Math.hypot(...spot.at)).toBeLessThan(0.000001);
      expect(spot.depth).toBeCloseTo(1, 12);
    }
  });

  it('from the left forward is left, from above too, from the front the left side is on the right', () => {
    for (const axes of [AXES, TURNED]) {
      expect(on(axes.forward, lookFrom('left', axes))[0]).toBeCloseTo(-1, 12);
      expect(on(axes.up, lookFrom('left', axes))[1]).toBeCloseTo(-1, 12);
      expect(on(axes.forward, lookFrom('above', axes))[0]).toBeCloseTo(-1, 12);
      expect(on(axes.left, lookFrom('above', axes))[1]).toBeCloseTo(1, 12);
      expect(on(axes.left, lookFrom('front', axes))[0]).toBeCloseTo(1, 12);
      expect(on(axes.up, lookFrom('front', axes))[1]).toBeCloseTo(-1, 12);
    }
  });
});

describe('first and third angle', () => {
  const area = { name: 'area', x: 0, y: 0, width: 180, height: 120 };
  const layout = { column: [90, 50], row: [60, 40] } as const;

  it('put the views where ISO 5456-2 has them', () => {
    const first = viewPlaces(layout, { area, angle: 'first' });
    expect(first.above.y).toBeGreaterThan(first.left.y);
    expect(first.above.x).toBe(first.left.x);
    expect(first.front.x).toBeGreaterThan(first.left.x);
    expect(first.front.y).toBe(first.left.y);
    const third = viewPlaces(layout, { area, angle: 'third' });
    expect(third.above.y).toBeLessThan(third.left.y);
    expect(third.front.x).toBeLessThan(third.left.x);
    expect(third.front.y).toBe(third.left.y);
  });

  it('have the symbol by the same rule: the view from the left of the cone shows both circles', () => {
    for (const angle of ['first', 'third'] as const) {
      const items = projectionSymbol([0, 0], angle);
      const [cone] = items.filter((item) => item.name === 'symbol-cone');
      const circles = items.flatMap((item) =>
        item.name === 'symbol-circle' && item.kind === 'circle' ? [item] : [],
      );
      if (cone?.kind !== 'path') throw new Error('no cone');
      const corners = cone.steps.flatMap((s): Point[] =>
        s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]]] : [],
      );
      const left = Math.min(...corners.map(([x]) => x));
      const right = Math.max(...corners.map(([x]) => x));
      const tall = (at: number): number => {
        const ys = corners.filter(([x]) => x === at).map(([, y]) => y);
        return Math.max(...ys) - Math.min(...ys);
      };
      // Seen from the left both circles are in sight only when the small end is on the left.
      expect(tall(left)).toBeLessThan(tall(right));
      expect(circles.map((c) => c.radius * 2).sort()).toEqual([tall(left), tall(right)].sort());
      for (const circle of circles)
        if (angle === 'first') expect(circle.centre[0]).toBeGreaterThan(right);
        else expect(circle.centre[0]).toBeLessThan(left);
    }
  });

  it('follow the units unless the page says otherwise', () => {
    const said = (units: 'mm' | 'in', projection?: 'first' | 'third'): string =>
      wordsIn(pagesOf({ units, ...(projection ? { projection } : {}) })[0]!, 'views words');
    expect(said('mm')).toContain('first-angle');
    expect(said('in')).toContain('third-angle');
    expect(said('mm', 'third')).toContain('third-angle');
  });
});

function pagesOf(options: Parameters<typeof contextOf>[1]): readonly Page[] {
  const context = contextOf(worked({ points: dipstick }), options);
  return viewBodies(context).map((body) => pageOf(context, body));
}

describe('the scales', () => {
  it('are those of ISO 5455', () => {
    const series = [10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100, 1 / 200, 1 / 500, 1 / 1000];
    for (const scale of series) expect(standardScale((s) => s <= scale)).toBeCloseTo(scale, 12);
    expect(standardScale((s) => s < 0.39)).toBeCloseTo(0.2, 12);
    expect([2, 1, 0.5, 0.2, 0.002].map(scaleWords)).toEqual(['2:1', '1:1', '1:2', '1:5', '1:500']);
  });
});

describe('a view', () => {
  it('is true to the scale it names', () => {
    const page = pagesOf({})[0]!;
    expect(wordsIn(page, 'views words')).toContain('Three views 1:10');
    const [tube] = named(page.items, 'tube').slice(1);
    if (tube?.kind !== 'path') throw new Error('no tube');
    const xs = tube.steps.flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [s[1]] : []));
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(37, 9);
  });

  it('has the overall dimensions of the line', () => {
    const page = pagesOf({})[0]!;
    const figures = texts(page)
      .filter((t) => t.name === 'dimension')
      .map((t) => t.text);
    // 60…430 forward, 130…250 to the left, 0…440 up.
    expect(figures.sort()).toEqual(['120', '120', '370', '370', '440', '440']);
  });

  it('names both ends and every bend, from Z with both numbers', () => {
    const context = contextOf(worked({ points: stairs(4), radius: 36 }), { from: 'Z' });
    const said = words(pageOf(context, viewBodies(context)[0]!));
    for (const name of ['1 (B4)', '2 (B3)', '3 (B2)', '4 (B1)']) expect(said.split(name)).toHaveLength(5);
  });

  it('leaves out dimensions where the line does not reach', () => {
    const context = contextOf(
      worked({
        points: [
          [0, 0, 0],
          [200, 0, 0],
        ],
      }),
      {},
    );
    const figures = texts(pageOf(context, viewBodies(context)[0]!)).filter((t) => t.name === 'dimension');
    expect(figures.map((t) => t.text)).toEqual(['200', '200']);
  });

  it('draws the nearer of two crossing stretches over the farther', () => {
    const spots = [
      { at: [0, 0], depth: 0 },
      { at: [20, 0], depth: 0 },
      { at: [20, 10], depth: 9 },
      { at: [10, 10], depth: 9 },
      { at: [10, -10], depth: 9 },
    ] as const;
    const [over, ...none] = crossings(spots, 2);
    expect(none).toEqual([]);
    // The stretch along y = 0 is the nearer one.
    expect(over!.every(([, y]) => y === 0)).toBe(true);
    expect(over!.some(([x]) => x < 10) && over!.some(([x]) => x > 10)).toBe(true);
  });
});

/** Fault: a text of a view that stands on the tube of that view. */
function onTube(page: Page): readonly string[] {
  const tubes = named(page.items, 'tube').flatMap((item) => {
    if (item.kind !== 'path') return [];
    const points = item.steps.flatMap((s): Point[] => (s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]]] : []));
    return points.slice(1).map((to, i) => ({ from: points[i]!, to, half: item.stroke!.width / 2 }));
  });
  const grown = (box: Box, by: number): Box => ({
    x: box.x - by,
    y: box.y - by,
    width: box.width + 2 * by,
    height: box.height + 2 * by,
  });
  return textBoxes(page)
    .filter(({ item }) => item.zone === 'isometric' || item.zone.startsWith('view '))
    .filter((box) => tubes.some((tube) => touches(grown(box, tube.half), tube.from, tube.to)))
    .map((box) => box.item.text);
}

describe('any line', () => {
  it('has no text on the tube, on another text or out of its place, on either paper', () => {
    fc.assert(
      fc.property(
        randomPoints,
        fc.constantFrom('A', 'Z'),
        fc.constantFrom('a4', 'letter'),
        fc.constantFrom('mm', 'in'),
        (points, from, paper, units) => {
          const context = contextOf(worked({ points, radius: 20 }), { from, paper, units });
          for (const body of viewBodies(context)) {
            const page = pageOf(context, body);
            expect(layoutFaults(page)).toEqual([]);
            expect(onTube(page)).toEqual([]);
          }
        },
      ),
      { seed: 42, numRuns: 40 },
    );
  });

  it('would be found with a text on the tube', () => {
    const page = pagesOf({})[0]!;
    const [tube] = named(page.items, 'tube');
    if (tube?.kind !== 'path' || tube.steps[0]?.[0] !== 'M') throw new Error('no tube');
    const [, x, y] = tube.steps[0];
    const label = {
      kind: 'text',
      x,
      y,
      cap: 2,
      weight: 'regular',
      anchor: 'middle',
      fill: 0,
      text: 'ON',
      zone: 'isometric',
    } as const;
    expect(onTube({ ...page, items: [...page.items, label] })).toEqual(['ON']);
  });

  it('as small as 5 mm or ten kilometres long, or straight, still has its page', () => {
    const quarter = Math.PI / 2;
    for (const size of [5, 10_000_000]) {
      const centreline = fromRows(
        [{ straightBefore: size / 4, turn: null, angle: quarter, radius: size / 4 }],
        size / 2,
      );
      const context = contextOf({ ...worked({ points: dipstick }), centreline }, {});
      expect(layoutFaults(pageOf(context, viewBodies(context)[0]!))).toEqual([]);
    }
  });
});
