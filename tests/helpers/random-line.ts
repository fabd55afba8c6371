/** Seeded lines for tests and benchmarks. */
import { addScaled, type Centreline, fromRows, type Row, type Vec3 } from '@runback/geometry';

/** A small seeded generator (mulberry32): the same numbers on every machine. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface RandomLine {
  readonly bends: number;
  /** Longest straight, mm. */
  readonly straight?: number;
}

/** A line of straights up to 120 mm and bends of 10–140° on 15–60 mm, its end A somewhere within 200 mm of the origin. */
export function randomLine(random: () => number, options: RandomLine): Centreline {
  const { bends, straight = 120 } = options;
  const rows: Row[] = Array.from({ length: bends }, (_, i) => ({
    straightBefore: straight * random(),
    turn: i === 0 ? null : Math.PI * (1 - 2 * random()),
    angle: (10 + 130 * random()) * (Math.PI / 180),
    radius: 15 + 45 * random(),
  }));
  const origin = addScaled([-200, -200, -200], [random(), random(), random()] as Vec3, 400);
  return fromRows(rows, straight * random(), { origin, direction: [1, 0, 0], normal: [0, 0, 1] });
}
