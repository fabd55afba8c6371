/** The pictures against the words: the leg on the paper lies where the words say it goes, for every place to stand. */
import { type BenchPlan, bendPlan, roundPlan } from '@runback/bending';
import { cornersOf, fromRows, type Row } from '@runback/geometry';
import type { Bench } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { named } from '../test/texts.ts';
import { worked } from '../test/worked.ts';
import { bendPicture } from './picture-bend.ts';
import { fitted } from './picture-fit.ts';
import { sceneOf } from './picture-scene.ts';
import { zone } from './set.ts';
import type { Item, Point } from './types.ts';

const DEGREE = Math.PI / 180;
const WINDOW = zone('picture', [0, 0], [112, 60]);
const FORMERS = ['near', 'far', 'above', 'below'] as const;
const STANDS = ['side', 'at-start', 'behind-free'] as const;

const benches: readonly Bench[] = (['left', 'right'] as const).flatMap((startOn) =>
  STANDS.flatMap((stand) =>
    FORMERS.map((former): Bench => {
      const plane = former === 'near' || former === 'far' ? 'flat' : 'upright';
      return { stand, startOn, plane, former, moves: 'tube' };
    }),
  ),
);
const turns = [40, -115, 162, -59, 90, -90, -155, 179];

const label = (bench: Bench | null, turn: number): string => `${JSON.stringify(bench)} ${turn}`;

/** Two bends with short legs, so that nothing leaves the picture. */
function planOf(turn: number, bench: Bench | null, startOnly?: readonly Row[]): BenchPlan {
  const rows: readonly Row[] = startOnly ?? [
    { straightBefore: 60, turn: null, angle: 60 * DEGREE, radius: 36 },
    { straightBefore: 50, turn: turn * DEGREE, angle: 75 * DEGREE, radius: 36 },
  ];
  const centreline = fromRows(rows, 60);
  const { line } = worked({ points: cornersOf(centreline).map((corner) => corner.at), radius: 36, bench });
  return roundPlan(line, bendPlan(line, centreline));
}

const ask = (plan: BenchPlan) => ({ plan, index: 1, od: 12, start: 'A', free: 'Z' });

/** Where things are on the paper, read from the picture. */
function read(plan: BenchPlan) {
  const { items } = bendPicture(ask(plan), WINDOW);
  const points = (name: string): readonly Point[] =>
    named(items, name).flatMap((item: Item) =>
      item.kind === 'path'
        ? item.steps.flatMap((s): Point[] => (s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]]] : []))
        : [],
    );
  const end = (name: string): Point => {
    const [mark] = named(items, name);
    if (mark?.kind !== 'circle') throw new Error(`no ${name}`);
    return mark.centre;
  };
  return { after: () => end('end-after'), before: () => end('end-before'), head: points('turn-head') };
}

/** Unit steps of the looker on the paper: X right, Y away and to the upper right, Z up. */
const rightOf = (plan: BenchPlan): { readonly away: Point } => {
  const { projection } = sceneOf(ask(plan));
  return { away: [projection.right[1], -projection.up[1]] };
};

/** A step on the paper as X, Y, Z of the looker. The turn keeps what lies along the tube. */
function stepOf(plan: BenchPlan, from: Point, to: Point): readonly [number, number, number] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (plan.bench?.stand !== 'side') return [dx, 0, -dy];
  const { away } = rightOf(plan);
  const y = dx / away[0];
  return [0, y, -(dy - y * away[1])];
}

/** Which coordinate of the looker a word is about, and its sign. */
const WAYS: readonly (readonly [RegExp, 0 | 1 | 2, 1 | -1])[] = [
  [/rises|ends high|straight up/, 2, 1],
  [/drops|ends low|straight down/, 2, -1],
  [/leans away|far side/, 1, 1],
  [/leans toward you|your side/, 1, -1],
  [/leans right|on the right/, 0, 1],
  [/leans left|on the left/, 0, -1],
];

/** The START end of the finished leg: what moves and where it ends, off the line of the tube. */
function legOf(plan: BenchPlan) {
  const [after, before] = [read(plan).after(), read(plan).before()];
  const { scene, laying } = fitted(ask(plan), { x: 1, y: 1, width: 110, height: 58 });
  const sine = Math.sin(60 * DEGREE);
  const reach = (60 * sine + 36 * (1 - Math.cos(60 * DEGREE))) * laying.scale;
  const { right, up } = scene.projection;
  // Before the turn the leg lies in the tool plane, on the side the former is on by hand of the bench.
  const towards = FORMER_AT[formerName(plan.bench)];
  const onTube: Point = [
    before[0] - reach * (towards[0] * right[0] + towards[1] * right[1] + towards[2] * right[2]),
    before[1] + reach * (towards[0] * up[0] + towards[1] * up[1] + towards[2] * up[2]),
  ];
  return { moved: stepOf(plan, before, after), ends: stepOf(plan, onTube, after), onTube };
}

const FORMER_AT = {
  near: [0, -1, 0],
  far: [0, 1, 0],
  above: [0, 0, 1],
  below: [0, 0, -1],
  left: [-1, 0, 0],
  right: [1, 0, 0],
} as const;

/** Near and far for somebody at an end of the tube, by hand: walk from the side round to the end. */
const SEEN_AT_END = {
  'at-start': { left: { near: 'right', far: 'left' }, right: { near: 'left', far: 'right' } },
  'behind-free': { left: { near: 'left', far: 'right' }, right: { near: 'right', far: 'left' } },
} as const;

function formerName(bench: Bench | null): keyof typeof FORMER_AT {
  if (!bench) return 'above';
  const { stand, startOn, former } = bench;
  return stand !== 'side' && (former === 'near' || former === 'far')
    ? SEEN_AT_END[stand][startOn][former]
    : former;
}

function agrees(
  confirmation: string,
  { moved, ends }: Pick<ReturnType<typeof legOf>, 'moved' | 'ends'>,
): boolean {
  const said = WAYS.filter(([word]) => word.test(confirmation));
  const told = confirmation.includes('ends') ? ends : moved;
  return said.length > 0 && said.every(([, axis, sign]) => told[axis] * sign > 0);
}

describe('the leg in the picture', () => {
  it('lies where the words say, for every place to stand and every former', () => {
    for (const bench of benches)
      for (const turn of turns) {
        const plan = planOf(turn, bench);
        expect(agrees(plan.rows[1]!.words.confirmation!, legOf(plan)), label(bench, turn)).toBe(true);
      }
  });

  it('would not agree with the words of the other way round', () => {
    for (const bench of benches)
      for (const turn of [40, -59, 90]) {
        const other = planOf(-turn, bench).rows[1]!.words.confirmation!;
        expect(agrees(other, legOf(planOf(turn, bench))), label(bench, turn)).toBe(false);
      }
  });

  it('is at its START end as far off the tool plane, and on that side, as the check says', () => {
    for (const bench of benches)
      for (const turn of [40, -115, 162]) {
        const plan = planOf(turn, bench);
        const { ends } = legOf(plan);
        const { laying } = fitted(ask(plan), { x: 1, y: 1, width: 110, height: 58 });
        const { side, over } = plan.rows[1]!.check;
        const axis = { left: 0, right: 0, away: 1, toward: 1, above: 2, below: 2 }[side!];
        const sign = side === 'left' || side === 'toward' || side === 'below' ? -1 : 1;
        expect(ends[axis]! * sign, label(bench, turn)).toBeCloseTo(Math.abs(over!) * laying.scale, 6);
      }
  });

  it('lies on the hand START is on', () => {
    for (const bench of benches.filter((one) => one.stand === 'side')) {
      const plan = planOf(40, bench);
      const { laying } = fitted(ask(plan), { x: 1, y: 1, width: 110, height: 58 });
      // The bend begins at the origin of the laying.
      const way = read(plan).after()[0] - laying.at[0];
      expect(Math.sign(way), label(bench, 40)).toBe(bench.startOn === 'left' ? -1 : 1);
    }
  });
});

describe('the arrow', () => {
  it('has its head at the top going the way the words say', () => {
    for (const bench of [...benches, null])
      for (const turn of turns) {
        const plan = planOf(turn, bench);
        const [tip, left, right] = read(plan).head;
        const way = tip![0] - (left![0] + right![0]) / 2;
        const { direction } = plan.rows[1]!.words;
        const rightward = direction === 'away' || direction === 'clockwise';
        expect(Math.sign(way), label(bench, turn)).toBe(rightward ? 1 : -1);
      }
  });

  it('has two heads for a half turn and is left out for none', () => {
    for (const bench of benches.slice(0, 4)) {
      expect(read(planOf(180, bench)).head).toHaveLength(6);
      expect(read(planOf(0, bench)).head).toEqual([]);
    }
  });

  it('goes with the bender where the tube is held: clockwise for a plus, the tube as it was', () => {
    for (const turn of [40, -115]) {
      const plan = planOf(turn, { ...benches[0]!, moves: 'bender' });
      const scene = sceneOf(ask(plan));
      expect(scene.before).toBeNull();
      expect(scene.turns).toBe(turn > 0 ? 1 : -1);
      // Looking from START, X is right and Z up: the former has gone so far clockwise from 12.
      expect(Math.atan2(scene.former[0], scene.former[2]) / DEGREE).toBeCloseTo(turn, 9);
      expect(scene.formerBefore![2]).toBeCloseTo(1, 9);
    }
  });
});

describe('what is drawn shorter', () => {
  it('keeps every direction and every distance off the tool plane', () => {
    const rows: readonly Row[] = [
      { straightBefore: 60, turn: null, angle: 60 * DEGREE, radius: 36 },
      { straightBefore: 900, turn: 40 * DEGREE, angle: 75 * DEGREE, radius: 36 },
    ];
    const plan = planOf(40, benches[0]!, rows);
    const whole = sceneOf(ask(plan));
    const short = sceneOf({ ...ask(plan), mostStraight: 72 });
    expect(short.broken).toBe(true);
    whole.after.slice(0, -1).forEach((place, i) => {
      expect(short.after[i]![1]).toBeCloseTo(place[1], 9);
      expect(short.after[i]![2]).toBeCloseTo(place[2], 9);
      expect(short.after[i]![0] - place[0]).toBeCloseTo(plan.rows[1]!.straightBefore - 72, 9);
    });
    expect(named(bendPicture(ask(plan), WINDOW).items, 'break')).toHaveLength(1);
  });
});
