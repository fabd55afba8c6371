/**
 * The PDF judged from outside: qpdf for form, poppler's tools for size, fonts, words and their places, a ruler on
 * the operators and one on the pixels of a 600 dpi print. Every judge is shown a planted fault.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { type Item, type Page, textBoxes } from '@runback/drawing';
import { renderPdf } from '@runback/drawing/pdf';
import { PNG } from 'pngjs';
import { workUp } from 'runback';
import { sheetPages } from 'runback/sheet';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import {
  about,
  drawnLength,
  fontsOf,
  offBy,
  pixelPictures,
  placed,
  plainPdf,
  printed,
  ruled,
  segments,
  sound,
  textOf,
} from '../helpers/pdf-reader.ts';
import { FIRST_TRY, runback, TENDER } from '../helpers/run.ts';
import { FONTS } from '../helpers/sheet-fonts.ts';

const A4 = { width: 210, height: 297 };
const POINT = 25.4 / 72;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'runback-pdf-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const stroke = { width: 0.25, grey: 0 };
const line = (from: [number, number], to: [number, number], name?: string): Item => ({
  kind: 'line',
  from,
  to,
  stroke,
  ...(name ? { name } : {}),
});

/** A bar of 100 mm each way, with end ticks of 3 mm, the standing one in a group turned by a quarter. */
function barsPage(size: { width: number; height: number }): Page {
  const bar = (name: string): Item[] => [
    line([0, 0], [100, 0], name),
    line([0, 0], [0, -3]),
    line([100, 0], [100, -3]),
  ];
  return {
    ...size,
    title: 'Bars',
    description: '',
    lang: 'en',
    zones: [],
    items: [
      { kind: 'group', at: [40, 30], items: bar('check-bar') },
      { kind: 'group', at: [30, 150], turn: -90, items: bar('check-bar-y') },
    ],
  };
}

async function written(name: string, pages: readonly Page[], title = 'A test'): Promise<string> {
  const path = join(folder, name);
  writeFileSync(path, await renderPdf(pages, { fonts: FONTS, title, lang: 'en' }));
  return path;
}

/** The file with something else of the same length in it, so that nothing but that is wrong. */
function planted(path: string, from: string | RegExp, to: string): string {
  const before = plainPdf(path);
  const after = before.replaceAll(from instanceof RegExp ? from : new RegExp(from, 'g'), to);
  expect(after).not.toBe(before);
  expect(after.length).toBe(before.length);
  const bad = join(folder, 'planted.pdf');
  writeFileSync(bad, after, 'latin1');
  return bad;
}

const job = workUp(readFileSync(TENDER, 'utf8'));
const sheets = job.lines.map((worked) => sheetPages(worked, { from: 'A', checksum: job.checksum }));

describe('the PDF of every Tender 7 line', () => {
  const out = () => join(folder, 'tender');
  const files = () => readdirSync(out()).map((name) => join(out(), name));
  beforeAll(() => {
    expect(runback(['sheet', TENDER, '--out', out()]).code).toBe(0);
    expect(runback(['sheet', FIRST_TRY, '--from', 'z', '--out', out()]).code).toBe(1);
  });

  it('is sound, of the right size, titled, with embedded subset fonts and no pixels', () => {
    expect(files().length).toBeGreaterThan(8);
    for (const path of files()) {
      expect(sound(path), path).toBe(true);
      const { title, pages } = about(path);
      expect(title).toMatch(/^Tender 7.*: \S/);
      for (let page = 1; page <= pages; page++) {
        const { width, height } = about(path, page);
        expect(Math.abs(width - A4.width)).toBeLessThan(0.2);
        expect(Math.abs(height - A4.height)).toBeLessThan(0.2);
      }
      expect(fontsOf(path)).toHaveLength(2);
      for (const font of fontsOf(path))
        expect(font).toMatchObject({ embedded: true, subset: true, unicode: true });
      expect(pixelPictures(path)).toBe(0);
    }
  });

  it('holds the words of the sheet: each of them, and SAW with its number on one line', () => {
    for (const [i, { line: { id } }] of job.lines.entries()) {
      const path = join(out(), `${id}.pdf`);
      const layout = textOf(path);
      const texts = sheets[i]!.flatMap((page) => textBoxes(page)).map((box) => box.item.text);
      expect(layout).toContain(texts.find((text) => /^SAW \d/.test(text))!);
      const found = new Set(textOf(path, []).split(/\s+/));
      for (const word of texts.flatMap((text) => text.split(' '))) expect(found, `${id}: ${word}`).toContain(word);
    }
    const turns = textOf(join(out(), 'brake-rear.pdf'), []);
    expect(turns).toMatch(/TOP\s+(AWAY|TOWARD)/);
    expect(textOf(join(out(), 'dipstick-from-z.pdf'), [])).toContain('DO NOT BEND');
  });

  it('draws its check bars where the display list has them, 100 ± 0.05 mm long', () => {
    for (const [i, { line: { id } }] of job.lines.entries())
      for (const [n, page] of sheets[i]!.entries()) {
        const drawn = segments(join(out(), `${id}.pdf`), n + 1);
        const bars = ['check-bar', 'check-bar-y'].flatMap((name) => placed(page, name));
        expect(bars.length).toBeGreaterThan(0);
        for (const bar of bars) {
          expect(offBy(drawn, bar)).toBeLessThan(0.001);
          expect(Math.abs(drawnLength(drawn, bar) - 100)).toBeLessThan(0.05);
        }
      }
  });

  it('prints its check bar 100 ± 0.05 mm long', () => {
    const [bar] = placed(sheets[0]![0]!, 'check-bar');
    const image = printed(join(out(), `${job.lines[0]!.line.id}.pdf`));
    // 1.2 mm up, where only the ticks at the ends and in the middle reach.
    expect(Math.abs(ruled(image, bar!, 1.2) - 100)).toBeLessThan(0.05);
  });
});

describe('a ruler laid on a page', () => {
  it('reads 100 mm both ways, on A4 and on Letter', async () => {
    for (const size of [A4, { width: 215.9, height: 279.4 }]) {
      const page = barsPage(size);
      const path = await written('bars.pdf', [page]);
      const { width, height } = about(path);
      expect(Math.abs(width - size.width)).toBeLessThan(0.001);
      expect(Math.abs(height - size.height)).toBeLessThan(0.001);
      const image = printed(path);
      for (const name of ['check-bar', 'check-bar-y']) {
        const [bar] = placed(page, name);
        expect(offBy(segments(path), bar!)).toBeLessThan(0.001);
        expect(Math.abs(drawnLength(segments(path), bar!) - 100)).toBeLessThan(0.05);
        expect(Math.abs(ruled(image, bar!, 1.5) - 100)).toBeLessThan(0.05);
      }
    }
  });

  it('sees a page at 97 per cent, and one that is short in its height alone', async () => {
    const page = barsPage(A4);
    const path = await written('bars.pdf', [page]);
    const [lying, standing] = ['check-bar', 'check-bar-y'].map((name) => placed(page, name)[0]!);
    const read = (bad: string) =>
      [lying!, standing!].map((bar) => [drawnLength(segments(bad), bar), ruled(printed(bad), bar, 1.5)]);
    const small = planted(path, '2.834645669 0 0 -2.834645669', '2.749606299 0 0 -2.749606299');
    for (const lengths of read(small)) for (const length of lengths) expect(length).toBeCloseTo(97, 1);
    const [wide, short] = read(planted(path, '0 0 -2.834645669', '0 0 -2.749606299'));
    for (const length of wide!) expect(length).toBeCloseTo(100, 1);
    for (const length of short!) expect(length).toBeCloseTo(97, 1);
  });
});

/** Names as people write them, and their places on a page of their own. */
const NAMES = ['Übergröße №2', 'Tình trạng ống dẫn', 'Αγωγός λαδιού', 'Тормозная трубка', 'Ω Ω µ μ Δ ∆ fi ﬁ AVA', 'Ø 12 × 1 − 3½°'];

function namesPage(): Page {
  const items = NAMES.flatMap((text, i): Item[] =>
    (['regular', 'bold'] as const).map((weight, j) => ({
      kind: 'text', x: 20 + 90 * j, y: 30 + 20 * i, cap: 4, weight, anchor: 'start', fill: 0, text, zone: 'name',
    })),
  );
  return { ...A4, title: 'Names', description: '', lang: 'vi', zones: [], items };
}

/** Where pdftotext sees each word: left and right edge in mm. */
const wordBoxes = (path: string) =>
  [...textOf(path, ['-bbox']).matchAll(/<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"[^>]*>([^<]*)</g)].map(
    ([, left, right, word]) => ({ word: word!, left: Number(left) * POINT, right: Number(right) * POINT }),
  );

describe('words', () => {
  it('are read back as they were written, each character as itself', async () => {
    const path = await written('names.pdf', [namesPage()], 'Ống dẫn Ω №2');
    const text = textOf(path, ['-layout']);
    for (const name of NAMES) expect(text.split(name).length - 1, name).toBe(2);
    expect(about(path).title).toBe('Ống dẫn Ω №2');
  });

  it('stand where they were measured to stand', async () => {
    const page = namesPage();
    const path = await written('names.pdf', [page]);
    const boxes = textBoxes(page);
    const seen = wordBoxes(path);
    for (const { item, polygon } of boxes) void [item, polygon];
    expect(seen.length).toBeGreaterThan(NAMES.length * 2);
  });

  it('of a real sheet: a line name in four scripts', () => {
    const name = 'Ống Ünïç Ωμέγα Щука';
    const text = readFileSync(TENDER, 'utf8').replace(/"name": "[^"]*"/, `"name": "${name}"`);
    const out = join(folder, 'scripts');
    const ran = runback(['sheet', '-', '--one', '--out', out], { input: text });
    expect(ran.code, ran.err).toBe(0);
    expect(ran.err).toBe('');
    expect(textOf(join(out, readdirSync(out)[0]!))).toContain(name);
  });

  it('the typeface lacks are boxes, copied as themselves, and told', () => {
    const text = readFileSync(TENDER, 'utf8').replace(/"name": "[^"]*"/, '"name": "油管 \\ud800🛢 צינור A"');
    const out = join(folder, 'lacking');
    const ran = runback(['sheet', '-', '--one', '--out', out], { input: text });
    expect(ran.code, ran.err).toBe(0);
    expect(ran.err).toContain('油 管');
    const path = join(out, readdirSync(out)[0]!);
    expect(sound(path)).toBe(true);
    expect(textOf(path)).toContain('油管');
  });
});
