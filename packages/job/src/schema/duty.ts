/** What runs in a line, what it has to stand, and how it is bled. */
import { z } from 'zod';
import { between, type Kit, name, object, word } from './kinds.ts';
import { flow, pressure } from './told.ts';

export const fluid = (kit: Kit) =>
  object(kit, {
    name: name().optional(),
    density: between(1, 25_000, 'kg/m³').optional(),
    viscosity: between(0.01, 10_000_000, 'mm²/s').optional(),
    surfaceTension: between(0.1, 10_000, 'mN/m').optional(),
    source: name().optional(),
  });

const degreesC = () => between(-273.15, 3000, '°C').optional();

export const duty = (kit: Kit) =>
  object(kit, {
    pressure: pressure().optional(),
    flow: flow().optional(),
    toward: word(['A', 'Z']).optional(),
    temperature: object(kit, { fitted: degreesC(), lowest: degreesC(), highest: degreesC() }).optional(),
    safetyFactor: between(1, 100, 'times').optional(),
    wallTolerance: between(0, 0.5, 'of the wall').optional(),
  });

export const bleed = (kit: Kit) =>
  object(kit, {
    to: word(['A', 'Z', 'both']).optional(),
    tilted: z.boolean({ error: 'true or false' }).optional(),
  });
