import { readFile } from 'node:fs/promises';
import type { PdfFonts } from 'runback/pdf';

/** The typeface of the sheet, as it ships with the command. */
export async function sheetFonts(): Promise<PdfFonts> {
  const read = async (name: string): Promise<Uint8Array> =>
    new Uint8Array(await readFile(new URL(`../fonts/${name}.ttf`, import.meta.url)));
  const [regular, bold] = await Promise.all([read('DejaVuSansCondensed'), read('DejaVuSansCondensed-Bold')]);
  return { regular, bold };
}
