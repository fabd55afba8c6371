import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from './spread.ts';

const room = { from: 0, to: 1000, gap: 5 };

describe('labels in a row', () => {
  it('stay where they are when there is room', () => {
    const wanted = [100, 200, 300].map((centre) => ({ centre, width: 40 }));
    expect(spread(wanted, room)).toEqual([100, 200, 300]);
  });

  it('share what they have to move', () => {
    const wanted = [500, 500].map((centre) => ({ centre, width: 35 }));
    expect(spread(wanted, room)).toEqual([480, 520]);
  });

  it('say when they do not fit', () => {
    const wanted = Array.from({ length: 30 }, (_, i) => ({ centre: i, width: 40 }));
    expect(spread(wanted, room)).toBeNull();
  });

  it('never touch and never leave the room', () => {
    const label = fc.record({
      centre: fc.integer({ min: -100, max: 1100 }),
      width: fc.integer({ min: 5, max: 60 }),
    });
    fc.assert(
      fc.property(fc.array(label, { minLength: 1, maxLength: 12 }), (labels) => {
        const wanted = labels.toSorted((a, b) => a.centre - b.centre);
        const centres = spread(wanted, room)!;
        for (const [i, { width }] of wanted.entries()) {
          const next = wanted[i + 1];
          expect(centres[i]! - width / 2).toBeGreaterThanOrEqual(room.from - 1e-9);
          expect(centres[i]! + width / 2).toBeLessThanOrEqual(room.to + 1e-9);
          if (next)
            expect(centres[i + 1]! - centres[i]!).toBeGreaterThanOrEqual((width + next.width) / 2 + 5 - 1e-9);
        }
      }),
      { seed: 11 },
    );
  });
});
