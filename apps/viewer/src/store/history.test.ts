import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { begun, type History, redoLabel, redone, stepped, undoLabel, undone } from './history.ts';

const step = (text: string, gesture: string | null = null) => ({ text, label: `to ${text}`, gesture });

describe('history', () => {
  it('undoes and redoes every step, as often as there were steps', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.string(), { minLength: 2, maxLength: 60 }), (texts) => {
        const full = texts.slice(1).reduce((h, text) => stepped(h, step(text)), begun(texts[0]!));
        const seen: string[] = [full.now.text];
        let h: History = full;
        while (undoLabel(h) !== null) {
          h = undone(h);
          seen.unshift(h.now.text);
        }
        expect(seen).toEqual(texts);
        while (redoLabel(h) !== null) h = redone(h);
        expect(h.now.text).toBe(texts.at(-1));
      }),
      { seed: 7, numRuns: 100 },
    );
  });

  it('makes one step of a gesture, and a new one of the next', () => {
    let h = begun('a');
    for (const text of ['b', 'c', 'd']) h = stepped(h, step(text, 'drag-1'));
    h = stepped(h, step('e', 'drag-2'));
    expect(h.past.map(({ text }) => text)).toEqual(['a', 'd']);
    expect(undone(undone(h)).now.text).toBe('a');
  });

  it('forgets what was undone once something else is done, and takes no step to the same text', () => {
    const h = undone(stepped(stepped(begun('a'), step('b')), step('c')));
    expect(redoLabel(h)).toBe('to c');
    expect(redoLabel(stepped(h, step('x')))).toBeNull();
    expect(stepped(h, step('b'))).toBe(h);
  });

  it('stays as it is at either end', () => {
    const h = begun('a');
    expect(undone(h)).toBe(h);
    expect(redone(h)).toBe(h);
  });
});
