import { type Fact, type WorkedJob, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { aRun, withEverything } from '../../../packages/exchange/test/worked-fluid.ts';
import { jobText } from './check-text.ts';

const plainJob = workUp(`{ "format": "runback-job", "version": 1, "title": "Tender 7", "units": "mm",
  "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
  "lines": [{ "id": "upper", "tube": "t", "drain": { "to": "Z", "minSlope": 1 }, "points": [
    { "at": [0, 0, 300] }, { "at": [0, 0, 200], "radius": 36 }, { "at": [300, 0, 160] } ] }] }`);

const bare: WorkedJob = { ...plainJob, lines: plainJob.lines.map((line) => ({ ...line, facts: [] })) };
const line = withEverything(bare.lines[0]!);
const job: WorkedJob = { ...bare, lines: [line], runs: [aRun(line, 'lower')] };

const CALM = { colour: false, columns: 80, all: false };
const rowsOf = (text: string): string[] => text.split('\n').map((row) => row.trim());

describe('the figures of a line', () => {
  it('come under short headings after its findings, each with what it is not and what it rests on', () => {
    const rows = rowsOf(jobText(job, CALM));
    const at = rows.indexOf('Liquid and air');
    expect(rows.findIndex((row) => /^(NOTE|\d+ checks? pass)/.test(row))).toBeLessThan(at);
    expect(rows.slice(at, at + 11)).toEqual([
      'Liquid and air',
      'the pockets: 3.4 ml',
      'Basis: what pockets rests on',
      'Passage of the stick',
      'the passage: 38 mm',
      'Basis: what passage rests on',
      'The stick',
      'the stick: 579 mm',
      'the stick: 31 mm',
      'Basis for both: what stick rests on',
      'Caution for all of these: verify by filling',
    ]);
  });

  it('are those of the liquid and the stick, and the others are named once', () => {
    const text = jobText({ ...job, lines: [line, line] }, CALM);
    expect(text).not.toContain('20.6 MPa');
    expect(text.match(/More figures with --all: pressure, flow, heat, weight\./g)).toHaveLength(1);
  });

  it('are all there when asked', () => {
    const text = jobText(job, { ...CALM, all: true });
    for (const words of ['the pressure: 20.6 MPa (206 bar)', 'the flow: 12.4 s', 'Heat', 'Weight'])
      expect(text).toContain(words);
    for (const group of ['pockets', 'passage', 'pressure', 'flow', 'thermal', 'mass'])
      expect(text).toContain(`Basis: what ${group} rests on`);
    expect(text).not.toContain('More figures');
  });

  it('are there unasked where the job gives a pressure, a flow or temperatures', () => {
    const figure = { value: 1, source: 'the job', path: null };
    const duty = {
      ...line.line.duty,
      pressure: figure,
      temperature: { fitted: figure, lowest: null, highest: figure },
    };
    const text = jobText({ ...job, lines: [{ ...line, line: { ...line.line, duty } }] }, CALM);
    expect(text).toContain('the pressure: 20.6 MPa (206 bar)');
    expect(text).toContain('Caution: estimate, not approval');
    expect(text).toContain('the thermal: 1.7 mm');
    expect(text).toContain('More figures with --all: flow, weight.');
  });

  it('leave nothing behind where there are none', () => {
    const text = jobText(bare, CALM);
    for (const words of ['Liquid and air', 'Caution', 'More figures', 'run filler'])
      expect(text).not.toContain(words);
  });
});

describe('what figures rest on and what they are not', () => {
  const of = (label: string, basis: string, caution: string | null = null): Fact => ({
    ...line.facts[0]!,
    label,
    text: '1 mm',
    basis,
    caution,
  });
  const text = (facts: readonly Fact[], more: readonly Fact[] = []): string[] => {
    const other = { ...line, line: { ...line.line, id: 'other' }, facts: more };
    return rowsOf(jobText({ ...job, lines: [{ ...line, facts }, other], runs: [] }, CALM));
  };
  const after = (rows: string[], words: string, count: number): string[] =>
    rows.slice(rows.indexOf(words) + 1, rows.indexOf(words) + 1 + count);

  it('stand once under figures that share them, and right under the one they are about', () => {
    const rows = text([
      of('a', 'tape'),
      of('b', 'tape'),
      of('c', 'tape'),
      of('d', 'tape', 'hot'),
      of('e', 'rule'),
    ]);
    expect(after(rows, 'Liquid and air', 9)).toEqual([
      'a: 1 mm',
      'b: 1 mm',
      'c: 1 mm',
      'Basis for these 3: tape',
      'd: 1 mm',
      'Caution: hot',
      'Basis: tape',
      'e: 1 mm',
      'Basis: rule',
    ]);
  });

  it('a caution stands with its figure again when another comes between', () => {
    const rows = text([of('a', 'x', 'hot'), of('b', 'y'), of('c', 'z', 'hot')]);
    expect(rows.filter((row) => row === 'Caution: hot')).toHaveLength(2);
  });

  it('what was told in full of one line is named by that line in the next, its caution told again', () => {
    const rows = text([of('a', 'tape', 'hot')], [of('b', 'tape', 'hot'), of('c', 'rule', 'hot')]);
    expect(rows.filter((row) => row.includes('tape'))).toEqual(['Basis: tape']);
    expect(after(rows, 'b: 1 mm', 4)).toEqual([
      'c: 1 mm',
      'Basis: rule',
      'Basis for the others: as for upper above',
      'Caution for all of these: hot',
    ]);
    expect(after(text([of('a', 'tape')], [of('b', 'tape')]), 'b: 1 mm', 1)).toEqual([
      'Basis: as for upper above',
    ]);
  });
});

describe('a line that fails', () => {
  const failing = jobText({ ...bare, lines: [{ ...bare.lines[0]!, verdict: 'fail' }] }, CALM);

  it('has no length to saw and is marked before its bends', () => {
    const rows = rowsOf(failing);
    const stop = rows.findIndex((row) => row.startsWith('DO NOT SAW, DO NOT BEND'));
    expect(stop).toBeGreaterThan(0);
    expect(stop).toBeLessThan(rows.findIndex((row) => row.startsWith('bend ')));
    expect(failing).not.toMatch(/· (saw|finished) /);
    expect(failing).toMatch(/^ {2}B1 /m);
  });

  it('and one that does not has both', () => {
    const text = jobText(bare, CALM);
    expect(text).toMatch(/· saw \d+\.\d · finished \d+\.\d · 1 bend$/m);
    expect(text).not.toContain('DO NOT');
  });
});

describe('the table of bends', () => {
  const widest = (columns: number): number =>
    Math.max(
      ...jobText(bare, { ...CALM, columns })
        .split('\n')
        .filter((row) => /^ {2}(bend|B1|end Z)/.test(row))
        .map((row) => row.length),
    );

  it('draws together where the terminal is narrow', () => {
    expect(widest(100)).toBeGreaterThan(widest(60));
  });
});

it('the fall that is proven stands with the line, before its findings', () => {
  const rows = rowsOf(jobText(job, CALM));
  const at = rows.indexOf('Slope: Falls everywhere toward end Z in every attitude.');
  expect(at).toBeGreaterThan(0);
  expect(at).toBeLessThan(rows.indexOf('Liquid and air'));
});

it('a run follows the lines with its name, its lines, its verdict and its figures', () => {
  const rows = rowsOf(jobText(job, CALM));
  const at = rows.indexOf('run filler · filler and stick  NOTE');
  expect(at).toBeGreaterThan(rows.lastIndexOf('the stick: 31 mm'));
  expect(rows.slice(at + 1, at + 5)).toEqual([
    'lines from A to Z: upper, lower',
    'What was found stands with these lines.',
    'Liquid and air',
    'the pockets: 3.4 ml',
  ]);
  expect(rows.slice(at).join()).toContain('the stick: 579 mm');
});

describe('words from a job', () => {
  const sly = 'an end\u001b[31m of\u202e it, which goes on and on until no terminal holds it in one row';
  const facts = line.facts.map((fact) => ({ ...fact, text: sly, basis: sly, caution: sly }));
  const text = jobText({ ...job, lines: [{ ...line, facts }] }, { colour: false, columns: 60, all: true });

  it('never reach the terminal as orders', () => {
    expect(text).toContain('an end [31m of it');
    expect(text).not.toMatch(/[\u001b\u202e]/);
  });

  it('are broken to its width', () => {
    const figures = text.slice(text.indexOf('Liquid and air'), text.indexOf('run filler'));
    expect(figures.split('\n').length).toBeGreaterThan(20);
    for (const row of figures.split('\n')) expect(row.length, row).toBeLessThanOrEqual(60);
  });

  it('keep what they rest on dim where there is colour', () => {
    const painted = jobText(job, { colour: true, columns: 60, all: true });
    expect(painted).toMatch(/\u001b\[2m {6}Basis: what pockets rests on\u001b\[22m/);
  });
});
