import { readFileSync } from 'node:fs';
import { type LengthStyle, type WorkedLine, workUp } from 'runback';
import { sheetPages, textBoxes } from 'runback/sheet';
import { describe, expect, it } from 'vitest';
import type { Bench } from './bench-choice.ts';
import { planFor, type Step, stepList } from './step-list.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../docs/examples/tender-7/${name}.job.json`, import.meta.url), 'utf8');

const TENDER = workUp(example('tender-7'));
const FIRST_TRY = workUp(example('first-try'));

const lineOf = (id: string, job = TENDER): WorkedLine => job.lines.find(({ line }) => line.id === id)!;

interface Ask {
  readonly from?: 'A' | 'Z';
  readonly unit?: LengthStyle;
  readonly bench?: Bench | null;
}

function stepsOf(worked: WorkedLine, { from = 'A', unit = 'mm', bench }: Ask = {}): readonly Step[] {
  const { line, centreline } = worked;
  const how = bench === undefined ? (line.bender?.bench ?? null) : bench;
  const plan = planFor({ line, centreline: centreline!, from, unit, bench: how });
  return stepList(plan, worked);
}

const wordsOf = (step: Step): readonly string[] =>
  step.items.flatMap(({ label, figure, lead, words, amount, notes }) =>
    [label, figure, lead, words, amount, ...notes].filter((one) => one !== null),
  );

const bendOf = (steps: readonly Step[], bend: number): Step => steps.find(({ id }) => id === `bend ${bend}`)!;
const turnOf = (step: Step): string => {
  const { lead, words, amount } = step.items.find(({ label }) => label === 'TURN')!;
  return [lead, words, amount].filter((one) => one !== null).join(' ');
};

describe('the screens at the bench', () => {
  it('come in the order of the hands', () => {
    expect(stepsOf(lineOf('brake-rear')).map(({ id }) => id)).toEqual([
      'saw',
      'before',
      'marks',
      'stand',
      'bend 1',
      'bend 2',
      'bend 3',
      'bend 4',
      'ends',
      'final',
      'cautions',
    ]);
    const labels = bendOf(stepsOf(lineOf('brake-rear')), 2).items.map(({ label }) => label);
    expect(labels).toEqual(['MARK', 'TURN', 'CHECK THE TURN', 'DIAL', 'CHECK BEFORE PULLING']);
    expect(bendOf(stepsOf(lineOf('brake-rear')), 1).items.map(({ label }) => label)).toEqual([
      'MARK',
      'TURN',
      'DIAL',
    ]);
  });

  it('say what is sawn, put on and formed before the tape is hooked', () => {
    const [saw, before] = stepsOf(lineOf('brake-rear'));
    expect(wordsOf(saw!)).toEqual([
      'SAW',
      '1408.5',
      'finished 1377.5',
      '4.76 × 0.71 90/10 copper-nickel',
      '2 of these',
    ]);
    expect(before!.items.map(({ words }) => words)).toEqual([
      'flag END A (START)',
      'pencil line full length',
      'NUT A on, thread to END A',
      'FLARE A (45° double flare)',
      'hook tape on FLARED FACE of A',
    ]);
    expect(before!.items[2]!.notes[0]).toBe('before END A is flared: it cannot go on over it');
    expect(before!.items.at(-1)!.loud).toBe(true);
  });

  it('give each bend its numbers and the words of the plan', () => {
    const bend = bendOf(stepsOf(lineOf('dipstick')), 2);
    expect(wordsOf(bend)).toEqual([
      'MARK',
      '311.5',
      'from SAWN END of A',
      'TURN',
      'TURN TUBE:',
      'TOP TOWARD YOU',
      '59°',
      'finished leg rises',
      'CHECK THE TURN',
      'flag 59°',
      'DIAL',
      '67',
      'bend wanted 64.5°',
      'CHECK BEFORE PULLING',
      'end A 26 above the tool plane',
    ]);
    expect(bend.cautions).toEqual([
      'Turn is of the TUBE, START on your LEFT. Wrong side = scrap, and end-to-end will not show it.',
    ]);
  });

  it('say a near half turn in one piece, and that nobody calibrated', () => {
    const bend = bendOf(stepsOf(lineOf('fuel-feed')), 2);
    expect(turnOf(bend)).toBe('CARRY BENDER: HALF TURN, 2° past, CLOCKWISE seen from END A');
    expect(wordsOf(bend)).toContain('NOT CALIBRATED');
    expect(bend.cautions[0]).toMatch(/^Carry the BENDER, hold the tube; START is END A\./);
  });

  it('end with the ends, the finished dimensions, the clips and the cautions', () => {
    const [ends, final, cautions] = stepsOf(lineOf('brake-rear')).slice(-3);
    expect(ends!.items.map(({ words }) => words)).toEqual([
      'trim END Z to 64.5 from end of last bend',
      'NUT Z on, thread to END Z',
      'FLARE Z (45° double flare)',
    ]);
    expect(final!.items[0]!.figure).toBe('1248');
    expect(final!.items.slice(1, 3).map(({ lead, words }) => `${lead} ${words}`)).toEqual([
      'bend 1 flat, curving LEFT as you go from END A: END Z 58 BELOW',
      'bend 4 flat, curving LEFT as you go from END A: END A 934 ABOVE',
    ]);
    expect(final!.items[3]!.words).toMatch(/^62 · 115 · /);
    expect(cautions!.cautions.join(' ')).toContain('a competent person inspects it');
    expect(cautions!.cautions.filter((one) => one.startsWith('NOTE: ')).length).toBe(3);
  });

  it('have names of their own for every tick', () => {
    for (const worked of TENDER.lines) {
      const ids = stepsOf(worked).flatMap(({ items }) => items.map(({ id }) => id));
      expect(new Set(ids).size).toBe(ids.length);
    }
  });
});

describe('worked otherwise', () => {
  it('from Z the rows come in the other order, and findings keep their numbers from A', () => {
    const steps = stepsOf(lineOf('brake-rear'), { from: 'Z' });
    expect(bendOf(steps, 1).items[0]!.figure).toBe('87.5');
    expect(turnOf(bendOf(steps, 2))).toBe('TURN TUBE: TOP AWAY FROM YOU 90°');
    expect(wordsOf(steps.find(({ kind }) => kind === 'before')!)[0]).toBe('flag END Z (START)');
    expect(steps.at(-1)!.cautions).toContain('Findings count bends from END A: their B4 is bend 1 here.');
  });

  it('the opposite hand turns every way over', () => {
    const steps = stepsOf(lineOf('dipstick-right'));
    expect(turnOf(bendOf(steps, 2))).toBe('TURN TUBE: TOP AWAY FROM YOU 59°');
    expect(wordsOf(steps[0]!)).toContain('OPPOSITE HAND');
  });

  it('START on the other hand turns the words over, never the numbers', () => {
    const bench = { ...lineOf('dipstick').line.bender!.bench!, startOn: 'right' } as const;
    const bend = bendOf(stepsOf(lineOf('dipstick'), { bench }), 2);
    expect(turnOf(bend)).toBe('TURN TUBE: TOP AWAY FROM YOU 59°');
    expect(wordsOf(bend)).toContain('311.5');
    expect(bend.cautions[0]).toContain('START on your RIGHT');
  });

  it('without a bench all is as seen from START', () => {
    const steps = stepsOf(lineOf('dipstick'), { bench: null });
    expect(turnOf(bendOf(steps, 2))).toBe('TURN TUBE: CLOCKWISE seen from END A 59°');
    const stand = steps.find(({ kind }) => kind === 'stand')!;
    expect(wordsOf(stand).join(' ')).toContain('The job does not say how you stand at the bender.');
    expect(steps.flatMap(wordsOf).join(' ')).not.toMatch(/AWAY|TOWARD/);
  });

  it('reads in fractions of an inch', () => {
    const steps = stepsOf(lineOf('dipstick'), { unit: 'in' });
    expect(bendOf(steps, 2).items[0]!.figure).toBe('12 1/4');
    expect(bendOf(steps, 2).items.at(-1)!.words).toBe('end A 1 1/32 above the tool plane');
    expect(bendOf(stepsOf(lineOf('dipstick'), { unit: 'in-decimal' }), 2).items[0]!.figure).toBe('12.26');
  });

  it('a line that fails gives no length to saw', () => {
    const worked = FIRST_TRY.lines.find(({ verdict, centreline }) => verdict === 'fail' && centreline)!;
    const [saw] = stepsOf(worked);
    expect(wordsOf(saw!)[1]).toBe('do not saw, do not bend');
    expect(wordsOf(saw!).join(' ')).not.toContain('finished');
  });
});

describe('the words are those of the sheet', () => {
  const printed = (worked: WorkedLine, from: 'A' | 'Z'): string =>
    sheetPages(worked, { from, checksum: 'test' })
      .flatMap((page) => textBoxes(page).map(({ item }) => item.text))
      .join('')
      .replaceAll(/\s/gu, '')
      .toLowerCase();

  it.each(
    TENDER.lines.flatMap((worked) => (['A', 'Z'] as const).map((from) => [worked.line.id, from] as const)),
  )('%s from %s', (id, from) => {
    const worked = lineOf(id);
    const sheet = printed(worked, from);
    const said = stepsOf(worked, { from }).flatMap(({ items, cautions }) => [
      ...items.flatMap(({ figure, lead, words, notes }) => [
        figure,
        lead === null ? words : `${lead}${words}`,
        ...notes,
      ]),
      ...cautions,
    ]);
    // What the sheet prints in a table head, or has no room for.
    const own = [/^from /, /^(NUT|SLEEVE) [AZ]: |^before END/, /^centre to centre/, /of these$/];
    const missing = said
      .filter((one): one is string => one !== null && !own.some((pattern) => pattern.test(one)))
      .filter((one) => !sheet.includes(one.replaceAll(/\s/gu, '').toLowerCase()));
    expect(missing).toEqual([]);
  });
});
