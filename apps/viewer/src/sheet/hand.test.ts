import { readFileSync } from 'node:fs';
import { editJob, parseJob, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { TENDER } from '../../../../tests/helpers/run.ts';
import { acrossOf } from '../words/setup/edits/lines.ts';
import { addedHand, otherHands } from './hand.ts';

const text = readFileSync(TENDER, 'utf8');
const job = workUp(text);
const { written } = parseJob(text);
const lineOf = (id: string, of = job) => of.lines.find(({ line }) => line.id === id)!.line;
const idsOf = (id: string): string[] => otherHands(job, lineOf(id)).map(({ line }) => line.id);

describe('the opposite hand', () => {
  it('is found from either hand', () => {
    expect(idsOf('dipstick')).toEqual(['dipstick-right']);
    expect(idsOf('dipstick-right')).toEqual(['dipstick']);
    expect(idsOf('breather')).toEqual([]);
  });

  it('is added behind its line, left for right, and can be worked', () => {
    const { id, edits } = addedHand(written, lineOf('breather'));
    const after = workUp(editJob(text, edits));
    expect(after.lines.map(({ line }) => line.id)).toEqual([
      'dipstick',
      'dipstick-foot',
      'brake-rear',
      'brake-front',
      'fuel-feed',
      'pump-drain',
      'breather',
      'breather-opposite',
      'dipstick-right',
    ]);
    const made = lineOf(id, after);
    expect(made.mirror).toEqual({ of: 'breather', axis: 1, offset: 0 });
    expect(made.corners[0]!.at[1]).toBe(-lineOf('breather').corners[0]!.at[1]);
  });

  it('takes an id that is free, and not too long for a job', () => {
    const first = addedHand(written, lineOf('breather'));
    const next = addedHand(parseJob(editJob(text, first.edits)).written, lineOf('breather'));
    expect([first.id, next.id]).toEqual(['breather-opposite', 'breather-opposite-2']);
    expect(addedHand(written, { ...lineOf('breather'), id: 'x'.repeat(64) }).id).toMatch(/^x{55}-opposite$/);
  });

  it('is seen across the axis that runs from side to side', () => {
    const line = lineOf('breather');
    expect(acrossOf(line.axes.left)).toBe('y');
    expect(acrossOf([-0.8, 0.6, 0])).toBe('x');
  });
});
