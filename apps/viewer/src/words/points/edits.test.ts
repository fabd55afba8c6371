import fc from 'fast-check';
import {
  catalogue,
  editJob,
  type JobEdit,
  type JobUnit,
  parseJob,
  resolve,
  type WorkedLine,
  workJob,
} from 'runback';
import { describe, expect, it } from 'vitest';
import {
  middle,
  movePoint,
  removePoint,
  setCoordinate,
  setNote,
  setRadius,
  splitLeg,
  type WrittenPoint,
  type WrittenPoints,
} from './edits.ts';
import { writtenPoints } from './rows.ts';

const job = (points: readonly WrittenPoint[], units: JobUnit = 'mm'): string => `{
  "format": "runback-job", "version": 1, "units": "${units}",
  "tubes": { "t": { "material": "stainless-304", "od": ${units === 'in' ? '"3/8"' : 12}, "wall": ${units === 'in' ? 0.035 : 1} } },
  "benders": { "b": { "dies": [{ "od": ${units === 'in' ? '"3/8"' : 12}, "radius": ${units === 'in' ? '"1 1/8"' : 36} }] } },
  "lines": [
    { "id": "other", "mirrorOf": "own", "across": "y" },
    // as measured
    { "id": "own", "tube": "t", "bender": "b", "points": ${JSON.stringify(points)} }
  ]
}`;

const POINTS: readonly WrittenPoint[] = [
  { at: [0, 0, 0] },
  { at: [0, 0, 100], radius: 36, note: 'out of the sump' },
  { at: [200, 0, '100 mm'] },
  { at: [200, 150, 100] },
];

const linesOf = (text: string): WrittenPoints => writtenPoints(parseJob(text).written, 'own')!;

/** The points after the edits, as they are read again from the text. */
function after(edits: readonly JobEdit[], points = POINTS): readonly WrittenPoint[] {
  const text = editJob(job(points), edits);
  expect(text).toContain('// as measured');
  return linesOf(text).points;
}

describe('the edits, made in the text and read again', () => {
  const written = linesOf(job(POINTS));

  it('finds the written line; an opposite hand has no points of its own', () => {
    expect(written).toEqual({ line: 1, units: 'mm', points: POINTS });
    expect(writtenPoints(parseJob(job(POINTS)).written, 'other')).toBeNull();
  });

  it('sets a coordinate, a radius, a note', () => {
    expect(after(setCoordinate(written, { point: 2, axis: 2 }, '3 7/32 in'))[2]!.at).toEqual([
      200,
      0,
      '3 7/32 in',
    ]);
    expect(after(setRadius(written, 2, 36))[2]!.radius).toBe(36);
    expect(after(setRadius(written, 1, undefined))[1]).toEqual({ at: [0, 0, 100], note: 'out of the sump' });
    expect(after(setNote(written, 3, 'pump'))[3]).toEqual({ at: [200, 150, 100], note: 'pump' });
  });

  it('splits a leg in its middle; what both points write alike stays as written', () => {
    const points = after(splitLeg(written, 1, true));
    expect(points).toHaveLength(5);
    expect(points[2]).toEqual({ at: [100, 0, 100] });
    expect(after(splitLeg(written, 2, true))[3]).toEqual({ at: [200, 75, '100 mm'] });
  });

  it('gives the new corner the nearest radius where no die does', () => {
    expect(after(splitLeg(written, 2, false))[3]!.radius).toBe(36);
    const bare = { ...written, points: POINTS.map(({ at }) => ({ at })) };
    expect(splitLeg(bare, 0, false)).toEqual([
      { path: 'lines[1].points', insert: 1, value: { at: [0, 0, 50] } },
    ]);
  });

  it('removes a point, but never the last two', () => {
    expect(after(removePoint(written, 1))).toEqual([POINTS[0], POINTS[2], POINTS[3]]);
    expect(removePoint({ ...written, points: POINTS.slice(0, 2) }, 0)).toEqual([]);
  });

  it('moves a point up and down the list', () => {
    expect(after(movePoint(written, 2, 1))).toEqual([POINTS[0], POINTS[2], POINTS[1], POINTS[3]]);
    expect(after(movePoint(written, 0, 1))).toEqual([POINTS[1], POINTS[0], POINTS[2], POINTS[3]]);
  });
});

describe('middle', () => {
  it('is written like its neighbours', () => {
    expect(middle('4 1/4', '4 1/4', 'in')).toBe('4 1/4');
    expect(middle('5 1/2', '9 3/4', 'in')).toBe('7 5/8');
    expect(middle('1\' 6"', 3, 'in')).toBe('10 1/2');
    expect(middle(0.1, 0.2, 'mm')).toBe(0.15);
    expect(middle('1 in', 0, 'mm')).toBe(12.7);
    expect(middle(-5, 5, 'mm')).toBe(0);
    expect(middle('1/64', '2/64', 'in')).toBe(0.0234375);
  });
});

/** Points far enough apart to be bent round 36 mm at any angle under some 150°. */
const coordinate = fc.integer({ min: -50_000, max: 50_000 }).map((n) => n / 8);
const points = fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 2, maxLength: 6 });

const shape = ({ centreline }: WorkedLine) =>
  centreline && {
    length: centreline.length,
    bends: centreline.bends.map(({ start, end, angle, radius }) => [start, end, angle, radius]),
  };

const own = (text: string): WorkedLine =>
  workJob(resolve(parseJob(text), catalogue), { cures: false }).lines[1]!;

it('splitting a leg leaves the centreline as it is', () => {
  let bent = 0;
  fc.assert(
    fc.property(points, fc.nat(), fc.constantFrom<JobUnit>('mm', 'in'), (ats, pick, units) => {
      const text = job(
        ats.map((at) => ({ at: units === 'in' ? ([at[0], String(at[1]), at[2]] as const) : at })),
        units,
      );
      const before = own(text);
      fc.pre(before.centreline !== null);
      const written = linesOf(text);
      const leg = pick % (written.points.length - 1);
      const split = own(editJob(text, splitLeg(written, leg, true)));
      bent += before.centreline!.bends.length > 0 ? 1 : 0;
      expect(split.line.corners).toHaveLength(before.line.corners.length + 1);
      const [was, is] = [shape(before)!, shape(split)];
      expect(is).not.toBeNull();
      expect(is!.length).toBeCloseTo(was.length, 5);
      expect(is!.bends.length).toBe(was.bends.length);
      for (const [i, value] of is!.bends.flat().entries()) expect(value).toBeCloseTo(was.bends.flat()[i]!, 5);
    }),
    { seed: 1302, numRuns: 60 },
  );
  expect(bent).toBeGreaterThan(10);
});
