import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Finding, workUp } from 'runback';
import { describe, expect, it, vi } from 'vitest';
import type { Store } from '../../store/types.ts';
import { makeCure } from './cure.ts';
import { CHECKS_NAMED, checkName } from './names.ts';
import { grouped, measured, ofRun, where } from './rows.ts';

const root = join(import.meta.dirname, '../../../../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const worked = workUp(read('docs/examples/tender-7/first-try.job.json'));
const line = worked.lines[0]!;

const FINDING: Finding = { ...line.findings[0]!, verdict: 'fail', at: null, bend: null, to: null };

describe('findings', () => {
  it('stand worst first and keep their places', () => {
    const { fail, note, pass } = grouped(line);
    expect(fail.length + note.length + pass.length).toBe(line.findings.length);
    expect(fail.length).toBeGreaterThan(0);
    for (const { index, finding } of [...fail, ...note, ...pass]) expect(line.findings[index]).toBe(finding);
    expect(fail.every(({ finding }) => finding.verdict === 'fail')).toBe(true);
  });

  it('say figures in the units that are read, told apart where the rule does', () => {
    const mm = { ...FINDING, unit: 'mm', found: 28, limit: 40 } as const;
    expect(measured(mm, 'mm')).toBe('found 28 mm, limit 40 mm');
    expect(measured(mm, 'in')).toBe('found 1 3/32 in, limit 1 9/16 in');
    expect(measured({ ...mm, found: 39.996 }, 'mm')).toBe('found 39.996 mm, limit 40 mm');
    expect(measured({ ...mm, limit: null }, 'mm')).toBe('found 28 mm');
    expect(measured({ ...FINDING, unit: 'deg', found: -0.6, limit: 1 }, 'mm')).toBe('found −0.6°, limit 1°');
    // Its message says both, rounded down as the proof is.
    expect(measured({ ...FINDING, check: 'slope', unit: 'deg', found: 6.354, limit: 12 }, 'mm')).toBeNull();
    expect(measured({ ...FINDING, unit: 'ratio', found: 2.25, limit: 3 }, 'mm')).toBe('found 2.25, limit 3');
    expect(measured({ ...FINDING, unit: 'percent', found: 26.66, limit: 25 }, 'mm')).toBe(
      'found 26.7 %, limit 25 %',
    );
    expect(measured({ ...FINDING, unit: 'ml', found: 3.44, limit: 0 }, 'mm')).toBe(
      'found 3.4 ml, limit 0 ml',
    );
    expect(measured({ ...FINDING, unit: 'MPa', found: 0.7, limit: 20.6 }, 'mm')).toBe(
      'found 0.7 MPa, limit 20.6 MPa',
    );
    expect(measured({ ...FINDING, unit: 'count', found: 1, limit: 0 }, 'mm')).toBeNull();
    expect(measured({ ...FINDING, unit: '', found: null, limit: null }, 'mm')).toBeNull();
  });

  it('say where', () => {
    const length = line.centreline!.length;
    expect(where({ ...FINDING, at: 214.52, bend: 2, to: 'exhaust-1' }, line, 'mm')).toBe(
      '214.5 mm from A · B2 · exhaust-1',
    );
    expect(where({ ...FINDING, at: 0 }, line, 'mm')).toBe('end A');
    expect(where({ ...FINDING, at: length }, line, 'mm')).toBe('end Z');
    expect(where(FINDING, line, 'mm')).toBeNull();
  });

  it('of a run say its name, and are shown where they have a place', () => {
    const [run] = worked.runs;
    const of = (change: Partial<Finding>) => ofRun({ ...FINDING, point: null, ...change }, worked.runs);
    const whole = of({ to: run!.run.id });
    expect([whole.finding.to, whole.shows]).toEqual([`run ${run!.run.name}`, false]);
    expect(of({ to: run!.run.id, bend: 1 }).shows).toBe(true);
    expect([of({ to: 'exhaust-1' }).finding.to, of({ to: 'exhaust-1' }).shows]).toEqual(['exhaust-1', true]);
    expect(of({}).shows).toBe(false);
  });
});

it('every check of the documentation has a name for people', () => {
  const documented = [...read('docs/checks.md').matchAll(/^## ([a-z][a-z-]+)$/gmu)].map(([, id]) => id!);
  expect(documented.length).toBeGreaterThan(10);
  expect(CHECKS_NAMED).toEqual(expect.arrayContaining(documented));
  expect(checkName('one of tomorrow')).toBe('one of tomorrow');
});

describe('making a cure', () => {
  const cure = { text: 'Move point 3.', edits: [{ path: 'lines[0].points[3].at', value: [1, 2, 3] }] };

  const storeThat = (issues: readonly unknown[]) => {
    const store = { edit: vi.fn(async () => issues), say: vi.fn(), worked: { value: worked } };
    return { store: store as unknown as Store, edit: store.edit, say: store.say };
  };

  it('is one step named for it, and says the new verdict', async () => {
    const { store, edit, say } = storeThat([]);
    expect(await makeCure(store, line, { cure, verdict: () => 'passes' })).toBe(true);
    expect(edit).toHaveBeenCalledWith('Cure: Move point 3.', cure.edits);
    expect(say).toHaveBeenCalledWith('Done. Oil dipstick tube: passes.');
  });

  it('says nothing more when it is refused', async () => {
    const { store, say } = storeThat([{ message: 'no' }]);
    expect(await makeCure(store, line, { cure, verdict: () => 'passes' })).toBe(false);
    expect(say).not.toHaveBeenCalled();
  });
});
