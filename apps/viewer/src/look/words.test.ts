import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { type MachineAxes, pocketsIn, slopeAt, upIn, type Vec3, type WorkedLine, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../../../tests/helpers/run.ts';
import { fullestTilt, misfitWords, pitchWords, rollWords, tiltRange, tiltWords, worstTilt } from './words.ts';

const DEGREE = Math.PI / 180;
const lineOf = (text: string, id: string): WorkedLine =>
  workUp(text).lines.find(({ line }) => line.id === id)!;
const first = readFileSync(FIRST_TRY, 'utf8');

describe('the tilt in words', () => {
  it('says which side goes down: positive pitch the nose, positive roll the right side', () => {
    // Held to up itself: with the nose down, up leans back in the machine; with the right side down, to the left.
    const axes: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };
    expect(upIn(axes, 5 * DEGREE, 0)[0]).toBeLessThan(0);
    expect(pitchWords(5 * DEGREE)).toBe('nose down 5°');
    expect(pitchWords(-5 * DEGREE)).toBe('nose up 5°');
    expect(upIn(axes, 0, 3 * DEGREE)[1]).toBeGreaterThan(0);
    expect(rollWords(3 * DEGREE)).toBe('right side down 3°');
    expect(rollWords(-3 * DEGREE)).toBe('left side down 3°');
    expect(tiltWords({ pitch: 0, roll: 0 })).toBe('level');
    expect(tiltWords({ pitch: 0.02 * DEGREE, roll: 3 * DEGREE })).toBe('right side down 3°');
  });

  it('goes as far as the line does, and never leaves out where the machine is', () => {
    const box = { kind: 'box', pitch: [-5 * DEGREE, 5 * DEGREE], roll: [0, 0] } as const;
    expect(tiltRange(box, { pitch: 0, roll: 0 })).toEqual({
      pitch: [-5 * DEGREE, 5 * DEGREE],
      roll: [-15 * DEGREE, 15 * DEGREE],
    });
    expect(tiltRange(box, { pitch: 8 * DEGREE, roll: 0 }).pitch).toEqual([-5 * DEGREE, 8 * DEGREE]);
    expect(tiltRange({ kind: 'cone', tilt: 4 * DEGREE }, { pitch: 0, roll: 0 }).roll[0]).toBe(-4 * DEGREE);
  });
});

describe('the worst attitude', () => {
  it('of a box is the one the check found', () => {
    const worked = lineOf(first, 'dipstick');
    expect(worstTilt(worked)).toEqual(worked.slope!.worst.attitude);
  });

  it('of a cone brings the line to just the fall the check found', () => {
    const cone = first.replace('{ "pitch": [-5, 5], "roll": [-3, 3] }', '{ "tilt": 4 }');
    expect(cone).not.toBe(first);
    const worked = lineOf(cone, 'dipstick');
    const { worst } = worked.slope!;
    expect(worst.attitude).toBeNull();
    const { pitch, roll } = worstTilt(worked)!;
    const up = upIn(worked.line.axes, pitch, roll);
    expect(slopeAt(worked.centreline!, worst.at, { up, drain: 'A' })).toBeCloseTo(worst.slope, 9);
  });

  it('of any up is the tilt that has it', () => {
    const worked = lineOf(first, 'dipstick');
    fc.assert(
      fc.property(fc.integer({ min: -80, max: 80 }), fc.integer({ min: -170, max: 170 }), (p, r) => {
        const up = upIn(worked.line.axes, p * DEGREE, r * DEGREE);
        const tilted = {
          ...worked,
          slope: { ...worked.slope!, worst: { ...worked.slope!.worst, up, attitude: null } },
        };
        const found = worstTilt(tilted)!;
        const again: Vec3 = upIn(worked.line.axes, found.pitch, found.roll);
        for (const k of [0, 1, 2] as const) expect(again[k]).toBeCloseTo(up[k], 12);
      }),
      { seed: 4, numRuns: 100 },
    );
  });

  it('is none for a line that is not asked to fall', () => {
    expect(worstTilt({ ...lineOf(first, 'dipstick'), slope: null })).toBeNull();
  });
});

describe('the attitude in which most stays', () => {
  const worked = lineOf(first, 'pump-drain');
  const { liquid } = pocketsIn(worked, worked.line.axes.up)!;
  const tilt = { pitch: -5 * DEGREE, roll: 3 * DEGREE };
  const up = upIn(worked.line.axes, tilt.pitch, tilt.roll);
  const found = { ...liquid, atMost: liquid.volume, up, attitude: tilt, tries: 1 };
  const having = (worst: typeof found | null): WorkedLine => ({
    ...worked,
    pockets: { outlets: 'Z', capacity: 1, liquid, worst, air: null, cling: null },
  });

  it('is the one that was found, when there is anything to see in it', () => {
    expect(fullestTilt(having(found))).toEqual(tilt);
    expect(fullestTilt(having({ ...found, pockets: [] }))).toBeNull();
    expect(fullestTilt(having(null))).toBeNull();
  });

  it('of a cone is the tilt that brings up there', () => {
    const { pitch, roll } = fullestTilt(having({ ...found, attitude: null } as never))!;
    expect([pitch, roll]).toEqual([expect.closeTo(tilt.pitch, 12), expect.closeTo(tilt.roll, 12)]);
  });
});

describe('a line that cannot exist', () => {
  it('says what does not fit and how to cure it', () => {
    const text = readFileSync(TENDER, 'utf8').replace('[60, 130, 110]', '[60, 130, 338]');
    const words = misfitWords(lineOf(text, 'dipstick')).join(' ');
    expect(words).toMatch(/radius|leg/);
    expect(words).toMatch(/Move point \d/);
  });
});
