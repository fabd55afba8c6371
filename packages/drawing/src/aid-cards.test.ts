import { toDegrees } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { type AskAid, byName, workedAid } from '../test/aids.ts';
import { words, wordsIn } from '../test/texts.ts';
import { dipstick } from '../test/worked.ts';
import { aidPages } from './aid-pages.ts';
import type { Page, PathItem, Point } from './types.ts';

const pages = (ask: AskAid): readonly Page[] =>
  aidPages(workedAid(ask), { checksum: 'a1b2c3d4', aids: ['cards'] });

/** The edge of a card: leg, arc, leg, read from its path. */
function edgeOf(
  page: Page,
  bends: string,
): { radius: number; turn: number; legs: readonly [number, number]; points: readonly Point[] } {
  const path = byName(page.items, `card-${bends}`)[0] as PathItem;
  const arc = path.steps[2]!;
  if (arc[0] !== 'A') throw new Error('no arc');
  const points = path.steps.map((step): Point => [step.at(-2) as number, step.at(-1) as number]);
  const [a, b, c, d] = points as [Point, Point, Point, Point];
  const direction = (from: Point, to: Point): number => Math.atan2(to[1] - from[1], to[0] - from[0]);
  return {
    radius: arc[1],
    turn: toDegrees(direction(c, d) - direction(a, b)),
    legs: [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(d[0] - c[0], d[1] - c[1])],
    points,
  };
}

/** A flat line of these bends, each beside straights of 200. */
function bendsOf(degrees: readonly number[], radius: number): AskAid['points'] {
  let [x, y, heading] = [0, 0, 0];
  const points: [number, number, number][] = [[0, 0, 0]];
  for (const [i, bend] of degrees.entries()) {
    const setback = radius * Math.tan((bend * Math.PI) / 360);
    const before = i === 0 ? 0 : radius * Math.tan(((degrees[i - 1] ?? 0) * Math.PI) / 360);
    const leg = 200 + setback + before;
    [x, y] = [x + leg * Math.cos(heading), y + leg * Math.sin(heading)];
    points.push([x, y, 0]);
    heading += ((i % 2 === 0 ? 1 : -1) * bend * Math.PI) / 180;
  }
  const last = 200 + radius * Math.tan(((degrees.at(-1) ?? 0) * Math.PI) / 360);
  return [...points, [x + last * Math.cos(heading), y + last * Math.sin(heading), 0]];
}

describe('angle cards', () => {
  it('have the inner profile of the finished bend: R − OD/2, tangent legs, the angle wanted', () => {
    const [page] = pages({ points: bendsOf([30, 90, 120], 36), radius: 36 });
    for (const [bends, degrees] of [
      ['1', 30],
      ['2', 90],
      ['3', 120],
    ] as const) {
      const { radius, turn, legs, points } = edgeOf(page!, bends);
      expect(radius).toBe(30);
      expect(turn).toBeCloseTo(degrees, 9);
      expect(legs[0]).toBeCloseTo(30, 9);
      expect(legs[1]).toBeCloseTo(30, 9);
      // Tangent: the chord of an arc of that radius and angle joins the legs.
      const [, b, c] = points as [Point, Point, Point];
      expect(Math.hypot(c[0] - b[0], c[1] - b[1])).toBeCloseTo(
        2 * 30 * Math.sin((degrees * Math.PI) / 360),
        9,
      );
    }
  });

  it('are made once for bends that come out alike', () => {
    const [page] = pages({ points: bendsOf([45, 90, 45.1], 36), radius: 36 });
    expect(byName(page!.items, /^card-\d/).map((item) => item.name)).toEqual(['card-1-3', 'card-2']);
    expect(wordsIn(page!, 'card 1-3')).toBe('BENDS 1, 3: 45°');
    expect(wordsIn(page!, 'card 2 words')).toContain(
      'opening 90° · R 36 · OD 12 · thick edge INSIDE the bend',
    );
  });

  it('go outside where the inside is too tight to cut: R + OD/2', () => {
    const [page] = pages({ points: bendsOf([60], 14), radius: 14, od: 24 });
    expect(edgeOf(page!, '1').radius).toBe(26);
    expect(wordsIn(page!, 'card 1 words')).toContain('OUTSIDE');
  });

  it('have legs no longer than the straights beside the bend', () => {
    const [page] = pages({ points: dipstick.map(([x, y, z], i) => (i === 0 ? [x, y, 92] : [x, y, z])) });
    const straight = workedAid({ points: dipstick }).centreline!.pieces[0]!.length - 92;
    expect(straight).toBeLessThan(30);
    expect(edgeOf(page!, '1').legs[0]).toBeCloseTo(straight, 6);
  });

  it('leave out what a card cannot tell or a page cannot hold, and say so', () => {
    expect(words(pages({ points: bendsOf([3, 90], 36), radius: 36 })[0]!)).toContain(
      'No card for bend 1: under 5° a card tells nothing.',
    );
    const large = words(pages({ points: bendsOf([90, 20], 300), radius: 300 })[0]!);
    expect(large).toContain('No card for bend 1: larger than the page.');
    expect(
      words(
        pages({
          points: [
            [0, 0, 0],
            [90, 0, 0],
          ],
        })[0]!,
      ),
    ).toContain('Not made: angle cards: this line has no bend.');
  });
});
