import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue, editJob, type Job, type JobEdit, type Line, parseJob, resolve } from 'runback';
import { describe, expect, it } from 'vitest';
import { kindOf, ofKind, sayAttitudes, tipEdit, tipOf } from './attitudes.ts';
import {
  benchEdits,
  FIRST_BENCH,
  newBender,
  newDie,
  springEdits,
  springOf,
  uncalibrated,
} from './benders.ts';
import { addClip, nutEdit, readDirection, sleeveEdit, WAYS, wayOf, wayVector } from './ends.ts';
import { newSurrounding, removeSurrounding, renameSurrounding, toggleJoin } from './surroundings.ts';
import { sizesIn, tubeChoices, tubeFromCatalogue } from './tubes.ts';
import { mmOf, path, type Written, writtenOf } from './written.ts';

const examples = join(import.meta.dirname, '..', '..', '..', '..', '..', '..', 'docs', 'examples');
const TENDER = readFileSync(join(examples, 'tender-7', 'tender-7.job.json'), 'utf8');
const PUMP = readFileSync(join(examples, 'inch', 'pump-set.job.json'), 'utf8');
const JOBS = [
  ['Tender 7', TENDER],
  ['the pump set', PUMP],
] as const;

const after = (text: string, edits: readonly JobEdit[]): Job => parseJob(editJob(text, edits));
const written = (text: string): Written => parseJob(text).written;
const first = (job: Job): Line => resolve(job, catalogue).lines[0]!;

describe.each(JOBS)('the shop of %s', (_, text) => {
  const job = written(text);
  const inch = job.units === 'in';
  const line = first(parseJob(text));
  const bender = line.bender!.id;
  const where = { bender, die: 0, tube: line.tube.id };

  it('takes every tube of the catalogue at its exact size, and once only', () => {
    const ids = Object.keys(catalogue.tubes);
    const changed = after(
      text,
      ids.flatMap((id) => tubeFromCatalogue(job, catalogue, id).edits),
    );
    for (const id of ids) {
      const own = changed.values.tubes![id]!;
      const tube = catalogue.tubes[id]!;
      expect(own.material).toBe(tube.material);
      expect(Math.abs(own.od - tube.od) + Math.abs(own.wall - tube.wall)).toBeLessThan(1e-9);
      expect(tubeFromCatalogue(changed.written, catalogue, id)).toEqual({ id, edits: [] });
    }
  });

  it('gives a tube of the catalogue another id where its own means another size', () => {
    const { id } = sizesIn(catalogue, 'copper')[0]!;
    const other = after(text, [
      { path: path('tubes', id), value: { material: 'copper', od: 3, wall: '0.5 mm' } },
    ]);
    const made = tubeFromCatalogue(other.written, catalogue, id);
    expect(made.id).toBe(`${id}-2`);
    expect(
      tubeChoices(after(other.text, made.edits).written, catalogue, null).map(({ value }) => value),
    ).toContain(`${id}-2`);
  });

  it('has a new bender with a die that bends this tube', () => {
    const die = { od: writtenOf(line.tube.od, job.units), radius: inch ? '1 1/2' : 45 };
    const made = newBender(job, 'New one', die);
    const use = { path: 'lines[0].bender', value: made.id };
    const changed = first(after(text, [...made.edits, use]));
    expect(changed.bender?.id).toBe('new-one');
    expect(changed.bender?.dies[0]?.radius).toBeCloseTo(inch ? 38.1 : 45, 9);
  });

  it('has one more die', () => {
    const die = { od: writtenOf(line.tube.od, job.units), radius: inch ? 3 : 80 };
    const dies = first(after(text, newDie(job, bender, die))).bender!.dies;
    expect(dies).toHaveLength(line.bender!.dies.length + 1);
    expect(dies.at(-1)!.radius).toBeCloseTo(inch ? 76.2 : 80, 9);
  });

  it('has a spring-back changed where it stands, taken out, and given anew for the tube', () => {
    const said = springOf(job, where);
    expect(said?.on).toBe('tube');
    const changed = after(text, springEdits(job, where, ['factor', 1.05]));
    expect(first(changed).bender!.dies[0]!.springBack?.factor).toBe(1.05);
    expect(springOf(changed.written, where)?.fixed).toBe(said?.fixed);
    const none = after(text, uncalibrated(job, where));
    expect(first(none).bender!.dies[0]!.springBack).toBeNull();
    const anew = after(none.text, springEdits(none.written, where, ['fixed', 2]));
    expect(springOf(anew.written, where)).toMatchObject({ on: 'tube', factor: undefined, fixed: 2 });
    const empty = after(anew.text, springEdits(anew.written, where, ['fixed', undefined]));
    expect(springOf(empty.written, where)).toBeNull();
  });

  it('keeps the former where the tool can have it', () => {
    const at = path('benders', bender, 'bench');
    const begun = after(text, [{ path: at, value: FIRST_BENCH }]);
    const upright = after(begun.text, benchEdits(bender, FIRST_BENCH, ['plane', 'upright']));
    expect(first(upright).bender?.bench).toEqual({ ...FIRST_BENCH, plane: 'upright', former: 'above' });
    const near = after(begun.text, benchEdits(bender, FIRST_BENCH, ['former', 'near']));
    expect(first(near).bender?.bench?.former).toBe('near');
  });

  it('has its attitudes of any kind, and each side of them', () => {
    for (const kind of ['rest', 'tilt', 'box'] as const) {
      const values = ofKind(kind, job.attitudes);
      const changed = after(text, [{ path: 'attitudes', value: values }]);
      expect(kindOf(changed.written.attitudes)).toBe(kind);
      expect(sayAttitudes(values) === 'at rest only').toBe(kind === 'rest');
    }
    const box = after(text, [{ path: 'attitudes', value: { pitch: [-2, 3] } }]).written.attitudes;
    const changed = after(text, [
      { path: 'attitudes', value: box },
      tipEdit('attitudes', box, ['leftDown', 7]),
      tipEdit('attitudes', box, ['noseUp', 4]),
    ]);
    expect(changed.written.attitudes).toEqual({ pitch: [-4, 3], roll: [-7, 0] });
    expect(tipOf(changed.written.attitudes, 'leftDown')).toBe(7);
    expect(sayAttitudes(changed.written.attitudes)).toBe('nose up 4°, nose down 3°, left side down 7°');
  });

  it.each(['sphere', 'box', 'cylinder'] as const)(
    'has a new %s that can be worked, renamed and removed',
    (shape) => {
      const made = newSurrounding(job, shape, [254, 508, -762]);
      const changed = after(text, made.edits);
      const join: JobEdit = toggleJoin('lines[0].endA', [], made.id);
      const near: JobEdit = { path: `lines[0].clearance.to.${made.id}`, value: 4 };
      const named = after(changed.text, [join, near]);
      const found = first(named).surroundings.find(({ id }) => id === made.id);
      expect(found?.because).toBe('fixed');
      const renamed = after(named.text, renameSurrounding(named.written, made.id, 'the-2nd.one'));
      expect(first(renamed).endA.joins).toEqual(['the-2nd.one']);
      expect(Object.keys(first(renamed).clearance.to)).toEqual(['the-2nd.one']);
      const gone = after(renamed.text, removeSurrounding(renamed.written, 'the-2nd.one'));
      expect(gone.written.surroundings).toHaveLength(job.surroundings!.length);
      expect(first(gone).endA.joins).toEqual([]);
    },
  );

  it('has any surrounding removed, whoever names it', () => {
    for (const { id } of job.surroundings ?? []) {
      const gone = after(text, removeSurrounding(job, id));
      expect(gone.written.surroundings?.some((one) => one.id === id)).toBe(false);
    }
  });

  it('has nuts, sleeves and clips', () => {
    const changed = after(text, [
      nutEdit('lines[0].endA', ['length', inch ? '3/4' : 19]),
      nutEdit('lines[0].endA', ['bore', inch ? 0.4 : 12.5]),
      sleeveEdit('lines[0].endA', inch ? 0.25 : 6),
    ]);
    expect(first(changed).endA.nut?.length).toBeCloseTo(inch ? 19.05 : 19, 9);
    const bare = after(changed.text, [
      nutEdit('lines[0].endA', ['length', undefined]),
      sleeveEdit('lines[0].endA', undefined),
    ]);
    expect([first(bare).endA.nut, first(bare).endA.sleeve]).toEqual([null, null]);
    const clipped = after(text, addClip(job, 0, '300 mm'));
    const clips = first(clipped).clips!;
    expect(clips).toHaveLength(line.clips!.length + 1);
    expect(clips).toEqual(clips.toSorted((a, b) => a - b));
    expect(clips.some((clip) => Math.abs(clip - 300) < 1e-9)).toBe(true);
  });
});

describe('directions', () => {
  const { axes } = first(parseJob(TENDER));

  it('of plain words come back as those words, whatever their length', () => {
    for (const [way] of WAYS) {
      const [x, y, z] = wayVector(way, axes)!;
      expect(wayOf([3 * x, 3 * y, 3 * z], axes)).toBe(way);
    }
    expect(wayOf([-34, -6, -10], axes)).toBeNull();
    expect(wayVector('down', axes)!.some((part) => Object.is(part, -0))).toBe(false);
  });

  it('are read as three numbers', () => {
    expect(readDirection('−34, -6 -10')).toEqual({ ok: true, value: [-34, -6, -10] });
    for (const typed of ['', '1 2', '0 0 0', '1 2 x', '1 2 3 4']) expect(readDirection(typed).ok).toBe(false);
  });
});

describe('lengths', () => {
  it('are written so that they are exact', () => {
    expect(writtenOf(12, 'in')).toBe('12 mm');
    expect(writtenOf(9.525, 'in')).toBe(0.375);
    expect(writtenOf(9.525, 'mm')).toBe(9.525);
    for (const mm of [12, 9.525, 0.889, 4.76, 25.4 / 3])
      for (const units of ['mm', 'in'] as const) expect(mmOf(writtenOf(mm, units), units)).toBeCloseTo(mm, 9);
  });
});
