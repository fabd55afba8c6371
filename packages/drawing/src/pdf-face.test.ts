import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FONTS } from '../test/fonts.ts';
import { cleanText, roomOf } from './measure.ts';
import { Face } from './pdf-face.ts';
import { boldFace, regularFace } from './widths-data.ts';

const FACES = [
  ['regular', regularFace],
  ['bold', boldFace],
] as const;

describe('Face', () => {
  for (const [weight, data] of FACES)
    it(`sets every measured character of ${weight} as wide as measured, without a box`, () => {
      const characters = data.runs.flatMap(([first, advances]) =>
        advances
          .split(' ')
          .flatMap((advance, i) => (advance === '-1' ? [] : [String.fromCodePoint(first + i)])),
      );
      expect(characters.length).toBeGreaterThan(700);
      const face = new Face(FONTS[weight], weight);
      expect(characters.filter((one) => face.set(one).em !== roomOf(one, weight).em)).toEqual([]);
      expect(face.missing).toEqual([]);
    });

  it('gives every character a number of its own, also where two share a glyph', () => {
    const face = new Face(FONTS.regular, 'regular');
    expect(face.set('AΑА').codes).toBe('<000100020003>');
    expect(face.set('AA').codes).toBe('<00010001>');
  });

  it('neither kerns nor joins', () => {
    const face = new Face(FONTS.regular, 'regular');
    expect(face.set('AVfi').em).toBe([...'AVfi'].reduce((em, c) => em + face.set(c).em, 0));
    expect(face.set('fi').codes).toHaveLength(10);
  });

  it('puts a box, and says so, for what is lacking and for what is written from the right', () => {
    const face = new Face(FONTS.regular, 'regular');
    face.set('A油A油 צ ש');
    expect(face.missing).toEqual(['油', 'צ', 'ש']);
  });

  it('takes any text, never wider than measured', () => {
    const face = new Face(FONTS.bold, 'bold');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (raw) => {
        const text = cleanText(raw);
        expect(face.set(text).em).toBeLessThanOrEqual(roomOf(text, 'bold').em + 1e-9);
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  it('refuses bytes that are no font, and a font that was not measured', () => {
    expect(() => new Face(new Uint8Array(10), 'regular')).toThrow(/fonts.regular is not a font file/);
    expect(() => new Face(FONTS.bold, 'regular').set('A')).toThrow(/must be the measured typeface/);
  });
});
