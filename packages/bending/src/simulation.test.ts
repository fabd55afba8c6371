/**
 * The words against a tool. A rigid tube is turned as a person would who reads them, and bent round a former;
 * the finished shape must be the designed one, its hand included.
 */
import {
  angleBetween,
  type Centreline,
  dot,
  pointAt,
  type Row,
  rigidFit,
  sub,
  type Vec3,
} from '@runback/geometry';
import type { Bench } from '@runback/job';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bench, DEG, make } from '../test-kit/lines.ts';
import { type Making, madeAt, type Run, run } from '../test-kit/run.ts';
import { toolOf } from '../test-kit/tool.ts';
import { bendPlan } from './plan.ts';
import { roundPlan } from './round-plan.ts';
import type { BenchPlan, BendPlan, EndName } from './types.ts';

const CLOSE_MM = 0.000001;

interface Place {
  readonly name: string;
  readonly start: string;
  readonly former: string;
  readonly bench: Bench;
}

/** Where near and far are for somebody at an end of the tube, by hand: walk from the side round to the end. */
const SEEN_AT_END = {
  'at-start': { left: { near: 'right', far: 'left' }, right: { near: 'left', far: 'right' } },
  'behind-free': { left: { near: 'left', far: 'right' }, right: { near: 'right', far: 'left' } },
} as const;

function placesOf(startOn: Bench['startOn'], stand: Bench['stand']): Place[] {
  return (['far', 'near', 'above', 'below'] as const).map((former) => {
    const plane = former === 'far' || former === 'near' ? 'flat' : 'upright';
    const start = stand === 'side' ? startOn : stand === 'at-start' ? 'near' : 'far';
    const level = former === 'far' || former === 'near';
    const seen = stand !== 'side' && level ? SEEN_AT_END[stand][startOn][former] : former;
    const how = bench({ stand, startOn, plane, former });
    return { name: `${stand}, START ${startOn}, former ${former}`, start, former: seen, bench: how };
  });
}

/** START left, right, near (at-start) and far (behind-free); the last two with either hand to name near and far. */
const PLACES: readonly Place[] = (['left', 'right'] as const).flatMap((hand) =>
  (['side', 'at-start', 'behind-free'] as const).flatMap((stand) => placesOf(hand, stand)),
);

const row = (straightBefore: number, turn: number | null, angle: number): Row => ({
  straightBefore,
  turn: turn === null ? null : turn * DEG,
  angle: angle * DEG,
  radius: 36,
});

/** The turns of the table this is about: +40, −115, +162. */
const CHIRAL = {
  rows: [row(90, null, 60), row(70, 40, 75), row(55, -115, 90), row(80, 162, 40)],
  lastStraight: 120,
};

interface Job {
  readonly rows: readonly Row[];
  readonly lastStraight: number;
}

interface Made {
  readonly run: Run;
  readonly plan: BendPlan;
  readonly printed: BenchPlan;
  readonly wanted: Centreline;
}

interface Ask {
  readonly job: Job;
  readonly place: Place;
  readonly swings: 'START' | 'FREE';
  readonly from?: EndName;
  readonly reread?: (line: string) => string;
  readonly how?: Bench | null;
}

function work({ job, place, swings, from = 'A', reread = (line) => line, how = place.bench }: Ask): Made {
  const { line, centreline } = make({ ...job, bench: how });
  const plan = bendPlan(line, centreline, from);
  const printed = roundPlan(line, plan);
  const makings: Making[] = plan.rows.map((exact, i) => ({
    ...exact,
    line: reread(printed.rows[i]!.words.line),
  }));
  const tool = toolOf(place.start, place.former, swings);
  const stand = place.bench.stand;
  return { run: run(makings, plan.lastStraight, { tool, stand }), plan, printed, wanted: centreline };
}

/** How far the made tube is from the designed one, moved but not mirrored. */
function rms({ run: { tube }, wanted, plan }: Made): number {
  const designed = tube.points.map(({ s }) => {
    const along = Math.min(Math.max(s, 0), wanted.length);
    return pointAt(wanted, plan.from === 'A' ? along : wanted.length - along);
  });
  return rigidFit(
    tube.points.map(({ at }) => at),
    designed,
  ).rms;
}

const SWAPS: Readonly<Record<string, string>> = {
  'TOP AWAY FROM YOU': 'TOP TOWARD YOU',
  'TOP TOWARD YOU': 'TOP AWAY FROM YOU',
  ANTICLOCKWISE: 'CLOCKWISE',
  CLOCKWISE: 'ANTICLOCKWISE',
  short: 'past',
  past: 'short',
};
const WAY = /TOP AWAY FROM YOU|TOP TOWARD YOU|ANTICLOCKWISE|CLOCKWISE|short|past/;

/** The fault a person makes: the turn the other way. Over 150°, short for past. */
const wrongWay = (line: string): string => {
  const near = /short|past/.exec(line)?.[0];
  return near ? line.replace(near, SWAPS[near]!) : line.replace(WAY, (way) => SWAPS[way]!);
};

const SWINGS = ['START', 'FREE'] as const;

describe('the words in a tool that knows no turn', () => {
  it('stands in 24 places, which with either side swinging hold the 32 of the table', () => {
    expect(PLACES.length).toBe(24);
    const seen = new Set(PLACES.flatMap((p) => SWINGS.map((s) => `${p.start} ${p.former} ${s}`)));
    expect(seen.size).toBe(32);
  });

  for (const place of PLACES)
    for (const swings of SWINGS) {
      it(`${place.name}, ${swings} swinging: gives the designed tube, and another one turned the wrong way`, () => {
        for (const from of ['A', 'Z'] as const) {
          expect(rms(work({ job: CHIRAL, place, swings, from }))).toBeLessThan(CLOSE_MM);
          expect(rms(work({ job: CHIRAL, place, swings, from, reread: wrongWay }))).toBeGreaterThan(5);
        }
      });

      it(`${place.name}, ${swings} swinging: a bender carried round, and words without a bench`, () => {
        const carried = { ...place.bench, moves: 'bender' } as const;
        for (const how of [carried, null]) {
          expect(rms(work({ job: CHIRAL, place, swings, how }))).toBeLessThan(CLOSE_MM);
          expect(rms(work({ job: CHIRAL, place, swings, how, reread: wrongWay }))).toBeGreaterThan(5);
        }
      });
    }

  it('a single bend turned the wrong way is found too', () => {
    for (const wrong of [1, 2, 3]) {
      let i = 0;
      const reread = (line: string): string => (i++ === wrong ? wrongWay(line) : line);
      expect(rms(work({ job: CHIRAL, place: PLACES[0]!, swings: 'FREE', reread }))).toBeGreaterThan(5);
    }
  });
});

const wholeDeg = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

/** Lines with whole degrees, so that rounding leaves the turns alone (bends of 20° and more). */
const anyJob: fc.Arbitrary<Job> = fc
  .array(
    fc.record({
      straight: fc.integer({ min: 0, max: 200 }),
      turn: wholeDeg(-179, 180),
      angle: wholeDeg(20, 200),
    }),
    {
      minLength: 2,
      maxLength: 6,
    },
  )
  .map((parts) => ({
    rows: parts.map(({ straight, turn, angle }, i) => row(straight + 1, i === 0 ? null : turn, angle)),
    lastStraight: 100,
  }));
const anyPlace = fc.constantFrom(...PLACES);
const anySwing = fc.constantFrom(...SWINGS);
const anyEnd = fc.constantFrom<EndName>('A', 'Z');

describe('any line in any tool', () => {
  it('comes out as designed, worked from either end', () => {
    fc.assert(
      fc.property(anyJob, anyPlace, anySwing, anyEnd, (job, place, swings, from) => {
        expect(rms(work({ job, place, swings, from }))).toBeLessThan(CLOSE_MM);
      }),
      { seed: 42, numRuns: 300 },
    );
  });
});

/** Says where a point is, and by how much, as the printed side names it. */
const TOWARDS: Readonly<Record<string, Vec3>> = {
  above: [0, 0, 1],
  below: [0, 0, -1],
  away: [0, 1, 0],
  toward: [0, -1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
};

const MOVES: readonly (readonly [string, Vec3])[] = [
  ['rises', TOWARDS.above!],
  ['drops', TOWARDS.below!],
  ['leans away', TOWARDS.away!],
  ['leans toward you', TOWARDS.toward!],
  ['leans left', TOWARDS.left!],
  ['leans right', TOWARDS.right!],
];
const ENDS: readonly (readonly [string, Vec3])[] = [
  ['high', TOWARDS.above!],
  ['low', TOWARDS.below!],
  ['on the far side', TOWARDS.away!],
  ['on your side', TOWARDS.toward!],
  ['on the left', TOWARDS.left!],
  ['on the right', TOWARDS.right!],
  ['straight up', TOWARDS.above!],
  ['straight down', TOWARDS.below!],
];

/** The signed readings of every turn of a made line, held against the tube in the tool. */
function holdReadings({ run: { moments }, plan, printed }: Made): void {
  moments.forEach((moment, i) => {
    const words = printed.rows[i]!.words;
    const check = printed.rows[i]!.check;
    const turnCheck = printed.rows[i]!.turnCheck;
    if (i === 0 || turnCheck === null) {
      expect(words.kind).toBe('first');
      return;
    }
    const legEnd = plan.rows[i - 2]?.end ?? 0;
    const legFrom = plan.rows[i - 1]!.start;
    const [was, is] = [madeAt(moment.before, legEnd), madeAt(moment.after, legEnd)];
    holdConfirmation(words.confirmation, was, is);
    // Flag: the way of the last leg square to the tube.
    const square = (v: Vec3): Vec3 => sub(v, scaleTo(moment.tool.start, dot(v, moment.tool.start)));
    const [flagWas, flagIs] = [
      square(sub(was, madeAt(moment.before, legFrom))),
      square(sub(is, madeAt(moment.after, legFrom))),
    ];
    if (Math.hypot(...flagWas) > 1) expect(angleBetween(flagWas, flagIs)).toBeCloseTo(turnCheck.flag, 6);
    // Gauge: slope of the last leg with the clamped straight level.
    const leg = sub(is, madeAt(moment.after, legFrom));
    if (turnCheck.gauge) {
      const slope = Math.atan2(Math.abs(leg[2]), Math.hypot(leg[0], leg[1]));
      expect(turnCheck.gauge.reading).toBeCloseTo(slope, 6);
    }
    holdSide(turnCheck.height, is, moment.tool);
    if (check.over !== null)
      holdSide({ over: check.over, side: check.side }, madeAt(moment.after, 0), moment.tool);
  });
}

const scaleTo = (v: Vec3, k: number): Vec3 => [v[0] * k, v[1] * k, v[2] * k];

function holdConfirmation(confirmation: string | null, was: Vec3, is: Vec3): void {
  if (confirmation === null) return;
  const moved = sub(is, was);
  for (const [words, way] of MOVES)
    if (confirmation === `finished leg ${words}`) expect(dot(moved, way)).toBeGreaterThan(0);
  if (confirmation.startsWith('finished leg ends'))
    for (const [words, way] of ENDS)
      if (confirmation.includes(words)) expect(dot(is, way)).toBeGreaterThan(0);
  expect([...MOVES, ...ENDS].some(([words]) => confirmation.includes(words))).toBe(true);
}

/** A height over the tool plane, which runs through the tube and the former. */
function holdSide(
  reading: { readonly over: number; readonly side: string | null } | null,
  at: Vec3,
  tool: { readonly start: Vec3; readonly former: Vec3 },
): void {
  if (reading === null) return;
  const inPlane = dot(at, tool.start) ** 2 + dot(at, tool.former) ** 2;
  const off = Math.sqrt(Math.max(0, dot(at, at) - inPlane));
  expect(Math.abs(Math.abs(reading.over) - off)).toBeLessThan(0.001);
  if (reading.side === null) expect(off).toBeLessThan(0.5001);
  else expect(dot(at, TOWARDS[reading.side]!)).toBeCloseTo(off, 3);
}

/** Lines on whole half millimetres at the marks, so that rounded and exact are one: R such that arcs are whole. */
const wholeJob: fc.Arbitrary<Job> = anyJob.map(({ rows, lastStraight }) => ({
  // An arc of so many degrees is as many half millimetres long.
  rows: rows.map((one) => ({ ...one, radius: 0.5 / DEG })),
  lastStraight,
}));

describe('confirmations, flag, gauge, height and signed checks', () => {
  it('are what the tube in the tool shows, for every place and former', () => {
    fc.assert(
      fc.property(wholeJob, anyPlace, anySwing, anyEnd, (job, place, swings, from) => {
        const made = work({ job, place, swings, from });
        expect(made.printed.miss.distance).toBeLessThan(CLOSE_MM);
        holdReadings(made);
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('names left and right as seen from START with the former at 12, where nothing else is known', () => {
    fc.assert(
      fc.property(wholeJob, anyPlace, anySwing, fc.boolean(), (job, place, swings, carried) => {
        const how = carried ? ({ ...place.bench, moves: 'bender' } as const) : null;
        const { run: done, printed } = work({ job, place, swings, how });
        done.moments.forEach(({ after, tool }, i) => {
          const { side, words, over } = printed.rows[i]!.check;
          if (over === null || words === null) return;
          // Looking from START along the tube, with the former up, the right hand is looking × up.
          const right = crossed(scaleTo(tool.start, -1), tool.former);
          const off = dot(madeAt(after, 0), right);
          expect(Math.abs(over - off)).toBeLessThan(0.001);
          expect(side).toBe(Math.abs(off) < 0.5 ? null : off > 0 ? 'right' : 'left');
          expect(words).toContain('seen from END A with the former at 12');
        });
      }),
      { seed: 42, numRuns: 100 },
    );
  });

  it('would show a side named wrong', () => {
    const made = work({ job: CHIRAL, place: PLACES[0]!, swings: 'FREE' });
    const { tool, after } = made.run.moments[1]!;
    const { over, side } = made.printed.rows[1]!.check;
    expect(side).toBe('below');
    expect(() => holdSide({ over: over ?? 0, side: 'above' }, madeAt(after, 0), tool)).toThrow();
  });

  it('reads what `overIfWrongWay` says when the tube is turned the wrong way', () => {
    for (const place of PLACES) {
      const right = work({ job: CHIRAL, place, swings: 'START' });
      for (const [k, moment] of right.run.moments.entries()) {
        const check = right.printed.rows[k]!.check;
        if (check.overIfWrongWay === null) continue;
        let i = 0;
        const reread = (line: string): string => (i++ === k ? wrongWay(line) : line);
        const wrong = work({ job: CHIRAL, place, swings: 'START', reread }).run.moments[k]!;
        const plane = crossed(moment.tool.start, moment.tool.former);
        const [shouldBe, is] = [check.over!, check.overIfWrongWay];
        const sign = Math.sign(dot(madeAt(moment.after, 0), plane) * shouldBe);
        expect(Math.abs(dot(madeAt(wrong.after, 0), plane) * sign - is)).toBeLessThan(1);
        expect(check.tells).toBe(true);
      }
    }
  });
});

const crossed = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
