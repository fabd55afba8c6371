/** What stands round the pages of a PDF: title, language, bookmarks, how it is to be printed. */
import {
  type PDFContext,
  type PDFDict,
  PDFHexString,
  PDFName,
  type PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import { cleanText } from './measure.ts';
import { sum } from './pdf-number.ts';

/** A bookmark. */
export interface PdfBookmark {
  readonly title: string;
  /** Index of its page, from 0. */
  readonly page: number;
  /** Bookmarks under this one. */
  readonly inside?: readonly PdfBookmark[];
}

/** Packages read no clock: every sheet is dated alike, and the job's checksum in its foot tells sheets apart. */
const DATE = 'D:20000101000000Z';

export const words = (text: string): PDFHexString => PDFHexString.fromText(cleanText(text));

export const info = (context: PDFContext, title: string): PDFRef =>
  context.register(
    context.obj({
      Title: words(title),
      Creator: PDFString.of('Runback'),
      Producer: PDFString.of('Runback'),
      CreationDate: PDFString.of(DATE),
      ModDate: PDFString.of(DATE),
    }),
  );

/** A file's name for itself, twice: made from what it holds, so the same pages have the same one. */
export function identity(context: PDFContext, content: string) {
  const digits = [1, 2, 3, 4].map((seed) => sum(content, seed).toString(16).padStart(8, '0')).join('');
  return context.obj([PDFHexString.of(digits), PDFHexString.of(digits)]);
}

export interface Catalog {
  readonly lang: string;
  readonly bookmarks: readonly PdfBookmark[];
  readonly pages: readonly PDFRef[];
}

/** Fills the catalogue: at true scale on paper, the title in the window's bar. */
export function fillCatalog(catalog: PDFDict, { lang, bookmarks, pages }: Catalog): void {
  const { context } = catalog;
  const set = (key: string, value: Parameters<PDFDict['set']>[1]): void =>
    catalog.set(PDFName.of(key), value);
  set('Lang', PDFString.of(cleanText(lang).replace(/[^A-Za-z0-9-]/gu, '')));
  set('ViewerPreferences', context.obj({ DisplayDocTitle: true, PrintScaling: 'None' }));
  if (bookmarks.length > 0) set('Outlines', outline(context, bookmarks, pages));
}

function outline(context: PDFContext, bookmarks: readonly PdfBookmark[], pages: readonly PDFRef[]): PDFRef {
  const root = context.nextRef();
  const dict = context.obj({ Type: 'Outlines' });
  context.assign(root, dict);
  hang({ context, pages }, root, { dict, bookmarks });
  return root;
}

interface Place {
  readonly context: PDFContext;
  readonly pages: readonly PDFRef[];
}

/** Hangs bookmarks under their parent, each linked to its neighbours; answers how many are open to view. */
function hang(
  place: Place,
  parent: PDFRef,
  { dict, bookmarks }: { readonly dict: PDFDict; readonly bookmarks: readonly PdfBookmark[] },
): number {
  const { context } = place;
  const refs = bookmarks.map(() => context.nextRef());
  let shown = bookmarks.length;
  bookmarks.forEach(({ title, page, inside = [] }, i) => {
    const item = context.obj({
      Title: words(title),
      Parent: parent,
      Dest: [target(place.pages, page), 'XYZ', null, null, null],
    });
    if (i > 0) item.set(PDFName.of('Prev'), refs[i - 1]!);
    if (i + 1 < refs.length) item.set(PDFName.of('Next'), refs[i + 1]!);
    context.assign(refs[i]!, item);
    if (inside.length > 0) shown += hang(place, refs[i]!, { dict: item, bookmarks: inside });
  });
  dict.set(PDFName.of('First'), refs[0]!);
  dict.set(PDFName.of('Last'), refs.at(-1)!);
  dict.set(PDFName.of('Count'), context.obj(shown));
  return shown;
}

function target(pages: readonly PDFRef[], page: number): PDFRef {
  const ref = pages[page];
  if (!ref)
    throw new RangeError(`renderPdf: a bookmark must name a page from 0 to ${pages.length - 1}, got ${page}`);
  return ref;
}
