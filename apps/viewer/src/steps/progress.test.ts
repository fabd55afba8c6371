import { describe, expect, it } from 'vitest';
import { clearDone, doneKey, doneOf, parseDone, setDone } from './done.ts';
import { keyMove, swipe } from './moving.ts';
import { clampStep, resumeAt, ticksOf } from './progress.ts';
import type { Step } from './step-list.ts';

const step = (id: string, items: readonly string[]): Step => ({
  id,
  kind: 'before',
  title: id,
  items: items.map((item) => ({
    id: item,
    label: null,
    figure: null,
    lead: null,
    words: item,
    amount: null,
    notes: [],
    loud: false,
  })),
  cautions: [],
  index: null,
});

const STEPS = [step('saw', ['saw']), step('before', ['tag', 'nut']), step('read', []), step('end', ['trim'])];

describe('what is done', () => {
  it('is counted for each step', () => {
    const done = new Set(['saw', 'tag']);
    expect(STEPS.map((one) => ticksOf(one, done))).toEqual(['all', 'some', 'none', 'none']);
  });

  it('lets one go on where something is left', () => {
    expect(resumeAt(STEPS, new Set())).toBe(0);
    expect(resumeAt(STEPS, new Set(['saw']))).toBe(1);
    expect(resumeAt(STEPS, new Set(['saw', 'tag', 'nut']))).toBe(3);
    expect(resumeAt(STEPS, new Set(['saw', 'tag', 'nut', 'trim']))).toBe(3);
  });

  it('stays among the steps', () => {
    expect([-1, 2, 9].map((at) => clampStep(at, STEPS))).toEqual([0, 2, 3]);
  });

  it('is kept for one text, line and end, and taken off for another tube', () => {
    const [a, z] = [doneKey('12345678', 'dipstick', 'A'), doneKey('12345678', 'dipstick', 'Z')];
    setDone(a, ['saw', 'tag'], true);
    setDone(a, ['tag'], false);
    expect([...doneOf(a)]).toEqual(['saw']);
    expect(doneOf(z).size).toBe(0);
    clearDone(a);
    expect(doneOf(a).size).toBe(0);
  });

  it('forgets the oldest lines first', () => {
    for (let i = 0; i < 45; i++) setDone(doneKey(String(i), 'x', 'A'), ['saw'], true);
    expect(doneOf(doneKey('0', 'x', 'A')).size).toBe(0);
    expect(doneOf(doneKey('44', 'x', 'A')).size).toBe(1);
  });

  it('reads nothing from a storage that holds something else', () => {
    expect(parseDone({ a: 1 }).size).toBe(0);
    expect(parseDone([['a', ['saw']], ['b', [1]], 'c', null]).size).toBe(1);
  });
});

describe('going on', () => {
  it('takes a finger that went across, not one that scrolled', () => {
    expect(swipe(-120, 20)).toBe('next');
    expect(swipe(120, -20)).toBe('back');
    expect(swipe(-120, 90)).toBeNull();
    expect(swipe(-40, 0)).toBeNull();
  });

  it('takes keys, but none that is meant for something else', () => {
    const moves = { next: () => 'next', back: () => 'back', done: () => 'done', leave: () => 'leave' };
    const press = (key: string, more: Partial<KeyboardEvent> = {}): unknown =>
      keyMove({ key, target: null, altKey: false, ctrlKey: false, metaKey: false, ...more }, moves)?.();
    expect(['ArrowRight', 'ArrowLeft', ' ', 'Escape', 'x'].map((key) => press(key))).toEqual([
      'next',
      'back',
      'done',
      'leave',
      undefined,
    ]);
    expect(press('ArrowLeft', { altKey: true })).toBeUndefined();
  });
});
