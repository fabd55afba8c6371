import type { Sourced } from '@runback/job';
import { describe, expect, it } from 'vitest';
import { catalogue } from './index.ts';
import { inch, oneIn, psi, thou } from './sourcing.ts';

/** Every figure anywhere in the catalogue: an object with a numeric value, or a tube size. */
function* figures(node: unknown, path: string): Generator<readonly [string, Partial<Sourced>]> {
  if (node === null || typeof node !== 'object') return;
  if ('source' in node || typeof (node as { value?: unknown }).value === 'number')
    yield [path, node as Partial<Sourced>];
  for (const [key, child] of Object.entries(node)) yield* figures(child, `${path}.${key}`);
}

const all = [...figures(catalogue, 'catalogue')];

describe('sources', () => {
  it('stand beside every figure, and none is empty', () => {
    expect(all.length).toBeGreaterThan(150);
    for (const [path, found] of all) {
      expect(typeof found.source, path).toBe('string');
      expect((found.source ?? '').trim().length, path).toBeGreaterThan(8);
    }
  });

  it('are asked of every figure: one without is found', () => {
    const planted = [...figures({ keepOff: { hot: { value: 3 } } }, 'planted')];
    expect(planted).toEqual([['planted.keepOff.hot', { value: 3 }]]);
    expect(planted[0]?.[1].source).toBeUndefined();
  });

  it('say so where there is none', () => {
    for (const [path, { source }] of all)
      if (/memory|practice/i.test(source ?? ''))
        expect(source, path).toMatch(/from memory|common practice, no source/);
  });
});

describe('keys', () => {
  it('are lower-kebab words', () => {
    for (const group of ['materials', 'tubes', 'fittings', 'services', 'fluids', 'drainRules'] as const)
      for (const key of Object.keys(catalogue[group])) expect(key).toMatch(/^[a-z0-9]+([.-][a-z0-9.]+)*$/);
  });
});

describe('materials', () => {
  it.each(Object.entries(catalogue.materials))('%s is a metal of this world', (_key, m) => {
    const between = (f: Sourced | undefined, low: number, high: number) => {
      expect(f?.value).toBeGreaterThanOrEqual(low);
      expect(f?.value).toBeLessThanOrEqual(high);
    };
    between(m.density, 2600, 9000);
    between(m.youngs, 60_000, 215_000);
    between(m.yield, 30, /spring/.test(m.name) ? 1500 : 300);
    if (m.strength) expect(m.strength.value).toBeGreaterThan(m.yield?.value ?? Number.POSITIVE_INFINITY);
    if (m.allowable) expect(m.allowable.value).toBeLessThan((m.strength?.value ?? 0) / 3);
    between(m.expansion, 0.00001, 0.000025);
    for (const caution of m.cautions ?? []) expect(caution.length).toBeLessThan(90);
  });

  it('warn where the sheet must', () => {
    expect(catalogue.materials['stainless-304']?.cautions).toContain('Stainless: do not bend back.');
    for (const id of ['copper', 'aluminium-3003', 'aluminium-5052', 'aluminium-6061'])
      expect(catalogue.materials[id]?.cautions?.join(' ')).toMatch(/not for brakes/);
    expect(catalogue.materials['copper-nickel-90-10']?.cautions?.join(' ')).not.toMatch(/brakes/);
  });
});

describe('fluids', () => {
  it.each(Object.entries(catalogue.fluids))(
    '%s is a liquid of a workshop, at a temperature',
    (_key, fluid) => {
      expect(fluid.name).toMatch(/\d+ °C/);
      expect(fluid.density?.value).toBeGreaterThan(700);
      expect(fluid.density?.value).toBeLessThan(1100);
      expect(fluid.viscosity?.value).toBeGreaterThan(0.4);
      expect(fluid.viscosity?.value).toBeLessThan(500);
      if (fluid.surfaceTension) {
        expect(fluid.surfaceTension.value).toBeGreaterThan(15);
        expect(fluid.surfaceTension.value).toBeLessThan(75);
      }
    },
  );

  it('oil thickens in the cold, and gets denser', () => {
    for (const oil of ['engine-oil-sae-30', 'engine-oil-15w-40']) {
      const [cold, hot] = [catalogue.fluids[`${oil}-cold`], catalogue.fluids[`${oil}-hot`]];
      expect(cold?.viscosity?.value).toBeGreaterThan(10 * (hot?.viscosity?.value ?? Number.NaN));
      expect(cold?.density?.value).toBeGreaterThan(hot?.density?.value ?? Number.NaN);
    }
  });
});

describe('drain rules', () => {
  it.each(Object.entries(catalogue.drainRules))(
    '%s is a fraction in lowest terms, as its name has it',
    (_key, rule) => {
      const [rise, run] = rule.fraction;
      expect(rise).toBe(1);
      expect(Number.isInteger(run) && run >= 12 && run <= 720).toBe(true);
      const printed = /([\d/]+) (in|mm) per (\d*) ?(ft|in|m)(?![a-z])/.exec(rule.name);
      if (!printed) return expect(rule.name).toMatch(/1 in 12/);
      const [, amount = '', unit = '', along = '', over = ''] = printed;
      const [top, below = '1'] = amount.split('/');
      const perUnit = { ft: 12, in: 1, m: 1000, mm: 1 };
      const length = Number(along || '1') * perUnit[over as keyof typeof perUnit];
      expect(length / (Number(top) / Number(below)), unit).toBeCloseTo(run, 9);
    },
  );
});

describe('tubes', () => {
  it.each(Object.entries(catalogue.tubes))('%s is a tube of a known material', (_key, tube) => {
    expect(catalogue.materials[tube.material]).toBeDefined();
    expect(tube.od).toBeGreaterThan(3);
    expect(tube.od).toBeLessThan(30);
    expect(tube.wall / tube.od).toBeGreaterThan(0.04);
    expect(tube.wall / tube.od).toBeLessThan(0.25);
  });

  it('keys tell the size', () => {
    for (const [key, tube] of Object.entries(catalogue.tubes)) {
      const mm = /-([\d.]+)x([\d.]+)$/.exec(key);
      const inches = /-(\d+)(?:-(\d+))?inx(\d{3})$/.exec(key);
      const [od, wall] = inches
        ? [inch(Number(inches[1]) / Number(inches[2] ?? 1)), thou(Number(inches[3]))]
        : [Number(mm?.[1]), Number(mm?.[2])];
      expect([tube.od, tube.wall], key).toEqual([od, wall]);
    }
  });

  it('hold the sizes of the trade', () => {
    expect(catalogue.tubes['cuni-4.76x0.71']).toMatchObject({ od: 4.76, wall: 0.71 });
    expect(catalogue.tubes['ss304-12x1']).toMatchObject({ od: 12, wall: 1 });
    expect(catalogue.tubes['ss304-3-8inx035']?.od).toBe(9.525);
    expect(catalogue.tubes['steel-3-16inx028']?.od).toBe(4.7625);
  });
});

describe('fittings', () => {
  it.each(Object.entries(catalogue.fittings))(
    '%s uses little tube and leaves room for the bar',
    (_key, f) => {
      expect(f.uses.value).toBeGreaterThanOrEqual(0);
      expect(f.uses.value).toBeLessThanOrEqual(4);
      expect(f.bar.value === 0 || f.bar.value >= 15).toBe(true);
      expect(f.bar.value).toBeLessThanOrEqual(30);
      if (f.uses.value > 0) expect(f.bar.value, 'what is formed is gripped').toBeGreaterThan(0);
      if (/flare|bead/.test(f.name)) expect(f.traps).toBe(true);
    },
  );

  it('a plain end takes nothing', () => {
    expect(catalogue.fittings.plain).toMatchObject({ uses: { value: 0 }, bar: { value: 0 }, traps: false });
  });
});

describe('services', () => {
  it.each(Object.entries(catalogue.services))(
    '%s has at most three short cautions and gentle slopes',
    (_key, s) => {
      expect(s.cautions.length).toBeLessThanOrEqual(3);
      for (const caution of s.cautions) expect(caution.length).toBeLessThan(110);
      for (const slope of [s.minSlopeDeg, s.minSlopeTiltedDeg])
        if (slope) expect(slope.value >= 0 && slope.value < 45).toBe(true);
    },
  );

  it('brake and fuel say what must be said', () => {
    const said = (id: string) => catalogue.services[id]?.cautions.join(' ') ?? '';
    for (const word of [
      'competent person',
      'pressure before use',
      'no approval',
      'pure copper',
      'single',
      'mixed',
    ])
      expect(said('brake').toLowerCase()).toContain(word);
    for (const word of ['naked heat', 'liquid']) expect(said('fuel')).toContain(word);
  });
});

describe('spacing', () => {
  it('grows with the tube, row by row', () => {
    const rows = catalogue.clipSpacing;
    rows.slice(1).forEach((row, i) => {
      expect(row.od).toBeGreaterThan(rows[i]?.od ?? Number.POSITIVE_INFINITY);
      expect(row.spacing.value).toBeGreaterThan(rows[i]?.spacing.value ?? Number.POSITIVE_INFINITY);
    });
  });

  it('keeps farthest from what burns', () => {
    const { hot, wiring, moving, fixed } = catalogue.keepOff;
    expect(hot.value).toBeGreaterThan(wiring.value);
    expect(wiring.value).toBeGreaterThan(moving.value);
    expect(moving.value).toBeGreaterThan(fixed.value);
    expect(fixed.value).toBeGreaterThan(0);
  });
});

describe('units', () => {
  it('inches become mm exactly', () => {
    expect(psi(10_000)).toBeCloseTo(68.94757293, 8);
    expect([inch(16), inch(1 / 4), inch(25.5), thou(28)]).toEqual([406.4, 6.35, 647.7, 0.7112]);
  });

  it('1:12 is 4.7636°', () => {
    expect(oneIn(12)).toBeCloseTo(4.7636417, 7);
    expect(oneIn(1)).toBe(45);
  });
});
