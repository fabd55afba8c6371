/** Falls as codes print them, against the slope of a line laid to them. */
import {
  type Centreline,
  fillet,
  type MachineAxes,
  slopeAt,
  smallestSlope,
  type Vec3,
} from '@runback/geometry';
import { workUp } from 'runback';
import { describe, expect, it } from 'vitest';

const DEG = 180 / Math.PI;
const axes: MachineAxes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] };

function line(points: readonly Vec3[], radius = 36): Centreline {
  const made = fillet(points.map((at) => ({ at, radius })));
  if (!made.ok) throw new Error('does not fit');
  return made.centreline;
}

/** Fall per run of a straight line that drops `fall` over `run` towards Z. */
const slopeOf = (fall: number, run: number): number =>
  slopeAt(
    line([
      [0, 0, fall],
      [run, 0, 0],
    ]),
    run / 2,
    { up: [0, 0, 1], drain: 'Z' },
  );

describe('drain slopes', () => {
  // in/ft, per cent, degrees, 1:n. Exact arithmetic, the angle being atan(rise/run).
  const conversions = [
    [1 / 2, 4.166667, 2.385944, 24],
    [1 / 4, 2.083333, 1.193489, 48],
    [1 / 8, 1.041667, 0.59681, 96],
    [1 / 16, 0.520833, 0.298413, 192],
    [0.24, 2, 1.145763, 50],
    [0.12, 1, 0.572939, 100],
    [0.06, 0.5, 0.286477, 200],
    [0.03, 0.25, 0.143239, 400],
    [1 / 60, 0.138889, 0.079577, 720],
  ] as const;
  for (const [inch, percent, deg, n] of conversions)
    it(`${inch} in per foot is ${percent} %, ${deg}°, 1:${n}`, () => {
      const slope = slopeOf(inch, 12);
      expect(Math.abs(slope * DEG - deg)).toBeLessThan(6e-7);
      expect(Math.abs(Math.tan(slope) * 100 - percent)).toBeLessThan(6e-7);
      expect(Math.abs(1 / Math.tan(slope) - n)).toBeLessThan(1e-9 * n);
    });

  // A printed engineering slope and grade table: degrees, 1:n, per cent.
  const printed = [
    [1, 57.29, 1.75],
    [2, 28.64, 3.49],
    [5, 11.43, 8.75],
    [10, 5.671, 17.6],
    [30, 1.732, 57.7],
    [45, 1, 100],
  ] as const;
  for (const [deg, n, percent] of printed)
    it(`${deg}° is 1:${n} and ${percent} % as printed`, () => {
      const slope = slopeOf(1, n);
      expect(Math.abs(slope * DEG - deg)).toBeLessThan(0.005);
      expect(Math.abs(Math.tan(deg / DEG) * 100 - percent)).toBeLessThan(0.05);
    });

  it('2 % fails a 1/4 in per foot rule (IPC table 704.1 as in Chicago 18-29-704.1): compare the fraction, not the rounded per cent', () => {
    expect(slopeOf(2, 100)).toBeLessThan(Math.atan(1 / 48));
    expect(slopeOf(1, 48)).toBeCloseTo(Math.atan(1 / 48), 15);
  });

  it('the condensate rule printed as 1 % is 1/8 in 12, 1.0417 % (IMC 307.2 wording): a 1 % line does not meet it', () => {
    expect(slopeOf(1, 100)).toBeLessThan(Math.atan(1 / 96));
    expect(Math.tan(slopeOf(1 / 8, 12)) * 100).toBeCloseTo(1.0416667, 6);
  });

  it('1 % is 0.57° in the same table, 1 to 2 cm per m of a compressed air main (frage.de) 1 to 2 %', () => {
    expect(Math.abs(slopeOf(1, 100) * DEG - 0.57)).toBeLessThan(0.005);
    expect(slopeOf(10, 1000)).toBeCloseTo(slopeOf(1, 100), 15);
    expect(slopeOf(20, 1000)).toBeCloseTo(slopeOf(2, 100), 15);
  });

  it('gas condensate 2 per mille, a gravity drain 5 per mille (bestconduits.com): less than any rule that is printed in degrees', () => {
    expect(Math.tan(slopeOf(2, 1000)) * 1000).toBeCloseTo(2, 9);
    expect(slopeOf(5, 1000) * DEG).toBeCloseTo(0.286477, 6);
  });

  it('gas piping 1/4 in per 15 ft is 1:720 (as in NFPA 54)', () =>
    expect(1 / Math.tan(slopeOf(0.25, 15 * 12))).toBeCloseTo(720, 8));

  it('a sensing line at 1 in 12 lies at 4.76°', () => expect(slopeOf(1, 12) * DEG).toBeCloseTo(4.7636, 4));

  it('a turbocharger drain within 15° of plumb falls at 75° or more (a maker’s drainage page, name withheld)', () => {
    const lean = 15 / DEG;
    expect(slopeOf(Math.cos(lean), Math.sin(lean)) * DEG).toBeCloseTo(75, 10);
  });

  it('a line at 1 % on every straight that dips in one bend is found out', () => {
    // Falls 1 % to a corner that swings it sideways through a crank: the bend plane leans, so the arc dips below 1 %.
    const fall = 0.01;
    const c = line(
      [
        [0, 0, 10],
        [400, 0, 6],
        [400, 60, 5.4],
        [800, 60, 1.4],
      ],
      20,
    );
    const straights = c.pieces
      .filter((piece) => piece.kind === 'straight')
      .map((s) => Math.atan2(-s.direction[2], Math.hypot(s.direction[0], s.direction[1])));
    expect(Math.min(...straights)).toBeCloseTo(Math.atan(fall), 12);
    const found = smallestSlope(c, { drain: 'Z', axes, attitudes: { kind: 'rest' } });
    const sampled = Math.min(
      ...Array.from({ length: 4001 }, (_, i) =>
        slopeAt(c, (c.length * i) / 4000, { up: [0, 0, 1], drain: 'Z' }),
      ),
    );
    expect(found.slope).toBeLessThanOrEqual(sampled + 1e-12);
    expect(Math.abs(found.slope - sampled)).toBeLessThan(1e-5);
  });

  it('the judge sees a planted fault: slope measured along the tube instead of over the ground', () =>
    expect(Math.abs(Math.asin(1 / 12) - slopeOf(1, 12))).toBeGreaterThan(1e-4));
});

describe('published rules, through the whole judgement of a job', () => {
  /** Verdict and limit of the slope at rest of a straight line that drops `fall` over `run` towards Z. */
  function judged(drain: object, fall: number, run: number) {
    const { lines } = workUp(
      JSON.stringify({
        format: 'runback-job',
        version: 1,
        units: 'mm',
        lines: [
          {
            id: 'drain',
            tube: 'ss304-12x1',
            drain: { to: 'Z', ...drain },
            points: [{ at: [0, 0, fall] }, { at: [run, 0, 0] }],
          },
        ],
      }),
    );
    const [line] = lines;
    return {
      verdict: line?.findings.find(({ check }) => check === 'slope')?.verdict,
      limit: line?.line.drain?.minSlope,
    };
  }

  // Rule, the fraction printed, a fall that meets it exactly and one that a rounded per cent would let through.
  it.each([
    ['ipc-704.1-small', [1 / 4, 12], [2, 100]],
    ['upc-708.1', [1 / 4, 12], [2, 100]],
    ['imc-307.2', [1 / 8, 12], [1, 100]],
    ['ipc-704.1-medium', [1 / 8, 12], [1, 100]],
    ['ipc-704.1-large', [1 / 16, 12], [0.5, 100]],
    ['fuel-gas', [1 / 4, 15 * 12], [0.138, 100]],
    ['compressed-air-against-flow', [6, 100 * 12], [0.499, 100]],
    ['upc-708.1-reduced', [1 / 8, 12], [1, 100]],
    ['steam-main', [1 / 4, 10 * 12], [0.2, 100]],
  ] as const)('%s: the fraction passes, a little less does not', (rule, exact, less) => {
    const scale = 100;
    const [fall, run] = exact;
    expect(judged({ rule }, fall * scale, run * scale).verdict).toBe('pass');
    expect(judged({ rule }, less[0] * scale, less[1] * scale).verdict).toBe('fail');
    expect(judged({ rule }, fall * scale, run * scale).limit?.value).toBeCloseTo(Math.atan(fall / run), 15);
  });

  it('the same limit written in the job as the code prints it', () => {
    for (const minSlope of ['1/4 in/ft', '1:48', '1 in 48']) {
      expect(judged({ minSlope }, 100, 4800)).toEqual({
        verdict: 'pass',
        limit: { value: Math.atan(1 / 48), source: `the job: ${minSlope}`, path: 'lines[0].drain.minSlope' },
      });
      expect(judged({ minSlope }, 96, 4800).verdict).toBe('fail');
    }
    expect(judged({ minSlope: '2 %' }, 96, 4800).verdict).toBe('pass');
  });

  it('the judge sees a planted fault: the rounded per cent in place of the fraction', () => {
    expect(judged({ minSlope: '1 %' }, 1, 100).verdict).toBe('pass');
    expect(judged({ rule: 'imc-307.2' }, 1, 100).verdict).toBe('fail');
  });
});
