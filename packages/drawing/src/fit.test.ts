import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLines, fitText } from './fit.ts';
import { blockHeight } from './lines.ts';
import { cleanText, textWidth } from './measure.ts';

describe('fitText', () => {
  it('keeps the size asked for where it can, shrinks before it breaks, breaks before it cuts', () => {
    expect(fitText('TOP AWAY', { width: 60, cap: 4 })).toEqual({ cap: 4, lines: ['TOP AWAY'], cut: false });
    const shrunk = fitText('TOP AWAY FROM YOU', { width: 45, cap: 4, minCap: 3, lines: 2 });
    expect(shrunk.lines).toHaveLength(1);
    expect(shrunk.cap).toBeLessThan(4);
    const two = fitText('TOP AWAY FROM YOU', { width: 30, cap: 4, minCap: 3.5, lines: 2 });
    expect(two).toMatchObject({ lines: ['TOP AWAY', 'FROM YOU'], cut: false });
    expect(fitText('TOP AWAY FROM YOU', { width: 30, cap: 4 })).toEqual({
      cap: 4,
      lines: ['TOP AWA…'],
      cut: true,
    });
  });

  it('prefers large letters on more lines when asked to', () => {
    const options = { width: 45, cap: 4, minCap: 3, lines: 2 } as const;
    expect(fitText('TOP AWAY FROM YOU', { ...options, first: 'wrap' })).toMatchObject({
      cap: 4,
      lines: ['TOP AWAY FROM', 'YOU'],
    });
  });

  it('keeps a unit with its number and a size with what it is of, and starts no line with a dot, where there is room', () => {
    const linesOf = (text: string, behind: string): readonly string[] =>
      fitText(text, { width: textWidth(behind, 3, 'regular') + 0.1, cap: 3, lines: 3 }).lines;
    expect(linesOf('length of water 2.73 mm', 'length of water 2.73')).toEqual([
      'length of water',
      '2.73 mm',
    ]);
    expect(linesOf('bore in tube OD 12', 'bore in tube OD')).toEqual(['bore in tube', 'OD 12']);
    expect(linesOf('clips from here 85 · 290', 'clips from here 85')).toEqual([
      'clips from here',
      '85 · 290',
    ]);
    expect(linesOf('190 mm from end A on', '190 mm from end')).toEqual(['190 mm from', 'end A on']);
    expect(linesOf('1000 mm', '1000')).toEqual(['1000', 'mm']);
    expect(linesOf('parts of that B mm', 'parts of that B')).toEqual(['parts of that B', 'mm']);
  });

  it('breaks between letters where a script has no spaces, and not before a stop or behind a bracket', () => {
    const linesOf = (text: string, cap = 3): readonly string[] =>
      fitText(text, { width: 20, cap, lines: 9 }).lines;
    expect(linesOf('右側エンジンオイル').join('')).toBe('右側エンジンオイル');
    expect(linesOf('右側エンジンオイル').length).toBeGreaterThan(1);
    expect(linesOf('右側管、右側管（右側').every((line) => !/^[、]|[（]$/u.test(line))).toBe(true);
    expect(linesOf('END 右側 A')).toEqual(['END 右側', 'A']);
  });

  it('breaks inside a word only where it would else be cut', () => {
    const word = 'bracket-number-one-on-the-left-hand-rail';
    const wide = { width: textWidth(word, 2, 'regular') + 0.1, cap: 4, minCap: 2, lines: 3 } as const;
    expect(fitText(word, { ...wide, first: 'wrap' })).toMatchObject({ lines: [word], cut: false });
    const { lines, cap, cut } = fitText(word, { ...wide, width: wide.width / 2 });
    expect({ cap, cut, whole: lines.join('') }).toEqual({ cap: 2, cut: false, whole: word });
    expect(fitText(word, { ...wide, width: wide.width / 4, lines: 2 }).cut).toBe(true);
  });

  it('never leaves its width, its height, its lines or its sizes, and says when words are lost', () => {
    const word = fc.string({ unit: 'grapheme', maxLength: 14 });
    const text = fc.array(word, { maxLength: 12 }).map((parts) => parts.join(' '));
    const asked = fc.record({
      width: fc.double({ min: 6, max: 80, noNaN: true }),
      height: fc.double({ min: 8, max: 40, noNaN: true }),
      cap: fc.double({ min: 2, max: 4, noNaN: true }),
      lines: fc.integer({ min: 1, max: 5 }),
      first: fc.constantFrom('shrink', 'wrap'),
      weight: fc.constantFrom('regular', 'bold'),
    });
    fc.assert(
      fc.property(text, asked, (said, options) => {
        const { cap, lines, cut } = fitLines(said, { ...options, minCap: 1.5 });
        expect(cap).toBeLessThanOrEqual(options.cap);
        expect(cap).toBeGreaterThanOrEqual(1.5);
        expect(lines.length).toBeLessThanOrEqual(options.lines);
        expect(blockHeight(lines) * cap).toBeLessThanOrEqual(options.height * (1 + Number.EPSILON));
        for (const line of lines)
          expect(textWidth(line.text, cap, options.weight)).toBeLessThanOrEqual(options.width * 1.000001);
        const letters = (of: string): string => of.replaceAll(' ', '');
        if (!cut) expect(letters(lines.map((line) => line.text).join(''))).toBe(letters(cleanText(said)));
        else expect(lines.at(-1)!.text.endsWith('…') || lines.some((l) => l.text.endsWith('…'))).toBe(true);
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  it('refuses calls that mean nothing', () => {
    expect(() => fitText('a', { width: 0, cap: 3 })).toThrow('width must be > 0 mm, got 0');
    expect(() => fitText('a', { width: 5, cap: 3, lines: 0 })).toThrow('lines must be 1 or more, got 0');
    expect(() => fitText('a', { width: 5, cap: 3, minCap: 4 })).toThrow(
      'minCap must be > 0 and at most 3 mm, got 4',
    );
  });
});
