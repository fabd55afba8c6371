/** What the job says of liquid, duty, sticks and runs, and what stands where it says nothing. */
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { WET_JOB } from '../test-jobs.ts';
import { editJob, type JobEdit, parseJob, type ResolvedJob, resolve } from './index.ts';

const work = (text: string): ResolvedJob =>
  resolve(parseJob(text, { catalogue: testCatalogue }), testCatalogue);
const wet = work(WET_JOB);
const [lower, upper, left] = wet.lines;
const edited = (...edits: readonly JobEdit[]): ResolvedJob => work(editJob(WET_JOB, edits));

describe('fluids', () => {
  test('a new one is the job’s', () => {
    expect(lower?.fluid).toMatchObject({ id: 'gear-oil', name: 'gear oil' });
    expect(lower?.fluid?.density).toEqual({ value: 890, source: 'the can', path: 'fluids.gear-oil.density' });
    expect(lower?.fluid?.surfaceTension?.value).toBe(32);
  });

  test('one of the catalogue is changed figure by figure', () => {
    expect(upper?.fluid).toMatchObject({
      name: 'water',
      density: { value: 1000, source: 'made up for a test', path: null },
      viscosity: { value: 1.3, source: 'the job', path: 'fluids.water.viscosity' },
    });
  });

  test('what nobody says is null', () => {
    const { lines } = edited({ path: 'fluids.gear-oil', value: {} });
    expect(lines[0]?.fluid).toEqual({
      id: 'gear-oil',
      name: 'gear-oil',
      density: null,
      viscosity: null,
      surfaceTension: null,
    });
    expect(edited({ path: 'lines[0].fluid', value: undefined }).lines[0]?.fluid).toBe(null);
  });
});

describe('duty', () => {
  test('is what the job says, its figures as written in their source', () => {
    expect(lower?.duty).toMatchObject({
      pressure: { source: 'the job: 60 psi', path: 'lines[0].duty.pressure' },
      flow: { source: 'the job: 2 gal/min', path: 'lines[0].duty.flow' },
      toward: 'A',
      temperature: { fitted: { value: 15 }, lowest: { value: -10 }, highest: { value: 90 } },
      safetyFactor: { value: 6, path: 'lines[0].duty.safetyFactor' },
      wallTolerance: { value: 0.125 },
    });
    expect(lower?.duty.pressure?.value).toBeCloseTo(0.413685, 6);
    expect(lower?.duty.flow?.value).toBeCloseTo(7.570824, 6);
  });

  test('is a factor of 4 and a tenth of the wall where nothing is said', () => {
    expect(upper?.duty).toMatchObject({
      pressure: { value: 2.5, source: 'the job' },
      flow: null,
      toward: 'Z',
      temperature: null,
      safetyFactor: { value: 4, path: null },
      wallTolerance: { value: 0.1, path: null },
    });
    const { lines } = edited({ path: 'lines[1].duty.temperature', value: { highest: 110 } });
    expect(lines[1]?.duty.temperature).toMatchObject({
      fitted: { value: 20, path: null },
      lowest: null,
      highest: { value: 110, path: 'lines[1].duty.temperature.highest' },
    });
  });

  test('strength and allowable stress are figures of the material', () => {
    const { strength, allowable } = upper?.tube.material ?? {};
    expect(strength).toEqual({ value: 310, source: 'mill sheet', path: 'materials.steel-soft.strength' });
    expect(allowable?.value).toBe(77.5);
    expect(lower?.tube.material.strength).toBe(null);
  });
});

describe('bleeding', () => {
  test('is the job’s, else that of a service that bleeds, else nothing', () => {
    expect(lower?.bleed).toEqual({ to: 'Z', tilted: true, path: 'lines[0].bleed' });
    expect(upper?.bleed).toEqual({ to: 'both', tilted: false, path: null });
    const said = edited({ path: 'lines[0].bleed', value: {} }, { path: 'lines[1].service', value: 'waste' });
    expect(said.lines[0]?.bleed).toEqual({ to: 'both', tilted: false, path: 'lines[0].bleed' });
    expect(said.lines[1]?.bleed).toBe(null);
  });
});

describe('falls', () => {
  test('a rule sets the fall at rest as its fraction, with its source', () => {
    expect(lower?.drain?.minSlope).toEqual({
      value: Math.atan(1 / 50),
      source: 'made up for a test: 1 in 50 (1:50)',
      path: 'lines[0].drain.rule',
    });
  });

  test('a fall is said as it was written', () => {
    expect(upper?.drain?.minSlope).toEqual({
      value: Math.atan(1 / 48),
      source: 'the job: 1/4 in/ft',
      path: 'lines[1].drain.minSlope',
    });
    expect(upper?.drain?.minSlopeTilted).toMatchObject({ source: 'the job', value: -Math.PI / 180 });
  });

  test('a service may write them so too, and name its source', () => {
    const { lines } = edited({ path: 'lines[0].drain', value: { to: 'A' } });
    expect(lines[0]?.drain?.minSlope).toEqual({
      value: Math.atan(1 / 50),
      source: 'our drawing 3: 2 %',
      path: 'services.waste.minSlope',
    });
    expect(lines[0]?.drain?.minSlopeTilted.value).toBe(Math.atan(1 / 200));
  });
});

describe('sticks and runs', () => {
  test('a run has its lines, its drain and its stick', () => {
    const [dip, bare] = wet.runs;
    expect(dip).toMatchObject({
      id: 'dip',
      name: 'dipstick',
      lines: ['lower', 'upper'],
      drain: 'A',
      path: 'runs[0]',
    });
    expect(dip?.stick).toMatchObject({
      kind: 'blade',
      enters: 'Z',
      material: { id: 'steel-soft' },
      thickness: 0.8,
      width: 6,
      link: null,
      tip: { length: 25, thickness: 3, width: 7 },
      seat: 4,
      beyond: 12,
      pan: null,
      fills: [
        { litres: 1, at: 10 },
        { litres: 2.5, at: 25.4 },
      ],
      levels: [
        { name: 'LOW', litres: 1.2 },
        { name: 'FULL', litres: 2 },
      ],
      path: 'runs[0].stick',
    });
    expect(dip?.stick?.friction).toEqual({
      low: { value: 0.1, source: 'the job', path: 'runs[0].stick.friction[0]' },
      high: { value: 0.25, source: 'the job', path: 'runs[0].stick.friction[1]' },
    });
    expect(bare).toEqual({
      id: 'bare',
      name: 'bare',
      lines: ['lower-left'],
      drain: null,
      stick: null,
      path: 'runs[1]',
    });
    expect(edited({ path: 'runs', value: undefined }).runs).toEqual([]);
  });

  test('a stick of one line, with nothing said that need not be', () => {
    expect(lower?.stick).toEqual({
      kind: 'links',
      enters: 'Z',
      material: null,
      thickness: 4,
      width: 5,
      link: 30,
      tip: null,
      seat: 0,
      beyond: 0,
      friction: null,
      pan: { middle: [10, 20, -60], size: [300, 203.2] },
      fills: [],
      levels: [],
      path: 'lines[0].stick',
    });
    expect(upper?.stick).toBe(null);
  });

  test('what a cable has no use for is left', () => {
    const { lines } = edited({ path: 'lines[0].stick.kind', value: 'cable' });
    expect(lines[0]?.stick).toMatchObject({ kind: 'cable', width: null, link: null });
  });

  test('levels without fills or a pan are a job all the same', () => {
    const { runs } = edited({ path: 'runs[0].stick.fills', value: undefined });
    expect(runs[0]?.stick).toMatchObject({
      fills: [],
      pan: null,
      levels: [{ name: 'LOW' }, { name: 'FULL' }],
    });
  });
});

test('the opposite hand has all of it, the pan on the other side', () => {
  expect(left).toMatchObject({ fluid: lower?.fluid, duty: lower?.duty, bleed: lower?.bleed });
  expect([lower?.endA.opening, left?.endA.opening, left?.endZ.opening]).toEqual([8, 8, null]);
  expect(left?.stick).toEqual({ ...lower?.stick, pan: { middle: [10, -10, -60], size: [300, 203.2] } });
});

test('each of these keys can be put in and taken out again', () => {
  const edits: readonly JobEdit[] = [
    { path: 'runs', insert: 2, value: { id: 'third', lines: ['upper'] } },
    { path: 'runs[0].stick.levels', insert: 1, value: { name: 'HALF', litres: 1.5 } },
    { path: 'lines[1].duty.flow', value: '8 L/min' },
    { path: 'lines[1].endZ', value: { opening: 10 } },
    { path: 'fluids.coolant', value: { density: 1070 } },
  ];
  const done = edited(...edits);
  expect(done.runs.map(({ id }) => id)).toEqual(['dip', 'bare', 'third']);
  expect(done.runs[0]?.stick?.levels.map(({ name }) => name)).toEqual(['LOW', 'HALF', 'FULL']);
  expect(done.lines[1]).toMatchObject({ duty: { flow: { value: 8 } }, endZ: { opening: 10 } });
  const back = editJob(editJob(WET_JOB, edits), [
    { path: 'runs[2]', value: undefined },
    { path: 'runs[0].stick.levels[1]', value: undefined },
    { path: 'lines[1].duty.flow', value: undefined },
    { path: 'lines[1].endZ', value: undefined },
    { path: 'fluids.coolant', value: undefined },
  ]);
  expect(back).toBe(WET_JOB);
});
