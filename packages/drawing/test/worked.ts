/** Worked lines made by hand for the tests of the sheet: only what the sheet reads, without the checks. */
import { bendPlan } from '@runback/bending';
import type { Finding, Verdict, WorkedLine } from '@runback/checks';
import { fillet, mirrored, type Vec3 } from '@runback/geometry';
import type { Bench, Die, EndFitting, Figure, Line, LineEnd } from '@runback/job';

const figure = (value: number): Figure => ({ value, source: 'the test', path: null });

const plain: EndFitting = {
  id: 'plain',
  name: 'plain',
  uses: figure(0),
  bar: figure(0),
  traps: false,
  flare: null,
  cautions: [],
};

export const flare: EndFitting = {
  id: 'flare-37',
  name: '37° flare',
  uses: figure(3),
  bar: figure(20),
  traps: true,
  flare: null,
  cautions: [],
};

export function end(over: Partial<LineEnd> = {}): LineEnd {
  return {
    fitting: plain,
    joins: [],
    free: 0,
    direction: null,
    opening: null,
    misfit: null,
    spare: figure(0),
    nut: null,
    sleeve: null,
    flareWhen: 'before',
    rigid: true,
    path: 'lines[0].endA',
    ...over,
  };
}

export const bench: Bench = {
  stand: 'side',
  startOn: 'left',
  plane: 'upright',
  former: 'above',
  moves: 'tube',
};

export interface Ask {
  readonly points: readonly Vec3[];
  readonly radius?: number;
  readonly name?: string;
  readonly bench?: Bench | null;
  readonly calibrated?: boolean;
  readonly flared?: boolean;
  readonly clips?: readonly number[];
  readonly opposite?: boolean;
  readonly findings?: readonly Finding[];
  readonly cautions?: readonly string[];
  readonly units?: 'mm' | 'in';
  readonly title?: string;
}

export const finding = (verdict: Verdict, message: string): Finding => ({
  check: 'clearance',
  verdict,
  message,
  found: 28,
  limit: 40,
  unit: 'mm',
  at: 120,
  point: [0, 0, 0],
  bend: null,
  to: 'exhaust-1',
  path: null,
  cure: null,
  basis: 'the test',
});

/** The worked line of these points, as `workLine` would hand it over. */
export function worked(ask: Ask): WorkedLine {
  const line = lineOf(ask);
  const filleted = fillet(line.corners);
  if (!filleted.ok) throw new RangeError(`worked: points do not fit: ${JSON.stringify(filleted.misfits)}`);
  const centreline = ask.opposite ? mirrored(filleted.centreline, 1, 0) : filleted.centreline;
  const findings = ask.findings ?? [finding('pass', 'clear')];
  const verdict = (['fail', 'note'] as const).find((v) => findings.some((f) => f.verdict === v)) ?? 'pass';
  return {
    line,
    verdict,
    centreline,
    plan: bendPlan(line, centreline),
    slope: null,
    clearance: [],
    pockets: null,
    passage: null,
    stick: null,
    pressure: null,
    flow: null,
    thermal: null,
    mass: null,
    facts: [],
    findings,
  };
}

function lineOf(ask: Ask): Line {
  const radius = ask.radius ?? 60;
  const die: Die = {
    od: 12,
    radius,
    minStraight: figure(30),
    minTail: figure(45),
    maxAngle: figure(Math.PI),
    springBack:
      ask.calibrated === false
        ? null
        : { factor: 1.028, fixed: (0.4 * Math.PI) / 180, path: 'benders.bench' },
    stretch: 0,
    markOffset: 0,
    path: 'benders.bench.dies[0]',
  };
  const flared = ask.flared
    ? { fitting: flare, nut: { length: 18, bore: 12.3, acrossFlats: 22 }, sleeve: { length: 8 } }
    : {};
  return {
    id: 'line',
    name: ask.name ?? 'Oil dipstick tube',
    path: 'lines[0]',
    title: ask.title ?? 'Tender 7',
    revision: 'B',
    units: ask.units ?? 'mm',
    service: {
      id: 'dipstick',
      name: 'dipstick',
      drains: true,
      bleeds: false,
      cautions: ask.cautions ?? [],
      notes: [],
    },
    quantity: 1,
    mirror: ask.opposite ? { of: 'dipstick', axis: 1, offset: 0 } : null,
    tube: {
      id: 'ss-12x1',
      od: 12,
      wall: 1,
      bore: 10,
      stock: 6000,
      path: 'tubes.ss-12x1',
      material: {
        id: 'stainless-304',
        name: 'stainless 304',
        density: null,
        youngs: null,
        yield: null,
        expansion: null,
        strength: null,
        allowable: null,
        cautions: ['Stainless: do not bend back. Kink, crease or flat: scrap.'],
      },
    },
    bender: {
      id: 'bench',
      dies: [die],
      bench: ask.bench === undefined ? bench : ask.bench,
      path: 'benders.bench',
    },
    corners: ask.points.map((at, i) => ({
      at,
      radius: i === 0 || i === ask.points.length - 1 ? 0 : radius,
      radiusSource: 'the test',
      die,
      note: null,
      path: `lines[0].points[${i}]`,
    })),
    endA: end(flared),
    endZ: end({ ...flared, spare: figure(40), flareWhen: 'after', path: 'lines[0].endZ' }),
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
    clearance: { self: figure(10), lines: figure(8), to: {} },
    surroundings: [],
    clips: ask.clips ?? null,
    clipSpacing: null,
    bendLimits: { minRadiusOverOd: null },
  };
}

/** The dipstick of the demo, cured. */
export const dipstick: readonly Vec3[] = [
  [60, 130, 0],
  [60, 130, 110],
  [90, 190, 340],
  [430, 250, 440],
];

/** A staircase of so many bends that turns every which way. */
export function stairs(bends: number): readonly Vec3[] {
  const steps: Vec3[] = [
    [180, 0, 0],
    [0, 180, 20],
    [160, 30, 90],
    [40, -170, 60],
  ];
  const points: Vec3[] = [[0, 0, 0]];
  for (let i = 0; i <= bends; i++) {
    const [x, y, z] = points[i]!;
    const [dx, dy, dz] = steps[i % steps.length]!;
    points.push([x + dx, y + dy, z + dz]);
  }
  return points;
}
