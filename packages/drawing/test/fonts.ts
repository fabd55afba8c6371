/** The bytes of the sheet's typeface, as the command ships them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const read = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(join(import.meta.dirname, '../../../apps/cli/fonts', name)));

export const FONTS = {
  regular: read('DejaVuSansCondensed.ttf'),
  bold: read('DejaVuSansCondensed-Bold.ttf'),
} as const;
