import {
  cross,
  distance,
  dot,
  moved,
  norm,
  piecePoint,
  pointAt,
  type RigidMotion,
  type Row,
  rotate,
  scale,
  type Vec3,
} from '@runback/geometry';
import type { Bench } from '@runback/job';
import { describe, expect, it } from 'vitest';
// What the sheet prints is the judge: the pose must lie where its pictures lie.
import { type Scene, sceneOf } from '../../drawing/src/picture-scene.ts';
import { bench, DEG, make } from '../test-kit/lines.ts';
import { run } from '../test-kit/run.ts';
import { toolOf } from '../test-kit/tool.ts';
import { bendPlan } from './plan.ts';
import { roundPlan } from './round-plan.ts';
import { type ToolPose, toolPose } from './tool-pose.ts';
import type { BenchPlan, BendPlan, EndName } from './types.ts';

const CLOSE_MM = 0.000001;

const row = (straightBefore: number, turn: number | null, angle: number): Row => ({
  straightBefore,
  turn: turn === null ? null : turn * DEG,
  angle: angle * DEG,
  // An arc of so many degrees is as many half millimetres long: rounding moves nothing.
  radius: 0.5 / DEG,
});

const ROWS = [row(90, null, 60), row(70, 40, 75), row(55, -115, 90), row(80, 162, 40), row(60, 180, 110)];

const BENCHES: readonly (Bench | null)[] = [
  null,
  ...(['side', 'at-start', 'behind-free'] as const).flatMap((stand) =>
    (['left', 'right'] as const).flatMap((startOn) =>
      (['near', 'far', 'above', 'below'] as const).flatMap((former) =>
        (['tube', 'bender'] as const).map((moves) => {
          const plane = former === 'near' || former === 'far' ? ('flat' as const) : ('upright' as const);
          return bench({ stand, startOn, plane, former, moves });
        }),
      ),
    ),
  ),
];

const name = (how: Bench | null): string => (how ? Object.values(how).join(' ') : 'no bench');

interface Planned {
  readonly exact: BendPlan;
  readonly plan: BenchPlan;
}

function planned(how: Bench | null, from: EndName, rows: readonly Row[] = ROWS): Planned {
  const { line, centreline } = make({ rows, lastStraight: 120, bench: how });
  const exact = bendPlan(line, centreline, from);
  return { exact, plan: roundPlan(line, exact) };
}

const near = (a: Vec3, b: Vec3): void => expect(distance(a, b)).toBeLessThan(CLOSE_MM);
const placeOf = (plan: BenchPlan, motion: RigidMotion, s: number): Vec3 =>
  pointAt(moved(plan.centreline, motion), s);

/** Every place that the picture draws of the finished tube is a place of the tube as the pose lays it. */
function holdTrace(drawn: readonly Vec3[], plan: BenchPlan, index: number, motion: RigidMotion): void {
  const line = moved(plan.centreline, motion);
  const end = plan.centreline.bends[index]!.start;
  near(drawn[0]!, pointAt(line, 0));
  near(drawn.at(-1)!, pointAt(line, end));
  // The corners of the trace lie between: the ends of each straight are drawn exactly.
  for (const piece of line.pieces.filter((p) => p.kind === 'straight' && p.end <= end))
    expect(Math.min(...drawn.map((p) => distance(p, piece.from)))).toBeLessThan(CLOSE_MM);
}

function holdScene(scene: Scene, pose: ToolPose): void {
  near(scene.travel, pose.travel);
  near(scene.former, pose.former);
  near(scene.plane, pose.plane);
  expect(pose.turns).toBe(scene.turns);
  expect(pose.formerBefore === null).toBe(scene.formerBefore === null);
  if (scene.formerBefore && pose.formerBefore) near(scene.formerBefore, pose.formerBefore);
}

/** The ghost of the picture: the arc in equal steps, and one place along the free leg behind it. */
function holdPulled({ ghost }: Scene, { pulled, leaves }: ToolPose): void {
  const arc = ghost.slice(0, -1);
  for (const [i, place] of arc.entries())
    near(place, piecePoint(pulled, pulled.start + (pulled.length * i) / (arc.length - 1)));
  const along = distance(ghost.at(-1)!, pulled.to);
  near(ghost.at(-1)!, pulled.to.map((x, i) => x + leaves[i]! * along) as unknown as Vec3);
}

describe('the tube in the tool', () => {
  for (const how of BENCHES)
    it(`lies as the pictures of the sheet have it: ${name(how)}`, () => {
      for (const from of ['A', 'Z'] as const) {
        const { plan } = planned(how, from);
        plan.rows.forEach((_, index) => {
          const [scene, pose] = [sceneOf({ plan, index, od: 12 }), toolPose(plan, index)];
          holdScene(scene, pose);
          holdTrace(scene.after, plan, index, pose.after);
          holdTrace(scene.before ?? scene.after, plan, index, pose.before);
          holdPulled(scene, pose);
        });
      }
    });

  it('would show a pose that is turned the wrong way', () => {
    const { plan } = planned(bench(), 'A');
    const scene = sceneOf({ plan, index: 1, od: 12 });
    const wrong = toolPose(plan, 1).before;
    expect(() => holdTrace(scene.after, plan, 1, wrong)).toThrow();
  });

  it('lies as a rigid tube does that is turned as the words say, in a tool that knows no turn', () => {
    for (const [start, former, how] of [
      ['left', 'far', bench()],
      ['right', 'above', bench({ startOn: 'right', plane: 'upright', former: 'above' })],
      ['near', 'above', bench({ stand: 'at-start', plane: 'upright', former: 'above' })],
    ] as const)
      for (const swings of ['START', 'FREE'] as const) {
        const { exact, plan } = planned(how, 'A');
        const makings = exact.rows.map((r, i) => ({ ...r, line: plan.rows[i]!.words.line }));
        const tool = toolOf(start, former, swings);
        const { moments } = run(makings, exact.lastStraight, { tool, stand: how.stand });
        moments.forEach(({ before, after }, index) => {
          const pose = toolPose(plan, index);
          for (const { s, at } of before.points) near(at, placeOf(plan, pose.before, s));
          for (const { s, at } of after.points) near(at, placeOf(plan, pose.after, s));
        });
      }
  });

  it.each(BENCHES.map((how) => [name(how), how] as const))('turns as its words say: %s', (_, how) => {
    const { plan } = planned(how, 'Z');
    plan.rows.forEach((_row, index) => {
      const pose = toolPose(plan, index);
      const { travel, plane } = pose;
      near(plane, cross(travel, pose.former));
      const by = pose.turns === 'both' ? pose.goes : (pose.turns ?? 0) * pose.goes;
      const carried = plan.bench?.moves === 'bender';
      const turned = (v: Vec3): Vec3 => (carried ? v : rotate(v, travel, by));
      near(turned(placeOf(plan, pose.before, 0)), placeOf(plan, pose.after, 0));
      near(turned(pose.pencil.before), pose.pencil.after);
      if (pose.formerBefore) near(rotate(pose.formerBefore, travel, by), pose.former);
    });
  });

  it('has the pencil line where it lies on the made tube', () => {
    const { plan } = planned(bench({ startOn: 'right', former: 'near' }), 'A');
    plan.rows.forEach((_, index) => {
      const pose = toolPose(plan, index);
      // Drawn along the straight tube towards the first bend's inside, it is carried round each bend with the tube.
      const motion = { rotation: pose.after.rotation, shift: [0, 0, 0] as Vec3 };
      const line = moved(plan.centreline, motion);
      const [x, y, z] = pose.after.rotation;
      const first: Vec3 = [x[1], y[1], z[1]];
      const carried = line.bends.slice(0, index).reduce((v, b) => rotate(v, b.normal, b.angle), first);
      near(carried, pose.pencil.after);
      expect(norm(carried)).toBeCloseTo(1, 9);
    });
  });

  it('pulls the free leg towards the former', () => {
    const { plan } = planned(bench({ plane: 'upright', former: 'below' }), 'A');
    const { pulled, leaves, former } = toolPose(plan, 0);
    near(pulled.from, [0, 0, 0]);
    expect(dot(leaves, former)).toBeCloseTo(Math.sin(60 * DEG), 9);
    near(former, scale([0, 0, 1], -1));
  });

  it('has no pose of a bend that is not there', () => {
    const { plan } = planned(bench(), 'A');
    expect(() => toolPose(plan, 5)).toThrow(RangeError);
    expect(() => toolPose(plan, -1)).toThrow(RangeError);
  });
});
