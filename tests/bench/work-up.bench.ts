/** How long a person waits: working up jobs, and drawing a sheet. Seeded; no assertions. */
import { readFileSync } from 'node:fs';
import { catalogue, parseJob, resolve, workJob, workUp } from 'runback';
import { renderSvg, sheetPages } from 'runback/sheet';
import { createSVGWindow } from 'svgdom';
import { bench, describe } from 'vitest';
import { randomJobText } from '../helpers/random-job.ts';
import { seeded } from '../helpers/random-line.ts';
import { TENDER } from '../helpers/run.ts';

const tender = readFileSync(TENDER, 'utf8');
const resolved = (text: string) => resolve(parseJob(text), catalogue);

/** What is worked again while a point is dragged: everything but the search for cures. */
const drag = { cures: false };
const short = { time: 300, warmupTime: 200 };

describe('Tender 7, six lines', () => {
  const job = resolved(tender);
  const [first] = workUp(tender).lines;
  bench('text to worked job, cures and all', () => void workUp(tender), short);
  bench('the resolved job, as on every drag of a point', () => void workJob(job, drag), short);
  const bench1 = { from: 'A', checksum: job.checksum, pages: ['bench'] } as const;
  bench('first page of one line: display list', () => void sheetPages(first!, bench1), short);
  bench(
    'first page of one line: SVG',
    () => {
      for (const page of sheetPages(first!, bench1)) renderSvg(page, createSVGWindow());
    },
    short,
  );
  bench(
    'the whole sheet of one line: display list',
    () => void sheetPages(first!, { from: 'A', checksum: job.checksum }),
    short,
  );
});

describe('one line, as on every drag of a point', () => {
  const ten = resolved(randomJobText(seeded(1), { bends: 10, surroundings: 30 }));
  const sixty = resolved(randomJobText(seeded(2), { bends: 60, surroundings: 100 }));
  const thousand = resolved(randomJobText(seeded(3), { bends: 1000, surroundings: 30 }));
  bench('10 bends, 30 surroundings', () => void workJob(ten, drag), short);
  bench('60 bends, 100 surroundings', () => void workJob(sixty, drag), short);
  bench('1,000 bends, 30 surroundings', () => void workJob(thousand, drag), { ...short, iterations: 5 });
});
