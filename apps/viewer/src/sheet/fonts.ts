/** The typeface of the sheet: loaded when a sheet is first shown, for the screen and for the PDF alike. */
import type { PdfFonts } from 'runback/pdf';

const FAMILY = 'DejaVu Sans Condensed';

let fetched: Promise<PdfFonts> | null = null;
let shown: Promise<void> | null = null;

/** Relative to the page, so that it may be served from any path. */
const address = (name: string): URL =>
  new URL(`${import.meta.env.BASE_URL}fonts/${name}.ttf`, document.baseURI);

async function bytesOf(name: string): Promise<Uint8Array<ArrayBuffer>> {
  const response = await fetch(address(name)).catch(() => null);
  if (!response?.ok) throw new Error('the typeface of the sheet cannot be loaded');
  return new Uint8Array(await response.arrayBuffer());
}

/** The bytes of both weights; after a failure the next call tries again. */
export function sheetFonts(): Promise<PdfFonts> {
  fetched ??= Promise.all([bytesOf('DejaVuSansCondensed'), bytesOf('DejaVuSansCondensed-Bold')]).then(
    ([regular, bold]) => ({ regular, bold }),
  );
  fetched.catch(() => {
    fetched = null;
  });
  return fetched;
}

/** Hands the typeface to the page, once. */
export function showFonts(): Promise<void> {
  shown ??= sheetFonts().then(async ({ regular, bold }) => {
    for (const [bytes, weight] of [
      [regular, '400'],
      [bold, '700'],
    ] as const) {
      const face = new FontFace(FAMILY, bytes as Uint8Array<ArrayBuffer>, { weight });
      document.fonts.add(await face.load());
    }
  });
  shown.catch(() => {
    shown = null;
  });
  return shown;
}
