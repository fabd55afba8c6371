/** Lines built as literals: no parsing, no catalogue, every figure in sight. Millimetres; angles in degrees here only. */
import type { AttitudeSet, DrainEnd, Vec3 } from '@runback/geometry';
import type {
  Bender,
  Die,
  EndFitting,
  Figure,
  JobUnit,
  Line,
  LineEnd,
  Mirror,
  Nut,
  Surrounding,
} from '@runback/job';

const RADIANS = Math.PI / 180;

export const figure = (value: number, path: string | null = null): Figure => ({
  value,
  source: 'the job',
  path,
});

export const PLAIN: EndFitting = {
  id: 'plain',
  name: 'plain end',
  uses: figure(0),
  bar: figure(0),
  traps: false,
  flare: null,
  cautions: [],
};

export const FLARE: EndFitting = {
  id: 'flare-37',
  name: '37° single flare',
  uses: figure(1),
  bar: figure(21),
  traps: true,
  flare: null,
  cautions: [],
};

export interface DieSpec {
  readonly od?: number;
  readonly radius?: number;
  readonly minStraight?: number | null;
  readonly minTail?: number | null;
  readonly maxAngleDeg?: number | null;
  readonly springBack?: { readonly factor: number; readonly fixedDeg: number } | null;
  readonly stretchPerDegree?: number;
  readonly markOffset?: number;
}

const PATH = 'benders.bench.dies[0]';

const figureOrNull = (value: number | null | undefined, name: string): Figure | null =>
  value === null || value === undefined ? null : figure(value, `${PATH}.${name}`);

export const aDie = (spec: DieSpec = {}): Die => ({
  od: spec.od ?? 12,
  radius: spec.radius ?? 36,
  minStraight: figureOrNull(spec.minStraight === undefined ? 30 : spec.minStraight, 'minStraight'),
  minTail: figureOrNull(spec.minTail === undefined ? 45 : spec.minTail, 'minTail'),
  maxAngle: figureOrNull(spec.maxAngleDeg === null ? null : (spec.maxAngleDeg ?? 180) * RADIANS, 'maxAngle'),
  springBack: spec.springBack
    ? {
        factor: spec.springBack.factor,
        fixed: spec.springBack.fixedDeg * RADIANS,
        path: `${PATH}.springBack`,
      }
    : null,
  stretch: (spec.stretchPerDegree ?? 0) / RADIANS,
  markOffset: spec.markOffset ?? 0,
  path: PATH,
});

export interface EndSpec {
  readonly fitting?: EndFitting;
  readonly joins?: readonly string[];
  readonly free?: number;
  readonly direction?: Vec3;
  readonly misfitDeg?: number;
  readonly spare?: number;
  readonly nut?: Nut;
  readonly sleeve?: number;
  readonly flareWhen?: 'before' | 'after';
  readonly rigid?: boolean;
  readonly opening?: number;
}

const anEnd = (name: 'A' | 'Z', line: string, spec: EndSpec): LineEnd => ({
  fitting: spec.fitting ?? PLAIN,
  joins: spec.joins ?? [],
  free: spec.free ?? 0,
  direction: spec.direction ?? null,
  misfit: spec.misfitDeg === undefined ? null : figure(spec.misfitDeg * RADIANS, `${line}.end${name}.misfit`),
  spare: figure(spec.spare ?? 0),
  nut: spec.nut ?? null,
  sleeve: spec.sleeve === undefined ? null : { length: spec.sleeve },
  flareWhen: spec.flareWhen ?? 'after',
  rigid: spec.rigid ?? true,
  opening: spec.opening ?? null,
  path: `${line}.end${name}`,
});

export interface LineSpec {
  readonly id?: string;
  readonly index?: number;
  readonly points: readonly Vec3[];
  /** One radius for all corners, or one per point (end radii are ignored). */
  readonly radius?: number | readonly number[];
  /** The die of all corners; `null`: no bender. Left out: one of the radius asked for. */
  readonly die?: Die | null;
  /** More dies on the rack. */
  readonly dies?: readonly Die[];
  readonly od?: number;
  readonly wall?: number;
  readonly stock?: number | null;
  readonly units?: JobUnit;
  readonly service?: string;
  readonly notes?: readonly { readonly check: string; readonly reason: string }[];
  readonly endA?: EndSpec;
  readonly endZ?: EndSpec;
  readonly drain?: { readonly to: DrainEnd; readonly minSlopeDeg: number; readonly tiltedDeg?: number };
  readonly attitudes?: AttitudeSet;
  readonly surroundings?: readonly Surrounding[];
  readonly keepOff?: Readonly<Record<string, number>>;
  readonly self?: number;
  readonly lines?: number;
  readonly clips?: readonly number[];
  readonly spacing?: number | null;
  readonly minRatio?: number | null;
  readonly mirror?: Mirror;
  /** Path of the line that its points are written in. */
  readonly source?: string;
}

/** A line of 12 × 1 tube on a bender whose die is 36 unless the spec says otherwise. */
export function aLine(spec: LineSpec): Line {
  const path = `lines[${spec.index ?? 0}]`;
  const radiusOf = (i: number): number =>
    typeof spec.radius === 'object' ? (spec.radius[i] ?? 36) : (spec.radius ?? 36);
  const die = spec.die === undefined ? aDie({ od: spec.od ?? 12, radius: radiusOf(1) }) : spec.die;
  const bender: Bender | null =
    die === null
      ? null
      : { id: 'bench', dies: [die, ...(spec.dies ?? [])], bench: null, path: 'benders.bench' };
  const last = spec.points.length - 1;
  const rack = bender?.dies ?? [];
  return {
    id: spec.id ?? 'drain',
    name: spec.id ?? 'drain',
    path,
    title: 'Tender 7',
    revision: null,
    units: spec.units ?? 'mm',
    service: {
      id: spec.service ?? 'general',
      name: spec.service ?? 'tube',
      drains: ['dipstick', 'oil-drain', 'vent', 'sensing'].includes(spec.service ?? ''),
      bleeds: ['brake', 'fuel'].includes(spec.service ?? ''),
      cautions: [],
      notes: spec.notes ?? [],
    },
    quantity: 1,
    mirror: spec.mirror ?? null,
    tube: aTube(spec),
    bender,
    corners: spec.points.map((at, i) => {
      const radius = i === 0 || i === last ? 0 : radiusOf(i);
      return {
        at,
        radius,
        radiusSource: 'the job',
        die: radius === 0 ? null : (rack.find((d) => d.radius === radius) ?? null),
        note: null,
        path: `${spec.source ?? path}.points[${i}]`,
      };
    }),
    endA: anEnd('A', path, spec.endA ?? {}),
    endZ: anEnd('Z', path, spec.endZ ?? {}),
    ...rulesOf(spec, path),
  };
}

const aTube = (spec: LineSpec): Line['tube'] => {
  const [od, wall] = [spec.od ?? 12, spec.wall ?? 1];
  return {
    id: 't',
    od,
    wall,
    bore: od - 2 * wall,
    stock: spec.stock ?? null,
    path: 'tubes.t',
    material: {
      id: 'stainless-304',
      name: 'stainless 304',
      density: null,
      youngs: null,
      yield: null,
      expansion: null,
      strength: null,
      allowable: null,
      cautions: [],
    },
  };
};

const rulesOf = (spec: LineSpec, path: string) => ({
  bleed: ['brake', 'fuel'].includes(spec.service ?? '')
    ? { to: 'both' as const, tilted: false, path: null }
    : null,
  fluid: null,
  duty: {
    pressure: null,
    flow: null,
    toward: 'Z' as const,
    temperature: null,
    safetyFactor: figure(4),
    wallTolerance: figure(0.1),
  },
  stick: null,
  drain:
    spec.drain === undefined
      ? null
      : {
          to: spec.drain.to,
          minSlope: figure(spec.drain.minSlopeDeg * RADIANS, `${path}.drain.minSlope`),
          minSlopeTilted: figure((spec.drain.tiltedDeg ?? 0) * RADIANS, `${path}.drain.minSlopeTilted`),
        },
  attitudes: spec.attitudes ?? ({ kind: 'rest' } as const),
  axes: { forward: [1, 0, 0] as Vec3, left: [0, 1, 0] as Vec3, up: [0, 0, 1] as Vec3 },
  clearance: {
    self: figure(spec.self ?? 10),
    lines: figure(spec.lines ?? 10),
    to: Object.fromEntries(
      Object.entries(spec.keepOff ?? {}).map(([id, mm]) => [id, figure(mm, `${path}.clearance.to.${id}`)]),
    ),
  },
  surroundings: spec.surroundings ?? [],
  clips: spec.clips ?? null,
  clipSpacing: spec.spacing === null ? null : figure(spec.spacing ?? 500),
  bendLimits: { minRadiusOverOd: spec.minRatio === null ? null : figure(spec.minRatio ?? 3) },
});

/** A ball to keep off. */
export const aBall = (id: string, centre: Vec3, radius: number, keepOff = 40): Surrounding => ({
  id,
  solid: { kind: 'sphere', centre, radius },
  because: 'hot',
  keepOff: figure(keepOff, `surroundings[0].keepOff`),
  path: 'surroundings[0]',
});

/** Freezes a value through and through: a test that gets its answer from frozen inputs proves they were not changed. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value);
    for (const inner of Object.values(value)) frozen(inner);
  }
  return value;
}
