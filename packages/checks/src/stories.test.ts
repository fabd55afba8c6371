/** Five lines of the Tender 7, each as first tried and as cured. The figures were worked apart from this code, to the tenth. */
import { fillet, type Solid, type Vec3 } from '@runback/geometry';
import type { Surrounding } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { aDie, aLine, FLARE, figure, type LineSpec } from '../../../tests/helpers/a-line.ts';
import type { Finding, WorkedLine } from './types.ts';
import { workLine } from './work-line.ts';

const RAD = Math.PI / 180;
const TILT = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;

const pipe = (points: readonly Vec3[], od: number): Solid => {
  const filleted = fillet(points.map((at) => ({ at, radius: 40 })));
  if (!filleted.ok) throw new Error('the pipe does not fit');
  return { kind: 'tube', path: filleted.centreline.pieces, radius: od / 2 };
};

const thing = (id: string, solid: Solid, keepOff: number): Surrounding => ({
  id,
  solid,
  because: 'hot',
  keepOff: figure(keepOff),
  path: 'surroundings[0]',
});

const work = (spec: LineSpec): WorkedLine => workLine(aLine({ attitudes: TILT, ...spec }), { cures: false });
const failing = (worked: WorkedLine, check: string): Finding[] =>
  worked.findings.filter((f) => f.check === check && f.verdict === 'fail');
const tenth = (value: number | null): number => Math.round(value! * 10) / 10;
const found = (worked: WorkedLine, check: string): number[] =>
  failing(worked, check).map((f) => tenth(f.found));
const deg = (radians: number): number => tenth(radians / RAD);

describe('dipstick', () => {
  const exhaust = [310, 200].map((x, i) =>
    thing(
      `exhaust-${i + 1}`,
      pipe(
        [
          [x, 160, 255],
          [x, 270, 215],
          [x, 330, 40],
        ],
        42,
      ),
      40,
    ),
  );
  const shared = { radius: 60, surroundings: exhaust, drain: { to: 'A', minSlopeDeg: 12 } } as const;

  it('first try: too flat, and too near the exhaust', () => {
    const points: Vec3[] = [
      [60, 130, 0],
      [60, 130, 90],
      [255, 235, 190],
      [255, 350, 330],
      [430, 390, 350],
    ];
    const worked = work({ points, ...shared });
    expect([deg(worked.slope!.rest.slope), deg(worked.slope!.worst.slope)]).toEqual([6.4, 0.8]);
    expect(found(worked, 'clearance')[0]).toBe(28);
    const bends = worked.plan!.rows.reduce((sum, row) => sum + row.angle, 0);
    expect(Math.round(bends / RAD)).toBe(196);
  });

  it('cured: up behind number 2, then over', () => {
    const points: Vec3[] = [
      [60, 130, 0],
      [60, 130, 110],
      [90, 190, 340],
      [430, 250, 440],
    ];
    const worked = work({ points, ...shared });
    expect([deg(worked.slope!.rest.slope), deg(worked.slope!.worst.slope)]).toEqual([16.2, 10.7]);
    expect(tenth(worked.findings.find((f) => f.check === 'clearance')!.found)).toBe(93.5);
    expect(Math.round(worked.plan!.developedLength)).toBe(701);
    expect(worked.findings.some((f) => f.verdict === 'fail')).toBe(false);
  });
});

describe('rear brake line', () => {
  const nut = { length: 18, bore: null, acrossFlats: null };
  const end = { fitting: FLARE, nut };
  const shared = { od: 4.76, wall: 0.71, radius: 20, service: 'brake', endA: end, endZ: end } as const;
  const die = aDie({ od: 4.76, radius: 20, minStraight: 18, minTail: 25 });

  it('first try: a hump that holds air, and straights too short', () => {
    const points: Vec3[] = [
      [-300, 460, 640],
      [-380, 460, 640],
      [-440, 420, 640],
      [-1450, 420, 600],
      [-1470, 400, 690],
      [-1530, 300, 690],
      [-1530, 300, 640],
      [-1560, 300, 630],
    ];
    const worked = work({ points, ...shared, die });
    expect(found(worked, 'straights')).toContain(15.6);
    expect(found(worked, 'straights')).toContain(17.2);
    expect(failing(worked, 'straights').find((f) => tenth(f.found) === 17.2)!.limit).toBe(39);
    const air = worked.findings.find((f) => f.check === 'air')!;
    expect(air).toMatchObject({ verdict: 'note', unit: 'ml' });
    expect(tenth(air.found)).toBe(2.1);
    expect(failing(worked, 'slope')).toEqual([]);
  });

  it('cured: under it, falling all the way', () => {
    const points: Vec3[] = [
      [-300, 460, 640],
      [-380, 460, 635],
      [-440, 420, 632],
      [-1450, 420, 600],
      [-1530, 300, 590],
      [-1530, 300, 510],
    ];
    const worked = work({ points, ...shared, die });
    expect(failing(worked, 'straights')).toEqual([]);
    expect(tenth(worked.plan!.lastStraight)).toBe(61.3);
    expect(worked.findings.find((f) => f.check === 'air')).toMatchObject({ verdict: 'pass', found: 0 });
  });
});

describe('fuel feed', () => {
  const nut = { length: 22, bore: null, acrossFlats: null };
  const silencer = thing(
    'silencer',
    pipe(
      [
        [-1500, 250, 380],
        [-900, 250, 380],
      ],
      160,
    ),
    75,
  );
  const shared = {
    od: 8,
    radius: 25,
    surroundings: [silencer],
    die: aDie({ od: 8, radius: 25, minStraight: null, minTail: null }),
    endA: { fitting: FLARE, nut },
    endZ: { fitting: FLARE, nut },
  } as const;

  it('first try: across under the floor, too near the silencer', () => {
    const points: Vec3[] = [
      [-1400, -250, 420],
      [-1340, -250, 420],
      [-1280, 100, 420],
      [-700, 150, 440],
      [-620, 300, 520],
      [-540, 300, 520],
    ];
    const worked = work({ points, ...shared });
    expect(found(worked, 'clearance')).toEqual([44.4]);
    expect(found(worked, 'straights')).toEqual([38.9]);
    expect(failing(worked, 'straights')[0]!.limit).toBe(43);
  });

  it('cured: along the right rail', () => {
    const points: Vec3[] = [
      [-1400, -250, 420],
      [-1320, -250, 420],
      [-1260, -330, 470],
      [-700, -330, 490],
      [-600, -250, 520],
      [-520, -250, 520],
    ];
    const worked = work({ points, ...shared });
    expect(failing(worked, 'straights')).toEqual([]);
    // The first straight and the silencer run side by side, 500 across and 40 up.
    expect(worked.clearance[0]!.distance).toBeCloseTo(Math.hypot(500, 40) - 80 - 4, 9);
    expect(tenth(worked.plan!.rows[0]!.straightBefore)).toBe(66.3);
  });
});

describe('pump seal drain', () => {
  const shared = {
    radius: 36,
    die: aDie({ radius: 36, minStraight: 30, minTail: 45 }),
    drain: { to: 'Z', minSlopeDeg: 0, tiltedDeg: Math.atan(1 / 12) / RAD },
  } as const;

  it('first try: lifted over a bracket, it holds liquid', () => {
    const points: Vec3[] = [
      [0, -180, 420],
      [0, -180, 340],
      [-60, -260, 300],
      [-320, -300, 282],
      [-380, -330, 300],
      [-380, -330, 240],
    ];
    const worked = work({ points, ...shared });
    expect(Math.round(worked.slope!.rest.slope / RAD)).toBe(-15);
    expect(found(worked, 'straights')).toEqual(expect.arrayContaining([14.2, 13.1]));
    const tilted = workLine(worked.line).pockets!.worst!;
    expect([worked.pockets!.liquid.volume, tilted.volume].map((mm3) => tenth(mm3 / 1000))).toEqual([
      3.4, 25.1,
    ]);
    expect(tilted.atMost).toBeLessThan(1.01 * tilted.volume);
  });

  it('cured: bracket moved, one bend fewer', () => {
    const points: Vec3[] = [
      [0, -180, 420],
      [0, -180, 350],
      [-40, -260, 300],
      [-340, -330, 240],
      [-340, -330, 150],
    ];
    const worked = work({ points, ...shared });
    expect([deg(worked.slope!.rest.slope), deg(worked.slope!.worst.slope)]).toEqual([11, 5.5]);
    expect(failing(worked, 'slope')).toEqual([]);
    expect(workLine(worked.line).pockets!.worst).toMatchObject({ volume: 0, atMost: 0, tries: 0 });
  });
});

describe('breather', () => {
  const shared = {
    od: 18,
    wall: 1.5,
    radius: 54,
    die: aDie({ od: 18, radius: 54, minStraight: null, minTail: 45 }),
    drain: { to: 'both', minSlopeDeg: 1 },
  } as const;

  it('first try: an S with a sag, and both ends too short', () => {
    const points: Vec3[] = [
      [40, 60, 470],
      [40, 60, 560],
      [40, 220, 540],
      [-180, 300, 500],
      [-180, 300, 380],
      [-330, 300, 340],
      [-330, 300, 440],
    ];
    const worked = work({ points, ...shared });
    expect(found(worked, 'straights')).toEqual([28.8, 29.7]);
    // Told once, at the sag: not as the rise of one of its sides.
    const [sag, ...more] = failing(worked, 'slope');
    expect(sag).toMatchObject({ found: 0, bend: 5 });
    expect(sag!.at).toBeCloseTo(640, 0);
    expect(more).toEqual([]);
    // Up to the lip of end Z, 440 high: nothing else lets it out.
    expect(worked.pockets!.liquid.pockets.map(({ level }) => tenth(level))).toEqual([440]);
    expect(tenth(worked.pockets!.liquid.volume / 1000)).toBe(46.2);
  });

  it('cured: one crest, each leg falls to its own end', () => {
    const points: Vec3[] = [
      [40, 60, 470],
      [40, 60, 580],
      [-20, 210, 560],
      [-260, 320, 480],
      [-260, 320, 200],
    ];
    const worked = work({ points, ...shared });
    expect(deg(worked.slope!.rest.slope)).toBe(7.1);
    expect(failing(worked, 'slope')).toEqual([]);
    expect(worked.slope!.lows).toEqual([]);
    expect(workLine(worked.line).pockets!.worst).toMatchObject({ volume: 0, atMost: 0, tries: 0 });
  });
});
