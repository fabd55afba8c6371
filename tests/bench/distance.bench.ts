/**
 * A 60-bend line against 100 solids, for the same answer: ours, brute-force sampling at 0.1 mm, and the distance of
 * an outside boundary-representation kernel. Seeded; no assertions here, `tests/outside/kernel.test.ts` has them.
 */
import { pathToSolid, pointAt, signedDistance } from '@runback/geometry';
import { bench, describe } from 'vitest';
import { randomSolids } from '../helpers/random-job.ts';
import { randomLine, seeded } from '../helpers/random-line.ts';
import { loadKernel } from '../outside/kernel.ts';

const random = seeded(60);
const line = randomLine(random, { bends: 60 });
const solids = randomSolids(random, 100);
const kernel = await loadKernel();
const STEP = 0.1;
const slow = { iterations: 2, time: 0, warmupIterations: 0, warmupTime: 0 };

describe('60 bends against 100 solids', () => {
  bench('runback', () => {
    for (const solid of solids) pathToSolid(line.pieces, solid);
  });
  bench(
    'sampling at 0.1 mm',
    () => {
      const steps = Math.ceil(line.length / STEP);
      const points = Array.from({ length: steps + 1 }, (_, i) =>
        pointAt(line, Math.min(line.length, i * STEP)),
      );
      for (const solid of solids) {
        let least = Number.POSITIVE_INFINITY;
        for (const point of points) least = Math.min(least, signedDistance(solid, point));
      }
    },
    slow,
  );
  bench(
    'outside kernel',
    () => {
      for (const solid of solids) kernel.toSolid(line.pieces, solid);
    },
    slow,
  );
});
