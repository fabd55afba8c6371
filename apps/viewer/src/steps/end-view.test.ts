import { readFileSync } from 'node:fs';
import { bendPlan, roundPlan, toolPose, type WorkedLine, workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { type Bench, withBench } from './bench-choice.ts';
import { arcPath, type EndSeen, endSeen, spot } from './end-view.ts';

const JOB = workUp(
  readFileSync(new URL('../../../../docs/examples/tender-7/tender-7.job.json', import.meta.url), 'utf8'),
);
const PUMP = JOB.lines.find(({ line }) => line.id === 'pump-drain')! as WorkedLine;

/** Bend 2 of the pump drain turns by +80°. */
function seen(bench: Bench | null): EndSeen {
  const line = withBench(PUMP.line, bench);
  const plan = roundPlan(line, bendPlan(line, PUMP.centreline!, 'A'));
  expect(plan.rows[1]!.turnDeg).toBe(80);
  return endSeen(plan, toolPose(plan, 1));
}

const SIDE: Bench = { stand: 'side', startOn: 'left', plane: 'flat', former: 'far', moves: 'tube' };
const near = (a: number, b: number): void =>
  expect(Math.abs(((((a - b) % 360) + 540) % 360) - 180)).toBeLessThan(0.001);

describe('the tube on its end', () => {
  it('START on the left: the operator to the right, a far former to the left, top away to the left', () => {
    const end = seen(SIDE);
    expect(end.from).toBe('START');
    expect(end.you).toBe(90);
    near(end.former, 270);
    near(end.pencilBefore, 270);
    // Away from the operator at the right is anticlockwise, towards the left over the top.
    near(end.by as number, -80);
    near(end.pencilAfter, 270 - 80);
  });

  it('START on the right: the operator to the left', () => {
    const end = seen({ ...SIDE, startOn: 'right', plane: 'upright', former: 'above' });
    expect(end.you).toBe(-90);
    near(end.former, 0);
    near(end.by as number, -80);
    near(end.pencilAfter, -80);
  });

  it('behind the stock one looks from FREE, and all is the other way round', () => {
    const end = seen({ ...SIDE, stand: 'behind-free', plane: 'upright', former: 'above' });
    expect(end.from).toBe('FREE');
    expect(end.you).toBeNull();
    near(end.by as number, 80);
    near(end.pencilAfter, 80);
  });

  it('a carried bender goes round a pencil line that stays on top', () => {
    const end = seen({ ...SIDE, moves: 'bender' });
    near(end.pencilBefore, 0);
    near(end.pencilAfter, 0);
    near(end.formerBefore, 0);
    near(end.former, 80);
    near(end.by as number, 80);
  });

  it('draws arcs the way the numbers run', () => {
    expect(spot(10, 90)).toEqual([10, -0]);
    expect(arcPath(10, 0, 90)).toBe('M 0 -10 A 10 10 0 0 1 10 0');
    expect(arcPath(10, 0, -270)).toBe('M 0 -10 A 10 10 0 1 0 10 0');
  });
});
