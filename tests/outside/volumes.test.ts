/** Volumes known from elsewhere: by Pappus, of segments of a disc, and of a hoof. */
import { type BoreSpan, fromRows, type Straight, trapped, unit } from '@runback/geometry';
import { describe, expect, it } from 'vitest';

const lengthOf = (radius: number, angle: number): number =>
  fromRows([{ straightBefore: 0, turn: null, angle, radius }], 0).length;
const section = (bore: number): number => (Math.PI * bore * bore) / 4;

it('bore of a 90° bend: R 20, bore 6 holds 888.2644 mm³ (Pappus, exact)', () =>
  expect(section(6) * lengthOf(20, Math.PI / 2)).toBeCloseTo(888.264396098, 8));

it('a ring of outer radius 13 and inner 7: 2π²Rr² (torus page of a geometry reference; Spiegel 4.45 gives the same)', () => {
  const half = section(6) * lengthOf(10, Math.PI);
  expect(2 * half).toBeCloseTo(1776.5288, 4);
  expect(2 * half).toBeCloseTo((Math.PI ** 2 * (7 + 13) * (13 - 7) ** 2) / 4, 9);
});

it('two quarters make a half', () =>
  expect(2 * lengthOf(36, Math.PI / 2)).toBeCloseTo(lengthOf(36, Math.PI), 12));

describe('liquid behind a lip, and in a leaning tube', () => {
  const up = [0, 0, 1] as const;
  const level = (length: number, bore: number): BoreSpan => ({ pieces: fromRows([], length).pieces, bore });
  /** What an orifice at the mouth of a level tube, shut at its other end, leaves in it. */
  const behindLip = (tube: BoreSpan, bore: number): number => {
    const { to: at, direction, end } = tube.pieces[0] as Straight;
    const lip: Straight = { kind: 'straight', from: at, to: at, direction, length: 0, start: end, end };
    return trapped([tube, { pieces: [lip], bore }], { up, outlets: 'Z' }).volume;
  };

  it('a disc of 72 filled 24 deep: 1188.02989891 (tests of CalebBell/fluids)', () =>
    expect(behindLip(level(100, 72), 24) / 100).toBeCloseTo(1188.02989891, 7));

  it('a level tank 10 m long, r 0.725 m, air 0.2 m deep: 15.1379 m³ hold (hackmath.net, problem 3613)', () => {
    const tank = level(10_000, 1450);
    // Air that stays under a roof edge of 0.2 m is what the tank lacks.
    const { to: at, direction, end } = tank.pieces[0] as Straight;
    const lip: Straight = { kind: 'straight', from: at, to: at, direction, length: 0, start: end, end };
    const air = trapped([tank, { pieces: [lip], bore: 1050 }], { up: [0, 0, -1], outlets: 'Z' });
    expect((air.capacity - air.volume) / 1e9).toBeCloseTo(15.1379, 4);
  });

  it('depth over bore 0.1, 0.2, 0.3: 0.0409, 0.1118, 0.1982 of the square (Chow 1959, appendix A, from memory)', () => {
    for (const [depth, area] of [
      [0.1, 0.0409],
      [0.2, 0.1118],
      [0.3, 0.1982],
    ] as const)
      expect(behindLip(level(50, 20), 20 * (1 - 2 * depth)) / 50 / 400).toBeCloseTo(area, 4);
  });

  it("Archimedes' hoof: a tube that leans so that its liquid covers half its shut end holds 2/3·r²·h", () => {
    const [r, length] = [8, 60];
    const direction = unit([length, 0, r]);
    const tube = fromRows([], length, { origin: [0, 0, 0], direction, normal: [0, 1, 0] });
    const { volume } = trapped([{ pieces: tube.pieces, bore: 2 * r }], { up, outlets: 'Z' });
    expect(volume).toBeCloseTo((2 / 3) * r * r * length, 6);
  });
});
