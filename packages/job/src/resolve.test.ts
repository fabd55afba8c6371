import { readFileSync } from 'node:fs';
import { cross, distance, dot, norm } from '@runback/geometry';
import { describe, expect, test } from 'vitest';
import { testCatalogue } from '../test-catalogue.ts';
import { type Line, parseJob, type ResolvedJob, resolve } from './index.ts';

const example = readFileSync(
  new URL('../../../tests/fixtures/contract-example.job.json', import.meta.url),
  'utf8',
);

const work = (job: unknown): ResolvedJob =>
  resolve(
    parseJob(typeof job === 'string' ? job : JSON.stringify(job), { catalogue: testCatalogue }),
    testCatalogue,
  );

type Extra = Readonly<Record<string, unknown>>;

const LINE = {
  id: 'drain',
  tube: 't12',
  bender: 'bench',
  points: points([0, 0, 0], [0, 0, 200], [200, 0, 200]),
};

function points(...at: readonly (readonly unknown[])[]): readonly Extra[] {
  return at.map((each) => ({ at: each }));
}

/** A small job with more on the line and on the job. */
const job = (line: Extra = {}, more: Extra = {}): Extra => ({
  format: 'runback-job',
  version: 1,
  title: 'Tender 7',
  units: 'mm',
  tubes: { t12: { material: 'stainless-304', od: 12, wall: 1 } },
  benders: {
    bench: {
      dies: [
        { od: 12, radius: 36 },
        { od: 12, radius: 60, minTail: 45 },
        { od: 10, radius: 90 },
      ],
    },
  },
  lines: [{ ...LINE, ...line }],
  ...more,
});

const first = (resolved: ResolvedJob): Line => resolved.lines[0]!;

describe('the contract example', () => {
  const resolved = work(example);
  const line = first(resolved);

  test('keeps what it says, in mm and radians, with its path', () => {
    expect(line.tube).toMatchObject({ od: 12, wall: 1, bore: 10, stock: 6000, path: 'tubes.ss-12x1' });
    expect(line.tube.material.cautions).toEqual(['Do not bend back.']);
    expect(line.drain?.minSlope.value).toBeCloseTo((12 * Math.PI) / 180, 15);
    expect(line.drain?.minSlope).toMatchObject({ source: 'the job', path: 'lines[0].drain.minSlope' });
    expect(line.bender?.dies[0]?.maxAngle?.value).toBe(Math.PI);
    expect(line.bender?.dies[0]?.springBack).toEqual({
      factor: 1.028,
      fixed: (0.4 * Math.PI) / 180,
      path: 'benders.bench.springBack',
    });
    expect(line.endA).toMatchObject({ joins: ['block'], free: 30, direction: [0, 0, 1], rigid: true });
    expect(line.endZ.nut).toEqual({ length: 18, bore: 12.3, acrossFlats: 22 });
    expect(line.clearance.to.block).toMatchObject({ value: 4, path: 'lines[0].clearance.to.block' });
    expect(line.clips).toEqual([150, 320]);
    expect(line.corners.map(({ radius }) => radius)).toEqual([0, 60, 60, 0]);
    expect(line.corners.map(({ radiusSource }) => radiusSource)).toEqual([
      'an end',
      'benders.bench.dies[0].radius',
      'lines[0].points[2].radius',
      'an end',
    ]);
    expect(line.corners[2]?.die).toBe(line.bender?.dies[0]);
  });

  test('its opposite hand is the same line in a mirror', () => {
    const left = resolved.lines[1]!;
    expect(left.mirror).toEqual({ of: 'dipstick', axis: 1, offset: 0 });
    expect(left.corners.map(({ at }) => at)).toEqual(
      line.corners.map(({ at }) => [at[0], -at[1] || 0, at[2]]),
    );
    expect(left.corners.map(({ path }) => path)).toEqual(line.corners.map(({ path }) => path));
    expect(left).toMatchObject({
      path: 'lines[1]',
      name: 'Oil dipstick tube, opposite hand',
      tube: line.tube,
      drain: line.drain,
    });
    expect(left.endA).toEqual({ ...line.endA, direction: [0, 0, 1] });
  });

  test('its surroundings are solids', () => {
    const kinds = resolved.surroundings.map(({ solid }) => solid.kind);
    expect(kinds).toEqual(['tube', 'box', 'cylinder', 'sphere', 'half-space']);
    expect(resolved.surroundings.map(({ keepOff }) => keepOff.value)).toEqual([50, 6, 20, 6, 6]);
    expect(resolved.surroundings[1]?.solid).toMatchObject({ centre: [-95, 0, -200], half: [205, 240, 200] });
  });

  test('is JSON-able and carries the checksum of its text', () => {
    const plain = (value: unknown): boolean => {
      if (Array.isArray(value)) return value.every(plain);
      if (typeof value === 'object' && value !== null) return Object.values(value).every(plain);
      return (
        value === null || typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value)
      );
    };
    expect(plain(resolved)).toBe(true);
    expect(resolved.checksum).toMatch(/^[0-9a-f]{8}$/u);
    expect(work(`${example} `).checksum).not.toBe(resolved.checksum);
  });
});

describe('defaults', () => {
  test('radius: the largest die for the OD; a radius of its own finds its die or none', () => {
    const at = (radius?: number): Line['corners'][number] => {
      const list = points([0, 0, 0], [0, 0, 200], [200, 0, 200]).map((point, i) =>
        i === 1 ? { ...point, radius } : point,
      );
      return first(work(job({ points: list }))).corners[1]!;
    };
    expect(at()).toMatchObject({ radius: 60, radiusSource: 'benders.bench.dies[1].radius' });
    expect(at(36).die?.path).toBe('benders.bench.dies[0]');
    expect(at(50)).toMatchObject({ radius: 50, die: null });
  });

  test('a line whose corners all have a radius needs no bender', () => {
    const list = [{ at: [0, 0, 0] }, { at: [0, 0, 99], radius: 30 }, { at: [99, 0, 99] }];
    const line = first(work({ ...job(), lines: [{ id: 'x', tube: 'steel-8x1', points: list }] }));
    expect(line).toMatchObject({
      bender: null,
      quantity: 1,
      name: 'x',
      service: { id: 'general' },
      clips: null,
    });
    expect(line.tube).toMatchObject({ id: 'steel-8x1', od: 8, stock: null });
  });

  test("spare: none on A; on Z what the tail needs, at least the catalogue's; none when formed before bending", () => {
    const spare = (line: Extra, more: Extra = {}) => first(work(job(line, more))).endZ.spare;
    expect(first(work(job())).endA.spare.value).toBe(0);
    expect(spare({})).toEqual({ value: 45, source: 'the job', path: 'benders.bench.dies[1].minTail' });
    const short = { benders: { bench: { dies: [{ od: 12, radius: 36, minTail: 10 }] } } };
    expect(spare({}, short)).toEqual({ ...testCatalogue.spareZ, path: null });
    expect(spare({}, { ...short, spareZ: 30 })).toMatchObject({ value: 30, path: 'spareZ' });
    expect(spare({ endZ: { spare: 7 } })).toMatchObject({ value: 7, path: 'lines[0].endZ.spare' });
    expect(spare({ endZ: { fitting: 'flare-37', flareWhen: 'before' } }).value).toBe(0);
    expect(spare({ endZ: { fitting: 'plain', flareWhen: 'before' } }).value).toBe(45);
  });

  test('a formed end A is formed before bending, everything else after', () => {
    const when = (fitting: string): readonly string[] => {
      const line = first(work(job({ endA: { fitting }, endZ: { fitting } })));
      return [line.endA.flareWhen, line.endZ.flareWhen];
    };
    expect(when('flare-37')).toEqual(['before', 'after']);
    expect(when('plain')).toEqual(['after', 'after']);
  });

  test("slopes: the job's, else the service's, else 0", () => {
    const slope = (line: Extra) => first(work(job(line))).drain;
    expect(slope({})).toBe(null);
    expect(slope({ drain: { to: 'Z' } })).toMatchObject({
      minSlope: { value: 0 },
      minSlopeTilted: { value: 0 },
    });
    expect(slope({ drain: { to: 'Z' }, service: 'dipstick' })?.minSlope).toEqual({
      value: (10 * Math.PI) / 180,
      source: 'made up for a test',
      path: null,
    });
  });

  test("keep-off: surrounding, job's service, job's table, catalogue's service, catalogue's table", () => {
    const pipe = { id: 'pipe', shape: 'sphere', centre: [0, 0, 900], diameter: 9, because: 'hot' };
    const off = (line: Extra, more: Extra, extra: Extra = {}) =>
      first(work(job(line, { surroundings: [{ ...pipe, ...extra }], ...more }))).surroundings[0]?.keepOff;
    const fuel = { service: 'fuel' };
    expect(off({}, {})).toMatchObject({ value: 50, path: null });
    expect(off(fuel, {})).toMatchObject({ value: 120, path: null });
    expect(off(fuel, { keepOff: { hot: 70 } })).toMatchObject({ value: 70, path: 'keepOff.hot' });
    const services = { fuel: { keepOff: { hot: 90 } } };
    expect(off(fuel, { keepOff: { hot: 70 }, services })).toMatchObject({
      value: 90,
      path: 'services.fuel.keepOff.hot',
    });
    expect(off(fuel, { services }, { keepOff: 3 })).toMatchObject({
      value: 3,
      path: 'surroundings[0].keepOff',
    });
  });

  test('clearances and clip spacing', () => {
    const line = first(work(job({}, { clearance: { self: 9 } })));
    expect(line.clearance.self).toMatchObject({ value: 9, path: 'clearance.self' });
    expect(line.clearance.lines).toMatchObject({ value: 7, path: null });
    expect(line.clipSpacing?.value).toBe(600);
    expect(
      first(work(job({ tube: 'steel-8x1', bender: undefined, points: points([0, 0, 0], [0, 0, 9]) })))
        .clipSpacing?.value,
    ).toBe(400);
    const own = first(
      work(
        job(
          {},
          {
            clipSpacing: [
              { od: 30, spacing: 5 },
              { od: 12, spacing: 4 },
            ],
          },
        ),
      ),
    ).clipSpacing;
    expect(own).toEqual({ value: 4, source: 'the job', path: 'clipSpacing[1].spacing' });
  });
});

describe('what may stand in several places', () => {
  test('spring-back: on the die for this tube, on the die, on the bender', () => {
    const spring = (die: Extra, bender: Extra) => {
      const benders = { bench: { dies: [{ od: 12, radius: 36, ...die }], ...bender } };
      return first(work(job({}, { benders }))).bender?.dies[0]?.springBack;
    };
    const each = { springBackByTube: { t12: { fixed: 90 } } };
    const die = { springBack: { factor: 1.1 } };
    const bender = { springBack: { factor: 1.2, fixed: 1 } };
    expect(spring({}, {})).toBe(null);
    expect(spring({}, bender)?.path).toBe('benders.bench.springBack');
    expect(spring(die, bender)).toEqual({ factor: 1.1, fixed: 0, path: 'benders.bench.dies[0].springBack' });
    expect(spring({ ...die, ...each }, bender)).toEqual({
      factor: 1,
      fixed: Math.PI / 2,
      path: 'benders.bench.dies[0].springBackByTube.t12',
    });
  });

  test('stretch per degree becomes mm per radian; a die comes before its bender', () => {
    const die = (extra: Extra) => {
      const benders = {
        bench: { dies: [{ od: '1/2', radius: 2, ...extra }], stretchPerDegree: 0.001, markOffset: '1/4' },
      };
      const tubes = { t12: { material: 'stainless-304', od: 0.5, wall: 0.049 } };
      return first(
        work(job({ points: points([0, 0, 0], [0, 0, 9], [9, 0, 9]) }, { units: 'in', tubes, benders })),
      ).bender?.dies[0];
    };
    expect(die({})?.stretch).toBeCloseTo((0.0254 * 180) / Math.PI, 12);
    expect(die({})?.markOffset).toBeCloseTo(6.35, 12);
    expect(die({ stretchPerDegree: 0, markOffset: 1 })).toMatchObject({
      stretch: 0,
      markOffset: 25.4,
      od: 12.7,
    });
  });

  test('the job extends and overrides the catalogue figure by figure', () => {
    const more = {
      materials: {
        'stainless-304': { density: 7900 },
        titanium: { name: 'titanium', source: 'the mill sheet', youngs: 105_000 },
      },
      fittings: { 'flare-37': { uses: 3 }, banjo: { uses: 4, traps: true } },
      services: { coolant: { name: 'coolant', cautions: ['Bleed.'], minSlope: 2 } },
      tubes: {
        t12: { material: 'stainless-304', od: 12, wall: 1 },
        ti: { material: 'titanium', od: 12, wall: 1 },
      },
    };
    const line = first(
      work(
        job(
          {
            service: 'coolant',
            endA: { fitting: 'flare-37' },
            endZ: { fitting: 'banjo' },
            drain: { to: 'A' },
          },
          more,
        ),
      ),
    );
    expect(line.tube.material.density).toEqual({
      value: 7900,
      source: 'the job',
      path: 'materials.stainless-304.density',
    });
    expect(line.tube.material.name).toBe('stainless 304');
    expect(line.endA.fitting).toMatchObject({
      name: '37° flare',
      traps: true,
      uses: { value: 3, path: 'fittings.flare-37.uses' },
      bar: { value: 12, path: null },
    });
    expect(line.endZ.fitting).toMatchObject({
      name: 'banjo',
      traps: true,
      uses: { value: 4 },
      bar: { value: 0 },
    });
    expect(line.drain?.minSlope).toMatchObject({
      path: 'services.coolant.minSlope',
      value: (2 * Math.PI) / 180,
    });
    expect(first(work(job({ tube: 'ti' }, more))).tube.material.youngs?.source).toBe('the mill sheet');
  });
});

describe('axes, attitudes and shapes', () => {
  test('forward is made square to up; left = up × forward', () => {
    const { axes } = work(job({}, { up: [0, 3, 0], forward: [1, 1, 0] }));
    expect(axes).toEqual({ up: [0, 1, 0], forward: [1, 0, 0], left: [0, 0, -1] });
    const odd = work(job({}, { up: [0.3, -2, 5], forward: [7, 1, 1e-7] })).axes;
    expect(dot(odd.up, odd.forward)).toBeCloseTo(0, 15);
    expect(norm(odd.forward)).toBeCloseTo(1, 15);
    expect(distance(cross(odd.up, odd.forward), odd.left)).toBeCloseTo(0, 15);
  });

  test('attitudes: at rest, a cone, a box; a line may have its own', () => {
    const attitudes = (line: Extra, more: Extra) => first(work(job(line, more))).attitudes;
    expect(attitudes({}, {})).toEqual({ kind: 'rest' });
    expect(attitudes({}, { attitudes: { tilt: 90 } })).toEqual({ kind: 'cone', tilt: Math.PI / 2 });
    expect(attitudes({ attitudes: { roll: [-90, 90] } }, { attitudes: { tilt: 90 } })).toEqual({
      kind: 'box',
      pitch: [0, 0],
      roll: [-Math.PI / 2, Math.PI / 2],
    });
  });

  const solid = (values: Extra) =>
    work(job({}, { surroundings: [{ id: 's', keepOff: 1, ...values }] })).surroundings[0]?.solid;

  test('a turned box: two axes make the third, axes rounded by hand are made square', () => {
    const box = { shape: 'box', centre: [1, 2, 3], size: [2, 4, 6] };
    expect(solid(box)).toMatchObject({
      half: [1, 2, 3],
      axes: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
    });
    expect(
      solid({
        ...box,
        axes: [
          [0, 2, 0],
          [0, 0, 5],
        ],
      }),
    ).toMatchObject({
      axes: [
        [0, 1, 0],
        [0, 0, 1],
        [1, 0, 0],
      ],
    });
    const rough = solid({
      ...box,
      axes: [
        [0.866, 0.5, 0],
        [-0.5, 0.866, 0.001],
        [0, 0, 1],
      ],
    });
    const [x, y, z] = rough?.kind === 'box' ? rough.axes : [];
    expect(dot(x!, y!)).toBeCloseTo(0, 15);
    expect(dot(cross(x!, y!), z!)).toBeCloseTo(1, 14);
  });

  test('a tube without a radius has sharp corners, with one it is rounded', () => {
    const tube = {
      shape: 'tube',
      points: [
        [0, 0, 0],
        [100, 0, 0],
        [100, 100, 0],
      ],
      od: 20,
    };
    const sharp = solid(tube);
    expect(sharp?.kind === 'tube' && sharp.path.map(({ kind, start, end }) => [kind, start, end])).toEqual([
      ['straight', 0, 100],
      ['straight', 100, 200],
    ]);
    const round = solid({ ...tube, radius: 30 });
    expect(round?.kind === 'tube' && round.path.map(({ kind }) => kind)).toEqual([
      'straight',
      'arc',
      'straight',
    ]);
  });
});

test('mirrored across a plane away from 0, with clearances of its own', () => {
  const lines = [
    { ...LINE, clearance: { self: 3 }, endZ: { direction: [1, 0, 0] } },
    {
      id: 'other',
      mirrorOf: 'drain',
      across: 'x',
      offset: 50,
      name: 'Right',
      quantity: 2,
      clearance: { lines: 4 },
    },
  ];
  const other = work(job({}, { lines })).lines[1]!;
  expect(other.corners.map(({ at }) => at)).toEqual([
    [100, 0, 0],
    [100, 0, 200],
    [-100, 0, 200],
  ]);
  expect(other).toMatchObject({ name: 'Right', quantity: 2, endZ: { direction: [-1, 0, 0] } });
  expect(other.clearance.self).toMatchObject({ value: 3, path: 'lines[0].clearance.self' });
  expect(other.clearance.lines).toMatchObject({ value: 4, path: 'lines[1].clearance.lines' });
});

test('one part in mm and in inches is the same part', () => {
  const inches = (...at: readonly number[]): readonly string[] => at.map((mm) => `${mm / 25.4}`);
  const list = points(inches(0, 0, 0), inches(0, 0, 203.2), inches(254, 0, 203.2));
  const tubes = { t12: { material: 'stainless-304', od: '12 mm', wall: '1 mm' } };
  const benders = { bench: { dies: [{ od: '12 mm', radius: '60 mm', minTail: '45 mm' }] } };
  const inch = first(work(job({ points: list }, { units: 'in', tubes, benders })));
  const mm = first(work(job({ points: points([0, 0, 0], [0, 0, 203.2], [254, 0, 203.2]) }, { benders })));
  expect({ ...inch, units: 'mm' }).toEqual(mm);
});

test('a job read with one catalogue and resolved with another says so', () => {
  const read = parseJob(JSON.stringify(job({ tube: 'steel-8x1', points: points([0, 0, 0], [0, 0, 9]) })), {
    catalogue: testCatalogue,
  });
  expect(() => resolve(read, { ...testCatalogue, tubes: {} })).toThrow('no tube "steel-8x1"');
});

test('nothing that was handed in is changed', () => {
  const freeze = <T>(value: T): T => {
    if (typeof value === 'object' && value !== null) Object.values(value).forEach(freeze);
    return Object.freeze(value);
  };
  const catalogue = freeze(structuredClone(testCatalogue));
  const read = freeze(parseJob(example, { catalogue }));
  expect(resolve(read, catalogue)).toEqual(work(example));
});
