import { describe, expect, it } from 'vitest';
import { cellName, nextCell, stepOf } from './cells.ts';

const INSIDE = { atStart: false, atEnd: false };
const CELLS = [0, 1, 2].flatMap((row) =>
  [0, 1, 2, 3, 4].filter((column) => row === 1 || column !== 3).map((column) => cellName(row, column)),
);

describe('moving between cells', () => {
  it('Enter and the arrows up and down change the row', () => {
    expect(stepOf('Enter', INSIDE)).toEqual([1, 0]);
    expect(stepOf('ArrowDown', INSIDE)).toEqual([1, 0]);
    expect(stepOf('ArrowUp', INSIDE)).toEqual([-1, 0]);
    expect(stepOf('a', INSIDE)).toBeNull();
  });

  it('the arrows left and right leave a cell only from the end of what is typed', () => {
    expect(stepOf('ArrowLeft', INSIDE)).toBeNull();
    expect(stepOf('ArrowRight', INSIDE)).toBeNull();
    expect(stepOf('ArrowLeft', { atStart: true, atEnd: false })).toEqual([0, -1]);
    expect(stepOf('ArrowRight', { atStart: false, atEnd: true })).toEqual([0, 1]);
  });

  it('goes to the next cell that is there, and stays at the edge', () => {
    expect(nextCell(CELLS, '0:0', [1, 0])).toBe('1:0');
    expect(nextCell(CELLS, '0:2', [0, 1])).toBe('0:4');
    expect(nextCell(CELLS, '1:3', [0, -1])).toBe('1:2');
    expect(nextCell(CELLS, '1:3', [1, 0])).toBeNull();
    expect(nextCell(CELLS, '2:4', [-1, 0])).toBe('1:4');
    expect(nextCell(CELLS, '0:0', [0, -1])).toBeNull();
  });
});
