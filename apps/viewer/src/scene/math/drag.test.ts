import { distance, unit, type Vec3 } from 'runback';
import { describe, expect, it } from 'vitest';
import {
  axisAlong,
  type CornerGrip,
  draggedTo,
  rayAlongLine,
  rayOnPlane,
  snapped,
  snappedPoint,
} from './drag.ts';

const POINTS: Vec3[] = [
  [0, 0, 0],
  [100, 0, 0],
  [100, 80.3, 0],
  [200, 80.3, 50],
];
/** Looking along −z at a place of the plane z = 0. */
const over = (x: number, y: number) => ({ from: [x, y, 500] as Vec3, direction: [0, 0, -1] as Vec3 });
const grip: CornerGrip = { points: POINTS, index: 2, lock: null, snap: 1, viewNormal: [0, 0, 1] };

describe('a ray', () => {
  it('meets a plane, but not one it grazes or leaves behind', () => {
    expect(rayOnPlane(over(3, 4), [0, 0, 10], [0, 0, 1])).toEqual([3, 4, 10]);
    expect(rayOnPlane({ from: [0, 0, 5], direction: [1, 0, 0] }, [0, 0, 0], [0, 0, 1])).toBeNull();
    expect(rayOnPlane({ from: [0, 0, 5], direction: [0, 0, 1] }, [0, 0, 0], [0, 0, 1])).toBeNull();
  });
  it('has a nearest place along a line, but not on one seen end on', () => {
    expect(rayAlongLine(over(30, 7), [10, 0, 0], [1, 0, 0])).toBeCloseTo(20);
    expect(
      rayAlongLine({ from: [0, 0, 500], direction: unit([0.1, 0, -1]) }, [0, 0, 0], [0, 0, 1]),
    ).toBeNull();
    const slanted = { from: [0, -100, 100] as Vec3, direction: unit([0, 1, -1]) };
    expect(rayAlongLine(slanted, [0, 0, 0], [0, 0, 1])).toBeCloseTo(0);
  });
});

describe('a dragged corner', () => {
  it('follows the pointer in the plane of view, in whole steps of the job', () => {
    expect(draggedTo(over(112.4, 91.7), grip)).toEqual([112, 92, 0]);
    expect(draggedTo(over(112.4, 91.7), { ...grip, snap: 0 })).toEqual([112.4, 91.7, 0]);
    expect(draggedTo(over(112.4, 91.7), { ...grip, snap: 5 })).toEqual([110, 90, 0]);
  });
  it('held to an axis keeps the other coordinates exactly', () => {
    expect(draggedTo(over(112.4, 91.7), { ...grip, lock: 'x' })).toEqual([112, 80.3, 0]);
    expect(draggedTo(over(112.4, 91.7), { ...grip, lock: 'y' })).toEqual([100, 92, 0]);
  });
  it('held to an axis that is seen end on stays', () => {
    expect(draggedTo(over(112.4, 91.7), { ...grip, lock: 'z' })).toEqual(POINTS[2]);
  });
  it('held to a leg keeps its direction, and the leg takes whole steps', () => {
    const at = draggedTo(over(150, 120), { ...grip, index: 1, lock: 'leg', points: POINTS.slice(0, 2) });
    expect(at).toEqual([150, 0, 0]);
    const slanting = draggedTo(over(230, 100), { ...grip, index: 3, lock: 'leg' });
    expect(distance(slanting, POINTS[2]!) % 1).toBeCloseTo(0, 6);
    expect(slanting[1]).toBeCloseTo(80.3);
  });
  it('along a leg does not pass the corner at its other end', () => {
    const at = draggedTo(over(-50, 0), { ...grip, index: 1, lock: 'leg', points: POINTS.slice(0, 2) });
    expect(at).toEqual(POINTS[1]);
  });
  it('of a line of one point stays', () => {
    expect(draggedTo(over(5, 5), { ...grip, index: 0, lock: 'leg', points: [[0, 0, 0]] })).toEqual([0, 0, 0]);
  });
});

describe('steps', () => {
  it('are whole, without −0 and without dust', () => {
    expect(Object.is(snapped(-0.2, 1), 0)).toBe(true);
    expect(snapped(0.34, 0)).toBe(0.34);
    expect(snappedPoint([0.31, 0.71, -0.04], 0.1)).toEqual([0.3, 0.7, 0]);
  });
  it('of a way across the view belong to the axis it follows', () => {
    expect([axisAlong([3, -1, 2]), axisAlong([0, -5, 2]), axisAlong([0, 1, 2])]).toEqual(['x', 'y', 'z']);
  });
});
