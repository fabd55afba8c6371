import { fillet, type Vec3 } from '@runback/geometry';
import type { Line, Material, Stick } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aBall, aLine, figure, type LineSpec } from '../../../../tests/helpers/a-line.ts';
import { prepare } from '../prepare.ts';
import type { Finding } from '../types.ts';
import { stickCheck, stickOf } from './of-line.ts';

const SPRING: Material = {
  id: 'spring',
  name: 'spring steel',
  density: null,
  youngs: figure(205_000),
  yield: figure(1000),
  expansion: null,
  strength: null,
  allowable: null,
  cautions: [],
};

const stick = (spec: Partial<Stick> = {}): Stick => ({
  kind: 'blade',
  enters: 'Z',
  material: SPRING,
  thickness: 0.5,
  width: 5,
  link: null,
  tip: null,
  seat: 10,
  beyond: 40,
  friction: null,
  pan: null,
  fills: [],
  levels: [],
  path: 'lines[0].stick',
  ...spec,
});

/** Out of the pan straight up, over a right angle, and along: goes in at Z, its end at A hangs plumb. */
const KNEE: readonly Vec3[] = [
  [0, 0, 0],
  [0, 0, 200],
  [200, 0, 200],
];

const line = (of: Partial<Stick> = {}, spec: Partial<LineSpec> = {}): Line => ({
  ...aLine({ points: KNEE, radius: 60, ...spec }),
  stick: stick(of),
});

function said(of: Line, check: string): Finding[] {
  const filleted = fillet(of.corners);
  if (!filleted.ok) throw new Error('the line must fit');
  return stickCheck(prepare(of, filleted.centreline)).filter((f) => f.check === check);
}

function work(of: Line) {
  const filleted = fillet(of.corners);
  if (!filleted.ok) throw new Error('the line must fit');
  return stickOf(of, filleted.centreline);
}

describe('a stiff tip', () => {
  const tip = (length: number) => ({ tip: { length, thickness: 4, width: null } });
  // 2·√((60 + 5)² − (60 − 5 + 4)²) = 54.55, the ends in the arc
  const longest = 2 * Math.sqrt(65 ** 2 - 59 ** 2);

  it('passes the bend up to its longest and sticks beyond, with the bend, the figures and the radius that would do', () => {
    const [ok] = said(line(tip(43.6)), 'passage');
    expect(ok).toMatchObject({ verdict: 'pass', found: 43.6, bend: 1 });
    expect(ok!.limit).toBeCloseTo(longest, 9);
    // Four fifths of 54.55 are 43.64.
    const [tight] = said(line(tip(43.7)), 'passage');
    expect(tight!.verdict).toBe('note');
    expect(tight!.message).toContain('less than a fifth to spare');
    const [bad] = said(line(tip(56)), 'passage');
    expect(bad).toMatchObject({ verdict: 'fail', found: 56, bend: 1 });
    expect(bad!.message).toContain('sticks in B1: 54.6 mm at most');
    // (28² / (10 − 4) − 4) / 2 = 63.33, said as 63.4
    expect(bad!.message).toContain('a radius of 63.4 mm or more');
    const [cured] = said(line(tip(56), { radius: 63.4 }), 'passage');
    expect(cured!.verdict).toBe('note');
    expect(cured!.message).toContain('passes every bend');
  });

  it('finds less room when it is wide', () => {
    const [flat] = said(line({ tip: { length: 50, thickness: 4, width: 8 } }), 'passage');
    // √(10² − 8²) = 6 open: 2·√(63² − 61²)
    expect(flat!.limit).toBeCloseTo(2 * Math.sqrt(63 ** 2 - 61 ** 2), 9);
    expect(flat!.verdict).toBe('fail');
  });

  it('is a link of a segmented stick', () => {
    const links = { kind: 'links', thickness: 6, width: 6, link: 60 } as const;
    const [bad] = said(line(links), 'passage');
    expect(bad).toMatchObject({ verdict: 'fail', found: 60 });
    expect(bad!.message).toContain('The link');
    expect(work(line(links)).stick!.pullOut.length).toBe(60);
  });

  it('has nothing to fear where nothing bends', () => {
    const straight = line(tip(500), { points: [KNEE[0]!, KNEE[1]!] });
    expect(said(straight, 'passage')[0]).toMatchObject({ verdict: 'pass', bend: null });
  });
});

describe('a blade', () => {
  it('goes in where its diagonal does', () => {
    expect(said(line(), 'passage')[0]).toMatchObject({ verdict: 'pass', limit: 10 });
    const wide = said(line({ width: 10 }), 'passage').filter((f) => f.verdict === 'fail');
    expect(wide[0]!.found).toBeCloseTo(Math.hypot(10, 0.5), 12);
    const lip = said(line({}, { endA: { opening: 5 } }), 'passage')[0];
    expect(lip).toMatchObject({ verdict: 'fail', limit: 5, at: 0 });
  });

  it('takes a set under the radius that its yield allows, and the cures it names are cures', () => {
    // Against the inner wall: 60 − (√75 − 0.8)/2 = 56.07; 0.8/(2·56.07) = 0.713 % over 0.488 %
    const bad = said(line({ thickness: 0.8 }), 'passage').find((f) => f.verdict === 'fail')!;
    const radius = 60 - (Math.sqrt(75) - 0.8) / 2;
    expect(bad.found).toBeCloseTo((100 * 0.8) / (2 * radius), 9);
    expect(bad.limit).toBeCloseTo(100 / 205, 9);
    const [, thinner, wider] = /Make it ([\d.]+) mm thick or less, .* radius of ([\d.]+) mm/.exec(
      bad.message,
    )!;
    for (const cured of [
      line({ thickness: Number(thinner) }),
      line({ thickness: 0.8 }, { radius: Number(wider) }),
    ])
      expect(said(cured, 'passage').some((f) => f.verdict === 'fail')).toBe(false);
    for (const still of [
      line({ thickness: Number(thinner) + 0.01 }),
      line({ thickness: 0.8 }, { radius: Number(wider) - 0.1 }),
    ])
      expect(said(still, 'passage').some((f) => f.verdict === 'fail')).toBe(true);
  });

  it('is not judged for a set when its metal is not known: a note, no pass', () => {
    const found = said(line({ material: null }), 'passage');
    expect(found.some((f) => f.verdict === 'note' && f.path === 'lines[0].stick.material')).toBe(true);
    expect(work(line({ material: null })).passage!.blade).toBeNull();
  });

  it('wants straight to twist in', () => {
    const twisted = (straight: number): Vec3[] => [
      [0, 0, 0],
      [0, 0, 200],
      [120 + straight, 0, 200],
      [120 + straight, 200, 200],
    ];
    // A quarter turn needs about 107 mm: π/2 over the twist that 1000 MPa allows.
    const verdicts = [60, 140].map((straight) =>
      said(line({}, { points: twisted(straight) }), 'passage')
        .filter((f) => f.message.includes('twist'))
        .map((f) => [f.verdict, Math.round(f.found!), Math.round(f.limit!)]),
    );
    expect(verdicts).toEqual([[['note', 60, 107]], [['pass', 140, 107]]]);
  });
});

describe('a step', () => {
  it('names the way it catches and the chamfer', () => {
    const found = said(line({}, { endZ: { opening: 8 } }), 'passage').filter((f) =>
      f.message.includes('step'),
    );
    expect(found).toHaveLength(1);
    // In at Z through 8 into 10: the edge catches on the way out. 1/tan 15° = 3.73
    expect(found[0]).toMatchObject({ verdict: 'note', found: 1 });
    expect(found[0]!.message).toContain(
      'at end Z catches the stick coming out: chamfer it 15° to the axis, 3.8 mm long',
    );
  });
});

describe('the length of a stick', () => {
  it('is the way with seat and end: shortest on the inner wall, longest on the outer', () => {
    const { seatToTip, tip } = work(line()).stick!;
    const middle = 140 + 140 + (60 * Math.PI) / 2 + 50;
    const spread = ((10 - 0.5) / 2) * (Math.PI / 2);
    expect(seatToTip.middle).toBeCloseTo(middle, 9);
    expect(seatToTip.shortest).toBeCloseTo(middle - spread, 9);
    expect(seatToTip.longest).toBeCloseTo(middle + spread, 9);
    expect(tip).toEqual([0, 0, -40]);
  });
});

describe('a stick too thick for its tube', () => {
  it('has no sheet, and one failure says why', () => {
    const thick = line({ kind: 'cable', thickness: 11, width: null });
    expect(work(thick)).toMatchObject({ stick: null, passage: { blade: null } });
    expect(said(thick, 'passage').filter((f) => f.verdict === 'fail')).toHaveLength(1);
  });

  it('is not judged in a bend tighter than half the bore', () => {
    const tight = line({}, { radius: 4 });
    expect(work(tight).passage).toBeNull();
    expect(said(tight, 'passage')).toMatchObject([{ verdict: 'note', found: null }]);
  });
});

describe('marks', () => {
  const fills = [
    { litres: 3, at: 10 },
    { litres: 5, at: 30 },
  ];
  const levels = [
    { name: 'low', litres: 3 },
    { name: 'half', litres: 4.5 },
  ];

  it('stand between two fills by even steps', () => {
    const { marks } = work(line({ fills, levels })).stick!;
    expect(marks.map(({ at, doubt, from }) => [at, doubt, from])).toEqual([
      [10, 0.5, 'fills'],
      [25, 5.5, 'fills'],
    ]);
    const [ok] = said(line({ fills, levels }), 'stick');
    expect(ok!.verdict).toBe('pass');
    expect(ok!.basis).toContain('Verify by filling');
  });

  it('are refused beyond the fills, and without fills or a pan', () => {
    const beyond = said(line({ fills, levels: [{ name: 'high', litres: 6 }] }), 'stick')[0]!;
    expect(beyond).toMatchObject({ verdict: 'note', path: 'lines[0].stick.levels' });
    expect(beyond.message).toContain('"high" (it is beyond the fills that were measured)');
    expect(said(line({ levels }), 'stick')[0]!.message).toContain('there are no fills and no pan');
    expect(said(line(), 'stick')[0]!.verdict).toBe('note');
  });

  it('come from the pan along the slope of the stick, with what a degree moves them', () => {
    // 200 × 100 floor at −50: 0.4 L stand 20 high, at −30, and the end of the plumb stick is at −40.
    const pan = { middle: [60, 0, -50] as Vec3, size: [200, 100] as const };
    const { marks, way } = work(line({ pan, levels: [{ name: 'full', litres: 0.4 }] })).stick!;
    expect(marks[0]).toMatchObject({ from: 'pan', name: 'full' });
    expect(marks[0]!.at).toBeCloseTo(10, 9);
    expect(marks[0]!.doubt).toBeCloseTo(way.uncertainty / 2 + 0.5, 9);
    expect(marks[0]!.perDegree).toBeCloseTo(60 * Math.tan(Math.PI / 180), 9);
  });

  it('lie farther apart on a leaning stick', () => {
    const lean = line(
      {
        pan: { middle: [0, 0, -100], size: [200, 100] },
        levels: [{ name: 'full', litres: 1.5 }],
        beyond: 60,
      },
      {
        points: [
          [0, 0, 0],
          [100, 0, 100],
          [300, 0, 100],
        ],
      },
    );
    // Level at −25; the end at −60/√2, so 60 − 25·√2 up the stick.
    expect(work(lean).stick!.marks[0]!.at).toBeCloseTo(60 - 25 * Math.SQRT2, 9);
  });

  it('are refused from a pan that does not reach the stick, or reaches past its straight', () => {
    const pan = { middle: [0, 0, -50] as Vec3, size: [200, 100] as const };
    const why = (litres: number) => said(line({ pan, levels: [{ name: 'x', litres }] }), 'stick')[0]!.message;
    expect(why(0.1)).toContain('does not reach the end of the stick');
    expect(why(5)).toContain('higher than the last straight');
  });
});

describe('the way out', () => {
  const tip = { length: 30, thickness: 4, width: null };
  const out = (ball: Vec3, endZ = {}) =>
    said(line({ tip }, { surroundings: [aBall('cap', ball, 10)], endZ }), 'pull-out')[0]!;

  it('is measured from the straight run of the stiff part, less half the stick', () => {
    // Out of Z at 200, 0, 200 to 230; the blade is wider than the tip.
    const half = Math.hypot(5, 0.5) / 2;
    const clear = out([215, 0, 220]);
    expect(clear).toMatchObject({ verdict: 'pass', to: 'cap' });
    expect(clear.found).toBeCloseTo(10 - half, 9);
    expect(out([250, 0, 200]).found).toBeCloseTo(10 - half, 9);
    const blocked = out([235, 0, 200]);
    expect(blocked).toMatchObject({ verdict: 'fail', to: 'cap' });
    expect(blocked.message).toContain('"cap" is in the way by');
  });

  it('leaves out what the end joins, as far as it is free', () => {
    expect(out([200, 0, 195], { joins: ['cap'], free: 20 }).found).toBeGreaterThan(0);
    expect(out([200, 0, 195], { joins: ['cap'], free: 40 }).verdict).toBe('note');
  });

  it('is a note when nothing of the stick is stiff', () => {
    const bare = line({}, { surroundings: [aBall('cap', [215, 0, 200], 10)] });
    expect(said(bare, 'pull-out')[0]!.verdict).toBe('note');
    expect(work(bare).stick!.pullOut.length).toBe(0);
  });
});

describe('the facts of a stick', () => {
  it('have figures with units, a basis, and the caution where it counts', () => {
    const { facts } = work(line({ levels: [{ name: 'low', litres: 3 }], fills: [{ litres: 3, at: 12 }] }));
    const mark = facts.find((f) => f.label.startsWith('mark'))!;
    expect(mark).toMatchObject({ label: 'mark "low", 3 L', text: '12 mm from its end, ± 0.5 mm' });
    expect(mark.caution).toBe('Verify by filling; mark the stick on the machine.');
    expect(facts.every((f) => f.basis.length > 20)).toBe(true);
    expect(new Set(facts.map((f) => f.group))).toEqual(new Set(['passage', 'stick']));
  });

  it('say nothing of a line without a stick', () => {
    expect(work(aLine({ points: KNEE }))).toEqual({ passage: null, stick: null, facts: [] });
  });
});
