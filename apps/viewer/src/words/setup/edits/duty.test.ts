import { catalogue, editJob, parseJob, resolve } from 'runback';
import { describe, expect, it } from 'vitest';
import { fluidChoices, readNumber, readTold } from './duty.ts';
import { limitEdits, NO_RULE, ruleChoices, ruleEdits, ruleFall, ruleSource } from './rules.ts';
import { sourceOf } from './say.ts';

const JOB = JSON.stringify({
  format: 'runback-job',
  version: 1,
  title: 'Drain',
  units: 'mm',
  tubes: { t: { material: 'stainless-304', od: 12, wall: 1 } },
  fluids: { brine: { name: 'Brine', density: 1200 } },
  lines: [
    { id: 'a', tube: 't', points: [{ at: [0, 0, 0] }, { at: [100, 0, 0] }], drain: { to: 'A', minSlope: 1 } },
  ],
});
const lineOf = (text: string) => resolve(parseJob(text, { catalogue }), catalogue).lines[0]!;

describe('what is typed of the duty', () => {
  it.each([
    ['0.4', 0.4],
    ['60 psi', '60 psi'],
    [' 4 bar ', '4 bar'],
  ])('%j as a pressure is written as %j', (typed, wanted) => {
    expect(readTold(typed)).toEqual({ ok: true, value: wanted });
    const value = (readTold(typed) as { value: number | string }).value;
    expect(
      lineOf(editJob(JOB, [{ path: 'lines[0].duty.pressure', value }])).duty.pressure!.value,
    ).toBeGreaterThan(0.3);
  });

  it('is refused by the job when it is none', () => {
    expect(() => lineOf(editJob(JOB, [{ path: 'lines[0].duty.pressure', value: 'much' }]))).toThrow();
  });

  it('as a temperature is a plain number, with or without its sign for degrees', () => {
    expect(readNumber('−20 °C')).toEqual({ ok: true, value: -20 });
    expect(readNumber('90')).toEqual({ ok: true, value: 90 });
    expect(readNumber('warm').ok).toBe(false);
  });
});

it('liquids are those of the catalogue and of the job', () => {
  const choices = fluidChoices(parseJob(JOB, { catalogue }).written, catalogue);
  expect(choices.map(({ value }) => value)).toEqual(
    expect.arrayContaining(['', 'brine', ...Object.keys(catalogue.fluids)]),
  );
  expect(Object.keys(catalogue.fluids).length).toBeGreaterThan(0);
});

describe('rules of drains', () => {
  it('take the place of the least fall, and give it back', () => {
    const rules = ruleChoices(catalogue).filter(({ value }) => value !== NO_RULE);
    expect(rules.length).toBeGreaterThan(0);
    for (const { value } of rules) {
      const [rise, run] = catalogue.drainRules[value]!.fraction;
      const ruled = editJob(JOB, ruleEdits('lines[0]', value));
      expect(Math.tan(lineOf(ruled).drain!.minSlope.value)).toBeCloseTo(rise / run, 12);
      expect(ruleFall(catalogue, value)).toBe(`${rise}:${run}`);
      expect(ruleSource(catalogue, value)).not.toBe('');
      expect(sourceOf(lineOf(ruled).drain!.minSlope)).toBe('by the rule above');
      const own = editJob(ruled, limitEdits(value, 'lines[0].drain', ['minSlope', '1:12']));
      expect(Math.tan(lineOf(own).drain!.minSlope.value)).toBeCloseTo(1 / 12, 12);
      expect(lineOf(editJob(ruled, ruleEdits('lines[0]', NO_RULE))).drain!.minSlope.value).toBe(0);
    }
  });
});
