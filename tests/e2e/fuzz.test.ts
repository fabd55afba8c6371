/** Damaged job files: every one is either worked up or refused with its places; nothing else may come out. */
import { readFileSync } from 'node:fs';
import { JobError, workUp } from 'runback';
import { bendsCsv, report } from 'runback/exchange';
import { aidPages, sheetPages } from 'runback/sheet';
import { describe, expect, it } from 'vitest';
import { jobText } from '../../apps/cli/src/check-text.ts';
import { unsayable } from '../../packages/exchange/test/numbers.ts';
import { seeded } from '../helpers/random-line.ts';
import { TENDER } from '../helpers/run.ts';

const SEED = 7;
const RUNS = 250;
/** Every so many runs the whole sheet is drawn, else the table alone. */
const WHOLE = 25;
const text = readFileSync(TENDER, 'utf8');

/** Damage as people and disks do it: a digit changed, a sign lost, a piece cut out or doubled, a word swapped. */
function damage(random: () => number): string {
  const at = Math.floor(random() * text.length);
  const size = 1 + Math.floor(random() * 40);
  switch (Math.floor(random() * 6)) {
    case 0:
      return text.slice(0, at) + text.slice(at + size);
    case 1:
      return text.slice(0, at) + text.slice(at, at + size) + text.slice(at);
    case 2:
      return text.slice(0, at) + String.fromCharCode(Math.floor(random() * 0x300)) + text.slice(at + 1);
    case 3: {
      const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
      const pick = numbers[Math.floor(random() * numbers.length)]!;
      const other = ['0', '-1', '1e9', '1e-9', '999', '"5 mm"', 'null', '-0', '0.5'][
        Math.floor(random() * 9)
      ]!;
      return text.slice(0, pick.index) + other + text.slice(pick.index + pick[0].length);
    }
    case 4: {
      const words = [...text.matchAll(/"[^"\n]*"/g)];
      const [a, b] = [
        words[Math.floor(random() * words.length)]!,
        words[Math.floor(random() * words.length)]!,
      ];
      return text.slice(0, a.index) + b[0] + text.slice(a.index + a[0].length);
    }
    default: {
      const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
      const pick = numbers[Math.floor(random() * numbers.length)]!;
      return (
        text.slice(0, pick.index) +
        String(Math.round((random() - 0.5) * 2000)) +
        text.slice(pick.index + pick[0].length)
      );
    }
  }
}

describe(`damaged jobs, seed ${SEED}`, () => {
  it('are worked up whole or refused with places, in good time', () => {
    const random = seeded(SEED);
    let refused = 0;
    let worked = 0;
    for (let i = 0; i < RUNS; i++) {
      const broken = damage(random);
      try {
        const job = workUp(broken, { file: 'broken.job.json' });
        expect(unsayable(report(job))).toEqual([]);
        const told = jobText(job, { colour: false, columns: 80, all: true });
        expect(JSON.stringify(report(job)) + told).not.toMatch(/NaN|Infinity|undefined/);
        expect(bendsCsv(job).endsWith('\r\n')).toBe(true);
        for (const line of job.lines)
          if (line.centreline) {
            const shared = { from: 'A', checksum: job.checksum, runs: job.runs } as const;
            sheetPages(line, { ...shared, ...(i % WHOLE === 0 ? {} : { pages: ['bench'] }) });
            if (i % WHOLE === 0) aidPages(line, shared);
          }
        worked += 1;
      } catch (error) {
        if (!(error instanceof JobError))
          throw new Error(`run ${i} of seed ${SEED}: ${(error as Error).stack}`);
        for (const issue of error.issues) {
          expect(issue.line).toBeGreaterThan(0);
          expect(issue.line).toBeLessThanOrEqual(broken.split('\n').length);
          expect(issue.message.length).toBeGreaterThan(0);
        }
        refused += 1;
      }
    }
    expect(refused).toBeGreaterThan(50);
    expect(worked).toBeGreaterThan(25);
  }, 240_000);
});
