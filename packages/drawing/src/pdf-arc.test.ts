import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cubic, cubics } from './pdf-arc.ts';
import type { Point } from './types.ts';

const at = ([x0, y0]: Point, [x1, y1, x2, y2, x3, y3]: Cubic, t: number): Point => {
  const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
  return [a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3];
};

/** Points along the curves, closely. */
function along(from: Point, curves: readonly Cubic[]): Point[] {
  let start = from;
  return curves.flatMap((curve) => {
    const points = Array.from({ length: 40 }, (_, i) => at(start, curve, (i + 1) / 40));
    start = [curve[4], curve[5]];
    return points;
  });
}

describe('cubics', () => {
  it('stay within 1e-4 mm of the circle, go the way asked, and end on the point asked', () => {
    const turn = fc.double({ min: 0.01, max: 2 * Math.PI - 0.01, noNaN: true });
    const given = fc.record({
      radius: fc.double({ min: 0.05, max: 400, noNaN: true }),
      start: fc.double({ min: -7, max: 7, noNaN: true }),
      turn,
      clockwise: fc.boolean(),
    });
    fc.assert(
      fc.property(given, ({ radius, start, turn: swept, clockwise }) => {
        const centre: Point = [100, 150];
        const on = (angle: number): Point => [
          centre[0] + radius * Math.cos(angle),
          centre[1] + radius * Math.sin(angle),
        ];
        // y down: a growing angle goes clockwise on the page.
        const [from, to] = [on(start), on(start + (clockwise ? swept : -swept))];
        // At a half turn either arc is right, and a last bit decides.
        fc.pre(Math.abs(swept - Math.PI) > 0.01);
        const points = along(from, cubics(from, { radius, large: swept > Math.PI, clockwise, to }));
        const off = points.map(([x, y]) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius));
        expect(Math.max(...off)).toBeLessThan(0.0001);
        expect(points.at(-1)).toEqual(to);
        const middle = on(start + ((clockwise ? 1 : -1) * swept) / 2);
        const nearest = Math.min(...points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])));
        expect(nearest).toBeLessThan(radius * 0.05);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('follow SVG where its rules are odd: a short radius grows, nowhere is no arc', () => {
    const points = along([0, 0], cubics([0, 0], { radius: 1, large: false, clockwise: true, to: [10, 0] }));
    for (const [x, y] of points) expect(Math.hypot(x - 5, y)).toBeCloseTo(5, 4);
    // Clockwise from left to right is over the top.
    expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(-5, 4);
    expect(cubics([3, 3], { radius: 5, large: true, clockwise: true, to: [3, 3] })).toEqual([]);
  });

  it('of a large radius take more pieces, those of a small one few', () => {
    const quarter = (radius: number): number =>
      cubics([radius, 0], { radius, large: false, clockwise: true, to: [0, radius] }).length;
    expect(quarter(0.1)).toBe(1);
    expect(quarter(300)).toBeGreaterThan(2);
    expect(quarter(300)).toBeLessThan(8);
  });
});
