import { readFileSync } from 'node:fs';
import { catalogue, editJob, parseJob, resolve, type WorkedJob, WorkMemory, workJob } from 'runback';
import { describe, expect, it } from 'vitest';
import { TENDER } from '../../../../tests/helpers/run.ts';
import { Receiver, Sender } from './thin.ts';

const text = readFileSync(TENDER, 'utf8');

function both() {
  const [memory, sender, receiver] = [new WorkMemory(), new Sender(), new Receiver()];
  const work = (now: string): WorkedJob =>
    workJob(resolve(parseJob(now), catalogue), { cures: false, memory });
  return (now: string) => {
    const job = work(now);
    const thin = sender.thin(job);
    return { job, thin, got: receiver.whole(structuredClone(thin)) };
  };
}

const sentOf = (lines: readonly unknown[]): number => lines.filter((line) => typeof line !== 'string').length;

describe('answers of the worker', () => {
  it('come whole on the other side, whatever was sent', () => {
    const send = both();
    const edited = editJob(text, [{ path: 'lines[0].points[2].at[2]', value: 342 }]);
    for (const now of [text, text, edited, text]) {
      const { job, got } = send(now);
      expect(got).toEqual(job);
    }
  });

  it('carry only the lines that changed', () => {
    const send = both();
    const first = send(text);
    expect(sentOf(first.thin.lines)).toBe(first.job.lines.length);
    const again = send(text);
    expect(sentOf(again.thin.lines)).toBe(0);
    expect(again.got.lines.every((line, i) => line === first.got.lines[i])).toBe(true);
    const edited = send(editJob(text, [{ path: 'lines[3].name', value: 'Another name' }]));
    expect(sentOf(edited.thin.lines)).toBe(1);
    expect(edited.got.lines[3]!.line.name).toBe('Another name');
  });

  it('that name a line never sent are refused', () => {
    const { thin } = both()(text);
    expect(() => new Receiver().whole({ ...thin, lines: ['nobody'] })).toThrow(RangeError);
  });
});
