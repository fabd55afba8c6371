// Writes src/widths-data.ts from the two faces of the sheet's typeface:
//   node packages/drawing/tools/make-widths.mjs DejaVuSansCondensed.ttf DejaVuSansCondensed-Bold.ttf
// (Debian package fonts-dejavu-extra). Reads cmap format 4, hmtx, head and glyf straight from the file.
import { readFileSync, writeFileSync } from 'node:fs';

const RANGES = [
  [0x20, 0x7e], // ASCII
  [0xa0, 0x17f], // Latin-1, Latin Extended-A
  [0x18f, 0x192],
  [0x1a0, 0x1b0], // horned O and U
  [0x218, 0x21b], // comma below
  [0x300, 0x30c], // combining accents
  [0x323, 0x323],
  [0x370, 0x3ff], // Greek
  [0x400, 0x52f], // Cyrillic
  [0x1e00, 0x1eff], // Latin Extended Additional (Vietnamese)
  [0x2010, 0x2026], // dashes, quotes, bullet, ellipsis
  [0x2030, 0x203a],
  [0x2070, 0x2094], // raised and lowered figures
  [0x20ac, 0x20ac],
  [0x2116, 0x2122],
  [0x2190, 0x219b], // arrows
  [0x2200, 0x2265], // minus, root, sum, integral, at most, at least
  [0x2300, 0x2300], // diameter
  [0x25a0, 0x25cf],
  [0x2610, 0x2612], // ballot boxes
  [0x2713, 0x2717],
];

function readFace(file) {
  const data = readFileSync(file);
  const tables = {};
  for (let i = 0; i < data.readUInt16BE(4); i++) {
    const at = 12 + i * 16;
    tables[data.toString('latin1', at, at + 4)] = data.readUInt32BE(at + 8);
  }
  const hMetrics = data.readUInt16BE(tables.hhea + 34);
  const advance = (glyph) => data.readUInt16BE(tables.hmtx + 4 * Math.min(glyph, hMetrics - 1));
  const glyphOf = format4(data, tables.cmap);
  return {
    unitsPerEm: data.readUInt16BE(tables.head + 18),
    capHeight: reachOf(data, tables, glyphOf('H'.charCodeAt(0)))[1],
    runs: RANGES.map(([from, to]) => {
      const run = { from, advance: [], top: [], bottom: [] };
      for (let code = from; code <= to; code++) {
        const glyph = glyphOf(code);
        const [bottom, top] = reachOf(data, tables, glyph);
        run.advance.push(glyph === 0 ? -1 : advance(glyph));
        run.top.push(top);
        run.bottom.push(bottom);
      }
      return run;
    }),
  };
}

/** Lowest and highest point of a glyph, 0 when it is empty. The cap height is the top of H: OS/2 does not say it. */
function reachOf(data, tables, glyph) {
  const long = data.readInt16BE(tables.head + 50) === 1;
  const offset = (g) =>
    long ? data.readUInt32BE(tables.loca + 4 * g) : 2 * data.readUInt16BE(tables.loca + 2 * g);
  const at = tables.glyf + offset(glyph);
  if (offset(glyph + 1) === offset(glyph)) return [0, 0];
  return [data.readInt16BE(at + 4), data.readInt16BE(at + 8)];
}

function format4(data, cmap) {
  let at = 0;
  for (let i = 0; i < data.readUInt16BE(cmap + 2); i++) {
    const offset = cmap + data.readUInt32BE(cmap + 8 + i * 8);
    if (data.readUInt16BE(offset) === 4) at = offset;
  }
  if (at === 0) throw new Error('no cmap of format 4');
  const segments = data.readUInt16BE(at + 6);
  return (code) => {
    for (let s = 0; s < segments; s += 2) {
      if (data.readUInt16BE(at + 14 + s) < code) continue;
      const start = data.readUInt16BE(at + 16 + segments + s);
      if (start > code) return 0;
      const delta = data.readInt16BE(at + 16 + 2 * segments + s);
      const rangeAt = at + 16 + 3 * segments + s;
      const range = data.readUInt16BE(rangeAt);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = data.readUInt16BE(rangeAt + range + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}

const [regular, bold] = process.argv.slice(2, 4).map(readFace);
if (!regular || !bold) throw new Error('give the regular and the bold TTF');
const face = (f) =>
  `{\n  unitsPerEm: ${f.unitsPerEm},\n  capHeight: ${f.capHeight},\n  runs: [\n${f.runs
    .map(
      (r) =>
        `    [0x${r.from.toString(16)}, '${r.advance.join(' ')}', '${r.top.join(' ')}', '${r.bottom.join(' ')}'],`,
    )
    .join('\n')}\n  ],\n}`;
writeFileSync(
  new URL('../src/widths-data.ts', import.meta.url),
  `/**
 * Advance widths, reach above and below the baseline, and cap heights of DejaVu Sans Condensed, regular and bold, in units of the em square.
 * Made by tools/make-widths.mjs from the TTF files of DejaVu 2.37; -1 marks a character the face does not have.
 * The DejaVu fonts are free: Bitstream Vera is copyright (c) 2003 Bitstream, Inc. and may be used, copied and
 * redistributed; the DejaVu changes are in the public domain. Only measurements are kept here, no outlines.
 */
export interface FaceData {
  readonly unitsPerEm: number;
  readonly capHeight: number;
  /** First code point of a run, then advance, top and bottom of each character from there on. */
  readonly runs: readonly (readonly [number, string, string, string])[];
}

// biome-ignore format: one run a line
export const regularFace: FaceData = ${face(regular)};

// biome-ignore format: one run a line
export const boldFace: FaceData = ${face(bold)};
`,
);
