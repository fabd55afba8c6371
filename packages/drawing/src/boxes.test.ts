import { describe, expect, it } from 'vitest';
import { layoutFaults, textBoxes } from './boxes.ts';
import type { Page, TextItem } from './types.ts';

const text = (over: Partial<TextItem>): TextItem => ({
  kind: 'text',
  x: 20,
  y: 20,
  cap: 3,
  weight: 'regular',
  anchor: 'start',
  fill: 0,
  text: 'MARK',
  zone: 'a',
  ...over,
});

const page = (
  items: Page['items'],
  zones: Page['zones'] = [{ name: 'a', x: 10, y: 10, width: 50, height: 30 }],
): Page => ({
  width: 210,
  height: 297,
  title: 't',
  description: 'd',
  lang: 'en',
  zones,
  items,
});

describe('layoutFaults', () => {
  it('finds nothing on a sound page', () => {
    expect(layoutFaults(page([text({}), text({ y: 30 })]))).toEqual([]);
  });

  it('finds each planted fault', () => {
    expect(layoutFaults(page([text({}), text({ x: 22 })]))).toEqual(['"MARK" covers "MARK"']);
    expect(layoutFaults(page([text({ x: 55 })]))[0]).toMatch(/^"MARK" leaves a/);
    expect(layoutFaults(page([text({ y: 12 })]))[0]).toMatch(/^"MARK" leaves a/);
    expect(layoutFaults(page([text({ zone: 'b' })]))).toEqual(['"MARK" names no zone: b']);
    const far = { name: 'b', x: 200, y: 10, width: 20, height: 20 };
    expect(layoutFaults(page([], [far]))[0]).toMatch(/^zone b .* leaves the paper$/);
    const over = { name: 'b', x: 40, y: 10, width: 20, height: 20 };
    expect(layoutFaults(page([], [{ name: 'a', x: 10, y: 10, width: 50, height: 30 }, over]))[0]).toMatch(
      /covers b/,
    );
  });
});

describe('textBoxes', () => {
  it('adds up the groups a text stands in, and its anchor', () => {
    const inner = { kind: 'group', at: [5, 5], items: [text({ anchor: 'end' })] } as const;
    const [box] = textBoxes(page([{ kind: 'group', at: [10, 20], items: [inner] }]));
    expect(box!.x + box!.width).toBeCloseTo(35, 9);
    expect(box!.y).toBeLessThan(45 - 3);
    expect(box!.y + box!.height).toBeGreaterThan(45);
  });

  it('leaves out what is printed across, and refuses what is turned', () => {
    expect(textBoxes(page([text({ across: true })]))).toEqual([]);
    const turned = { kind: 'group', at: [0, 0], turn: 30, items: [text({})] } as const;
    expect(() => textBoxes(page([turned]))).toThrow('text "MARK" stands in a turned group');
  });
});
