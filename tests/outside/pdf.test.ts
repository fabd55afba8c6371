/**
 * The PDF judged from outside: qpdf for form, poppler's tools for size, fonts, words and their places, a ruler on
 * the operators and one on the pixels of a 600 dpi print. Every judge is shown a planted fault.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { type Item, type Page, type TextBox, textBoxes } from '@runback/drawing';
import { renderPdf } from '@runback/drawing/pdf';
import { PNG } from 'pngjs';
import { workUp } from 'runback';
import { renderSvg, sheetPages } from 'runback/sheet';
import { createSVGWindow } from 'svgdom';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FONTS } from '../../packages/drawing/test/fonts.ts';
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
  smoothed,
  sound,
  textOf,
} from '../helpers/pdf-reader.ts';
import { FIRST_TRY, runback, TENDER } from '../helpers/run.ts';

const A4 = { width: 210, height: 297 };
const POINT = 25.4 / 72;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'runback-pdf-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The name of the dipstick line. */
const NAMED = '"name": "Oil dipstick tube"';

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
const sheets = job.lines.map((worked) =>
  sheetPages(worked, { from: 'A', checksum: job.checksum, runs: job.runs }),
);

describe('the PDF of every Tender 7 line', () => {
  const out = () => join(folder, 'tender');
  const files = () => readdirSync(out()).map((name) => join(out(), name));
  beforeAll(() => {
    expect(runback(['sheet', TENDER, '--out', out()]).code).toBe(0);
    expect(runback(['sheet', FIRST_TRY, '--from', 'z', '--out', out()]).code).toBe(1);
  }, 60_000);

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

  it('holds the words of the sheet: each of them, and whole what to saw and where the top goes', () => {
    let turns = 0;
    for (const [
      i,
      {
        line: { id },
      },
    ] of job.lines.entries()) {
      const path = join(out(), `${id}.pdf`);
      const layout = textOf(path);
      const texts = sheets[i]!.flatMap((page) => textBoxes(page)).map((box) => box.item.text);
      const vital = texts.filter((text) => /^SAW \d|\b(TOP|AWAY|TOWARD)\b/.test(text));
      expect(vital.some((text) => text.startsWith('SAW'))).toBe(true);
      turns += vital.length - 1;
      for (const text of vital) expect(layout, `${id}: ${text}`).toContain(text);
      const found = new Set(textOf(path, []).split(/\s+/));
      for (const word of texts.flatMap((text) => text.split(' ')))
        expect(found, `${id}: ${word}`).toContain(word);
    }
    expect(turns).toBeGreaterThan(5);
    // Across the page, so letter by letter: but last of all, and whole.
    const stamped = textOf(join(out(), 'dipstick-from-z.pdf'), ['-raw']);
    expect(stamped.replace(/\s/g, '')).toMatch(/DONOTBEND$/);
  });

  it('draws its check bars where the display list has them, 100 ± 0.05 mm long', () => {
    for (const [
      i,
      {
        line: { id },
      },
    ] of job.lines.entries())
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
    // About the middle of the paper, as a printer does that fits the page into its margins.
    const full = '2.834645669 0 0 -2.834645669 0 841.88976378';
    const small = planted(path, full, '2.74960 0 0 -2.74960 8.929 829.261'.padEnd(full.length));
    for (const lengths of read(small)) for (const length of lengths) expect(length).toBeCloseTo(97, 1);
    const [wide, short] = read(planted(path, '0 0 -2.834645669', '0 0 -2.749606299'));
    for (const length of wide!) expect(length).toBeCloseTo(100, 1);
    for (const length of short!) expect(length).toBeCloseTo(97, 1);
  });
});

/** Names as people write them, and their places on a page of their own. */
const NAMES = [
  'Übergröße №2',
  'Tình trạng ống dẫn',
  'Αγωγός λαδιού',
  'Тормозная трубка',
  'Ω µ μ Δ π fi AVA TAX',
  'Ø 12 × 1 − 3½°',
  '√(σ/(ρ·g)) π/(2L²) αΔT θ ≤ ∞ ν₀ 10⁻⁴',
];

function namesPage(): Page {
  const items = NAMES.flatMap((text, i): Item[] =>
    (['regular', 'bold'] as const).map((weight, j) => ({
      kind: 'text',
      x: 20 + 90 * j,
      y: 30 + 20 * i,
      cap: 4,
      weight,
      anchor: 'start',
      fill: 0,
      text,
      zone: 'name',
    })),
  );
  return { ...A4, title: 'Names', description: '', lang: 'vi', zones: [], items };
}

const unescaped = (word: string): string =>
  word
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

/** Where pdftotext sees each word: left and right edge in mm. */
const wordBoxes = (path: string) =>
  [
    ...textOf(path, ['-bbox']).matchAll(/<word xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"[^>]*>([^<]*)</g),
  ].map(([, left, right, word]) => ({
    word: unescaped(word!),
    left: Number(left) * POINT,
    right: Number(right) * POINT,
  }));

/** How far a text is read from where it was set, at its worse edge: its first word at the left, its last at the right. mm */
function offPlace(seen: ReturnType<typeof wordBoxes>, { item, x, width }: TextBox): number {
  const words = item.text.split(' ');
  const first = seen.filter(({ word }) => word === words[0]).map(({ left }) => Math.abs(left - x));
  const last = seen
    .filter(({ word }) => word === words.at(-1))
    .map(({ right }) => Math.abs(right - x - width));
  return Math.max(Math.min(...first), Math.min(...last));
}

describe('words', () => {
  it('are read back as they were written, each character as itself', async () => {
    const path = await written('names.pdf', [namesPage()], 'Ống dẫn Ω №2');
    const text = textOf(path, ['-layout']);
    for (const name of NAMES) expect(text.split(name).length - 1, name).toBe(2);
    expect(about(path).title).toBe('Ống dẫn Ω №2');
  });

  it('stand where they were measured to stand, within 0.05 mm', async () => {
    for (const [i, pages] of [[namesPage()], ...sheets].entries()) {
      const path = await written(`places-${i}.pdf`, pages);
      const seen = wordBoxes(path);
      for (const box of pages.flatMap((page) => textBoxes(page)))
        expect(offPlace(seen, box), `${i}: ${box.item.text}`).toBeLessThan(0.05);
    }
  });

  it('out of place are seen', async () => {
    const path = await written('places.pdf', [namesPage()]);
    const [box] = textBoxes(namesPage());
    expect(offPlace(wordBoxes(path), { ...box!, x: box!.x + 0.2 })).toBeGreaterThan(0.15);
    expect(offPlace(wordBoxes(path), { ...box!, width: box!.width * 1.02 })).toBeGreaterThan(0.15);
  });

  it('of a real sheet: a line name in four scripts', () => {
    const name = 'Ống Ünïç Ωμέγα Щука';
    const text = readFileSync(TENDER, 'utf8').replace(NAMED, `"name": "${name}"`);
    const out = join(folder, 'scripts');
    const ran = runback(['sheet', '-', '--one', '--out', out], { input: text });
    expect(ran.code, ran.err).toBe(0);
    expect(ran.err).toBe('');
    expect(textOf(join(out, readdirSync(out)[0]!))).toContain(name);
  });

  it('the typeface lacks are boxes, copied as themselves, and told', () => {
    const text = readFileSync(TENDER, 'utf8').replace(NAMED, '"name": "油管 \\ud800🛢 צינור A"');
    const out = join(folder, 'lacking');
    const ran = runback(['sheet', '-', '--one', '--out', out], { input: text });
    expect(ran.code, ran.err).toBe(0);
    expect(ran.err).toContain('油 管');
    const path = join(out, readdirSync(out)[0]!);
    expect(sound(path)).toBe(true);
    expect(textOf(path)).toContain('油管');
  });
});

/** Every shape there is, in nested and turned groups: no letters, which two programs may smooth differently. */
function shapesPage(shift = 0): Page {
  const pen = { width: 0.5, grey: 0 };
  const shapes: Item[] = [
    { kind: 'rect', x: 5 + shift, y: 5, width: 30, height: 20, round: 4, fill: 0.7, stroke: pen },
    { kind: 'rect', x: 40, y: 5, width: 20, height: 20, stroke: { ...pen, dash: [3, 1, 0.5] } },
    { kind: 'circle', centre: [80, 15], radius: 10, stroke: { ...pen, dash: [2, 2], cap: 'round' } },
    { kind: 'circle', centre: [100, 15], radius: 6, fill: 0.3 },
    {
      kind: 'line',
      from: [5, 30],
      to: [100, 33],
      stroke: { width: 2, grey: 0.5, cap: 'round', dash: [0, 4] },
    },
    {
      kind: 'path',
      steps: [
        ['M', 5, 60],
        ['A', 15, 0, 1, 35, 60],
        ['A', 20, 1, 0, 50, 70],
        ['L', 60, 60],
        ['C', 70, 40, 80, 80, 90, 60],
        ['A', 1, 0, 0, 100, 60],
      ],
      stroke: { width: 1, grey: 0.2 },
    },
    {
      kind: 'path',
      steps: [
        ['M', 70, 75],
        ['L', 90, 75],
        ['L', 80, 90],
        ['Z'],
        ['M', 75, 78],
        ['L', 85, 78],
        ['L', 80, 86],
        ['Z'],
      ],
      fill: 0.5,
    },
  ];
  const clipped: Item = {
    kind: 'group',
    at: [60, 200],
    turn: 17,
    clip: { x: 10, y: 3, width: 60, height: 50 },
    items: shapes,
  };
  const nested: Item = {
    kind: 'group',
    at: [150, 120],
    turn: -54,
    items: [{ kind: 'group', at: [-20, 10], turn: 90, items: shapes }],
  };
  return {
    ...A4,
    title: 'Shapes',
    description: '',
    lang: 'en',
    zones: [],
    items: [...shapes, clipped, nested],
  };
}

/** The area, in mm², where two prints are black against white. */
function unlike(a: PNG, b: PNG, dpi: number): number {
  expect([a.width, a.height]).toEqual([b.width, b.height]);
  let count = 0;
  for (let i = 0; i < a.data.length; i += 4) if (Math.abs(a.data[i]! - b.data[i]!) > 96) count += 1;
  return count * (25.4 / dpi) ** 2;
}

describe('the PDF and the SVG of one page', () => {
  const DPI = 200;
  const fromSvg = (page: Page): PNG => {
    const args = ['-d', String(DPI), '-p', String(DPI), '-b', 'white'];
    const ran = spawnSync('rsvg-convert', args, {
      input: renderSvg(page, createSVGWindow()),
      maxBuffer: 2 ** 28,
    });
    if (ran.error)
      throw new Error(`rsvg-convert is needed (Debian package librsvg2-bin): ${ran.error.message}`);
    return PNG.sync.read(ran.stdout);
  };

  it('print alike, shape by shape', async () => {
    const image = smoothed(await written('shapes.pdf', [shapesPage()]), DPI);
    expect(unlike(image, fromSvg(shapesPage()), DPI)).toBeLessThan(0.2);
    expect(unlike(image, fromSvg(shapesPage(0.5)), DPI)).toBeGreaterThan(5);
  });
});

describe('the judges see a planted fault', () => {
  it('qpdf: a file cut short', async () => {
    const path = await written('whole.pdf', [barsPage(A4)]);
    expect(sound(path)).toBe(true);
    const whole = readFileSync(path);
    writeFileSync(path, whole.subarray(0, Math.floor(whole.length * 0.8)));
    expect(sound(path)).toBe(false);
    writeFileSync(path, whole.subarray(0, whole.length - 12));
    expect(sound(path)).toBe(false);
  });

  it('pdfinfo: another paper', async () => {
    const bad = planted(await written('size.pdf', [barsPage(A4)]), '595.2756', '612.0000');
    expect(Math.abs(about(bad).width - A4.width)).toBeGreaterThan(0.2);
  });

  it('pdffonts: a font left out', async () => {
    const bad = planted(await written('fonts.pdf', [namesPage()]), '/FontFile2', '/FontFileX');
    expect(fontsOf(bad).map(({ embedded }) => embedded)).toEqual([false, false]);
  });

  it('pdftotext: a font that does not say what its glyphs mean', async () => {
    const bad = planted(await written('words.pdf', [namesPage()]), '/ToUnicode', '/ToUnicorn');
    expect(textOf(bad)).not.toContain('Тормозная');
  });

  it('pdfimages: a picture of pixels', async () => {
    const path = await written('picture.pdf', [barsPage(A4)]);
    const document = await PDFDocument.load(readFileSync(path));
    const picture = await document.embedPng(PNG.sync.write(new PNG({ width: 2, height: 2 })));
    document.getPages()[0]!.drawImage(picture);
    writeFileSync(path, await document.save());
    expect(pixelPictures(path)).toBeGreaterThan(0);
  });
});
