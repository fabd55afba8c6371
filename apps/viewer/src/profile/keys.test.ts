import { fromRows } from 'runback';
import { describe, expect, it } from 'vitest';
import { keyMove } from './keys.ts';

const { bends, length } = fromRows(
  [
    { straightBefore: 100, turn: null, angle: Math.PI / 2, radius: 20 },
    { straightBefore: 50, turn: 0, angle: Math.PI / 2, radius: 20 },
  ],
  100,
);
const from = (at: number, style: 'mm' | 'in' = 'mm') => ({ at, length, bends, style });
const arc = (Math.PI / 2) * 20;

describe('the bead by keyboard', () => {
  it('goes to the next round step, far with Shift', () => {
    expect(keyMove('ArrowRight', false, from(12.3))).toEqual({ at: 15, bend: null });
    expect(keyMove('ArrowRight', false, from(15))).toEqual({ at: 20, bend: null });
    expect(keyMove('ArrowLeft', false, from(12.3))).toEqual({ at: 10, bend: null });
    expect(keyMove('ArrowLeft', true, from(120))).toEqual({ at: 100, bend: null });
    expect(keyMove('ArrowRight', false, from(0, 'in'))?.at).toBeCloseTo(6.35, 9);
  });

  it('stays on the line', () => {
    expect(keyMove('ArrowLeft', true, from(3))?.at).toBe(0);
    expect(keyMove('ArrowRight', true, from(length - 1))?.at).toBe(length);
    expect(keyMove('Home', false, from(80))?.at).toBe(0);
    expect(keyMove('End', false, from(80))?.at).toBe(length);
  });

  it('goes from bend to bend', () => {
    const first = { at: 100 + arc / 2, bend: 0 };
    expect(keyMove('ArrowUp', false, from(0))).toEqual(first);
    expect(keyMove('ArrowUp', false, from(first.at))?.bend).toBe(1);
    expect(keyMove('ArrowDown', false, from(length))?.bend).toBe(1);
    expect(keyMove('ArrowDown', false, from(first.at))).toBeNull();
  });

  it('leaves other keys to others', () => {
    expect(keyMove('a', false, from(0))).toBeNull();
  });
});
