import type { Vec3 } from '@runback/geometry';
import { describe, expect, it } from 'vitest';
import { figure } from '../../../../tests/helpers/a-line.ts';
import { type FullSpec, fullLine } from '../../test-kit/full-line.ts';
import type { Fact } from '../fluid-types.ts';
import { workLine } from '../work-line.ts';

const RAD = Math.PI / 180;
const SAG: readonly Vec3[] = [
  [0, 0, 100],
  [0, 0, 0],
  [300, 0, 0],
  [300, 0, 60],
];
const FALLING: readonly Vec3[] = [
  [0, 0, 100],
  [300, 0, 70],
  [600, 0, 10],
];
const DUTY = {
  pressure: figure(10),
  flow: figure(4),
  temperature: { fitted: figure(20), lowest: null, highest: figure(90) },
};
const factsOf = (spec: FullSpec, cures = false): readonly Fact[] => workLine(fullLine(spec), { cures }).facts;
const text = (facts: readonly Fact[], label: string): string | undefined =>
  facts.find((fact) => fact.label === label)?.text;

describe('facts', () => {
  const full = factsOf({ points: SAG, service: 'brake', clips: [100], duty: DUTY });

  it('come group by group, each with a basis', () => {
    const groups = full.map(({ group }) => group);
    const order = ['pockets', 'pressure', 'flow', 'thermal', 'mass'];
    expect([...new Set(groups)]).toEqual(order);
    expect(groups).toEqual(groups.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
    for (const fact of full) {
      expect(fact.basis).not.toBe('');
      expect(`${fact.label} ${fact.text} ${fact.basis}`).not.toMatch(/NaN|undefined|null|Infinity/);
    }
  });

  it('carry the caution where a figure could hurt somebody', () => {
    const cautions = (group: Fact['group']) =>
      new Set(full.filter((f) => f.group === group).map((f) => f.caution));
    expect(cautions('pockets')).toEqual(new Set([null]));
    for (const group of ['flow', 'thermal', 'mass'] as const)
      expect(cautions(group)).toEqual(new Set(['estimate, not approval']));
    expect(cautions('pressure')).toEqual(
      new Set(['estimate, not approval: defer to local codes and a competent person']),
    );
    const plain = factsOf({ points: SAG, duty: DUTY }).filter(({ group }) => group === 'pressure');
    expect(new Set(plain.map(({ caution }) => caution))).toEqual(new Set(['estimate, not approval']));
  });

  it('say where liquid stays, how much, and that none does', () => {
    const stays = text(full, 'liquid that stays at rest')!;
    expect(stays).toMatch(
      /^\d+\.\d ml, between B1 and B2, [\d.]+ mm from end A, over [\d.]+ mm of the line, [\d.]+ mm deep$/,
    );
    expect(text(full, 'air that stays at rest')).toBe('none');
    expect(text(full, 'liquid that stays in the worst attitude')).toBeUndefined();
    const attitudes = { kind: 'box', pitch: [-5 * RAD, 5 * RAD], roll: [-3 * RAD, 3 * RAD] } as const;
    const both = { to: 'both', minSlopeDeg: 1 } as const;
    const worst = text(
      factsOf({ points: SAG, attitudes, drain: both }, true),
      'liquid that stays in the worst attitude',
    );
    expect(worst).toMatch(/^\d+\.\d ml, nose (up|down) .*; certainly no more than \d+\.\d ml$/);
    const drain = { to: 'Z', minSlopeDeg: 1 } as const;
    const proven = factsOf({ points: FALLING, drain, attitudes }, true).find((f) =>
      f.label.endsWith('in the worst attitude'),
    )!;
    expect([proven.text, proven.basis]).toEqual(['none', 'end Z open; proven by its fall in every attitude']);
  });

  it('say at rest that the job gives no attitudes, where it asks for them, and not that nothing stays in any', () => {
    const drain = { to: 'Z', minSlopeDeg: 1 } as const;
    const level = { kind: 'box', pitch: [0, 0], roll: [0, 0] } as const;
    const said = (spec: Omit<FullSpec, 'points'>): string[] =>
      factsOf({ points: FALLING, ...spec }, true)
        .filter(({ label }) => / that stays at /.test(label))
        .map(({ label, text: words }) => `${label}: ${words}`);
    expect(said({ drain })).toEqual(['liquid that stays at rest: none (the job gives no attitudes)']);
    expect(said({ drain, attitudes: level })).toEqual(['liquid that stays at rest: none']);
    expect(said({ attitudes: { kind: 'cone', tilt: 5 * RAD } })).toEqual(['liquid that stays at rest: none']);
    const bleed = { to: 'both', tilted: true, path: 'lines[0].bleed' } as const;
    expect(said({ bleed })[1]).toBe('air that stays at rest: none (the job gives no attitudes)');
  });

  it('say how near a small bore is to the limit under which a bubble stands still', () => {
    // Capillary length by which the 10 mm bore is so many times the limit.
    const cling = (times: number): string => {
      const density = { value: 1000, source: 'the test', path: null };
      const sigma = (1000 * 9.80665 * (10 / times / (2 * Math.sqrt(0.842))) ** 2) / 1000;
      const surfaceTension = { ...density, value: sigma };
      const fluid = { id: 'f', name: 'f', density, viscosity: null, surfaceTension } as never;
      return text(factsOf({ points: SAG, fluid }), 'clings by surface tension')!;
    };
    expect(cling(1.2)).toMatch(
      /^a film; wide enough.*narrowest bore 10 mm, limit 8\.33 mm \(1\.835 capillary lengths/,
    );
    expect(cling(1.05)).toMatch(/may stand still.*limit 9\.52 mm .*, too near to be sure$/);
    expect(cling(0.95)).toMatch(/may stand still.*, too near to be sure$/);
    expect(cling(0.8)).toMatch(/may stand still.*limit 12\.5 mm .*\)$/);
  });

  it('say pressures in the units of the job', () => {
    expect(text(full, 'working pressure by Barlow')).toBe('18.8 MPa (188 bar)');
    expect(text(full, 'proof test')).toMatch(
      /^20 MPa \(200 bar\) with the brake fluid of the system; for the test only: air out first/,
    );
    const inch = factsOf({ points: SAG, units: 'in', duty: DUTY });
    expect(text(inch, 'working pressure by Barlow')).toBe('2,720 psi');
    expect(text(inch, 'flow')).toMatch(
      /^1\.06 gal\/min toward end Z: .* ft\/s, Reynolds number \d+, laminar$/,
    );
    expect(text(inch, 'growth along it')).toMatch(/ in longer from 68 °F to 194 °F \(126 °F\)$/);
    expect(text(inch, 'tube')).toMatch(/ lb, .* lb\/ft$/);
    const vent = factsOf({ points: SAG, service: 'vent', duty: DUTY });
    expect(text(vent, 'proof test')).toBe('not tested by pressure');
  });

  it('say why a flow asked for is not worked out', () => {
    const thin = factsOf({ points: SAG, od: 3, wall: 0.7, duty: DUTY });
    expect(text(thin, 'pressure lost')).toBe(
      'not worked out at 4 L/min toward end Z: a bend is outside the table of bend losses, 1 to 20 bores',
    );
    expect(text(factsOf({ points: SAG, fluid: null, duty: DUTY }), 'pressure lost')).toContain(
      'density and viscosity of the liquid are not both known',
    );
    expect(text(factsOf({ points: SAG }), 'pressure lost')).toBeUndefined();
  });

  it('say which way heat moves end Z, and whether the bends take it', () => {
    expect(text(full, 'end Z moves, end A held')).toBe('0.34 mm: 0.34 mm forward and 0.04 mm down');
    expect(text(full, 'its bends take that')).toMatch(
      /^NO: [\d.]+ mm off the straight needed, [\d.]+ mm there; stress /,
    );
  });
});
