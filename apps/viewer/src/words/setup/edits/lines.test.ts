import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue, editJob, type Job, type JobEdit, parseJob, resolve, type Vec3, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import {
  acrossOf,
  duplicate,
  firstPoints,
  handsOf,
  lineIdFrom,
  newLine,
  oppositeHand,
  removeLine,
  renameLineId,
  runsOf,
} from './lines.ts';
import type { Written } from './written.ts';

const examples = join(import.meta.dirname, '..', '..', '..', '..', '..', '..', 'docs', 'examples');
const TENDER = readFileSync(join(examples, 'tender-7', 'tender-7.job.json'), 'utf8');
const PUMP = readFileSync(join(examples, 'inch', 'pump-set.job.json'), 'utf8');
const JOBS = [
  ['Tender 7', TENDER, 'dipstick'],
  ['the pump set', PUMP, 'cooler-return'],
] as const;

const after = (text: string, edits: readonly JobEdit[]): Job => parseJob(editJob(text, edits));
const written = (text: string): Written => parseJob(text).written;
const lineOf = (job: Job, id: string) => resolve(job, catalogue).lines.find((line) => line.id === id)!;
const FORWARD: Vec3 = [1, 0, 0];
const LEFT: Vec3 = [0, 1, 0];

describe.each(JOBS)('lines of %s', (_, text, id) => {
  const job = written(text);
  const line = lineOf(parseJob(text), id);
  const end = line.corners.at(-1)!.at;

  it('a new one is straight, beside the end of the chosen one, and can be worked', () => {
    const [from, to] = firstPoints(job, { end, forward: FORWARD, left: LEFT });
    const bender = line.bender!.id;
    const made = newLine(job, { name: 'Oil feed', tube: line.tube.id, bender, service: 'general', from, to });
    const changed = editJob(text, made.edits);
    const { corners, name, tube } = lineOf(parseJob(changed), made.id);
    expect([made.id, name, tube.id]).toEqual(['oil-feed', 'Oil feed', line.tube.id]);
    expect(corners[1]!.at[0] - corners[0]!.at[0]).toBeCloseTo(job.units === 'in' ? 7.875 * 25.4 : 200, 9);
    expect(Math.hypot(...corners[0]!.at.map((x, k) => x - end[k]!))).toBeLessThan(110);
    expect(workUp(changed).lines.find((one) => one.line.id === made.id)?.centreline?.length).toBeGreaterThan(
      199,
    );
  });

  it('a copy is the same line under another id and name, behind it', () => {
    const made = duplicate(job, id);
    const changed = after(text, made.edits);
    const copy = lineOf(changed, made.id);
    const places = changed.written.lines.map((one) => one.id);
    expect(places.indexOf(made.id)).toBe(places.indexOf(id) + 1);
    expect(copy.name).toBe(`${line.name}, copy`);
    expect(copy.corners.map(({ at }) => at)).toEqual(line.corners.map(({ at }) => at));
    expect(copy.clips).toEqual(line.clips);
    expect(duplicate(changed.written, id).id).toBe(`${id}-copy-2`);
  });

  it('the opposite hand is mirrored across the plane that is asked for', () => {
    const made = oppositeHand(job, { of: id, name: 'Other hand', across: 'x', offset: 2 });
    const hand = lineOf(after(text, made.edits), made.id);
    const about = job.units === 'in' ? 2 * 25.4 : 2;
    expect(hand.mirror).toEqual({ of: id, axis: 0, offset: about });
    expect(hand.corners[0]!.at[0]).toBeCloseTo(2 * about - line.corners[0]!.at[0], 9);
  });

  it('another id goes wherever the line is named', () => {
    const made = oppositeHand(job, { of: id, name: 'hand', across: 'y', offset: undefined });
    const both = after(text, made.edits);
    const changed = after(both.text, renameLineId(both.written, id, 'main'));
    expect(lineOf(changed, made.id).mirror?.of).toBe('main');
    expect(changed.written.lines.some((one) => one.id === id)).toBe(false);
  });

  it('removing one takes its opposite hands with it and leaves the others', () => {
    const copied = after(text, duplicate(job, id).edits);
    const made = oppositeHand(copied.written, { of: id, name: 'hand', across: 'y', offset: undefined });
    const both = after(copied.text, made.edits);
    const gone = [id, ...handsOf(both.written, id)];
    const left = after(both.text, removeLine(both.written, id)).written.lines.map((one) => one.id);
    expect(gone).toContain(made.id);
    expect(left).toEqual(both.written.lines.map((one) => one.id).filter((one) => !gone.includes(one)));
  });
});

describe('lines', () => {
  it('begin at the origin where there is no other', () => {
    const points = firstPoints(written(TENDER), { end: null, forward: FORWARD, left: LEFT });
    expect(points).toEqual([
      [0, 0, 0],
      [200, 0, 0],
    ]);
  });

  it('are mirrored left to right unless said otherwise', () => {
    expect(acrossOf([0, 1, 0])).toBe('y');
    expect(acrossOf([-0.9, 0.1, 0.4])).toBe('x');
  });

  it('are renamed in their runs too', () => {
    const changed = after(TENDER, renameLineId(written(TENDER), 'dipstick-foot', 'foot'));
    expect(changed.written.runs?.map(({ lines }) => lines)).toEqual([['foot', 'dipstick']]);
  });

  it('leave their runs when they are removed, and the last one takes the run with it', () => {
    const job = written(TENDER);
    expect(runsOf(job, ['dipstick'])).toEqual(['Dipstick tube, stepped']);
    const shorter = after(TENDER, removeLine(job, 'dipstick'));
    expect(shorter.written.runs?.map(({ lines }) => lines)).toEqual([['dipstick-foot']]);
    expect(after(shorter.text, removeLine(shorter.written, 'dipstick-foot')).written.runs).toEqual([]);
    expect(after(TENDER, removeLine(job, 'breather')).written.runs).toEqual(job.runs);
  });

  it('do not take the id of a run', () => {
    expect(lineIdFrom(written(TENDER), 'Dipstick run')).toBe('dipstick-run-2');
  });

  it('the opposite hand may be copied too', () => {
    const made = duplicate(written(TENDER), 'dipstick-right');
    expect(lineOf(after(TENDER, made.edits), made.id).mirror?.of).toBe('dipstick');
  });
});
