import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import type { Vec3 } from '@runback/geometry';
import { editJob, type Line, parseJob, resolve } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aLine } from '../../../tests/helpers/a-line.ts';
import { movedPoint } from './moved-point.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../../docs/examples/${name}.job.json`, import.meta.url), 'utf8');
const linesOf = (text: string): readonly Line[] => resolve(parseJob(text, { catalogue }), catalogue).lines;

const POINTS: readonly Vec3[] = [
  [0, 0, 0],
  [100, 0, 0],
  [100, 100, 0],
];

describe('a moved point', () => {
  it('is written in the millimetres of the job, to a hundredth', () => {
    const line = aLine({ points: POINTS, index: 2 });
    expect(movedPoint(line, 1, [101.23456, 0, -7.0049])).toEqual({
      path: 'lines[2].points[1].at',
      value: [101.23, 0, -7],
    });
  });

  it('is written in the inches of the job, to half a thousandth', () => {
    const line = aLine({ points: POINTS, units: 'in' });
    expect(movedPoint(line, 1, [25.4 * 3.21875, 0, -12.7]).value).toEqual([3.219, 0, -0.5]);
  });

  it('leaves a coordinate that did not move as it was', () => {
    const line = aLine({
      points: [
        [0, 0, 0],
        [100.123456, 0, 5],
        [100, 100, 0],
      ],
    });
    expect(movedPoint(line, 1, [100.123456, 0, 6.0004]).value).toEqual([100.123456, 0, 6]);
  });

  it.each([1 / 64, 3 / 64, 4.25, 17 + 63 / 64, 0.0005])(
    'writes %d inches that stay as they were',
    (inches) => {
      const line = aLine({ points: POINTS.map((p): Vec3 => [p[0], inches * 25.4, p[2]]), units: 'in' });
      expect(movedPoint(line, 1, [101, inches * 25.4, 0]).value).toEqual([3.9765, inches, 0]);
    },
  );

  it('of an opposite hand is written in the line that it mirrors', () => {
    const line = aLine({
      points: POINTS,
      index: 1,
      source: 'lines[0]',
      mirror: { of: 'other', axis: 1, offset: 10 },
    });
    expect(movedPoint(line, 1, [100, 30, 0])).toEqual({
      path: 'lines[0].points[1].at',
      value: [100, -10, 0],
    });
  });

  it('is refused for a point that the line has not', () => {
    expect(() => movedPoint(aLine({ points: POINTS }), 3, [0, 0, 0])).toThrow(RangeError);
    expect(() => movedPoint(aLine({ points: POINTS }), -1, [0, 0, 0])).toThrow(RangeError);
  });

  it.each(['tender-7/tender-7', 'inch/pump-set'])('%s: comes back where it was put', (name) => {
    const text = textOf(name);
    for (const [i, line] of linesOf(text).entries()) {
      const { at } = line.corners[1]!;
      const to: Vec3 = [at[0] + 25.4, at[1], at[2] - 12.7];
      const back = linesOf(editJob(text, [movedPoint(line, 1, to)]))[i]!.corners[1]!.at;
      for (const k of [0, 1, 2] as const) expect(back[k]).toBeCloseTo(to[k], 2);
      expect(back[1]).toBeCloseTo(to[1], 12);
    }
  });
});
