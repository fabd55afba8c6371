/**
 * What stays in the pump drain of the first try: ours beside a flood of small cubes, and the worst attitude beside
 * looking at a grid of attitudes, which bounds nothing. No assertions here: the tests of geometry have them.
 */
import { readFileSync } from 'node:fs';
import { trapped, upIn, worstTrapped } from '@runback/geometry';
import { workUp } from 'runback';
import { bench, describe } from 'vitest';
import { flooded } from '../../packages/geometry/test-kit/flood.ts';
import { FIRST_TRY } from '../helpers/run.ts';

const worked = workUp(readFileSync(FIRST_TRY, 'utf8')).lines.find(({ line }) => line.id === 'pump-drain')!;
const { axes, attitudes, tube } = worked.line;
const run = [{ pieces: worked.centreline!.pieces, bore: tube.bore }];
const rest = { up: axes.up, outlets: 'Z' } as const;
const slow = { iterations: 2, time: 0, warmupIterations: 0, warmupTime: 0 };
const STEPS = 40;

describe('liquid that stays in the pump drain, level', () => {
  bench('runback', () => void trapped(run, rest));
  bench('a flood of cubes of 0.5 mm', () => void flooded(run, { ...rest, cell: 0.5 }), slow);
});

describe('the most that stays in it in any attitude', () => {
  bench('runback, with its bound', () => {
    worstTrapped(run, { outlets: 'Z', axes, attitudes, of: 'liquid' });
  });
  bench('a grid of 41 by 41 attitudes, no bound', () => {
    if (attitudes.kind !== 'box') throw new Error('the demo gives ranges of pitch and roll');
    const [pitch, roll] = [attitudes.pitch, attitudes.roll].map(
      ([low, high]) =>
        (i: number) =>
          low + ((high - low) * i) / STEPS,
    ) as [(i: number) => number, (i: number) => number];
    for (let i = 0; i <= STEPS; i++)
      for (let j = 0; j <= STEPS; j++) trapped(run, { up: upIn(axes, pitch(i), roll(j)), outlets: 'Z' });
  });
});
