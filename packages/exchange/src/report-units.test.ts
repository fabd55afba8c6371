/**
 * The figures of a report agree with each other, and with what the job says, by the units in their names alone: worked
 * out again here from lengths in mm, volumes in ml and pressures in MPa, with conversions of this file's own.
 */
import { catalogue } from '@runback/catalogue';
import { workJob } from '@runback/checks';
import { parseJob, resolve } from '@runback/job';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../tests/helpers/random-line.ts';
import { everyKeyJob, GIVEN } from '../test/every-key-job.ts';
import { numbersOf, unsayable } from '../test/numbers.ts';
import { type Report, type ReportLine, type ReportPockets, report, reportSchema } from './index.ts';

const validate = new Ajv2020({ strict: true, allErrors: true }).compile(reportSchema());
const of = (units: 'mm' | 'in', seed: number): Report =>
  report(workJob(resolve(parseJob(everyKeyJob({ units, random: seeded(seed) }), { catalogue }), catalogue)));

const SEEDS = [3, 11, 42];
const jobs = SEEDS.flatMap((seed) =>
  (['mm', 'in'] as const).map((units) => [units, seed, of(units, seed)] as const),
);

const MM3_PER_ML = 1000;
const GRAVITY = 9.80665;
const DEG = Math.PI / 180;
const { metal, oil } = GIVEN;

const circle = (diameter: number): number => (Math.PI * diameter ** 2) / 4;
/** kg/m³ in kg/mm³ */
const perMm3 = (density: number): number => density / 1e9;

function near(found: number | null | undefined, expected: number): void {
  expect(found).not.toBeNull();
  expect(Math.abs(found! / expected - 1), `${found} for ${expected}`).toBeLessThan(1e-9);
}

const lineOf = (found: Report, id: string): ReportLine =>
  found.lines.find((line) => line.id === id) as ReportLine;

describe.each(jobs)('every key, in %s, seed %i', (_, __, found) => {
  const top = lineOf(found, 'top');
  const aside = lineOf(found, 'aside');
  const [dip] = found.runs;
  const [first, last] = [top.pieces[0]!.from_mm, top.pieces.at(-1)!.to_mm];
  const turned = (line: ReportLine): number => line.bends.reduce((sum, bend) => sum + bend.angle_deg, 0);

  it('keeps to the schema, every figure a finite number', () => {
    validate(JSON.parse(JSON.stringify(found)));
    expect(validate.errors).toBeNull();
    expect(unsayable(found)).toEqual([]);
    const planted = { a: [Number.NaN, 1], b: undefined, c: { d: -0, e: Number.POSITIVE_INFINITY }, f: null };
    expect(unsayable(planted)).toEqual(['.a.0', '.b', '.c.d', '.c.e']);
  });

  it('leaves no key of the liquid and the stick empty', () => {
    for (const key of ['pockets', 'pressure', 'flow', 'thermal', 'mass'] as const)
      expect(top[key], key).not.toBeNull();
    for (const key of ['pockets', 'passage', 'stick'] as const) {
      expect(aside[key], key).not.toBeNull();
      expect(dip?.[key], key).not.toBeNull();
    }
    expect(dip?.passage?.blade?.twists.length).toBeGreaterThan(0);
    expect(dip?.stick?.marks.map(({ from }) => from)).toEqual(['pan', 'pan']);
    expect(aside.stick?.marks.map(({ from }) => from)).toEqual(['fills']);
  });

  it('volumes in ml are those of the bore in mm', () => {
    const holds = (circle(10) * top.developedLength_mm) / MM3_PER_ML;
    near(top.bore_mm, 10);
    near(top.pockets?.capacity_ml, holds);
    near(top.mass?.contents_ml, holds);
    near(
      dip?.pockets?.capacity_ml,
      holds + (circle(8) * lineOf(found, 'foot').developedLength_mm) / MM3_PER_ML,
    );
    const { liquid } = aside.pockets as ReportPockets;
    expect(liquid.volume_ml).toBeGreaterThan(0);
    near(
      liquid.pockets.reduce((sum, pocket) => sum + pocket.volume_ml, 0),
      liquid.volume_ml,
    );
  });

  it('what a lip of 8 mm holds back at the foot of a bore of 10 mm is a wedge of it', () => {
    const { liquid } = aside.pockets as ReportPockets;
    const [foot] = aside.pieces;
    const [x, y, z] = [0, 1, 2].map((axis) => foot!.to_mm[axis]! - foot!.from_mm[axis]!) as [
      number,
      number,
      number,
    ];
    const lean = Math.hypot(x, y) / z;
    near(liquid.pockets[0]?.depth_mm, (5 - 4) * (lean / Math.hypot(1, lean)));
    // ∫ 2·(u − 4)·√(25 − u²) du from 4 to 5: the segment beyond the lip, each part as deep as it is far from it.
    const segment = 25 * Math.atan2(3, 4) - 4 * 3;
    const wedge = (lean * ((2 / 3) * 3 ** 3 - 4 * segment)) / MM3_PER_ML;
    expect(Math.abs(liquid.volume_ml / wedge - 1)).toBeLessThan(0.005);
  });

  it('masses in kg are density times volume', () => {
    const wall = circle(12) - circle(10);
    near(top.mass?.tube_kgPerM, perMm3(metal.density) * wall * 1000);
    near(top.mass?.tube_kg, perMm3(metal.density) * wall * top.developedLength_mm);
    near(top.mass?.contents_kgPerM, perMm3(oil.density) * circle(10) * 1000);
    near(top.mass?.contents_kg, (top.mass!.contents_ml / 1e6) * oil.density);
    near(top.mass?.total_kg, top.mass!.tube_kg + top.mass!.contents_kg);
  });

  it('pressures in MPa follow from stress in MPa and sizes in mm', () => {
    const { straight, working_MPa: working, proof } = top.pressure!;
    near(working, GIVEN.pressure.MPa);
    near(straight?.allowable_MPa, metal.strength / GIVEN.safetyFactor);
    near(straight?.wallLeft_mm, 1 - GIVEN.wallTolerance);
    near(straight?.barlow_MPa, (2 * straight!.allowable_MPa * straight!.wallLeft_mm) / top.od_mm);
    const inside = top.od_mm - 2 * straight!.wallLeft_mm;
    const [D2, d2] = [top.od_mm ** 2, inside ** 2];
    near(straight?.lame_MPa, (straight!.allowable_MPa * (D2 - d2)) / (D2 + d2));
    near(top.pressure?.code?.allowable_MPa, metal.allowable);
    expect(proof?.pressure_MPa).toBeGreaterThan(GIVEN.pressure.MPa);
    expect(proof?.pressure_MPa).toBeLessThan(10 * GIVEN.pressure.MPa);
  });

  it('flow in m/s and MPa follows from litres a minute', () => {
    const drop = top.flow!.drop!;
    const mmPerS = GIVEN.flow.mm3PerS / circle(10);
    near(drop.velocity_mPerS, mmPerS / 1000);
    near(drop.reynolds, (mmPerS * 10) / oil.viscosity);
    near(drop.friction.factor, 64 / drop.reynolds);
    near(drop.rise_MPa, (oil.density * GRAVITY * ((last[2] - first[2]) / 1000)) / 1e6);
    const straight = top.pieces.reduce(
      (sum, p) => sum + (p.kind === 'straight' ? p.end_mm - p.start_mm : 0),
      0,
    );
    const dynamic = (oil.density * drop.velocity_mPerS ** 2) / 2 / 1e6;
    near(drop.straights_MPa, drop.friction.factor * (straight / 10) * dynamic);
    near(drop.total_MPa, drop.straights_MPa + drop.bends_MPa + drop.rise_MPa);
    // At the speed that its whole fall keeps up, laminar: v = g·d²·sin/(32·ν).
    const even =
      (GRAVITY * 1000 * 10 ** 2 * (last[2] - first[2])) / (32 * oil.viscosity * top.developedLength_mm);
    near(top.flow?.drain?.even_s, top.developedLength_mm / even);
  });

  it('heat in K, growth in mm', () => {
    const { temperature } = GIVEN;
    const warmer = temperature.highest - temperature.fitted;
    near(top.thermal?.delta_K, warmer);
    near(top.thermal?.growth_mm, metal.expansion * warmer * top.developedLength_mm);
    for (const axis of [0, 1, 2] as const)
      near(top.thermal?.movement_mm[axis], metal.expansion * warmer * (last[axis] - first[axis]));
  });

  it('a frequency in Hz from a span in mm and masses in kg/m', () => {
    const { frequency, tube_kgPerM, contents_kgPerM } = top.mass!;
    near(frequency?.span_mm, Math.max(200, top.developedLength_mm - 260));
    const stiff = metal.youngs * 1e6 * ((Math.PI / 64) * (0.012 ** 4 - 0.01 ** 4));
    const span = frequency!.span_mm / 1000;
    near(
      frequency?.first_hz,
      (Math.PI / (2 * span ** 2)) * Math.sqrt(stiff / (tube_kgPerM + contents_kgPerM)),
    );
  });

  it('angles in degrees and what friction makes of them', () => {
    const push = dip!.passage!.push;
    near(push.angle_deg, turned(top));
    near(push.low, Math.exp(GIVEN.friction[0] * push.angle_deg * DEG));
    near(push.high, Math.exp(GIVEN.friction[1] * push.angle_deg * DEG));
    const [twist] = dip!.passage!.blade!.twists;
    const turn = top.bends[1]!.turn_deg!;
    near(Math.abs(twist!.twist_deg), Math.min(Math.abs(turn), 180 - Math.abs(turn)));
    near(twist?.straight_mm, top.bends[1]!.straightBefore_mm);
    const worst = dip?.pockets?.worst?.attitude;
    expect(Math.abs(worst!.pitch_deg)).toBeLessThanOrEqual(GIVEN.tilt.pitch + 1e-9);
    expect(Math.abs(worst!.roll_deg)).toBeLessThanOrEqual(GIVEN.tilt.roll + 1e-9);
  });

  it('a stick in mm, its marks between measured fills', () => {
    const { way, seatToTip } = dip!.stick!;
    near(way.centreline_mm, top.developedLength_mm + lineOf(found, 'foot').developedLength_mm);
    near(way.uncertainty_mm, way.longest_mm - way.shortestLow_mm);
    near(seatToTip.middle_mm, way.centreline_mm + GIVEN.blade.seat + GIVEN.blade.beyond);
    for (const bend of dip!.passage!.blade!.bends)
      near(bend.strain, GIVEN.blade.thickness / 2 / bend.radius_mm);
    expect(aside.stick?.marks[0]).toMatchObject({ name: 'HALF', litres: 2 });
    near(aside.stick?.marks[0]?.at_mm, 22);
    near(dip?.passage?.steps[0]?.step_mm, 1);
  });
});

it('is the same in mm and in inches', () => {
  const places = (found: Report): readonly (readonly [string, number])[] =>
    numbersOf(found).filter(([path]) => !/cure|\.tries$/.test(path));
  for (const seed of SEEDS) {
    const [mm, inch] = [places(of('mm', seed)), places(of('in', seed))];
    expect(inch.map(([path]) => path)).toEqual(mm.map(([path]) => path));
    for (const [i, [path, value]] of mm.entries())
      expect(Math.abs(value - inch[i]![1]) / Math.max(1, Math.abs(value)), path).toBeLessThan(1e-6);
  }
});
