/**
 * Liquids at one temperature each: density kg/m³, kinematic viscosity mm²/s, surface tension mN/m. They feed
 * estimates; all are typical, and the can in your hand has its own data sheet.
 */
import type { CatalogueFluid } from '@runback/job';
import { figure, MEMORY } from './sourcing.ts';

const typical = (what: string): string => `${MEMORY}, typical: ${what}`;

const COMMON_TABLES = `${MEMORY}, common tables, 20 °C`;
const OIL = typical('mineral oil');
const HOT_SAE_30 = typical('SAE J300 has 9.3 to 12.5 at 100 °C for SAE 30');
const HOT_SAE_40 = typical('SAE J300 has 12.5 to 16.3 at 100 °C for SAE 40');
const COLD_OIL = typical('engine oil in a cold shop; from 200 to 400');
const BRAKE = typical('DOT 4 at 20 °C; brands differ by a third');
const PETROL = typical('EN 228 allows 720 to 775 kg/m³');
const DIESEL = typical('EN 590 allows 820 to 845 kg/m³, 2 to 4.5 mm²/s at 40 °C');
const GLYCOL = typical('ethylene glycol and water, half and half, 20 °C');

export const fluids: Readonly<Record<string, CatalogueFluid>> = {
  water: {
    name: 'water, 20 °C',
    density: figure(998, COMMON_TABLES),
    viscosity: figure(1.004, COMMON_TABLES),
    surfaceTension: figure(72.8, COMMON_TABLES),
  },
  'engine-oil-sae-30-hot': {
    name: 'engine oil SAE 30, hot (100 °C)',
    density: figure(835, OIL),
    viscosity: figure(11, HOT_SAE_30),
    surfaceTension: figure(26, OIL),
  },
  'engine-oil-sae-30-cold': {
    name: 'engine oil SAE 30, cold (20 °C)',
    density: figure(885, OIL),
    viscosity: figure(300, COLD_OIL),
    surfaceTension: figure(31, OIL),
  },
  'engine-oil-15w-40-hot': {
    name: 'engine oil 15W-40, hot (100 °C)',
    density: figure(830, OIL),
    viscosity: figure(14, HOT_SAE_40),
    surfaceTension: figure(26, OIL),
  },
  'engine-oil-15w-40-cold': {
    name: 'engine oil 15W-40, cold (20 °C)',
    density: figure(880, OIL),
    viscosity: figure(290, COLD_OIL),
    surfaceTension: figure(31, OIL),
  },
  'brake-fluid-dot-4': {
    name: 'brake fluid DOT 4, 20 °C',
    density: figure(1060, BRAKE),
    viscosity: figure(15, BRAKE),
  },
  petrol: {
    name: 'petrol, 20 °C',
    density: figure(745, PETROL),
    viscosity: figure(0.6, typical('0.5 to 0.7 at 20 °C')),
    surfaceTension: figure(21, typical('petrol at 20 °C')),
  },
  diesel: {
    name: 'diesel fuel, 20 °C',
    density: figure(832, DIESEL),
    viscosity: figure(4, DIESEL),
    surfaceTension: figure(27, typical('diesel at 20 °C')),
  },
  'hydraulic-oil-46': {
    name: 'hydraulic oil ISO VG 46, 40 °C',
    density: figure(865, OIL),
    viscosity: figure(46, `${MEMORY}: what ISO VG 46 means, within 10 % at 40 °C`),
    surfaceTension: figure(30, OIL),
  },
  'coolant-50-50': {
    name: 'coolant, half glycol, 20 °C',
    density: figure(1075, GLYCOL),
    viscosity: figure(3.7, GLYCOL),
    surfaceTension: figure(57, GLYCOL),
  },
};
