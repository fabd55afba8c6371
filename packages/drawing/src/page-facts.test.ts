import type { Fact, WorkedLine } from '@runback/checks';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byName } from '../test/aids.ts';
import { ALL_FACTS, fact, GROUPS, runOf } from '../test/stick.ts';
import { texts, words } from '../test/texts.ts';
import { dipstick, stairs, worked } from '../test/worked.ts';
import { layoutFaults } from './boxes.ts';
import { sheetPages } from './sheet.ts';
import type { SheetOptions } from './sheet-context.ts';
import type { Page } from './types.ts';

const line = worked({ points: dipstick });
const pagesOf = (of: WorkedLine, over: Partial<SheetOptions> = {}): readonly Page[] =>
  sheetPages(of, { checksum: 'a1b2c3d4', pages: ['values'], ...over });
const all = (pages: readonly Page[]): string => pages.map(words).join(' ');
const withFacts = (facts: readonly Fact[], over: Partial<SheetOptions> = {}): readonly Page[] =>
  pagesOf({ ...line, facts }, over);

const extreme = {
  at: 430,
  point: [0, 0, 0],
  slope: 0.2,
  up: [0, 0, 1],
  attitude: { pitch: 0, roll: 0 },
} as const;
const proven = (holds: boolean, text: string, of: WorkedLine = line): WorkedLine => ({
  ...of,
  slope: { proof: { holds, text }, toward: 'A', rest: extreme, worst: extreme, lows: [], highs: [] },
});

describe('the figures of liquid and stick', () => {
  it('stand in sections, in order, each with its basis; none where there is nothing', () => {
    const said = all(withFacts([...ALL_FACTS].reverse()));
    const heads = [
      'POCKETS',
      'STICK AND PASSAGE',
      'PRESSURE (estimate, not approval)',
      'FLOW',
      'HEAT',
      'WEIGHT',
    ];
    const places = heads.map((head) => said.indexOf(head));
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    for (const { label, text, basis } of ALL_FACTS) {
      expect(said).toContain(`${label} ${text}`);
      expect(said).toMatch(new RegExp(`(basis|·)( \\d)?: ${basis.replace(/[.()]/g, '\\$&')}`));
    }
    const none = all(withFacts([]));
    for (const head of heads) expect(none).not.toContain(head);
    expect(all(withFacts([fact('mass', 'tube')]))).not.toContain('POCKETS');
  });

  it('have each caution once, bold, before the first figure of its group', () => {
    const pages = withFacts(ALL_FACTS);
    const cautions = pages
      .flatMap(texts)
      .filter(({ text }) => text.startsWith('An estimate, not approval: '));
    expect(cautions.map(({ weight }) => weight)).toEqual(['bold']);
    const said = all(pages);
    expect(said.indexOf('have it tested')).toBeLessThan(said.indexOf('Barlow'));
    expect(said.indexOf('have it tested')).toBeGreaterThan(said.indexOf('PRESSURE'));
  });

  it('have a caution of few beside those few, and name what each rests on', () => {
    const facts = ['one', 'two', 'three', 'four', 'five'].map((label) =>
      fact('passage', label, {
        basis: `basis of ${label}`,
        caution: label === 'four' ? 'Mind the step.' : null,
      }),
    );
    const said = all(withFacts(facts));
    expect(said).toContain('four 3.4 ml basis 4 Mind the step. five 3.4 ml basis 5');
    expect(said).toContain('· 4: basis of four');
    expect(said.split('Mind the step.')).toHaveLength(2);
  });

  it('do not say again what the heading says', () => {
    const said = all(withFacts([fact('pressure', 'Barlow', { caution: 'estimate, not approval' })]));
    expect(said.split('estimate, not approval')).toHaveLength(2);
  });

  it('say what several rest on once, under the last of them', () => {
    const same = ['one', 'two', 'three'].map((label) => fact('pockets', label));
    const said = all(withFacts(same));
    expect(said.split('basis: pockets: worked from the bore')).toHaveLength(2);
    expect(said.indexOf('three')).toBeLessThan(said.indexOf('basis: pockets'));
  });

  it('stand with their estimate in the heading where all are one', () => {
    const said = all(withFacts([fact('mass', 'tube', { caution: 'estimate, not approval' })]));
    expect(said).toContain('WEIGHT (estimate, not approval) tube');
  });

  it('are larger than what they rest on, never under 2 mm', () => {
    const caps = (pages: readonly Page[], start: string): number[] =>
      pages
        .flatMap(texts)
        .filter(({ text }) => text.startsWith(start))
        .map(({ cap }) => cap);
    expect(caps(withFacts(ALL_FACTS), '20.6 MPa')).toEqual([2.5]);
    expect(new Set(caps(withFacts(ALL_FACTS), 'basis'))).toEqual(new Set([2.1]));
  });

  it('are those of the runs of this line too, and of no other', () => {
    const runs = [runOf(['upper', 'line']), runOf(['other'], { facts: [fact('mass', 'not mine')] })];
    const said = all(withFacts([], { runs }));
    expect(said).toContain('RUN: Stepped dipstick');
    expect(said).toContain('This is number 2 of 2.');
    expect(said).toContain('POCKETS, RUN Stepped dipstick stays in it at rest 3.4 ml');
    expect(said).not.toContain('not mine');
    expect(all(withFacts([], { runs: [runOf(['line'], { facts: [] })] }))).not.toContain('RUN:');
  });

  it('go whole over pages, however long', () => {
    const long = 'worked out at length '.repeat(60);
    const facts = GROUPS.flatMap((group) =>
      Array.from({ length: 6 }, (_, i) =>
        fact(group, `${group} ${i}`, { text: long, basis: `${i} ${long}` }),
      ),
    );
    const pages = withFacts(facts);
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      expect(layoutFaults(page)).toEqual([]);
      for (const { text } of texts(page)) expect(text).not.toContain('…');
    }
  });

  it('never leave their place, whatever they say', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 200 });
    const facts = fc.array(
      fc.record({
        group: fc.constantFrom(...GROUPS),
        label: text,
        text,
        basis: text,
        caution: fc.option(text, { nil: null }),
      }),
      { maxLength: 20 },
    );
    fc.assert(
      fc.property(facts, facts, fc.constantFrom('a4', 'letter'), (own, ofRun, paper) => {
        for (const page of withFacts(own, { paper, runs: [runOf(['line'], { facts: ofRun })] }))
          expect(layoutFaults(page)).toEqual([]);
      }),
      { seed: 42, numRuns: 40 },
    );
  });
});

describe('the proof of the fall', () => {
  const SENTENCE = 'It falls toward END A everywhere, at least 10.7°, in every attitude asked.';

  it('is a sentence in a box with lines to sign', () => {
    const pages = pagesOf(proven(true, SENTENCE));
    expect(all(pages)).toContain(`${SENTENCE} Measured on the machine: name date`);
    expect(pages.flatMap((page) => byName(page.items, 'slope-proof'))).toHaveLength(1);
    expect(all(pages)).not.toContain('NOT PROVEN');
  });

  it('cannot be signed when it does not hold: bold, and where it breaks', () => {
    const pages = pagesOf(proven(false, 'With nose down 5° it rises 2.1° in bend 2.'));
    const said = pages.flatMap(texts).filter(({ text }) => text.startsWith('NOT PROVEN. With nose down'));
    expect(said.map(({ weight }) => weight)).toEqual(['bold']);
    expect(all(pages)).not.toContain('Measured on the machine');
  });

  it('is not signed for while a check fails: what falls may fall less than was asked', () => {
    const failing = { ...proven(true, SENTENCE), verdict: 'fail' } as const;
    expect(all(pagesOf(failing))).toContain(`${SENTENCE} A check of this line fails: nothing to sign.`);
    expect(all(pagesOf(failing))).not.toContain('Measured on the machine');
    const first = all(pagesOf(failing, { pages: ['bench'] }));
    expect(first).toContain('nothing to sign');
    expect(first).not.toContain('Fall proven');
  });

  it('is not there for a line that asks no fall', () => {
    expect(all(pagesOf(line))).not.toMatch(/PROVEN|Measured on the machine/);
    expect(all(pagesOf(line, { pages: ['bench'] }))).not.toMatch(/proven/i);
  });

  it('stays whole when its sentence is longer than a box', () => {
    const long = `${'and so it goes on along the tube '.repeat(60)}to the end.`;
    for (const holds of [true, false]) {
      const pages = pagesOf(proven(holds, long));
      expect(all(pages)).toContain('to the end.');
      for (const page of pages) {
        expect(layoutFaults(page)).toEqual([]);
        for (const { text } of texts(page)) expect(text).not.toContain('…');
      }
    }
  });

  it('stands shortly on page 1, however full that is', () => {
    const page = (of: WorkedLine): Page => pagesOf(of, { pages: ['bench'] })[0]!;
    expect(words(page(proven(true, SENTENCE)))).toContain('Fall proven along the whole line: measure it');
    expect(words(page(proven(false, SENTENCE)))).toContain('FALL NOT PROVEN: see FALL');
    const full = worked({
      points: stairs(7),
      radius: 36,
      cautions: Array.from({ length: 9 }, (_, i) => `Caution ${i}: ${'mind this well '.repeat(8)}`),
    });
    expect(words(page(proven(true, SENTENCE, full)))).toContain(
      'Fall proven along the whole line: measure it',
    );
    expect(words(page(full))).toContain('asks no fall of this line: how it drains is not judged.');
    expect(words(page(full))).not.toContain('Bleed it');
    const bled = { ...full, line: { ...full.line, service: { ...full.line.service, bleeds: true } } };
    expect(words(page(bled))).toContain('Bleed it until no air comes.');
  });
});
