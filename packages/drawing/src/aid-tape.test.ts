import { describe, expect, it } from 'vitest';
import { type AskAid, byName, lineOf, plansOf, workedAid } from '../test/aids.ts';
import { words } from '../test/texts.ts';
import { dipstick, end, flare, stairs } from '../test/worked.ts';
import { aidPages } from './aid-pages.ts';
import { jointName, segmentsOf } from './aid-ribbon.ts';
import type { GroupItem, Page } from './types.ts';

type Options = Partial<Parameters<typeof aidPages>[1]>;
const tape = (ask: AskAid, options: Options = {}): readonly Page[] =>
  aidPages(workedAid(ask), { checksum: 'a1b2c3d4', aids: ['tape'], ...options });

/** Where something named stands on the glued tape: strip after strip, each laid on the joint of the one before. */
function onPaper(pages: readonly Page[], name: string): readonly number[] {
  const strips = pages.flatMap((page) => byName(page.items, /^tape-strip-\d+$/)) as readonly GroupItem[];
  let origin = 0;
  const found: number[] = [];
  for (const [i, strip] of strips.entries()) {
    if (i === 0) origin = -lineOf(strip.items, 'tape-zero').from[0];
    else {
      const joint = jointName(i);
      const right = origin + lineOf(strips[i - 1]!.items, `tape-joint-${joint}-right`).from[0];
      origin = right - lineOf(strip.items, `tape-joint-${joint}-left`).from[0];
    }
    found.push(
      ...byName(strip.items, name).flatMap((item) => (item.kind === 'line' ? [origin + item.from[0]] : [])),
    );
  }
  return found;
}

const right: AskAid['points'] = [
  [0, 0, 0],
  [160, 0, 0],
  [160, 260, 0],
  [160, 260, 160],
];
const quarter = (Math.PI / 2) * 60;

describe('the marking tape', () => {
  it('has every mark exactly where the sheet says, over all joints', () => {
    for (const from of ['A', 'Z'] as const)
      for (const paper of ['a4', 'letter'] as const) {
        const ask: AskAid = { points: stairs(12), radius: 36 };
        const pages = tape(ask, { from, paper });
        for (const row of plansOf(workedAid(ask), from).plan.rows)
          for (const at of onPaper(pages, `tape-mark-${row.bend}`)) expect(at).toBeCloseTo(row.mark, 9);
        expect(onPaper(pages, 'tape-mark-12').length).toBeGreaterThan(0);
      }
  });

  it('ends where the sawn tube ends, and shows where it is sawn after bending', () => {
    const pages = tape({ points: right, endA: { spare: { value: 15, source: 'the test', path: null } } });
    // Straights 100, 140, 100 and two quarter bends; 15 spare at A, 40 at Z; all from the sawn end of A.
    expect(onPaper(pages, 'tape-end')[0]).toBeCloseTo(Math.round((15 + 340 + 2 * quarter + 40) * 2) / 2, 9);
    expect(onPaper(pages, 'tape-trim-A')).toEqual([15]);
    expect(onPaper(pages, 'tape-trim-Z')[0]).toBeCloseTo(15 + 340 + 2 * quarter, 0);
    expect(words(pages[0]!)).toContain('ZERO: hook on SAWN END of A');
  });

  it('counts from the finished face when START is formed first', () => {
    const pages = tape({ points: right, flared: true });
    expect(onPaper(pages, 'tape-mark-1')[0]).toBeCloseTo(100, 9);
    expect(words(pages[0]!)).toMatch(/ZERO:( hook on)? FLARED FACE of A/);
    const nut = byName(pages[0]!.items, 'tape-nut-A')[0];
    if (nut?.kind !== 'rect') throw new Error('no nut');
    // Sleeve of 8 against the flare, then the nut of 18.
    expect([nut.x, nut.x + nut.width]).toEqual([8, 26]);
  });

  it('puts a clip where it comes out on the bent tube, stretch and spare counted', () => {
    const grows = 2;
    const ask: AskAid = {
      points: right,
      clips: [130 + quarter, 20],
      die: { stretch: grows / (Math.PI / 2), springBack: null },
      endA: { spare: { value: 15, source: 'the test', path: null } },
    };
    // 130 along the straights and one bend that grows 2: 2 less of straight tube; 15 to the sawn end.
    expect(onPaper(tape(ask), 'tape-clip-1')[0]).toBeCloseTo(130 + quarter - grows + 15, 6);
    expect(onPaper(tape(ask), 'tape-clip-2')[0]).toBeCloseTo(35, 9);
    // From Z the other bend lies before it; the whole line is 340 and two bends, 40 are spare at Z.
    const fromZ = 340 + 2 * quarter - (130 + quarter);
    expect(onPaper(tape(ask, { from: 'Z' }), 'tape-clip-1')[0]).toBeCloseTo(fromZ - grows + 40, 0);
  });

  it('shades what becomes the bend: from mark plus offset, as long as the bend less what it grows', () => {
    const pages = tape({
      points: right,
      die: { markOffset: 7, stretch: 2 / (Math.PI / 2), springBack: null },
    });
    const band = byName(pages[0]!.items, 'tape-bend-1')[0];
    if (band?.kind !== 'rect') throw new Error('no band');
    expect(lineOf(pages[0]!.items, 'tape-mark-1').from[0]).toBeCloseTo(93, 9);
    expect([band.x, band.width]).toEqual([100, expect.closeTo(quarter - 2, 6)]);
  });

  it('formed before bending at both ends: it ends at the finished face and nothing is sawn later', () => {
    const both = { fitting: flare, flareWhen: 'before' } as const;
    const pages = tape({ points: right, endA: both, endZ: { ...end(), ...both } });
    expect(onPaper(pages, 'tape-end')[0]).toBeCloseTo(340 + 2 * quarter, 0);
    expect(pages.flatMap((page) => byName(page.items, /^tape-trim/))).toEqual([]);
  });

  it('is in inches for an inch job, marks on the 1/32', () => {
    const pages = tape({ points: dipstick, units: 'in' });
    const at = onPaper(pages, 'tape-mark-2')[0]!;
    expect((at / 25.4) * 32).toBeCloseTo(Math.round((at / 25.4) * 32), 6);
  });

  it('is not made where too many joints would carry it off', () => {
    const pages = tape({
      points: [
        [0, 0, 0],
        [30000, 0, 0],
      ],
    });
    expect(pages).toHaveLength(1);
    expect(words(pages[0]!)).toMatch(/Not made: marking tape: \d+ strips would not stay true/);
  });
});

describe('segmentsOf', () => {
  it('covers the strip without gap, joints on whole steps, no piece longer than allowed', () => {
    for (const length of [5, 239, 240, 241, 772, 1405.5, 6123])
      for (const unit of ['mm', 'in'] as const) {
        const all = segmentsOf(length, 240, unit);
        expect(all[0]!.from).toBe(0);
        expect(all.at(-1)!.to).toBe(length);
        all.forEach((one, i) => {
          expect(one.to - one.from).toBeLessThanOrEqual(240 + 1e-9);
          if (i > 0) expect(one.from).toBe(all[i - 1]!.to);
        });
      }
  });

  it('names joints past Z', () => {
    expect([1, 26, 27, 53].map(jointName)).toEqual(['A', 'Z', 'A2', 'A3']);
  });
});
