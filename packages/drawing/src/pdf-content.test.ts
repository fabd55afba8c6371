import { describe, expect, it } from 'vitest';
import { FONTS } from '../test/fonts.ts';
import { CAP_EM, textWidth } from './measure.ts';
import { type Faces, pageContent } from './pdf-content.ts';
import { Face } from './pdf-face.ts';
import { mm, ratio } from './pdf-number.ts';
import type { Item, Page, TextItem } from './types.ts';

const faces = (): Faces => ({
  regular: new Face(FONTS.regular, 'regular'),
  bold: new Face(FONTS.bold, 'bold'),
});
const page = (items: readonly Item[]): Page => ({
  width: 210,
  height: 297,
  title: 'A page',
  description: '',
  lang: 'en',
  zones: [],
  items,
});
/** The operators of one item, without those of the page. */
const drawn = (item: Item): string[] =>
  pageContent(page([item]), faces())
    .split('\n')
    .slice(2);

const pen = { width: 0.5, grey: 0 };
const text = (over: Partial<TextItem>): TextItem => ({
  kind: 'text',
  x: 100,
  y: 50,
  cap: 5,
  weight: 'bold',
  anchor: 'start',
  fill: 0,
  text: 'AB',
  zone: 'z',
  ...over,
});

describe('pageContent', () => {
  it('counts in millimetres from the top left', () => {
    expect(pageContent(page([]), faces())).toBe('2.834645669 0 0 -2.834645669 0 841.88976378 cm\n1 j');
  });

  it('draws lines with their pen, dashes and caps', () => {
    expect(drawn({ kind: 'line', from: [1, 2], to: [3.5, 4], stroke: pen })).toEqual([
      '0 G 0.5 w 0 J [] 0 d',
      '1 2 m',
      '3.5 4 l',
      'S',
    ]);
    const dashed = { ...pen, grey: 0.5, dash: [3, 1], cap: 'round' } as const;
    expect(drawn({ kind: 'line', from: [0, 0], to: [9, 0], stroke: dashed })[0]).toBe(
      '0.50196 G 0.5 w 1 J [3 1] 0 d',
    );
  });

  it('fills, strokes or does both, and leaves out what nobody would see', () => {
    const rect = { kind: 'rect', x: 1, y: 2, width: 30, height: 40 } as const;
    expect(drawn({ ...rect, fill: 1 }).at(-1)).toBe('f');
    expect(drawn({ ...rect, stroke: pen }).at(-1)).toBe('S');
    expect(drawn({ ...rect, fill: 0.2, stroke: pen }).at(-1)).toBe('B');
    expect(drawn(rect)).toEqual([]);
    expect(drawn({ ...rect, stroke: { ...pen, width: 0 } })).toEqual([]);
    expect(drawn({ ...rect, width: 0, fill: 0 })).toEqual([]);
    expect(drawn({ kind: 'circle', centre: [5, 5], radius: 0, fill: 0 })).toEqual([]);
  });

  it('takes a dash of nothing for a whole line, as SVG does: PDF would refuse it', () => {
    const stroke = { ...pen, dash: [0, 0] };
    expect(drawn({ kind: 'line', from: [0, 0], to: [9, 0], stroke })[0]).toBe('0 G 0.5 w 0 J [] 0 d');
  });

  it('sets text upright, its anchor by the measured width', () => {
    const size = mm(5 / CAP_EM);
    const at = (anchor: TextItem['anchor']): string => drawn(text({ anchor }))[1]!;
    expect(at('start')).toBe(`BT 0 Tr /F2 ${size} Tf 1 0 0 -1 100 50 Tm <00010002> Tj ET`);
    const width = textWidth('AB', 5, 'bold');
    expect(at('middle')).toContain(`Tf 1 0 0 -1 ${mm(100 - width / 2)} 50 Tm`);
    expect(at('end')).toContain(`Tf 1 0 0 -1 ${mm(100 - width)} 50 Tm`);
  });

  it('draws letters in outline alone, or filled and in outline', () => {
    expect(drawn(text({ fill: null, outline: pen })).join(' ')).toMatch(/^0 G 0.5 w .* BT 1 Tr/);
    expect(drawn(text({ fill: 0.5, outline: pen })).join(' ')).toMatch(/^0.50196 g 0 G 0.5 w .* BT 2 Tr/);
    expect(drawn(text({ fill: null }))).toEqual([]);
    expect(drawn(text({ text: '\u0000 ' }))).toEqual([]);
  });

  it('turns and clips a group, and puts everything back after it', () => {
    const inner: Item = { kind: 'line', from: [0, 0], to: [1, 0], stroke: pen };
    const clip = { x: 0, y: 0, width: 10, height: 20 };
    expect(drawn({ kind: 'group', at: [30, 40], turn: 90, clip, items: [inner] })).toEqual([
      'q 0 1 -1 0 30 40 cm',
      '0 0 10 20 re W n',
      '0 G 0.5 w 0 J [] 0 d',
      '0 0 m',
      '1 0 l',
      'S',
      'Q',
    ]);
  });

  it('refuses what is no number', () => {
    const bad: Item = { kind: 'line', from: [0, Number.NaN], to: [1, 0], stroke: pen };
    expect(() => drawn(bad)).toThrow(RangeError);
    expect(() => drawn(text({ x: Number.POSITIVE_INFINITY }))).toThrow(/finite, got Infinity/);
  });
});

describe('numbers', () => {
  it('have no exponent and no minus zero', () => {
    expect([0.000001, -0.000001, 1 / 3, -12.5, 123456.789].map(mm)).toEqual([
      '0',
      '0',
      '0.33333',
      '-12.5',
      '123456.789',
    ]);
    expect([1e-12, -1e-12, 1, -0.5, 2 / 3, 100].map(ratio)).toEqual([
      '0',
      '0',
      '1',
      '-0.5',
      '0.666666667',
      '100',
    ]);
  });
});
