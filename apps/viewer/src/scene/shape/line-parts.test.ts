import { workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { endOf, legSpan, partAt, selectedPieces } from './line-parts.ts';

/** A straight point (2) between two bends, and two corners that are one bend of 150°. */
const { lines } = workUp(`{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
  "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
  "lines": [
    { "id": "drain", "tube": "t", "points": [
      { "at": [0, 0, 300] }, { "at": [0, 0, 0], "radius": 36 }, { "at": [100, 0, 0], "radius": 36 },
      { "at": [300, 0, 0], "radius": 36 }, { "at": [300, 200, 0] } ] } ] }`);
const worked = lines[0]!;
const centreline = worked.centreline!;
const { line } = worked;

describe('parts of a line', () => {
  it('a place in a bend is that bend, any other the leg it lies on', () => {
    const [first, second] = [centreline.bends[0]!, centreline.bends[1]!];
    expect(partAt(line, centreline, 10)).toEqual({ kind: 'leg', index: 0 });
    expect(partAt(line, centreline, (first.start + first.end) / 2)).toEqual({ kind: 'bend', index: 0 });
    expect(partAt(line, centreline, first.end + 10)).toEqual({ kind: 'leg', index: 1 });
    expect(partAt(line, centreline, second.start - 10)).toEqual({ kind: 'leg', index: 2 });
    expect(partAt(line, centreline, centreline.length)).toEqual({ kind: 'leg', index: 3 });
  });

  it('legs beside a straight point meet at it', () => {
    const [before, after] = [legSpan(line, centreline, 1)!, legSpan(line, centreline, 2)!];
    expect(before.from).toBeCloseTo(centreline.bends[0]!.end);
    expect(before.to).toBeCloseTo(after.from);
    expect(before.to - before.from).toBeCloseTo(64);
    expect(after.to).toBeCloseTo(centreline.bends[1]!.start);
  });

  it('a selection means the pieces it says', () => {
    const lengths = (selection: Parameters<typeof selectedPieces>[1]) =>
      selectedPieces(worked, selection).map(({ length }) => Math.round(length));
    expect(lengths({ kind: 'bend', index: 0 })).toEqual([57]);
    expect(lengths({ kind: 'leg', index: 1 })).toEqual([64]);
    expect(lengths({ kind: 'leg', index: 9 })).toEqual([]);
    expect(lengths({ kind: 'point', index: 1 })).toEqual([]);
    expect(lengths(null)).toEqual([]);
  });

  it('its ends lead out of it', () => {
    expect(endOf(centreline, 'A').out).toEqual([-0, -0, 1]);
    expect(endOf(centreline, 'Z').out).toEqual([0, 1, 0]);
  });
});
