/** The least fall that published rules ask of a drain, each as the very fraction it prints: rise over run. */
import type { CatalogueDrainRule } from '@runback/job';
import { MEMORY } from './sourcing.ts';

const IPC = 'Chicago Plumbing Code Table 18-29-704.1, after IPC Table 704.1';
const UPC = 'UPC 2015, 708.1, as discussed by officials';
const BPE = `ASME BPE, slope designations, ${MEMORY}`;

export const drainRules: Readonly<Record<string, CatalogueDrainRule>> = {
  'ipc-704.1-small': { name: 'pipe up to 2 1/2 in, 1/4 in per ft', fraction: [1, 48], source: IPC },
  'ipc-704.1-medium': { name: 'pipe of 3 to 6 in, 1/8 in per ft', fraction: [1, 96], source: IPC },
  'ipc-704.1-large': { name: 'pipe of 8 in and more, 1/16 in per ft', fraction: [1, 192], source: IPC },
  'upc-708.1': { name: 'any size, 1/4 in per ft (called 2 %)', fraction: [1, 48], source: UPC },
  'upc-708.1-reduced': {
    name: '3 in and more where 1/4 in cannot be had, 1/8 in per ft',
    fraction: [1, 96],
    source: UPC,
  },
  'imc-307.2': {
    name: 'condensate, 1/8 in per 12 in (called 1 %, in truth 1.0417 %)',
    fraction: [1, 96],
    source: 'IMC 307.2 in the wording of Chicago 18-28-307',
  },
  'fuel-gas': {
    name: 'fuel gas, 1/4 in per 15 ft',
    fraction: [1, 720],
    source: 'Memphis gas ordinance, as in NFPA 54',
  },
  'compressed-air-against-flow': {
    name: 'compressed air, condensate against the flow, 6 in per 100 ft',
    fraction: [1, 200],
    source: 'NAVFAC MO-209, Piping Design (f)',
  },
  'compressed-air-with-flow': {
    name: 'compressed air, condensate with the flow, 3 in per 100 ft',
    fraction: [1, 400],
    source: `NAVFAC MO-209, ${MEMORY}`,
  },
  'steam-main': {
    name: 'steam heating main, at least 1/4 in per 10 ft',
    fraction: [1, 480],
    source: 'Applied Science for Metal Workers, Main Piping',
  },
  'bpe-gsd1': { name: 'hygienic process line GSD1, 5 mm per m', fraction: [1, 200], source: BPE },
  'bpe-gsd2': { name: 'hygienic process line GSD2, 10 mm per m', fraction: [1, 100], source: BPE },
  'bpe-gsd3': { name: 'hygienic process line GSD3, 20 mm per m', fraction: [1, 50], source: BPE },
  'refrigerant-suction': {
    name: 'refrigerant suction towards the compressor, 1/2 in per 10 ft',
    fraction: [1, 240],
    source: `refrigeration practice, ${MEMORY}`,
  },
  sensing: { name: 'sensing line, 1 in 12', fraction: [1, 12], source: 'as instrument guides ask' },
};
