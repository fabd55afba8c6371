/** Generated jobs in which every key of the liquid and the stick is used, the same part in mm or in inches. */

/** What the jobs say, in units of its own: a test works with these and never with what was resolved from them. */
export const GIVEN = {
  metal: { density: 8000, youngs: 195_000, yield: 200, expansion: 16e-6, strength: 520, allowable: 140 },
  oil: { density: 871, viscosity: 14, surfaceTension: 31 },
  wallTolerance: 0.1,
  safetyFactor: 5,
  /** 60 psi: a pound-force on a square inch. */
  pressure: { text: '60 psi', MPa: (60 * 0.45359237 * 9.80665) / 25.4 ** 2 },
  flow: { text: '8 L/min', mm3PerS: 8e6 / 60 },
  temperature: { fitted: 15, lowest: -20, highest: 95 },
  friction: [0.12, 0.22],
  tilt: { pitch: 5, roll: 3 },
  blade: { thickness: 0.4, width: 6, seat: 7, beyond: 11 },
} as const;

export interface EveryKey {
  readonly units: 'mm' | 'in';
  readonly random: () => number;
}

type Point = readonly [number, number, number];

/** Two lines joined with a step between them, a run through both, and the mirror of a third with a stick of its own. */
export function everyKeyJob({ units, random }: EveryKey): string {
  const k = units === 'mm' ? 1 : 1 / 25.4;
  const within = (low: number, high: number): number => low + (high - low) * random();
  const at = (p: Point): number[] => p.map((n) => n * k);
  const points = (list: readonly Point[], radius: number): object[] =>
    list.map((p, i) => ({ at: at(p), ...(i > 0 && i < list.length - 1 ? { radius: radius * k } : {}) }));
  const joint: Point = [within(60, 90), within(-20, 20), within(160, 200)];
  const foot: Point = [joint[0] - 25, joint[1], joint[2] - 130];
  const top: readonly Point[] = [
    joint,
    [joint[0] + 25, joint[1], joint[2] + 130],
    [within(250, 300), within(60, 140), within(330, 380)],
    [within(420, 500), within(-60, 60), within(430, 480)],
  ];
  const aside: readonly Point[] = [
    [0, within(300, 340), 0],
    [within(-40, 40), 320, within(150, 200)],
    [within(180, 240), within(340, 400), within(240, 300)],
  ];
  return JSON.stringify({
    format: 'runback-job',
    version: 1,
    title: 'Every key',
    units,
    attitudes: { pitch: [-GIVEN.tilt.pitch, GIVEN.tilt.pitch], roll: [-GIVEN.tilt.roll, GIVEN.tilt.roll] },
    materials: { metal: { ...GIVEN.metal, source: 'the mill' } },
    fluids: { oil: { ...GIVEN.oil, source: 'the can' } },
    tubes: {
      small: { material: 'metal', od: 10 * k, wall: 1 * k },
      large: { material: 'metal', od: 12 * k, wall: 1 * k },
    },
    runs: [{ id: 'dip', lines: ['foot', 'top'], drain: 'A', stick: blade(k, foot) }],
    lines: [
      { id: 'foot', tube: 'small', fluid: 'oil', points: points([foot, joint], 0), drain: { to: 'A' } },
      {
        id: 'top',
        service: 'fuel',
        tube: 'large',
        fluid: 'oil',
        points: points(top, within(40, 60)),
        drain: { to: 'A', minSlope: '1/4 in/ft', minSlopeTilted: 0 },
        bleed: { to: 'both', tilted: true },
        clips: [60 * k, 260 * k],
        duty: {
          pressure: GIVEN.pressure.text,
          flow: GIVEN.flow.text,
          toward: 'Z',
          temperature: GIVEN.temperature,
          safetyFactor: GIVEN.safetyFactor,
          wallTolerance: GIVEN.wallTolerance,
        },
      },
      {
        id: 'aside',
        tube: 'large',
        fluid: 'oil',
        points: points(aside, within(36, 50)),
        drain: { to: 'A', rule: 'upc-708.1' },
        bleed: { to: 'Z' },
        endA: { opening: 8 * k },
        stick: {
          kind: 'links',
          enters: 'Z',
          thickness: 4 * k,
          width: 5 * k,
          link: 30 * k,
          fills: [
            { litres: 1.5, at: 12 * k },
            { litres: 2.5, at: 32 * k },
          ],
          levels: [{ name: 'HALF', litres: 2 }],
        },
      },
      { id: 'other-hand', mirrorOf: 'aside', across: 'y', offset: 0 },
    ],
  });
}

function blade(k: number, foot: Point): object {
  const { thickness, width, seat, beyond } = GIVEN.blade;
  return {
    kind: 'blade',
    enters: 'Z',
    material: 'metal',
    thickness: thickness * k,
    width: width * k,
    tip: { length: 25 * k, thickness: 3 * k, width: 6 * k },
    seat: seat * k,
    beyond: beyond * k,
    friction: GIVEN.friction,
    pan: { middle: [foot[0] * k, foot[1] * k, (foot[2] - 40) * k], size: [300 * k, 200 * k] },
    levels: [
      { name: 'LOW', litres: 2.7 },
      { name: 'FULL', litres: 3.4 },
    ],
  };
}
