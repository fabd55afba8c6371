import { describe, expect, it } from 'vitest';
import { CAP_EM, cleanText, roomOf, textWidth } from './measure.ts';

// Advances read off the TTF files with another program than the one that wrote the data: A is 1260 units of 2048
// in the regular face, H is 1493 units tall in both.
const A_EM = 1260 / 2048;

describe('textWidth', () => {
  it('sums measured advances at the size a cap height asks for', () => {
    expect(CAP_EM).toBe(1493 / 2048);
    expect(textWidth('A', 1, 'regular')).toBeCloseTo(A_EM / CAP_EM, 12);
    expect(textWidth('AAAA', 3, 'regular')).toBeCloseTo((4 * 3 * A_EM) / CAP_EM, 12);
    expect(textWidth('', 3, 'regular')).toBe(0);
  });

  it('knows the letters of the sheet in both weights, so that no width is a guess', () => {
    const needed = 'AZaz09 °×−–—→☐Øéüß…·±ŁőĂșΩλЖяẾữ½"\'&<>√σρπμ∑∫∞≤≥≈²⁴₁';
    for (const weight of ['regular', 'bold'] as const)
      for (const letter of needed)
        expect(roomOf(letter, weight).em, `${weight} ${letter}`).not.toBe(roomOf('\u{20000}', weight).em);
  });

  it('gives bold more room, accents more height and tails more depth', () => {
    expect(textWidth('MARK', 6, 'bold')).toBeGreaterThan(textWidth('MARK', 6, 'regular'));
    expect(roomOf('Ế', 'bold').up).toBeGreaterThan(roomOf('E', 'bold').up);
    expect(roomOf('g', 'regular').down).toBeGreaterThan(roomOf('A', 'regular').down);
  });

  it('refuses a cap height that is none', () => {
    expect(() => textWidth('A', 0, 'bold')).toThrow('cap height must be > 0 mm, got 0');
  });
});

describe('cleanText', () => {
  it('leaves nothing that could move, hide or turn round what is printed', () => {
    expect(cleanText('a\u0000b\u001b[31mc\u202e12\u2066\ufeff')).toBe('ab[31mc12');
    expect(cleanText(' two \n\t lines\u0085 ')).toBe('two lines');
    expect(cleanText('e\u0301')).toBe('é');
    expect(cleanText('lone \ud800 half')).toBe('lone half');
  });
});
