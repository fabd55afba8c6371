import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'jsonc-parser';
import { describe, expect, test } from 'vitest';
import { jobSchema } from './index.ts';

const FOLDER = new URL('../../../tests/fixtures/', import.meta.url);
const read = (name: string): unknown =>
  parse(readFileSync(new URL(name, FOLDER), 'utf8').replace(/^\uFEFF/u, ''), [], {
    allowTrailingComma: true,
  });

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(jobSchema());

/** Faults no JSON Schema sees: those of the text, and those that compare two places. */
const BEYOND = new Set(
  (
    'syntax-comma syntax-quote syntax-open-text syntax-after-end syntax-open-end syntax-not-a-number syntax-hash ' +
    'duplicate-key proto-key reserved-id not-finite too-far unknown-tube unknown-bender unknown-material unknown-service ' +
    'unknown-fitting unknown-join unknown-clearance unknown-spring-back-tube twice-same-surrounding twice-same-line ' +
    'mirror-of-nobody mirror-of-itself mirror-of-mirror no-bore points-coincide no-die no-bender keep-off-unsaid ' +
    'flat-box box-askew cylinder-no-length plane-no-normal pipe-too-tight pipe-points-coincide tilt-with-pitch ' +
    'pitch-backwards forward-is-up up-nowhere empty-spring-back flat-former-above new-fitting-incomplete port-nowhere zero-below-line ' +
    'unknown-fluid unknown-drain-rule unknown-stick-material unknown-run-line twice-same-run run-named-as-line run-line-twice ' +
    'rule-with-min-slope blade-no-width links-no-link friction-backwards fills-falling pressure-nothing fall-over-nothing ' +
    'temperature-backwards opening-shut ' +
    'negative-wall zero-radius sphere-no-size raw-bom-crlf raw-comment-only raw-empty raw-binary raw-deep'
  ).split(' '),
);

test('is JSON Schema 2020-12 with a title and no id', () => {
  expect(jobSchema()).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Runback job',
  });
  expect(jobSchema()).not.toHaveProperty('$id');
});

test('the contract example is valid', () => {
  expect(validate(read('contract-example.job.json')), JSON.stringify(validate.errors)).toBe(true);
});

describe('jobs with faults that a schema can see are not valid', () => {
  const names = readdirSync(new URL('bad/', FOLDER)).filter((name) => name.endsWith('.job.json'));
  test.each(names.filter((name) => !BEYOND.has(name.replace('.job.json', ''))))('%s', (name) => {
    expect(validate(read(`bad/${name}`))).toBe(false);
  });

  test('every fault said to be beyond a schema has its fixture', () => {
    const have = new Set(names.map((name) => name.replace('.job.json', '')));
    expect([...BEYOND].filter((name) => !have.has(name))).toEqual([]);
  });
});
