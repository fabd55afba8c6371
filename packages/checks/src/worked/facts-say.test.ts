import { describe, expect, it } from 'vitest';
import {
  digits,
  sayAngleAtLeast,
  sayBothFalls,
  sayBothPressures,
  sayDifference,
  sayFlow,
  sayMass,
  sayMassPerLength,
  sayMl,
  sayMlAtMost,
  sayPressure,
  saySeconds,
  saySecondsAtLeast,
  saySecondsAtMost,
  sayTemperature,
  sayVelocity,
} from './facts-say.ts';

describe('figures in words', () => {
  it('say ml to a tenth, none under that, and round up what is not exceeded', () => {
    expect([3397, 100, 99.9, 0].map(sayMl)).toEqual(['3.4 ml', '0.1 ml', 'none', 'none']);
    expect([3301, 3300, 0].map(sayMlAtMost)).toEqual(['3.4 ml', '3.3 ml', '0.0 ml']);
  });

  it('have three digits, and commas between thousands', () => {
    expect([20_634.2, 206.34, 20.64, 0.07094, 9.999, 0, 1_234_567].map((x) => digits(x))).toEqual([
      '20,600',
      '206',
      '20.6',
      '0.0709',
      '10',
      '0',
      '1,230,000',
    ]);
  });

  it('say pressures in MPa and bar, or in psi', () => {
    expect(sayPressure(20.6, 'mm')).toBe('20.6 MPa (206 bar)');
    expect(sayPressure(20.6, 'in')).toBe('2,990 psi');
    expect(sayPressure(0.00001, 'mm')).toBe('under 0.1 kPa (1 mbar)');
    expect(sayPressure(0, 'mm')).toBe('0 MPa (0 bar)');
    expect(sayBothPressures(10.001, 10, 'mm')).toEqual(['10.001 MPa (100.01 bar)', '10 MPa (100 bar)']);
  });

  it('say the rest in the units of the job', () => {
    expect([sayMass(0.45359237, 'mm'), sayMass(0.45359237, 'in')]).toEqual(['0.454 kg', '1 lb']);
    expect([sayMassPerLength(1.48816, 'mm'), sayMassPerLength(1.48816, 'in')]).toEqual([
      '1.49 kg/m',
      '1 lb/ft',
    ]);
    expect([sayFlow(3.785411784, 'mm'), sayFlow(3.785411784, 'in')]).toEqual(['3.79 L/min', '1 gal/min']);
    expect([sayVelocity(3.048, 'mm'), sayVelocity(3.048, 'in')]).toEqual(['3.05 m/s', '10 ft/s']);
    expect([sayTemperature(-40, 'mm'), sayTemperature(-40, 'in'), sayTemperature(100, 'in')]).toEqual([
      '-40 °C',
      '-40 °F',
      '212 °F',
    ]);
    expect([sayDifference(-50, 'mm'), sayDifference(50, 'in')]).toEqual(['50 °C', '90 °F']);
    expect([saySeconds(41.3), saySeconds(0.123)]).toEqual(['41 s', '0.12 s']);
    expect([0.546, 41.3, 198.1, 0.55].map(saySecondsAtLeast)).toEqual(['0.54 s', '41 s', '190 s', '0.55 s']);
    expect([0.984, 41.3, 190.9].map(saySecondsAtMost)).toEqual(['0.99 s', '42 s', '200 s']);
  });

  it('never say more of an angle than there is', () => {
    const said = (degrees: number): string => sayAngleAtLeast((degrees * Math.PI) / 180);
    expect([16.159, 12, 0.81, 0.0012, 89.999].map(said)).toEqual([
      '16.15°',
      '12°',
      '0.81°',
      '0.001°',
      '89.99°',
    ]);
  });

  it('say a fall and what is wanted of it on the side they are of each other', () => {
    const deg = Math.PI / 180;
    expect(sayBothFalls(10.6976 * deg, 0)).toEqual(['10.69°', '0°']);
    expect(sayBothFalls(3 * deg, -90 * deg)).toEqual(['3°', '-90°']);
    expect(sayBothFalls(12 * deg, 12 * deg)).toEqual(['12°', '12°']);
    expect(sayBothFalls(11.9999 * deg, 12 * deg)).toEqual(['11.99°', '12°']);
    // 1 in 96, and a hair less: never told as the same.
    expect(sayBothFalls(Math.atan(1 / 96), Math.atan(1 / 96))).toEqual(['0.59°', '0.59°']);
    expect(sayBothFalls(Math.atan(1 / 96.01), Math.atan(1 / 96))).toEqual(['0.5967°', '0.5968°']);
  });
});
