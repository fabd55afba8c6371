import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type WorkedLine, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { benchOf } from '../parts/bench.ts';
import { benchNotes, bendRows, estimates } from './rows.ts';

const examples = join(import.meta.dirname, '../../../../../docs/examples');
const lineOf = (file: string, id: string): WorkedLine =>
  workUp(readFileSync(join(examples, file), 'utf8')).lines.find(({ line }) => line.id === id)!;

const TENDER = 'tender-7/tender-7.job.json';
const dipstick = lineOf(TENDER, 'dipstick');

describe('rows of bends', () => {
  it('say the turn in words and never by a bare sign', () => {
    const rows = bendRows(benchOf(dipstick, 'A', 'mm')!);
    expect(rows[0]!.turn).toBe('Pencil line at the former; no turn');
    expect(rows[1]!.turn).toMatch(/^TURN TUBE: (TOP (AWAY FROM|TOWARD) YOU \d+°|HALF TURN)/u);
    for (const row of rows) expect(row.turn).not.toMatch(/[-+−]\d/u);
  });

  it('have what the plan for the bench has, as the style reads it', () => {
    const bench = benchOf(dipstick, 'A', 'mm')!;
    const [first] = bendRows(bench);
    expect(Number(first!.mark)).toBe(bench.rows[0]!.mark);
    expect(Number(first!.dial)).toBe(bench.rows[0]!.dialDeg);
    expect(first!.name).toBe('B1');
    const inches = bendRows(benchOf(lineOf('inch/pump-set.job.json', 'cooler-return'), 'A', 'in')!);
    expect(inches[1]!.mark).toMatch(/^\d+ \d+\/(2|4|8|16|32)$/u);
  });

  it('from Z they count the other way and still name the bend from A', () => {
    const bench = benchOf(dipstick, 'Z', 'mm')!;
    const rows = bendRows(bench);
    const count = rows.length;
    expect(rows.map(({ name, fromA, index }) => [name, fromA, index])).toEqual(
      rows.map((_, i) => [String(i + 1), `B${count - i}`, count - 1 - i]),
    );
    expect(benchNotes(bench).join(' ')).toContain('moves end A by');
  });

  it('give no dial where the tool is not calibrated', () => {
    const rows = bendRows(benchOf(lineOf(TENDER, 'fuel-feed'), 'A', 'mm')!);
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every(({ dial }) => dial === null)).toBe(true);
  });
});

it('estimates name the wall and the stretch', () => {
  const said = estimates(dipstick, 'mm').join('\n');
  expect(said).toContain('thins');
  expect(said).toContain('No stretch is given');
  const stretched = { ...dipstick, plan: { ...dipstick.plan!, stretch: 2.5 } };
  expect(estimates(stretched, 'mm').join('\n')).toContain('stretch the tube by 2.5 mm');
});
