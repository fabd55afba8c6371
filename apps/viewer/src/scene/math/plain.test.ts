import { describe, expect, it } from 'vitest';
import { nearestPlace } from './nearest.ts';
import { sameData } from './same.ts';

describe('plain data', () => {
  it('says the same when every part does', () => {
    expect(sameData({ a: [1, { b: null }] }, { a: [1, { b: null }] })).toBe(true);
    expect(sameData({ a: [1, 2] }, { a: [1, 3] })).toBe(false);
    expect(sameData({ a: 1 }, { a: 1, b: undefined })).toBe(false);
    expect(sameData([1], { 0: 1 })).toBe(true);
    expect(sameData(Number.NaN, Number.NaN)).toBe(true);
    expect(sameData(null, {})).toBe(false);
  });
  it('with a class is the same only when it is the very same', () => {
    const one = new Date(0);
    expect(sameData({ one }, { one })).toBe(true);
    expect(sameData({ one }, { one: new Date(0) })).toBe(false);
  });
});

describe('picking a line on the screen', () => {
  const places = [
    { x: 0, y: 0, depth: 100, at: 0 },
    { x: 100, y: 0, depth: 200, at: 50 },
    { x: 100, y: 100, depth: 200, at: 90 },
  ];
  it('finds the nearest place, how far it is and how deep', () => {
    expect(nearestPlace(places, 50, 8)).toEqual({ away: 8, at: 25, depth: 150 });
    expect(nearestPlace(places, 103, 104)).toEqual({ away: 5, at: 90, depth: 200 });
  });
  it('of a single place finds none', () => expect(nearestPlace(places.slice(0, 1), 0, 0)).toBeNull());
});
