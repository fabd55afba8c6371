/** What the pages behind the first are drawn from, and lines to try them with. */
import { type BenchPlan, bendPlan, roundPlan } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { Vec3 } from '@runback/geometry';
import fc from 'fast-check';

export interface ContextAsk {
  readonly from?: 'A' | 'Z';
  readonly units?: 'mm' | 'in';
  readonly paper?: 'a4' | 'letter';
  readonly projection?: 'first' | 'third';
}

export interface TestContext {
  readonly worked: WorkedLine;
  readonly plan: BenchPlan;
  readonly options: ContextAsk & { readonly checksum: string };
  readonly page: number;
  readonly pages: number;
}

export function contextOf(worked: WorkedLine, ask: ContextAsk): TestContext {
  const { line, centreline } = worked;
  if (!centreline) throw new RangeError('contextOf: the line must exist');
  const unit = ask.units ?? line.units;
  const plan = roundPlan(line, bendPlan(line, centreline, ask.from ?? 'A'), { unit });
  return { worked, plan, options: { ...ask, checksum: 'a1b2c3d4' }, page: 2, pages: 9 };
}

/** Points whose corners always fit a radius of 20 mm, 0 to 25 bends, turning every which way. */
export const randomPoints: fc.Arbitrary<readonly Vec3[]> = fc
  .array(
    fc.tuple(
      fc.integer({ min: 90, max: 260 }),
      fc.integer({ min: -1, max: 1 }),
      fc.integer({ min: -1, max: 1 }),
    ),
    { minLength: 1, maxLength: 26 },
  )
  .map((steps) => {
    let at: Vec3 = [0, 0, 0];
    const points: Vec3[] = [at];
    steps.forEach(([length, a, b], i) => {
      const [x, y, z] = [length, a * 60, b * 60];
      const moves: readonly Vec3[] = [
        [x, y, z],
        [y, x, z],
        [z, y, x],
      ];
      const step = moves[i % 3]!;
      at = [at[0] + step[0], at[1] + step[1], at[2] + step[2]];
      points.push(at);
    });
    return points;
  });
