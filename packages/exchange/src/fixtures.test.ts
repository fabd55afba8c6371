/** The report of every whole job of the project keeps to its schema, and its CSV is read by another program. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { catalogue } from '@runback/catalogue';
import { workJob } from '@runback/checks';
import { parseJob, resolve } from '@runback/job';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { unsayable } from '../test/numbers.ts';
import { bendsCsv, report, reportSchema } from './index.ts';

const root = join(import.meta.dirname, '../../..');

/** Jobs that are meant to be read: those under `bad` are not. */
const jobs = ['tests/fixtures', 'docs/examples'].flatMap((top) =>
  readdirSync(join(root, top), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.job.json') && !name.startsWith('bad'))
    .map((name) => join(root, top, name)),
);

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(reportSchema());

describe('whole jobs', () => {
  it('are there', () => expect(jobs.length).toBeGreaterThan(0));

  it.each(jobs.map((file) => [relative(root, file), file]))('%s', (_, file) => {
    const worked = workJob(resolve(parseJob(readFileSync(file!, 'utf8'), { catalogue }), catalogue));
    const written = report(worked);
    expect(unsayable(written)).toEqual([]);
    validate(JSON.parse(JSON.stringify(written)));
    expect(validate.errors).toBeNull();
    const rows: string[][] = parse(bendsCsv(worked), { record_delimiter: '\r\n' });
    const bends = worked.lines.map((line) => Math.max(1, line.plan?.rows.length ?? 0));
    expect(rows.length).toBe(1 + bends.reduce((a, b) => a + b, 0));
  });
});
