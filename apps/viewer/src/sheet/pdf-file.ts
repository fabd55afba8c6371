/** The PDF of what is shown, byte for byte the one that the command writes. */
import type { PdfBookmark, PdfFonts } from 'runback/pdf';
import { pagesOf, type SheetSet } from './sheets.ts';

export interface PdfFile {
  readonly bytes: Uint8Array;
  /** Characters that the typeface lacks: boxes stand for them. */
  readonly missing: readonly string[];
}

/**
 * The libraries behind it are loaded here, on first use.
 *
 * @throws RangeError when there is no page
 */
export async function pdfFile(set: SheetSet, fonts: PdfFonts): Promise<PdfFile> {
  const { missingCharacters, renderPdf } = await import('runback/pdf');
  const pages = pagesOf(set);
  const bytes = await renderPdf(pages, { ...about(set), fonts, lang: pages[0]?.lang ?? 'en' });
  return { bytes, missing: missingCharacters(pages, fonts) };
}

interface About {
  readonly title: string;
  readonly outline?: readonly PdfBookmark[];
}

function about({ job, choice, cover, lines }: SheetSet): About {
  if (choice.which === 'line') return { title: `${job.title}: ${lines[0]?.worked.line.name ?? ''}` };
  let first = cover.length;
  const outline = lines.flatMap(({ worked, pages }): readonly PdfBookmark[] => {
    if (pages.length === 0) return [];
    const at = first;
    first += pages.length;
    const inside = pages.length > 1 ? pages.map(({ title }, i) => ({ title, page: at + i })) : [];
    return [{ title: worked.line.name, page: at, inside }];
  });
  return { title: job.title, outline: [{ title: 'Cover', page: 0, inside: [] }, ...outline] };
}
