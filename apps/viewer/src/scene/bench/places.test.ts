import { readFileSync } from 'node:fs';
import {
  type BenchPlan,
  bendPlan,
  cross,
  distance,
  dot,
  norm,
  roundPlan,
  sub,
  type Vec3,
  workUp,
} from 'runback';
import { describe, expect, it } from 'vitest';
import { type BenchPlaces, benchPlaces, dashes, inside } from './places.ts';
import { eyeFor, lookFrom } from './view.ts';

const JOB = workUp(
  readFileSync(new URL('../../../../../docs/examples/tender-7/tender-7.job.json', import.meta.url), 'utf8'),
);

interface Case {
  readonly name: string;
  readonly plan: BenchPlan;
  readonly places: BenchPlaces;
  readonly index: number;
}

const CASES: readonly Case[] = JOB.lines.flatMap(({ line, centreline }) =>
  (['A', 'Z'] as const).flatMap((from) => {
    const plan = roundPlan(line, bendPlan(line, centreline!, from));
    return plan.rows.map((_, index) => ({
      name: `${line.id} from ${from}, bend ${index + 1}`,
      plan,
      index,
      places: benchPlaces({ plan, index, od: line.tube.od }),
    }));
  }),
);

/** Which way a thing moves over the top of the tube. */
const overTheTop = ({ shaft, tip }: BenchPlaces['arrows'][number]): Vec3 => sub(tip, shaft[12]!);

describe('the picture of a bend', () => {
  it.each(CASES.map((one) => [one.name, one] as const))('shows what the words say: %s', (_, one) => {
    const { plan, index, places } = one;
    const { words } = plan.rows[index]!;
    expect(places.arrows.length).toBe(words.direction === null ? (words.goDeg === 0 ? 0 : 2) : 1);
    const [arrow] = places.arrows;
    if (words.direction === 'away') expect(overTheTop(arrow!)[1]).toBeGreaterThan(0);
    if (words.direction === 'toward') expect(overTheTop(arrow!)[1]).toBeLessThan(0);
    if (words.direction === 'clockwise' || words.direction === 'anticlockwise') {
      // Seen from START (all of these are), clockwise is right-handed about the travel away from START.
      const turning = dot(cross(arrow!.shaft[0]!, arrow!.shaft[3]!), places.pose.travel);
      expect(turning > 0).toBe(words.direction === 'clockwise');
    }
    if (words.confirmation === 'finished leg rises') expect(risen(places)).toBeGreaterThan(0);
    if (words.confirmation === 'finished leg drops') expect(risen(places)).toBeLessThan(0);
  });

  it('has every kind of words among its cases', () => {
    const said = new Set(CASES.map(({ plan, index }) => plan.rows[index]!.words.direction));
    expect([...said]).toEqual(expect.arrayContaining([null, 'away', 'toward', 'clockwise']));
  });

  it.each(CASES.map((one) => [one.name, one] as const))('lies where the bend begins: %s', (_, { places }) => {
    expect(norm(places.after.at(-1)!.at(-1)!)).toBeLessThan(0.001);
    expect(distance(places.ghost[0]![0]!, [0, 0, 0])).toBeLessThan(0.001);
    // Only the straight in the tool is drawn shorter, and only where it is long.
    if (places.after.length === 2) {
      const gap = distance(places.after[0]!.at(-1)!, places.after[1]![0]!);
      expect(gap).toBeCloseTo(places.od * 1.2, 6);
    }
  });

  it.each(CASES.map((one) => [one.name, one] as const))(
    'is seen whole from the operator: %s',
    (_, { places }) => {
      expect(lookFrom(places)[1]).toBeLessThan(0);
      expect(lookFrom(places)[2]).toBeGreaterThan(0);
      const lens = { angle: 0.3, aspect: 1.2, margin: 0.1 };
      const { from, target } = eyeFor(places, lens);
      const ahead = sub(target, from);
      const tall = Math.tan(lens.angle / 2);
      for (const place of places.frame) {
        const off = sub(place, from);
        const deep = dot(off, ahead) / norm(ahead);
        const aside = Math.sqrt(Math.max(0, dot(off, off) - deep * deep));
        expect(deep).toBeGreaterThan(0);
        expect(aside).toBeLessThan(deep * tall * Math.hypot(1, lens.aspect));
      }
    },
  );
});

/** How far the finished leg's outermost place went up. */
function risen({ before, after }: BenchPlaces): number {
  const out = (place: Vec3): number => Math.hypot(place[1], place[2]);
  const [was, is] = [before!.flat(), after.flat()];
  const farthest = was.reduce((best, place, i) => (out(place) > out(was[best]!) ? i : best), 0);
  return is[farthest]![2] - was[farthest]![2];
}

describe('traces', () => {
  const ALONG: readonly Vec3[] = [
    [0, 0, 0],
    [10, 0, 0],
    [30, 0, 0],
  ];

  it('are cut where they leave', () => {
    const kept = inside(ALONG, 15);
    expect(kept.length).toBe(3);
    expect(kept[2]![0]).toBeCloseTo(15, 6);
    expect(inside(ALONG, 40)).toEqual(ALONG);
  });

  it('are dashed evenly', () => {
    const found = dashes(ALONG, 5);
    const lengths = found.map((dash) => distance(dash[0]!, dash.at(-1)!));
    for (const length of lengths) expect(length).toBeCloseTo(5.5, 6);
    expect(found[1]![0]![0]).toBeCloseTo(11, 6);
  });
});
