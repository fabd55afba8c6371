import { describe, expect, it } from 'vitest';
import { sayAxes } from '../job/say-axes.ts';
import { acrossChoices } from '../line/across.ts';
import { sayExact, sourceOf } from './say.ts';

describe('words of the set-up', () => {
  it('say where a figure comes from', () => {
    const figure = (path: string | null) => ({ value: 1, source: 'a table', path });
    expect(sourceOf(figure(null))).toBe('from the catalogue: a table');
    expect(sourceOf(figure('benders.hand.dies[0].minTail'))).toContain('tail of the die');
    expect(sourceOf(figure('services.coolant.minSlope'))).toContain('this service');
    expect(sourceOf(figure('clearance.self'))).toContain('its own figures');
  });

  it('say sizes without loss', () => {
    expect(sayExact(9.525, 'in')).toBe('3/8');
    expect(sayExact(0.889, 'in')).toBe('0.035');
    expect(sayExact(12, 'in')).toBe('12 mm');
    expect(sayExact(9.525, 'mm')).toBe('9.525');
  });

  it('say what a mirror swaps, whichever way the axes point', () => {
    const usual = acrossChoices({ forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] });
    expect(usual.map(({ label }) => label)).toEqual([
      'x (front for rear)',
      'y (left for right)',
      'z (top for bottom)',
    ]);
    const other = acrossChoices({ forward: [0, 0, -1], left: [-1, 0, 0], up: [0, 1, 0] });
    expect(other[0]).toEqual({ value: 'x', label: 'x (left for right)' });
    const askew = acrossChoices({ forward: [0.8, 0.6, 0], left: [-0.6, 0.8, 0], up: [0, 0, 1] });
    expect(askew[1]?.label).toBe('y');
  });

  it('say which way the axes point', () => {
    expect(sayAxes({})).toBe('Up is Z, forward is X, as the file says.');
    expect(sayAxes({ up: [0, -2, 0], forward: [1, 1, 0] })).toBe(
      'Up is minus Y, forward is 1 1 0, as the file says.',
    );
  });
});
