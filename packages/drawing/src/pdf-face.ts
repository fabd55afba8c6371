/** One weight of the sheet's typeface in a PDF: its characters one by one as measured, no kerning, no ligatures. */
import { type PDFContext, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import { CAP_EM, roomOf } from './measure.ts';
import { sum } from './pdf-number.ts';
import type { Weight } from './types.ts';

/** What is used of fontkit. Its published types want Node's Buffer and have `includeGlyph` answer a boolean. */
interface Font {
  readonly postscriptName: string;
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly bbox: { minX: number; minY: number; maxX: number; maxY: number };
  glyphForCodePoint(code: number): { id: number; advanceWidth: number };
  getGlyph(id: number): { advanceWidth: number };
  createSubset(): { includeGlyph(id: number): number; encode(): Uint8Array };
}

const open = fontkit.create as unknown as (bytes: Uint8Array) => Font;

/** The width that measuring gives a character it does not know. */
const UNKNOWN_EM = roomOf('\u{10ffff}', 'regular').em;

/** Written from the right, or joined to their neighbours: set one by one from the left they would read wrong. */
const FROM_THE_RIGHT =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Adlam}]/u;

/** The glyph of a font for what it lacks: a box. */
const BOX = 0;

interface Used {
  readonly code: number;
  readonly glyph: number;
  readonly em: number;
}

/** Collects the characters set in one weight; a number of its own for each, so that each is read back as itself. */
export class Face {
  /** Characters printed as a box, in order of their first use. */
  readonly missing: string[] = [];
  readonly #font: Font;
  readonly #weight: Weight;
  readonly #used = new Map<string, Used & { readonly cid: number }>();

  /** @throws RangeError when the bytes are no font */
  constructor(bytes: Uint8Array, weight: Weight) {
    this.#weight = weight;
    try {
      this.#font = open(bytes);
    } catch {
      throw new RangeError(`renderPdf: fonts.${weight} is not a font file`);
    }
  }

  get inUse(): boolean {
    return this.#used.size > 0;
  }

  /** The text as a PDF string, and its width in em. */
  set(text: string): { readonly codes: string; readonly em: number } {
    const letters = [...text].map((character) => this.#letter(character));
    return {
      codes: `<${letters.map(({ cid }) => hex(cid)).join('')}>`,
      em: letters.reduce((em, letter) => em + letter.em, 0),
    };
  }

  #letter(character: string): Used & { readonly cid: number } {
    const known = this.#used.get(character);
    if (known) return known;
    const letter = { ...this.#look(character), cid: this.#used.size + 1 };
    if (letter.glyph === BOX) this.missing.push(character);
    this.#used.set(character, letter);
    return letter;
  }

  #look(character: string): Used {
    const { unitsPerEm } = this.#font;
    const code = character.codePointAt(0)!;
    const glyph = this.#font.glyphForCodePoint(code);
    const [em, room] = [glyph.advanceWidth / unitsPerEm, roomOf(character, this.#weight).em];
    const measured = room !== UNKNOWN_EM;
    if (measured && em !== room)
      throw new RangeError(
        `renderPdf: fonts.${this.#weight} must be the measured typeface; in ${this.#font.postscriptName} "${character}" is ${em} em wide, not ${room}`,
      );
    if (em <= room && !FROM_THE_RIGHT.test(character)) return { code, glyph: glyph.id, em };
    return { code, glyph: BOX, em: this.#font.getGlyph(BOX).advanceWidth / unitsPerEm };
  }

  /** Writes the subset with its widths and its way back to Unicode; answers the font dictionary. */
  embed(context: PDFContext): PDFRef {
    const letters = [...this.#used.values()];
    const subset = this.#font.createSubset();
    const glyphs = [BOX, ...letters.map(({ glyph }) => subset.includeGlyph(glyph))];
    const tag = subsetTag([...this.#used.keys()].join(''));
    const name = `${tag}+${this.#font.postscriptName}`;
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        BaseFont: name,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        CIDToGIDMap: context.register(context.flateStream(twoBytes(glyphs))),
        FontDescriptor: this.#describe(context, { name, file: subset.encode() }),
        W: [1, letters.map(({ em }) => em * 1000)],
      }),
    );
    return context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: name,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: context.register(context.flateStream(toUnicode(letters.map(({ code }) => code)))),
      }),
    );
  }

  #describe(context: PDFContext, { name, file }: { name: string; file: Uint8Array }): PDFRef {
    const { ascent, descent, bbox, unitsPerEm } = this.#font;
    const thousandths = (units: number): number => (units * 1000) / unitsPerEm;
    return context.register(
      context.obj({
        Type: 'FontDescriptor',
        FontName: name,
        // Symbolic: its characters are not those of a standard Latin encoding.
        Flags: 4,
        FontBBox: [bbox.minX, bbox.minY, bbox.maxX, bbox.maxY].map(thousandths),
        ItalicAngle: 0,
        Ascent: thousandths(ascent),
        Descent: thousandths(descent),
        CapHeight: CAP_EM * 1000,
        // The file does not say; 0 means unknown.
        StemV: 0,
        FontFile2: context.register(context.flateStream(file, { Length1: file.length })),
      }),
    );
  }
}

const hex = (n: number): string => n.toString(16).padStart(4, '0');

function twoBytes(numbers: readonly number[]): Uint8Array {
  return Uint8Array.from(numbers.flatMap((n) => [n >> 8, n & 0xff]));
}

/** Six capitals that tell one subset from another. */
function subsetTag(characters: string): string {
  let left = sum(characters);
  return Array.from({ length: 6 }, () => {
    const letter = String.fromCharCode(65 + (left % 26));
    left = Math.floor(left / 26);
    return letter;
  }).join('');
}

/** A block of a character map holds no more. */
const BLOCK = 100;

/** The character map from our numbers, 1, 2, …, to code points in UTF-16. */
function toUnicode(codes: readonly number[]): string {
  const entries = codes.map((code, i) => {
    const utf16 = String.fromCodePoint(code)
      .split('')
      .map((unit) => hex(unit.charCodeAt(0)));
    return `<${hex(i + 1)}> <${utf16.join('')}>`;
  });
  const blocks: string[] = [];
  for (let i = 0; i < entries.length; i += BLOCK) {
    const block = entries.slice(i, i + BLOCK);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}
