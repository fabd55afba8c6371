import fc from 'fast-check';
import { parseJob } from 'runback';
import { describe, expect, it } from 'vitest';
import { idFrom } from './ids.ts';

const idOf = (name: string, taken: readonly string[] = []): string =>
  idFrom(name, { taken, otherwise: 'line' });

describe('idFrom', () => {
  it.each([
    ['Oil feed, left', 'oil-feed-left'],
    ['  3/8 in  return ', '3-8-in-return'],
    ['Kühlerrücklauf groß', 'kuhlerrucklauf-gross'],
    ['--.x.--', 'x'],
    ['日本', 'line'],
    ['', 'line'],
    ['constructor', 'constructor-2'],
  ])('%j becomes %s', (name, id) => expect(idOf(name)).toBe(id));

  it('counts up past those that are taken', () => {
    expect(idOf('Vent', ['vent'])).toBe('vent-2');
    expect(idOf('Vent', ['vent', 'vent-2'])).toBe('vent-3');
  });

  it('makes an id that a job takes of any name, and never one twice', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'binary', maxLength: 90 }), { minLength: 1, maxLength: 4 }),
        (names) => {
          const ids: string[] = [];
          for (const name of names) ids.push(idOf(name, ids));
          const lines = ids.map((id) => ({ id, tube: 't', points: [{ at: [0, 0, 0] }, { at: [0, 0, 9] }] }));
          const tubes = { t: { material: 'copper', od: 6, wall: 1 } };
          const job = { format: 'runback-job', version: 1, units: 'mm', tubes, lines };
          expect(parseJob(JSON.stringify(job)).written.lines.map(({ id }) => id)).toEqual(ids);
        },
      ),
      { seed: 4, numRuns: 30 },
    );
  });
});
