import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { ClearanceRow, Finding, WorkedJob, WorkedLine } from '@runback/checks';
import type { Bench } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ContextAsk, contextOf, randomPoints } from '../test/context.ts';
import { ALL_FACTS } from '../test/stick.ts';
import { texts, words, wordsIn } from '../test/texts.ts';
import { type Ask, bench, dipstick, finding, stairs, worked } from '../test/worked.ts';
import { layoutFaults } from './boxes.ts';
import { papers } from './frame.ts';
import { coverPages } from './page-cover.ts';
import { detailBodies } from './page-detail.ts';
import { flow, paragraph } from './page-flow.ts';
import { bodyZone, pageOf } from './page-paper.ts';
import { CHECK_BAR } from './sheet-foot.ts';
import type { Page } from './types.ts';

const DEGREE = Math.PI / 180;

function pagesOf(line: WorkedLine, ask: ContextAsk = {}): readonly Page[] {
  const context = contextOf(line, ask);
  const bodies = detailBodies(context).map(({ body }) => body);
  return bodies.map((body, i) => pageOf({ ...context, page: i + 2, pages: bodies.length + 1 }, body));
}

const all = (pages: readonly Page[]): string => pages.map(words).join(' ');

const place = { at: 430, point: [0, 0, 0] } as const;
const extreme = (degrees: number, pitch: number, roll: number) => ({
  ...place,
  slope: degrees * DEGREE,
  up: [0, 0, 1] as const,
  attitude: { pitch: pitch * DEGREE, roll: roll * DEGREE },
});

function sloped(rest: number, worst: number): WorkedLine {
  const line = worked({ points: dipstick });
  return {
    ...line,
    line: { ...line.line, attitudes: { kind: 'box', pitch: [-0.1, 0.1], roll: [-0.05, 0.05] } },
    slope: {
      proof: { holds: true, text: 'It falls.' },
      toward: 'A',
      rest: extreme(rest, 0, 0),
      worst: extreme(worst, 5, 3),
      lows: [],
      highs: [],
    },
  };
}

const near: ClearanceRow = {
  kind: 'surrounding',
  to: 'exhaust-1',
  distance: 28,
  keepOff: 40,
  at: 300,
  point: [0, 0, 0],
  other: [0, 0, 0],
};

describe('the exact values', () => {
  it('say where each bend leaves in words, both marks, and the mark from the last bend', () => {
    const said = all(pagesOf(worked({ points: dipstick, flared: true })));
    // The sawn end is 3 mm of flare before the finished one.
    // atan(√(30² + 60²) / 230) = 16.26°; 110 less 60·tan(8.13°) = 101.43.
    expect(said).toContain('1 101.43 sets 12 o’clock 16.26° 60 101.43 118.46 104.43 101.43 101.43 · END A');
    expect(said).toContain('58.56° anticlockwise');
    expect(said).toContain('as seen from END A');
    expect(said).toContain('The TUBE in the tool is turned the other way');
  });

  it('never say seen from A on a sheet from Z, and tell which bend a finding means', () => {
    const said = all(pagesOf(worked({ points: dipstick }), { from: 'Z' }));
    expect(said).not.toContain('seen from END A');
    expect(said).toContain('1 (B2)');
    expect(said).toContain('their B1 is bend 2 of this sheet');
    expect(all(pagesOf(worked({ points: dipstick })))).not.toContain('of this sheet');
  });

  it('never print a bare sign', () => {
    const rising: Finding = { ...finding('fail', 'At rest it rises.'), found: -72.5, limit: 1, unit: 'deg' };
    const line = {
      ...worked({ points: stairs(6), radius: 36, findings: [rising] }),
      clearance: [{ ...near, distance: -3 }],
    };
    for (const from of ['A', 'Z'] as const)
      for (const page of pagesOf(line, { from }))
        for (const { text } of texts(page)) expect(text).not.toMatch(/(^|[\s(])[-+−]\d/);
    expect(all(pagesOf(line))).toContain('found 72.5° the wrong way');
    expect(all(pagesOf(line))).toContain('OVERLAPS by 3.00');
  });

  it('state the fall in one sentence', () => {
    expect(all(pagesOf(sloped(16.2, 10.7)))).toContain(
      'At rest it falls at least 16.2° toward END A everywhere; the least is between bend 2 and END Z, 430 from END A. ' +
        'With nose down 5° and right side down 3°: still 10.7°, between bend 2 and END Z, 430 from END A.',
    );
    expect(all(pagesOf(sloped(16.158, 10.699)))).toMatch(/at least 16\.15° toward .*: still 10\.69°/);
    expect(all(pagesOf(sloped(-15.001, -20.101)))).toMatch(/by up to 15\.01°; .*it RISES 20\.11°/);
    const rising = all(pagesOf(sloped(-15, -20)));
    expect(rising).toContain(
      'At rest it does NOT fall toward END A everywhere: it rises by up to 15°; the worst is',
    );
    expect(rising).toContain('it RISES 20°');
    expect(all(pagesOf(sloped(0, -3)))).toContain('it falls toward END A, but is level at its flattest');
    expect(all(pagesOf(worked({ points: dipstick })))).toContain('how it drains is not judged');
  });

  it('list clearances, clips, ends and a blank proof test', () => {
    const made = { ...worked({ points: dipstick, clips: [150, 320.125], flared: true }), clearance: [near] };
    const line = { ...made, line: { ...made.line, service: { ...made.line.service, id: 'brake' } } };
    const said = all(pagesOf(line));
    expect(said).toContain('exhaust-1 surrounding 28.00 40.00 300.00 TOO NEAR,');
    expect(said).toContain('1 nearer than it should be');
    expect(said).toContain('150 · 320.13');
    expect(said).toContain('18 long, bore 12.3, 22 across flats');
    expect(said).toContain('Test with LIQUID, never with air');
    for (const field of ['pressure', 'medium', 'held for', 'by', 'date']) expect(said).toContain(field);
    expect(all(pagesOf(made))).not.toContain('PROOF TEST');
    const figure = { value: 0.3, source: 'the job', path: null };
    const pressed = { ...made.line, duty: { ...made.line.duty, pressure: figure } };
    expect(all(pagesOf({ ...made, line: pressed }))).toContain('PROOF TEST');
    const asked = {
      group: 'pressure',
      label: 'proof test',
      text: '20 MPa with oil',
      basis: '',
      caution: null,
    } as const;
    expect(all(pagesOf({ ...line, facts: [asked] }))).toMatch(
      /PROOF TEST.*Asked: 20 MPa with oil\..*held for/,
    );
  });

  it('list the tightest clearance first, and name in a line what is far off with its distance', () => {
    const row = (to: string, distance: number, keepOff: number) => ({ ...near, to, distance, keepOff });
    const far = ['rail', 'tank', 'cab', 'axle'].map((to, i) => row(to, 900 + i, 40));
    const some = [...far, row('block', 150, 60), row('pipe', 42, 40), row('sump', 6, 5)];
    const of = (rows: typeof some, over = {}): string =>
      all(pagesOf({ ...worked({ points: dipstick }), clearance: rows }, over));
    const said = of(some);
    expect(said).toMatch(
      /where sump .* pipe .* block .* Farther off, each with 100 mm or more to spare: rail 900 ·/,
    );
    expect(said).toContain('tank 901 · cab 902 · axle 903.');
    expect(of(some, { units: 'in' })).toContain('each with 4 in or more to spare: rail 35.433 ·');
    // A table of rows that are all far off still shows the nearest.
    expect(of(far.slice(1))).toMatch(/where tank .* cab .* axle/);
    expect(of(far.slice(1))).not.toContain('Farther off');
  });

  it('keep a short table on one page', () => {
    const { facts } = worked({ points: dipstick });
    const pages = [0, 6, 12, 18, 24, 30].flatMap((n) => {
      const clearance = Array.from({ length: n }, (_, i) => ({ ...near, to: `bracket ${i}` }));
      return pagesOf(
        { ...worked({ points: dipstick, flared: true }), clearance, facts },
        { paper: 'letter' },
      );
    });
    for (const said of pages.map(words).filter((one) => one.includes('FITTING END A')))
      expect(said).toContain('far side rigid');
  });

  it('print every finding whole: what was found, the limit, the basis and the cure', () => {
    const cure = { text: 'Move point 3 by 18.2 mm.', edits: [] };
    const many = Array.from({ length: 40 }, (_, i) => ({
      ...finding(i % 3 === 0 ? 'fail' : 'note', `Number ${i} says something.`),
      basis: `basis number ${i}.`,
      cure,
    }));
    const said = all(
      pagesOf(worked({ points: dipstick, findings: [...many, finding('pass', 'clear of the block')] })),
    );
    for (let i = 0; i < 40; i++) {
      expect(said).toContain(`Number ${i} says something.`);
      expect(said).toContain(`basis: basis number ${i}.`);
    }
    expect(said.split(cure.text)).toHaveLength(41);
    expect(said).toContain('found 28 mm · limit 40 mm · 120 from END A');
    expect(said).toContain('pass: clear of the block');
    // Failures stand before notes.
    expect(said.indexOf('FAIL: Number 39')).toBeLessThan(said.indexOf('NOTE: Number 1 '));
  });
});

describe('the pictures', () => {
  it('are three or four to a page, none split, and say what the table says', () => {
    const pages = pagesOf(worked({ points: stairs(9), radius: 36 })).filter((p) =>
      p.title.includes('bend pictures'),
    );
    const counts = pages.map(
      (page) => new Set(page.zones.flatMap((z) => /^picture (\d+)$/.exec(z.name)?.[1] ?? [])).size,
    );
    expect(counts).toEqual([3, 3, 3]);
    expect(wordsIn(pages[0]!, 'picture 2 mark')).toMatch(/^MARK \d/);
    expect(wordsIn(pages[0]!, 'picture 2 turn')).toMatch(/^TURN TUBE: /);
    expect(wordsIn(pages[0]!, 'pictures head')).toBe('BEND PICTURES, as you see them, START on your LEFT');
  });

  it('are left out for a straight tube', () => {
    const pages = pagesOf(
      worked({
        points: [
          [0, 0, 0],
          [180, 0, 0],
        ],
      }),
    );
    expect(pages.some((p) => p.title.includes('bend pictures'))).toBe(false);
    expect(all(pages)).toContain('Straight tube: no bends.');
  });

  it('without a bench never say AWAY or TOWARD', () => {
    const said = all(pagesOf(worked({ points: stairs(5), radius: 36, bench: null })));
    expect(said).not.toMatch(/\baway\b|\btoward you\b/i);
    expect(said).toContain('seen from START (END A), looking towards FREE (END Z)');
  });
});

describe('the paper', () => {
  it('is Letter where asked, with the bar of 100 mm and the body above it', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const pages = pagesOf(worked({ points: dipstick }), { paper });
      for (const page of pages) {
        expect([page.width, page.height]).toEqual([papers[paper].width, papers[paper].height]);
        const foot = page.zones.find((z) => z.name === 'foot')!;
        const body = bodyZone(paper);
        expect(foot.y).toBeGreaterThanOrEqual(body.y + body.height);
        expect(page.height - foot.y - foot.height).toBeLessThan(14);
      }
      expect(JSON.stringify(pages[0])).toContain('check-bar');
    }
    expect(CHECK_BAR).toBe(100);
  });

  it('stamps the pages of a failing line', () => {
    const failing = pagesOf(worked({ points: dipstick, findings: [finding('fail', 'too near')] }));
    for (const page of failing) expect(JSON.stringify(page)).toContain('do-not-bend');
    for (const page of pagesOf(worked({ points: dipstick })))
      expect(JSON.stringify(page)).not.toContain('do-not-bend');
  });
});

describe('the flow', () => {
  it('never leaves a heading at the foot of a page, and gives what is too tall its own page', () => {
    const place = { name: 'body', x: 0, y: 0, width: 100, height: 50 };
    const block = (height: number, keep = false) => ({
      height,
      keep,
      draw: (_: unknown, name: string) => ({ zones: [{ name, x: 0, y: 0, width: 1, height: 1 }], items: [] }),
    });
    const names = (blocks: Parameters<typeof flow>[0]): string[][] =>
      flow(blocks, place).map((p) => p.zones.map((z) => z.name));
    expect(names([block(40), block(5, true), block(10)])).toEqual([['flow 1'], ['flow 2', 'flow 3']]);
    expect(names([block(10), block(80), block(10)])).toEqual([['flow 1'], ['flow 2'], ['flow 3']]);
    expect(paragraph('word '.repeat(400), 100, { cap: 2.5 }).length).toBeGreaterThan(1);
  });
});

const JOB = (lines: readonly WorkedLine[], title = 'Tender 7'): WorkedJob => ({
  title,
  revision: 'C',
  units: 'mm',
  checksum: 'a1b2c3d4',
  verdict: lines.some((line) => line.verdict === 'fail') ? 'fail' : 'pass',
  lines,
  runs: [],
  surroundings: [],
});

describe('the cover', () => {
  const good = worked({ points: dipstick });
  const two = { ...good, line: { ...good.line, name: 'Second tube', quantity: 3 } };
  const bad = worked({
    points: stairs(3),
    radius: 36,
    opposite: true,
    name: 'Third tube',
    findings: [finding('fail', 'Too near.')],
  });

  it('lists the lines, what to saw of each tube, what fails', () => {
    const said = all(coverPages(JOB([good, two, bad])));
    expect(said).toContain('Oil dipstick tube as drawn 1 12 × 1 stainless 304 2 740.5 pass');
    expect(said).toContain('DO NOT BEND 1 of 3');
    expect(said).toContain('OPPOSITE HAND');
    expect(said).toContain('Second tube 740.5 × 3 2221.5');
    expect(said).toContain('Third tube (DO NOT BEND)');
    expect(said).toContain('3: FAIL: Too near.');
    expect(said).toContain('FINDINGS: 1 fail, 0 to note, 2 pass');
    expect(said).toContain('from lengths of 6000');
    expect(said).toContain('job a1b2c3d4');
    const together = /together, saw cuts not counted ([\d.]+)/.exec(said)![1];
    const third = /Third tube \(DO NOT BEND\) ([\d.]+)/.exec(said)![1];
    expect(Number(together)).toBe(740.5 * 4 + Number(third));
  });

  it('lists a line that cannot be made without a length to saw', () => {
    const said = all(coverPages(JOB([{ ...bad, centreline: null, plan: null }])));
    expect(said).toContain('CANNOT BE MADE');
    expect(said).not.toContain('TO SAW');
  });

  it('says when all is well, and prints inches', () => {
    const said = all(coverPages(JOB([good]), { units: 'in', paper: 'letter' }));
    expect(said).toContain('ALL PASS');
    expect(said).toContain('1 line · lengths in inches');
    expect(said).toContain('29 5/32');
  });
});

const NAMES = [
  'Трубка щупа масла, правая',
  'Σωλήνας λαδιού',
  'Ống dẫn dầu phanh sau',
  'Ölmeßstab É',
  'W'.repeat(80),
  '',
];

const stands: fc.Arbitrary<Bench> = fc
  .record({
    stand: fc.constantFrom('side', 'behind-free', 'at-start'),
    startOn: fc.constantFrom('left', 'right'),
    former: fc.constantFrom('near', 'far', 'above', 'below'),
    moves: fc.constantFrom('tube', 'bender'),
  })
  .map((b) => ({ ...b, plane: b.former === 'near' || b.former === 'far' ? 'flat' : 'upright' }));

const text = fc.oneof(fc.constantFrom(...NAMES), fc.string({ unit: 'grapheme', maxLength: 200 }));

const asks: fc.Arbitrary<Ask> = fc.record({
  points: randomPoints,
  radius: fc.constant(20),
  name: text,
  title: text,
  bench: fc.oneof(stands, fc.constant(null)),
  calibrated: fc.boolean(),
  flared: fc.boolean(),
  opposite: fc.boolean(),
  clips: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 30 }),
  cautions: fc.array(text, { maxLength: 5 }),
  findings: fc.array(
    fc
      .tuple(fc.constantFrom('pass', 'note', 'fail'), text)
      .map(([verdict, message]) => finding(verdict, message)),
    { maxLength: 12 },
  ),
});

const where: fc.Arbitrary<Required<Omit<ContextAsk, 'projection'>>> = fc.record({
  from: fc.constantFrom('A', 'Z'),
  units: fc.constantFrom('mm', 'in'),
  paper: fc.constantFrom('a4', 'letter'),
});

describe('every page', () => {
  it('keeps every text in its place and off every other, whatever the line', () => {
    fc.assert(
      fc.property(asks, where, fc.array(text, { maxLength: 8 }), (ask, how, ids) => {
        const line = {
          ...worked(ask),
          clearance: ids.map((to, i) => ({ ...near, to, distance: i * 10 - 15 })),
        };
        for (const page of pagesOf(line, how)) expect(layoutFaults(page)).toEqual([]);
        for (const page of coverPages(JOB([line, line], ask.title), how))
          expect(layoutFaults(page)).toEqual([]);
      }),
      { seed: 42, numRuns: 25 },
    );
  });

  it('loses no word of what tells how to turn, where to mark and what to set', () => {
    fc.assert(
      fc.property(asks, where, (ask, how) => {
        const pages = pagesOf(worked({ ...ask, findings: [], cautions: [], name: 'x', title: 'y' }), how);
        for (const { text, zone } of pages.flatMap(texts))
          if (/^picture/.test(zone)) expect(text).not.toContain('…');
        const tags = pages.flatMap(texts).filter((t) => t.name === 'start-tag');
        expect(tags).toHaveLength(ask.points.length - 2);
      }),
      { seed: 42, numRuns: 25 },
    );
  });
});

/** Numbers in whole micrometres, one item a line: a change can be read in a diff. */
function readable(pages: readonly Page[]): string {
  const short = (_: string, value: unknown): unknown =>
    typeof value === 'number' ? Math.round(value * 1000) / 1000 + 0 : value;
  return pages
    .map(({ items, zones, ...rest }) =>
      [rest, ...zones, ...items].map((part) => JSON.stringify(part, short)).join('\n'),
    )
    .join('\n\n')
    .concat('\n');
}

describe('the display list', () => {
  const fail = finding('fail', 'Tube is 28.0 mm from exhaust-1; 40 mm wanted.');
  const handed: Ask = {
    points: dipstick,
    opposite: true,
    bench: { ...bench, plane: 'flat', former: 'near', startOn: 'right' },
  };
  const cases: Readonly<Record<string, () => readonly Page[]>> = {
    'pages-dipstick-from-a': () => pagesOf({ ...sloped(16.2, 10.7), clearance: [near], facts: ALL_FACTS }),
    'pages-opposite-hand-from-z-letter-inch': () =>
      pagesOf(worked({ ...handed, findings: [fail] }), { from: 'Z', paper: 'letter', units: 'in' }),
    cover: () => coverPages(JOB([worked({ points: dipstick }), worked({ ...handed, findings: [fail] })])),
  };
  it.each(Object.entries(cases))('%s', (name, make) => {
    const file = new URL(`goldens/${name}.txt`, import.meta.url);
    const found = readable(make());
    if (process.env.UPDATE === '1' && !process.env.CI) writeFileSync(file, found);
    if (!existsSync(file))
      throw new Error(`golden ${name} is missing: run once with UPDATE=1 and read what it wrote`);
    expect(found).toBe(readFileSync(file, 'utf8'));
  });
});
