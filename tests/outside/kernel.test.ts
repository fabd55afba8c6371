/** Lengths and distances against an outside boundary-representation kernel; see kernel.ts. */
import {
  type Centreline,
  fillet,
  pathToPath,
  pathToSolid,
  rotate,
  type Solid,
  unit,
  type Vec3,
} from '@runback/geometry';
import { beforeAll, describe, expect, it } from 'vitest';
import { randomLine, seeded } from '../helpers/random-line.ts';
import { type Kernel, loadKernel } from './kernel.ts';

/** The kernel works to its own precision of 1e-7 mm. */
const KERNEL_MM = 2e-6;

const random = seeded(20261125);
const between = (low: number, high: number): number => low + (high - low) * random();
const somewhere = (): Vec3 => [between(-300, 300), between(-300, 300), between(-300, 300)];
const someway = (): Vec3 => unit([between(-1, 1), between(-1, 1), between(-1, 1) || 1]);

function someSolid(kind: 'sphere' | 'cylinder' | 'box'): Solid {
  const centre = somewhere();
  if (kind === 'sphere') return { kind, centre, radius: between(5, 60) };
  const x = someway();
  if (kind === 'cylinder') {
    const long = between(20, 200);
    return {
      kind,
      from: centre,
      to: [centre[0] + x[0] * long, centre[1] + x[1] * long, centre[2] + x[2] * long],
      radius: between(5, 60),
    };
  }
  const y = unit([-x[1], x[0], 0]);
  const z: Vec3 = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  const roll = between(0, 3);
  return {
    kind,
    centre,
    half: [between(5, 60), between(5, 60), between(5, 60)],
    axes: [x, rotate(y, x, roll), rotate(z, x, roll)],
  };
}

describe('against an outside kernel', () => {
  let kernel: Kernel;
  const lines: Centreline[] = Array.from({ length: 12 }, () => randomLine(random, { bends: 4 }));

  beforeAll(async () => {
    kernel = await loadKernel();
  });

  it('developed length', () => {
    for (const { pieces, length } of lines)
      expect(Math.abs(kernel.length(pieces) - length)).toBeLessThan(1e-9 * length);
  });

  for (const kind of ['sphere', 'cylinder', 'box'] as const)
    it(`distance to a ${kind}`, () => {
      let clear = 0;
      for (const { pieces } of lines)
        for (let i = 0; i < 4; i++) {
          const solid = someSolid(kind);
          const ours = pathToSolid(pieces, solid).distance;
          const theirs = kernel.toSolid(pieces, solid);
          if (ours > 0) {
            clear += 1;
            expect(Math.abs(ours - theirs), JSON.stringify(solid)).toBeLessThan(KERNEL_MM);
          } else expect(theirs).toBeLessThan(KERNEL_MM);
        }
      expect(clear).toBeGreaterThan(10);
    });

  it('distance from line to line', () => {
    for (let i = 0; i < lines.length; i++)
      for (let j = i + 1; j < lines.length; j += 3) {
        const [a, b] = [lines[i]!.pieces, lines[j]!.pieces];
        expect(Math.abs(pathToPath(a, b).distance - kernel.between(a, b))).toBeLessThan(KERNEL_MM);
      }
  });

  it('the judge sees a planted fault: a radius one part in a thousand off', () => {
    const bent = (radius: number): Centreline => {
      const made = fillet([
        { at: [0, 0, 0], radius: 0 },
        { at: [200, 0, 0], radius },
        { at: [200, 200, 0], radius: 0 },
      ]);
      if (!made.ok) throw new Error('fixture does not fit');
      return made.centreline;
    };
    expect(Math.abs(kernel.length(bent(60).pieces) - bent(60.06).length)).toBeGreaterThan(1e-9 * 400);
  });
});
