import { workJob } from '@runback/checks';
import type { Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { aLine } from '../../../tests/helpers/a-line.ts';
import { cell } from './csv.ts';
import { bendsCsv } from './index.ts';

const L: readonly Vec3[] = [
  [0, 0, 100],
  [200, 0, 90],
  [200, 200, 0],
  [400, 170, -60],
];
const STEP: readonly Vec3[] = [
  [0, 0, 0],
  [150, 0, 0],
  [150, 60, 0],
  [300, 60, 0],
];

const worked = (lines: readonly Line[]) =>
  workJob({
    title: 'Tender 7',
    revision: null,
    units: 'mm',
    axes: lines[0]!.axes,
    lines,
    runs: [],
    surroundings: [],
    checksum: 'abc',
  });

/** An independent reader, strict about ends of lines, quotes and the number of cells. */
const read = (text: string): Record<string, string>[] =>
  parse(text, { columns: true, record_delimiter: '\r\n', relax_quotes: false, relax_column_count: false });

describe('bendsCsv', () => {
  it('has one row for each bend with exact values', () => {
    const job = worked([aLine({ id: 'drain', points: L })]);
    const rows = read(bendsCsv(job));
    const plan = job.lines[0]!.plan!;
    expect(rows).toHaveLength(2);
    rows.forEach((row, i) => {
      expect(Number(row.bend)).toBe(i + 1);
      expect(Number(row['straight before mm'])).toBe(plan.rows[i]!.straightBefore);
      expect(Number(row['mark mm from sawn A'])).toBe(plan.rows[i]!.mark);
      expect(Number(row['finished length mm'])).toBe(plan.developedLength);
      expect(Number(row['last straight mm'])).toBe(plan.lastStraight);
      expect(row.calibrated).toBe('no');
    });
    expect(rows[0]!['turn deg (clockwise looking from A to Z)']).toBe('');
    const turn = Number(rows[1]!['turn deg (clockwise looking from A to Z)']);
    expect(turn).toBeCloseTo((plan.rows[1]!.turn! * 180) / Math.PI, 12);
  });

  it('keeps a row for a line without bends and one for a line that cannot exist', () => {
    const rows = read(
      bendsCsv(
        worked([
          aLine({
            id: 'straight',
            points: [
              [0, 0, 0],
              [0, 300, 0],
            ],
          }),
          aLine({ id: 'step', points: STEP }),
        ]),
      ),
    );
    expect(rows.map((row) => [row.line, row.bend, row['last straight mm']])).toEqual([
      ['straight', '', '300'],
      ['step', '', ''],
    ]);
    expect(rows[1]!.verdict).toBe('fail');
  });

  it('ends every line with CRLF and has no other', () => {
    const text = bendsCsv(worked([aLine({ points: L })]));
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('is safe in a spreadsheet whatever a line is called', () => {
    const id = '=HYPERLINK("x"),\n"y"';
    const [row] = read(
      bendsCsv(
        worked([
          aLine({
            id,
            points: [
              [0, 0, 0],
              [0, 300, 0],
            ],
          }),
        ]),
      ),
    );
    expect(row!.line).toBe(`'${id}`);
  });
});

describe('cell', () => {
  it.each(['=1', '+1', '-1', '@a', '\ta', '\ra'])('guards the text %j', (text) => {
    expect(cell(text).replace(/^"/, '').startsWith("'")).toBe(true);
  });

  it('leaves numbers numbers', () => {
    expect([-59.25, -0, 1e-7, 0.1 + 0.2].map(cell)).toEqual(['-59.25', '0', '1e-7', '0.30000000000000004']);
    expect(() => cell(Number.NaN)).toThrow(new RangeError('cell: number must be finite, got NaN'));
  });

  it('quotes what must be quoted', () => {
    expect(cell('a,"b"')).toBe('"a,""b"""');
    expect(cell(null)).toBe('');
    expect(cell('plain 12 × 1')).toBe('plain 12 × 1');
  });
});
