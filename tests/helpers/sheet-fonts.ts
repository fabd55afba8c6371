/** The bytes of the sheet's typeface, as the command ships them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PdfFonts } from '@runback/drawing/pdf';
import { ROOT } from './run.ts';

const read = (name: string): Uint8Array => new Uint8Array(readFileSync(join(ROOT, 'apps/cli/fonts', name)));

export const FONTS: PdfFonts = {
  regular: read('DejaVuSansCondensed.ttf'),
  bold: read('DejaVuSansCondensed-Bold.ttf'),
};
