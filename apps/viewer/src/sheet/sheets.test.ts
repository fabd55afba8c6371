import { readFileSync } from 'node:fs';
import { editJob, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../../../tests/helpers/run.ts';
import { AT_FIRST, type SheetChoice } from './choice.ts';
import { coverNames, pdfName, svgNames } from './names.ts';
import { pagesOf, sheetSet } from './sheets.ts';

const text = readFileSync(TENDER, 'utf8');
const job = workUp(text);
const set = (change: Partial<SheetChoice> = {}, of = job) =>
  sheetSet(of, 'dipstick', { ...AT_FIRST, ...change });
const titles = (change: Partial<SheetChoice>, of = job): string[] =>
  pagesOf(set(change, of)).map(({ title }) => title);

describe('sheetSet', () => {
  it('holds the pages of the chosen line, and no cover', () => {
    const made = titles({});
    expect(made.length).toBeGreaterThan(3);
    expect(made.every((title) => title.startsWith('Oil dipstick tube'))).toBe(true);
  });

  it('holds only the pages that are chosen, from the end that is chosen, aids behind them', () => {
    expect(titles({ pages: ['bench'], aids: ['cards'], from: 'Z' })).toEqual([
      'Oil dipstick tube: bend sheet from END Z, page 1 of 1',
      'Oil dipstick tube: angle cards from END Z, page 1 of 1',
    ]);
    expect(titles({ pages: [] })).toEqual([]);
  });

  it('holds the stick of the run that goes in at the line', () => {
    expect(titles({ pages: [], aids: ['stick'] })).toEqual([
      expect.stringContaining('stick strip dipstick tube, stepped'),
    ]);
    const foot = sheetSet(job, 'dipstick-foot', { ...AT_FIRST, pages: ['values'] });
    expect(JSON.stringify(foot.lines[0]!.pages)).toContain('RUN: Dipstick tube, stepped');
  });

  it('holds the cover and every line in order for a whole job', () => {
    const { cover, lines } = set({ which: 'all', pages: ['bench'] });
    expect(cover[0]!.title).toMatch(/^Tender 7: cover, page 1/);
    expect(lines.map(({ worked }) => worked.line.id)).toEqual(job.lines.map(({ line }) => line.id));
  });

  it('prints on the paper and in the units that are chosen', () => {
    const pages = pagesOf(set({ which: 'all', paper: 'letter', units: 'in-decimal', pages: ['bench'] }));
    expect(new Set(pages.map(({ width, height }) => `${width} × ${height}`))).toEqual(
      new Set(['215.9 × 279.4']),
    );
    expect(JSON.stringify(pages)).toContain('4 in between the end ticks');
  });

  it('stamps a line that fails', () => {
    const failing = set({ pages: ['bench'] }, workUp(readFileSync(FIRST_TRY, 'utf8')));
    expect(JSON.stringify(pagesOf(failing))).toContain('DO NOT BEND');
  });

  it('says why a line that cannot exist has no pages', () => {
    const impossible = workUp(editJob(text, [{ path: 'lines[0].points[1].radius', value: 6000 }]));
    const [sheet] = set({}, impossible).lines;
    expect(sheet!.pages).toEqual([]);
    expect(sheet!.why[0]).toContain('does not fit');
    expect(pagesOf(set({ which: 'all' }, impossible)).length).toBeGreaterThan(10);
  });
});

describe('names of files', () => {
  it('are those of the command', () => {
    const line = set({ from: 'Z', pages: ['bench', 'views'] });
    expect(pdfName(line)).toBe('dipstick-from-z.pdf');
    expect(svgNames(line, line.lines[0]!)).toEqual(['dipstick-from-z-1.svg', 'dipstick-from-z-2.svg']);
    const short = set({ pages: ['views'] });
    expect(svgNames(short, short.lines[0]!)).toEqual(['dipstick.svg']);
    expect(pdfName(set({ which: 'all', pages: ['views'] }))).toBe('tender-7.pdf');
  });

  it('give the cover one beside them', () => {
    const { cover, ...rest } = set({ which: 'all', pages: ['views'] });
    expect(coverNames({ ...rest, cover: cover.slice(0, 1) })).toEqual(['tender-7-cover.svg']);
  });
});
