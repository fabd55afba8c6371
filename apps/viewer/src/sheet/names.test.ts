import { titleSlug } from 'runback/sheet';
import { describe, expect, it } from 'vitest';
import { besideJob } from './names.ts';

describe('titleSlug', () => {
  it.each([
    ['Tender 7', 'tender-7'],
    ['  ../../Ölrücklauf № 3  ', 'ölrücklauf-3'],
    ['???', 'job'],
    ['x'.repeat(90), 'x'.repeat(60)],
  ])('%j → %j', (title, name) => expect(titleSlug(title)).toBe(name));
});

describe('besideJob', () => {
  it.each([
    ['tender-7.job.json', 'tender-7-bends.csv'],
    ['pump.JSON', 'pump-bends.csv'],
    ['pump.jsonc', 'pump-bends.csv'],
    ['.job.json', 'job-bends.csv'],
    ['pump', 'pump-bends.csv'],
  ])('%j → %j', (file, name) => expect(besideJob(file, 'bends.csv')).toBe(name));
});
