import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDict, PDFDocument, PDFHexString, PDFName } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { FONTS } from '../test/fonts.ts';
import { dipstick, worked } from '../test/worked.ts';
import { missingCharacters, type PdfOptions, renderPdf } from './pdf.ts';
import { sheetPages } from './sheet.ts';
import type { Page } from './types.ts';

const options: PdfOptions = { fonts: FONTS, title: 'Tender 7', lang: 'en' };
const named = (text: string): Page => ({
  width: 100,
  height: 50,
  title: text,
  description: '',
  lang: 'en',
  zones: [],
  items: [
    { kind: 'text', x: 5, y: 20, cap: 4, weight: 'regular', anchor: 'start', fill: 0, text, zone: 'z' },
  ],
});
const bookmarks = (document: PDFDocument, at: PDFDict): unknown[] => {
  const look = (dict: PDFDict, key: string) =>
    document.context.lookupMaybe(dict.get(PDFName.of(key)), PDFDict);
  const found: unknown[] = [];
  for (let item = look(at, 'First'); item; item = look(item, 'Next')) {
    const title = item.lookup(PDFName.of('Title'), PDFHexString).decodeText();
    const inside = bookmarks(document, item);
    found.push(inside.length > 0 ? [title, inside] : title);
  }
  return found;
};

describe('renderPdf', () => {
  const pages = sheetPages(worked({ points: dipstick }), { checksum: '12345678' });

  it('makes the same bytes of the same pages, and leaves the fonts as they were', async () => {
    const before = FONTS.regular.slice();
    const [one, two] = [await renderPdf(pages, options), await renderPdf(pages, options)];
    expect(two).toEqual(one);
    expect(FONTS.regular).toEqual(before);
    expect(await renderPdf(pages, { ...options, title: 'Tender 8' })).not.toEqual(one);
  });

  it('says title, language and how to print', async () => {
    const document = await PDFDocument.load(await renderPdf(pages, { ...options, lang: 'de-CH' }), {
      updateMetadata: false,
    });
    expect(document.getTitle()).toBe('Tender 7');
    expect(document.getCreationDate()?.toISOString()).toBe('2000-01-01T00:00:00.000Z');
    const preferences = document.catalog.lookup(PDFName.of('ViewerPreferences'), PDFDict);
    expect(String(preferences.get(PDFName.of('PrintScaling')))).toBe('/None');
    expect(String(preferences.get(PDFName.of('DisplayDocTitle')))).toBe('true');
    expect(String(document.catalog.get(PDFName.of('Lang')))).toBe('(de-CH)');
  });

  it('has a bookmark for each page, or those asked for, one inside the other', async () => {
    const three = ['Eins', 'Δύο', '\ud800Три'].map(named);
    const of = async (over: Partial<PdfOptions>) => {
      const document = await PDFDocument.load(await renderPdf(three, { ...options, ...over }));
      return bookmarks(document, document.catalog.lookup(PDFName.of('Outlines'), PDFDict));
    };
    expect(await of({})).toEqual(['Eins', 'Δύο', 'Три']);
    const inside = [
      { title: 'b', page: 1 },
      { title: 'c', page: 2 },
    ];
    expect(
      await of({
        outline: [
          { title: 'a', page: 0 },
          { title: 'more', page: 1, inside },
        ],
      }),
    ).toEqual(['a', ['more', ['b', 'c']]]);
  });

  it('takes pages of any size', async () => {
    const letter = { ...named('A'), width: 215.9, height: 279.4 };
    const document = await PDFDocument.load(await renderPdf([named('B'), letter], options));
    expect(document.getPages().map((page) => page.getSize())).toEqual([
      { width: 283.4646, height: 141.7323 },
      { width: 612, height: 792 },
    ]);
  });

  it('never fails on a character, and tells which it could not print', async () => {
    const odd = ['油管', '🛢️ \ud83d', '\udc00 צינור', 'ok'].map(named);
    expect((await renderPdf(odd, options)).length).toBeGreaterThan(1000);
    expect(missingCharacters(odd, FONTS).join('')).toMatch(/^油管🛢צינור$/u);
    expect(missingCharacters(pages, FONTS)).toEqual([]);
  });

  it('refuses a wrong call', async () => {
    await expect(renderPdf([], options)).rejects.toThrow(/at least one page/);
    await expect(renderPdf([{ ...named('A'), width: 0 }], options)).rejects.toThrow(/got 0 × 50/);
    const outline = [{ title: 'a', page: 7 }];
    await expect(renderPdf([named('A')], { ...options, outline })).rejects.toThrow(/from 0 to 0, got 7/);
    await expect(
      renderPdf([named('A')], { ...options, fonts: { ...FONTS, regular: FONTS.bold } }),
    ).rejects.toThrow(RangeError);
  });
});

describe('the door of the drawing room', () => {
  /** Every file and library that a file loads. */
  function loads(file: string, seen = new Set<string>()): Set<string> {
    if (seen.has(file)) return seen;
    seen.add(file);
    const text = readFileSync(join(import.meta.dirname, file), 'utf8');
    for (const [, from] of text.matchAll(/^(?:import|export)\s(?!type\b)[^;]*?from '([^']+)'/gm))
      if (from!.startsWith('./')) loads(from!.slice(2), seen);
      else seen.add(from!);
    return seen;
  }

  it('does not load the PDF and font libraries, the door to the PDF does', () => {
    const heavy = ['@cantoo/pdf-lib', 'fontkit'];
    expect([...loads('index.ts')].filter((name) => heavy.includes(name) || name.startsWith('pdf'))).toEqual(
      [],
    );
    expect([...loads('index.ts')]).toContain('svg.ts');
    for (const name of heavy) expect([...loads('pdf.ts')]).toContain(name);
  });
});
