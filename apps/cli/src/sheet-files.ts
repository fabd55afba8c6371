/** The files of a set of sheets, drawn but not yet written. */
import { join } from 'node:path';
import type { WorkedJob, WorkedLine } from 'runback';
import type { PdfBookmark } from 'runback/pdf';
import { type Page, pageNames, renderSvg, sheetName, titleSlug } from 'runback/sheet';
import { createSVGWindow } from 'svgdom';
import { sheetFonts } from './fonts.ts';

export interface SheetFile {
  readonly path: string;
  readonly content: string | Uint8Array;
  /** A line in it fails a check: its pages are stamped. */
  readonly failed: boolean;
  /** Characters that the typeface lacks and the file shows as boxes. */
  readonly missing: readonly string[];
}

/** The pages of one line. */
export interface LinePages {
  readonly worked: WorkedLine;
  readonly pages: readonly Page[];
}

export interface Naming {
  readonly out: string;
  readonly from: 'a' | 'z';
}

const named = (of: string, { from }: Naming): string => sheetName(of, from === 'z' ? 'Z' : 'A');

/** One SVG for each page; a line of one page is named after the line alone. */
export function svgFiles({ worked, pages }: LinePages, naming: Naming): SheetFile[] {
  const names = pageNames(named(worked.line.id, naming), pages.length);
  return pages.map((page, i) => {
    const content = renderSvg(page, createSVGWindow());
    return { path: join(naming.out, names[i]!), content, failed: worked.verdict === 'fail', missing: [] };
  });
}

/** One PDF with the pages of a line. */
export async function linePdf(line: LinePages, job: WorkedJob, naming: Naming): Promise<SheetFile> {
  const { id, name } = line.worked.line;
  return pdf(join(naming.out, `${named(id, naming)}.pdf`), [line], { title: `${job.title}: ${name}` });
}

/** One PDF with the pages of all these lines, each under a bookmark of its own, named after the job. */
export async function jobPdf(
  lines: readonly LinePages[],
  job: WorkedJob,
  { cover, ...naming }: Naming & { readonly cover: readonly Page[] },
): Promise<SheetFile> {
  const path = join(naming.out, `${named(titleSlug(job.title), naming)}.pdf`);
  let first = cover.length;
  const outline = lines.map(({ worked, pages }): PdfBookmark => {
    const at = first;
    first += pages.length;
    const inside = pages.length > 1 ? pages.map(({ title }, i) => ({ title, page: at + i })) : [];
    return { title: worked.line.name, page: at, inside };
  });
  const front = { title: 'Cover', page: 0, inside: [] };
  return pdf(path, lines, { title: job.title, outline: [front, ...outline], cover });
}

interface About {
  readonly title: string;
  readonly outline?: readonly PdfBookmark[];
  readonly cover?: readonly Page[];
}

async function pdf(
  path: string,
  lines: readonly LinePages[],
  { cover = [], ...about }: About,
): Promise<SheetFile> {
  // Loaded only when a PDF is asked for: the libraries behind it are the largest part of the command.
  const [{ missingCharacters, renderPdf }, fonts] = await Promise.all([import('runback/pdf'), sheetFonts()]);
  const pages = [...cover, ...lines.flatMap((line) => line.pages)];
  const content = await renderPdf(pages, { ...about, fonts, lang: pages[0]?.lang ?? 'en' });
  const failed = lines.some(({ worked }) => worked.verdict === 'fail');
  return { path, content, failed, missing: missingCharacters(pages, fonts) };
}
