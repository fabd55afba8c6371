import { readFileSync } from 'node:fs';
import { pocketsIn, type WorkedLine, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY } from '../../../../tests/helpers/run.ts';
import { amountText, mlText, pourWords, shownPockets, signScale, stayWords } from './index.ts';

const job = workUp(readFileSync(FIRST_TRY, 'utf8'));
const drain: WorkedLine = job.lines.find(({ line }) => line.id === 'pump-drain')!;

describe('what stays', () => {
  const { liquid } = pocketsIn(drain, drain.line.axes.up)!;

  it('is said in ml with a tenth', () => {
    expect(shownPockets(liquid).map(({ volume }) => mlText(volume))).toEqual(['3.4 ml']);
    expect(mlText(3000)).toBe('3.0 ml');
    expect(amountText('air', 2030)).toBe('air 2.0 ml');
  });

  it('has no sign under a tenth of a ml', () => {
    const [pocket] = liquid.pockets;
    const of = (volume: number) => shownPockets({ ...liquid, pockets: [{ ...pocket!, volume }] });
    expect(of(99)).toEqual([]);
    expect(of(100)).toHaveLength(1);
    expect(shownPockets(null)).toEqual([]);
  });

  it('is drawn larger the more it is, within limits', () => {
    const scales = [100, 500, 1000, 3000, 10_000, 1_000_000].map(signScale);
    expect(scales).toEqual(scales.toSorted((a, b) => a - b));
    expect(signScale(1000)).toBe(1);
    expect(Math.min(...scales)).toBeGreaterThanOrEqual(0.8);
    expect(Math.max(...scales)).toBe(1.5);
  });
});

describe('what stays, in words,', () => {
  const said = (worked: WorkedLine): readonly string[] =>
    stayWords(pocketsIn(worked, worked.line.axes.up)!, worked, 'mm');

  it('is how much and where, and nothing of what is not asked for', () => {
    expect(said(drain)).toEqual(['Liquid stays: 3.4 ml in bend B3, 438.8 mm from end A.']);
  });

  it('tells air from liquid', () => {
    const brake = job.lines.find(({ line }) => line.id === 'brake-front')!;
    const [liquid, air] = said(brake);
    expect(liquid).toMatch(/^Liquid stays: 2\.1 ml .*from end A\.$/u);
    expect(air).toMatch(/^Air stays: 2\.0 ml .*from end A\.$/u);
  });

  it('is none of either where a line holds none', () => {
    const none = { volume: 0, bound: 0, pockets: [] };
    expect(stayWords({ liquid: none, air: none }, drain, 'mm')).toEqual([
      'No liquid stays.',
      'No air stays.',
    ]);
  });
});

describe('what became of a drop', () => {
  const words = (at: number, out: 'A' | 'Z' | null) => pourWords({ at, out }, drain, 'mm');
  it('is said with its place', () => {
    expect(words(0, 'A')).toBe('runs out at end A');
    expect(words(438.84, null)).toBe('stops in bend B3, 438.8 mm from end A');
    expect(words(300, null)).toBe('stops between B2 and B3, 300 mm from end A');
    expect(words(10, null)).toBe('stops between end A and B1, 10 mm from end A');
    expect(words(540, null)).toBe('stops between B4 and end Z, 540 mm from end A');
  });
});
