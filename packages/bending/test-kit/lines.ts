/** Lines for the tests, without a job file: only what bending looks at. */
import { type Centreline, cornersOf, fromRows, type Row } from '@runback/geometry';
import type { Bench, Die, EndFitting, Figure, Line, LineEnd } from '@runback/job';

export const DEG = Math.PI / 180;

export const figure = (value: number): Figure => ({ value, source: 'the job', path: null });

export const plain: EndFitting = {
  id: 'plain',
  name: 'plain',
  uses: figure(0),
  bar: figure(0),
  traps: false,
  flare: null,
  cautions: [],
};
export const flare: EndFitting = {
  id: 'double-flare',
  name: 'double flare',
  uses: figure(4),
  bar: figure(12),
  traps: true,
  flare: null,
  cautions: [],
};

export const end = (changes: Partial<LineEnd> = {}): LineEnd => ({
  fitting: plain,
  joins: [],
  free: 0,
  direction: null,
  misfit: null,
  spare: figure(0),
  nut: null,
  sleeve: null,
  flareWhen: 'after',
  rigid: true,
  opening: null,
  path: 'lines[0].endA',
  ...changes,
});

export const die = (changes: Partial<Die> = {}): Die => ({
  od: 12,
  radius: 36,
  minStraight: null,
  minTail: null,
  maxAngle: null,
  springBack: null,
  stretch: 0,
  markOffset: 0,
  path: 'benders.bench.dies[0]',
  ...changes,
});

export const bench = (changes: Partial<Bench> = {}): Bench => ({
  stand: 'side',
  startOn: 'left',
  plane: 'flat',
  former: 'far',
  moves: 'tube',
  ...changes,
});

export interface Making {
  readonly rows: readonly Row[];
  readonly lastStraight: number;
  readonly die?: Die | null;
  readonly bench?: Bench | null;
  readonly changes?: Partial<Line>;
}

export interface Made {
  readonly line: Line;
  readonly centreline: Centreline;
}

/** A line of these rows with one die for all bends. */
export function make({ rows, lastStraight, die: all = null, bench: how = null, changes = {} }: Making): Made {
  const centreline = fromRows(rows, lastStraight);
  const corners = cornersOf(centreline).map((corner, i) => ({
    ...corner,
    radiusSource: 'the job',
    die: corner.radius > 0 ? all : null,
    note: null,
    path: `lines[0].points[${i}]`,
  }));
  return {
    line: { ...LINE, corners, bender: { id: 'bench', dies: [], bench: how, path: '' }, ...changes },
    centreline,
  };
}

const LINE: Line = {
  id: 'line',
  name: 'Line',
  path: 'lines[0]',
  title: 'Test',
  revision: null,
  units: 'mm',
  service: { id: 'general', name: 'General', drains: false, bleeds: false, cautions: [], notes: [] },
  quantity: 1,
  mirror: null,
  tube: {
    id: 'tube',
    od: 12,
    wall: 1,
    bore: 10,
    material: {
      id: 'm',
      name: 'm',
      density: null,
      youngs: null,
      yield: null,
      expansion: null,
      strength: null,
      allowable: null,
      cautions: [],
    },
    stock: null,
    path: '',
  },
  bender: null,
  corners: [],
  endA: end(),
  endZ: end({ path: 'lines[0].endZ' }),
  drain: null,
  bleed: null,
  fluid: null,
  duty: {
    pressure: null,
    flow: null,
    toward: 'Z',
    temperature: null,
    safetyFactor: figure(4),
    wallTolerance: figure(0.1),
  },
  stick: null,
  attitudes: { kind: 'rest' },
  axes: { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] },
  clearance: { self: figure(0), lines: figure(0), to: {} },
  surroundings: [],
  clips: null,
  clipSpacing: null,
  bendLimits: { minRadiusOverOd: null },
};
