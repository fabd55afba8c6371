import { editJob, parseJob, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { axisNames } from './axes.ts';
import { dieChoices, radiusChoices } from './radii.ts';
import { pointRows, writtenPoints } from './rows.ts';

const TEXT = `{
  "format": "runback-job", "version": 1, "units": "mm",
  "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
  "benders": { "b": { "dies": [
    { "od": 12, "radius": "36 mm" }, { "od": 10, "radius": 30 }, { "od": 12, "radius": 60 }
  ] } },
  "lines": [{ "id": "own", "tube": "t", "bender": "b", "points": [
    { "at": [0, 0, 0] },
    { "at": [0, 0, 100] },
    { "at": [100, 0, 100] },
    { "at": [200, 0, 100], "radius": 36, "note": "by the rail" },
    { "at": [200, 150, 100] }
  ] }]
}`;

function rowsOf(text: string) {
  const worked = workUp(text).lines[0]!;
  return pointRows(worked, writtenPoints(parseJob(text).written, 'own'));
}

describe('rows of points', () => {
  it('has a name, what is written, and the leg after it', () => {
    const rows = rowsOf(TEXT);
    expect(rows.map(({ name }) => name)).toEqual(['A', '1', '2', '3', 'Z']);
    expect(rows.map(({ end }) => end)).toEqual([true, false, false, false, true]);
    expect(rows[3]!.written).toEqual({ at: [200, 0, 100], radius: 36, note: 'by the rail' });
    expect(rows[4]!.leg).toBeNull();
  });

  it('says what is left straight; a point passed straight through shares it', () => {
    const [a, one, two, three] = rowsOf(TEXT).map(({ leg }) => leg);
    expect(a).toEqual({ length: 100, straight: { kind: 'straight', left: 40 } });
    // 200 long, 60 taken by the one bend and 36 by the other
    const shared = { kind: 'shared', left: expect.closeTo(104, 9), from: '1', to: '3' };
    expect(one).toEqual({ length: 100, straight: shared });
    expect(two).toEqual({ length: 100, straight: shared });
    expect(three!.straight).toEqual({ kind: 'straight', left: expect.closeTo(114, 9) });
  });

  it('a leg inside one bend of several corners says so', () => {
    const at = (angle: number): string => {
      const far = 60 / Math.cos(Math.PI / 8);
      return JSON.stringify([far * Math.cos(angle), far * Math.sin(angle), 0]);
    };
    const corners = [1, 3].map((k) => `{ "at": ${at((k * Math.PI) / 8)}, "radius": 60 }`);
    const points = `[{ "at": [60, -100, 0] }, ${corners.join(', ')}, { "at": [-100, 60, 0] }]`;
    const text = `${TEXT.slice(0, TEXT.indexOf('"points"'))}"points": ${points} }] }`;
    expect(rowsOf(text).map(({ leg }) => leg?.straight.kind)).toEqual([
      'straight',
      'bent',
      'straight',
      undefined,
    ]);
  });

  it('a corner that does not fit is marked, with the largest radius that does, and its leg with what it needs', () => {
    const rows = rowsOf(
      editJob(TEXT, [
        { path: 'lines[0].points[1].at[2]', value: 30 },
        { path: 'lines[0].points[1].radius', value: 60 },
      ]),
    );
    const [end, corner] = rows;
    expect(corner!.findings.map(({ check, verdict }) => [check, verdict])).toEqual([['corner-fit', 'fail']]);
    expect(corner!.largestRadius).not.toBeNull();
    const { largestRadius } = corner!;
    expect(end!.leg!.straight).toEqual({ kind: 'short', needed: expect.any(Number) });
    expect(end!.findings).toEqual([]);
    const fits = rowsOf(
      editJob(TEXT, [
        { path: 'lines[0].points[1].at[2]', value: 30 },
        { path: 'lines[0].points[1].radius', value: largestRadius! - 0.001 },
      ]),
    );
    expect(fits[0]!.leg!.straight.kind).toBe('straight');
  });
});

describe('radii to choose from', () => {
  const dies = dieChoices(parseJob(TEXT), 'b', 12);

  it('are those of the dies for the tube, the largest first, as they are written', () => {
    expect(dies).toEqual([
      { radius: 60, mm: 60 },
      { radius: '36 mm', mm: 36 },
    ]);
    expect(dieChoices(parseJob(TEXT), 'toString', 12)).toEqual([]);
    expect(dieChoices(parseJob(TEXT), undefined, 12)).toEqual([]);
  });

  it('name the one that holds', () => {
    expect(radiusChoices(dies, undefined, 'mm').chosen).toBe('left out');
    expect(radiusChoices(dies, 36, 'mm').chosen).toBe('1');
    expect(radiusChoices(dies, undefined, 'mm').options.map(({ label }) => label)).toEqual([
      'die 60',
      'R 60',
      'R 36 mm',
      'other…',
    ]);
    const own = radiusChoices(dies, '45 mm', 'mm');
    expect(own.options.find(({ value }) => value === own.chosen)?.label).toBe('R 45 mm, no die');
  });
});

it('axes have words when they are the usual ones', () => {
  const usual = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
  expect(axisNames(usual)).toEqual(['forward', 'left', 'up']);
  expect(axisNames({ forward: [0, 1, 0], left: [-1, 0, 0], up: [0, 0, 1] })).toEqual(['x', 'y', 'z']);
});
