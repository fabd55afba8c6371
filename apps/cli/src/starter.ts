/** The text of a starter job: complete, commented, and passing as it stands, so that the first edit is the person's own. */
import type { JobUnit } from 'runback';

export interface StarterAnswers {
  readonly service: string;
  readonly units: JobUnit;
  /** In job units. */
  readonly od: string;
  readonly wall: string;
  readonly material: string;
  /** Radius of the die, in job units. */
  readonly die: string;
}

export const STARTER_DEFAULTS: Readonly<Record<JobUnit, Omit<StarterAnswers, 'service' | 'units'>>> = {
  mm: { od: '12', wall: '1', material: 'stainless-304', die: '36' },
  in: { od: '1/2', wall: '0.049', material: 'stainless-304', die: '1 1/2' },
};

const DRAINS = new Set(['dipstick', 'oil-drain', 'vent', 'sensing']);

/** A length typed as a number stays one; anything else becomes a string the job file reads. */
const value = (typed: string): string =>
  /^\d+(\.\d+)?$/.test(typed) ? String(Number(typed)) : JSON.stringify(typed);

/** The example path, in quarter inches or whole millimetres. */
const along = (units: JobUnit, mm: number): number => (units === 'mm' ? mm : Math.round(mm / 6.35) / 4);

export function starter(answers: StarterAnswers): string {
  const { service, units } = answers;
  const at = (x: number, y: number, z: number): string =>
    `[${[x, y, z].map((n) => along(units, n)).join(', ')}]`;
  const drain = DRAINS.has(service)
    ? `
      // Liquid must run back to this end. minSlope left out: what is usual for a ${service} line.
      "drain": { "to": "A" },`
    : '';
  return `// A Runback job. Lengths in ${units} unless they carry their own unit: "82.5 mm", "3 7/32 in", "4' 2 1/2\\"".
// X forward, Y left, Z up. Measure to the centre of the tube. Change what follows to your own, then:
//   runback check THIS-FILE        runback sheet THIS-FILE --out sheets
{
  "format": "runback-job", "version": 1,
  "title": "My machine", "units": "${units}",
  // How far it tips in use, degrees: nose up / nose down, left side down / right side down.
  "attitudes": { "pitch": [-5, 5], "roll": [-3, 3] },
  "tubes": {
    "tube": { "material": "${answers.material}", "od": ${value(answers.od)}, "wall": ${value(answers.wall)} }
  },
  "benders": {
    "bench": {
      // radius as finished; minStraight the clamp needs between two bends; minTail from the sawn end to the nearest bend.
      "dies": [ { "od": ${value(answers.od)}, "radius": ${value(answers.die)}, "minStraight": ${along(units, 25)}, "minTail": ${along(units, 38)}, "maxAngle": 180 } ],
      // Bend a test piece, then say how the dial relates to the bend: dial = factor * bend + fixed (degrees).
      // "springBack": { "factor": 1.03, "fixed": 0.5 },
      // How you stand: START on your left or right, the tool flat or upright, the former near, far, above or below.
      "bench": { "stand": "side", "startOn": "left", "plane": "flat", "former": "far", "moves": "tube" }
    }
  },
  // What the line must keep clear of, and why: "hot", "moving", "fixed" or "wiring" sets how far.
  "surroundings": [
    { "id": "exhaust", "shape": "tube", "points": [${at(0, -200, 60)}, ${at(400, -200, 60)}], "od": ${along(units, 42)}, "because": "hot" }
  ],
  "lines": [
    {
      "id": "line-1", "name": "First line", "service": "${service}", "tube": "tube", "bender": "bench",
      // From end A to end Z: the ends, and between them the corners where the straights would meet.
      "points": [
        { "at": ${at(0, 0, 0)} },
        { "at": ${at(0, 0, 152)} },
        { "at": ${at(203, 76, 260)} },
        { "at": ${at(420, 76, 381)} }
      ],${drain}
      "endA": { "fitting": "plain" },
      "endZ": { "fitting": "plain" }
    }
  ]
}
`;
}
