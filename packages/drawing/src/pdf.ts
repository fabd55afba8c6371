/**
 * The pages of a sheet as a PDF at true scale. A door of its own, so that nobody who does not print loads the
 * PDF and font libraries.
 */
import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { type Faces, FONT_NAMES, POINTS_PER_MM, pageContent } from './pdf-content.ts';
import { fillCatalog, identity, info, type PdfBookmark } from './pdf-document.ts';
import { Face } from './pdf-face.ts';
import type { Page, Weight } from './types.ts';

export type { PdfBookmark } from './pdf-document.ts';

/** The bytes of DejaVuSansCondensed.ttf and DejaVuSansCondensed-Bold.ttf, version 2.37: the faces that were measured. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface PdfOptions {
  readonly fonts: PdfFonts;
  /** Title of the document, shown in the window's bar. */
  readonly title: string;
  /** BCP 47 */
  readonly lang: string;
  /** Bookmarks; default: one for each page, by its title. */
  readonly outline?: readonly PdfBookmark[];
}

const WEIGHTS: readonly Weight[] = ['regular', 'bold'];

/**
 * Pages as one PDF: a millimetre of the display list is a millimetre of the paper, text can be searched and
 * copied, the faces are embedded as subsets, no clock is read. The same pages give the same bytes, in Node and
 * in a browser. A character the typeface lacks, and one of a script written from the right, prints as a box and
 * is still copied as itself: see `missingCharacters`.
 *
 * @throws RangeError when there is no page, a page has no size, a number is not finite, a bookmark names no page,
 * or a font is not the one measured
 */
export async function renderPdf(pages: readonly Page[], options: PdfOptions): Promise<Uint8Array> {
  if (pages.length === 0) throw new RangeError('renderPdf: pages must hold at least one page');
  const { fonts, title, lang } = options;
  const faces = facesOf(fonts);
  const contents = pages.map((page) => pageContent(page, faces));
  const document = await PDFDocument.create({ updateMetadata: false });
  const { context, catalog } = document;
  const resources = context.register(context.obj({ Font: embedded(faces, document) }));
  for (const [i, page] of pages.entries()) {
    const { node } = document.addPage(sizeOf(page));
    node.set(PDFName.of('Resources'), resources);
    node.set(PDFName.of('Contents'), context.register(context.flateStream(contents[i]!)));
  }
  fillCatalog(catalog, {
    lang,
    bookmarks: options.outline ?? pages.map((page, i) => ({ title: page.title, page: i })),
    pages: document.getPages().map((page) => page.ref),
  });
  context.trailerInfo.Info = info(context, title);
  context.trailerInfo.ID = identity(context, [title, ...contents].join('\n'));
  // Old printers read plain objects; the large parts are compressed either way.
  return document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
}

/**
 * The characters of the pages that `renderPdf` prints as a box, each once, in order of their first use:
 * what the typeface lacks, and what is written from the right.
 *
 * @throws RangeError as `renderPdf`
 */
export function missingCharacters(pages: readonly Page[], fonts: PdfFonts): readonly string[] {
  const faces = facesOf(fonts);
  for (const page of pages) pageContent(page, faces);
  return [...new Set(WEIGHTS.flatMap((weight) => faces[weight].missing))];
}

const facesOf = (fonts: PdfFonts): Faces => ({
  regular: new Face(fonts.regular, 'regular'),
  bold: new Face(fonts.bold, 'bold'),
});

const embedded = (faces: Faces, { context }: PDFDocument) =>
  Object.fromEntries(
    WEIGHTS.filter((weight) => faces[weight].inUse).map((weight) => [
      FONT_NAMES[weight],
      faces[weight].embed(context),
    ]),
  );

function sizeOf({ width, height }: Page): [number, number] {
  if (!(width > 0 && height > 0 && Number.isFinite(width + height)))
    throw new RangeError(`renderPdf: a page must be > 0 mm both ways, got ${width} × ${height}`);
  return [points(width), points(height)];
}

/** To 1/10,000 point: 35 nm. */
const points = (mm: number): number => Math.round(mm * POINTS_PER_MM * 10_000) / 10_000;
