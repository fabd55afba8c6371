/** Seeded job texts for benchmarks and fuzzing. */
import { rotate, type Solid, unit, type Vec3 } from '@runback/geometry';

export interface RandomJob {
  readonly bends: number;
  readonly surroundings: number;
}

/** The text of a job with one long zig-zag line among boxes, cylinders and spheres that it mostly clears. */
export function randomJobText(random: () => number, options: RandomJob): string {
  const points = Array.from({ length: options.bends + 2 }, (_, i) => ({
    at: [i * 120, (i % 2) * 80 + 20 * random(), i * 15 + 40 * random()],
    radius: 30,
  }));
  const surroundings = Array.from({ length: options.surroundings }, (_, i) => {
    const x = random() * options.bends * 120;
    const centre = [x, 250 + 100 * random(), (x / 120) * 15 + 100 * (random() - 0.5)];
    const id = `thing-${i}`;
    if (i % 3 === 0) return { id, shape: 'sphere', centre, diameter: 60, keepOff: 10 };
    if (i % 3 === 1)
      return {
        id,
        shape: 'box',
        centre,
        size: [60, 40, 50],
        axes: [
          [1, 0.2, 0],
          [-0.2, 1, 0],
        ],
        keepOff: 10,
      };
    return { id, shape: 'cylinder', from: centre, to: [x + 50, 300, 60], diameter: 40, keepOff: 10 };
  });
  return JSON.stringify({
    format: 'runback-job',
    version: 1,
    title: 'Benchmark',
    units: 'mm',
    attitudes: { pitch: [-5, 5], roll: [-3, 3] },
    tubes: { t: { material: 'stainless-304', od: 8, wall: 1 } },
    surroundings,
    lines: [{ id: 'long', tube: 't', drain: { to: 'A', minSlope: 1 }, points }],
  });
}

/** Solids of three kinds strewn through a cube of 1,200 mm. */
export function randomSolids(random: () => number, count: number): Solid[] {
  const place = (): Vec3 => [random() * 1200 - 600, random() * 1200 - 600, random() * 1200 - 600];
  return Array.from({ length: count }, (_, i): Solid => {
    const centre = place();
    if (i % 3 === 0) return { kind: 'sphere', centre, radius: 10 + 30 * random() };
    const x = unit([random() - 0.5, random() - 0.5, random() + 0.1]);
    if (i % 3 === 1)
      return {
        kind: 'cylinder',
        from: centre,
        to: [centre[0] + 80 * x[0], centre[1] + 80 * x[1], centre[2] + 80 * x[2]],
        radius: 10 + 20 * random(),
      };
    const y = unit([-x[1], x[0], 0]);
    const z: Vec3 = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
    return { kind: 'box', centre, half: [30, 20, 25], axes: [x, rotate(y, x, 0.4), rotate(z, x, 0.4)] };
  });
}
