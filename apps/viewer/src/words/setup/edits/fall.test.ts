import { catalogue, editJob, parseJob, resolve } from 'runback';
import { describe, expect, it } from 'vitest';
import { degreesOfFall, FALLS, readFall, sayFall, type WrittenFall } from './fall.ts';

const written = (typed: string): WrittenFall => {
  const answer = readFall(typed);
  if (!answer.ok) throw new Error(answer.message);
  return answer.value;
};

const JOB = JSON.stringify({
  format: 'runback-job',
  version: 1,
  title: 'Drain',
  units: 'mm',
  tubes: { t: { material: 'stainless-304', od: 12, wall: 1 } },
  lines: [{ id: 'a', tube: 't', points: [{ at: [0, 0, 0] }, { at: [100, 0, 0] }], drain: { to: 'A' } }],
});
/** What the job makes of a fall that is written into it, degrees. */
const inJob = (fall: WrittenFall): number => {
  const job = parseJob(editJob(JOB, [{ path: 'lines[0].drain.minSlope', value: fall }]), { catalogue });
  return (resolve(job, catalogue).lines[0]!.drain!.minSlope.value * 180) / Math.PI;
};

describe('falls', () => {
  it.each([
    ['1 in 12', '1 in 12', 4.763642],
    ['1:12', '1:12', 4.763642],
    ['1/12', '1:12', 4.763642],
    ['0.25 in 12', '0.25 in 12', 1.193489],
    ['2 %', '2 %', 1.145763],
    ['1/4 in/ft', '1/4 in/ft', 1.193489],
    ['20 mm/m', '20 mm/m', 1.145763],
    ['12', 12, 12],
    ['4.7636', 4.7636, 4.7636],
    ['4.5°', 4.5, 4.5],
    ['−3', -3, -3],
    ['0', 0, 0],
  ])('%j is written as %j, and is so steep', (typed, wanted, degrees) => {
    expect(written(typed)).toBe(wanted);
    expect(inJob(written(typed))).toBeCloseTo(degrees, 6);
  });

  it.each(['steep', '1 in', '4,76', '91', '0 in 0', '1 in 12 in'])('%j is refused by the job', (typed) => {
    expect(() => inJob(written(typed))).toThrow();
  });

  it('are said as they were meant', () => {
    for (const n of [4, 6, 12, 24, 48, 60, 100]) expect(sayFall(degreesOfFall(1, n))).toBe(`1 in ${n}`);
    expect(sayFall(4.7636)).toBe('1 in 12');
    expect(sayFall(12)).toBe('about 1 in 4.7');
    expect(sayFall(1)).toBe('about 1 in 57');
    expect(sayFall(0)).toBe('level');
    expect(sayFall(80)).toBe('');
    expect(sayFall(-2)).toBe('');
  });

  it('to choose from are what they say', () => {
    for (const { label, fall } of FALLS) {
      const n = /^1 in (\d+)/u.exec(label)?.[1];
      expect(inJob(fall)).toBeCloseTo(n === undefined ? 0 : degreesOfFall(1, Number(n)), 5);
    }
  });
});
