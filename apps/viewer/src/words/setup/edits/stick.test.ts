import { readFileSync } from 'node:fs';
import { editJob, type Job, type JobEdit, parseJob } from 'runback';
import { describe, expect, it } from 'vitest';
import { TENDER } from '../../../../../../tests/helpers/run.ts';
import {
  addFill,
  addMark,
  KINDS,
  kindEdits,
  newPan,
  newStick,
  readFriction,
  removeFill,
  type StickPlace,
  tipEdit,
  type WrittenStick,
} from './stick.ts';

const TEXT = readFileSync(TENDER, 'utf8');
const AT = 'runs[0].stick';
const after = (text: string, ...edits: readonly JobEdit[]): Job => parseJob(editJob(text, edits));
const stickOf = ({ written }: Job): WrittenStick => written.runs![0]!.stick!;
const place = (job: Job): StickPlace => ({ stick: stickOf(job), at: AT, units: job.units });
const JOB = parseJob(TEXT);

describe('a stick', () => {
  it.each(['mm', 'in'] as const)('is new in a job in %s, whole and of one size', (units) => {
    const text = TEXT.replace('"units": "mm"', `"units": "${units}"`);
    const job = after(text, { path: 'lines[0].stick', value: newStick(units) });
    const { lines } = job.values;
    expect('stick' in lines[0]! && lines[0].stick).toEqual({
      ...{ kind: 'blade', enters: 'Z', thickness: 0.5, width: 6 },
    });
  });

  it('changes its kind and has the sizes of that kind, whichever comes after which', () => {
    let job = JOB;
    for (const { value } of [...KINDS, ...KINDS.toReversed(), KINDS[2]!]) {
      job = after(job.text, ...kindEdits(place(job), value));
      const { kind, width, link } = stickOf(job);
      expect([kind, width !== undefined, link !== undefined]).toEqual([
        value,
        value !== 'cable',
        value === 'links',
      ]);
    }
    expect(stickOf(after(TEXT, ...kindEdits(place(JOB), 'links'))).width).toBe(6);
  });

  it('has a tip while it has a length', () => {
    const bare = after(TEXT, tipEdit(place(JOB), ['length', undefined]));
    expect(stickOf(bare).tip).toBeUndefined();
    const again = after(bare.text, tipEdit(place(bare), ['length', '2 in']));
    expect(stickOf(again).tip).toEqual({ length: '2 in', thickness: 0.5 });
    const thicker = after(again.text, tipEdit(place(again), ['thickness', 4]));
    expect(stickOf(after(thicker.text, tipEdit(place(thicker), ['width', undefined]))).tip).toEqual({
      length: '2 in',
      thickness: 4,
    });
  });

  it('has fills that the job takes, two at least, and marks', () => {
    const none = after(TEXT, { path: `${AT}.fills`, value: undefined });
    const two = after(none.text, addFill(place(none)));
    expect(stickOf(two).fills).toEqual([
      { litres: 1, at: 10 },
      { litres: 2, at: 20 },
    ]);
    const four = after(TEXT, addFill(place(JOB)));
    expect(stickOf(four).fills).toHaveLength(4);
    expect(stickOf(after(four.text, removeFill(place(four), 0))).fills).toHaveLength(3);
    expect(stickOf(after(two.text, removeFill(place(two), 1))).fills).toBeUndefined();
    const marked = after(TEXT, addMark(place(JOB)));
    expect(stickOf(marked).levels?.map(({ name }) => name)).toEqual(['MIN', 'MAX', 'MARK 3']);
  });

  it('has a pan under a place', () => {
    const pan = newPan([60.04, 130, -60], 'mm');
    expect(pan).toEqual({ middle: [60, 130, -60], size: [400, 200] });
    expect(stickOf(after(TEXT, { path: `${AT}.pan`, value: newPan([1, 2, 3], 'in') })).pan?.middle).toEqual([
      '1 mm',
      '2 mm',
      '3 mm',
    ]);
  });
});

it('a friction is read as one figure or two', () => {
  expect(readFriction('0.1 to .3')).toEqual({ ok: true, value: [0.1, 0.3] });
  expect(readFriction('0.2')).toEqual({ ok: true, value: [0.2, 0.2] });
  for (const typed of ['slippery', '0.1 0.2 0.3', '-0.1']) expect(readFriction(typed).ok).toBe(false);
});
