import { workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.ts';
import { chosenBend, chosenPoints, pointOf } from './chosen.ts';

const LINE = `{ "id": "own", "tube": "t", "points": [
  { "at": [0, 0, 0] }, { "at": [0, 0, 60] }, { "at": [0, 0, 150], "radius": 36 },
  { "at": [150, 0, 150], "radius": 45 }, { "at": [150, 150, 150] } ] }`;
const TEXT = `{ "format": "runback-job", "version": 1, "units": "mm",
  "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
  "lines": [${LINE.replace('60] }', '60], "radius": 36 }')}, { "id": "hand", "mirrorOf": "own", "across": "y" }] }`;

const [own, hand] = workUp(TEXT).lines as [
  ReturnType<typeof workUp>['lines'][number],
  ReturnType<typeof workUp>['lines'][number],
];

describe('a selection means the same to every table', () => {
  it('a bend is its points, a point its bend', () => {
    expect(chosenPoints(own, { kind: 'bend', index: 1 })).toEqual([3]);
    expect(chosenBend(own, { kind: 'point', index: 2 })).toBe(0);
    expect(chosenBend(own, { kind: 'point', index: 1 })).toBeNull();
    expect(chosenPoints(own, { kind: 'point', index: 1 })).toEqual([1]);
    expect(chosenPoints(own, { kind: 'surrounding', id: 'block' })).toEqual([]);
    expect(chosenPoints(own, null)).toEqual([]);
    expect(chosenBend(own, { kind: 'leg', index: 0 })).toBeNull();
  });

  it('a finding is what its path and its bend say', () => {
    const finding = { ...own.findings[0]!, path: 'lines[0].points[3].at', bend: 2 };
    for (const line of [own, hand]) {
      const worked = { ...line, findings: [finding] };
      expect(pointOf(worked, finding)).toBe(3);
      expect(chosenPoints(worked, { kind: 'finding', index: 0 })).toEqual([3]);
      expect(chosenBend(worked, { kind: 'finding', index: 0 })).toBe(1);
    }
    expect(pointOf(own, { ...finding, path: 'lines[0].points[30]' })).toBeNull();
    expect(pointOf(own, { ...finding, path: null })).toBeNull();
  });
});

it('the plan for the bench is worked once for each end and style', () => {
  const a = benchOf(own, 'A', 'mm');
  expect(a?.from).toBe('A');
  expect(benchOf(own, 'A', 'mm')).toBe(a);
  const z = benchOf(own, 'Z', 'in');
  expect([z?.from, z?.unit]).toEqual(['Z', 'in']);
  expect(benchOf({ ...own, plan: null, centreline: null }, 'A', 'mm')).toBeNull();
});
