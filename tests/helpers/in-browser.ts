/** Runs in a browser: from the text of a job to the PDF of all its sheets, as base64. */
import { workUp } from 'runback';
import { renderPdf } from 'runback/pdf';
import { sheetPages } from 'runback/sheet';

export interface Ask {
  readonly job: string;
  readonly regular: string;
  readonly bold: string;
}

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));

export async function sheetsAsPdf({ job, regular, bold }: Ask): Promise<string> {
  const { lines, checksum, title } = workUp(job);
  const pages = lines.flatMap((line) => sheetPages(line, { from: 'A', checksum }));
  const fonts = { regular: bytesOf(regular), bold: bytesOf(bold) };
  const bytes = await renderPdf(pages, { fonts, title, lang: 'en' });
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}
