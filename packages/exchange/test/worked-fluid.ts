/** Worked figures of the liquid and the stick as literals: each value one of a kind, so that a mix-up shows. */
import { CAUTION } from '@runback/bending';
import type {
  Fact,
  FactGroup,
  LineFlow,
  LineMass,
  LinePressure,
  LineThermal,
  Passage,
  Pockets,
  StickSheet,
  WorkedLine,
  WorkedRun,
} from '@runback/checks';

const caution = CAUTION;

const KEPT = {
  volume: 3400,
  bound: 0.5,
  pockets: [{ from: 101, to: 141, lowest: 121, level: 33, depth: 4, volume: 3400, point: [120, -0, 29] }],
} as const;

const WORST = {
  ...KEPT,
  volume: 5200,
  atMost: 5300,
  up: [0, 0.6, 0.8],
  attitude: { pitch: Math.PI / 36, roll: -Math.PI / 60 },
  tries: 41,
} as const;

export const POCKETS: Pockets = {
  outlets: 'Z',
  capacity: 61_000,
  liquid: KEPT,
  worst: WORST,
  air: { ...KEPT, volume: 700, outlets: 'both', worst: { ...WORST, attitude: null } },
  cling: { capillaryLength: 1.9, holds: false },
};

export const PASSAGE: Passage = {
  enters: 'Z',
  stiff: 24,
  tips: [{ line: 0, bend: 0, at: 164, longest: 38, alone: true }],
  blade: {
    play: 2.5,
    bends: [{ line: 0, bend: 1, at: 349, radius: 31, strain: 0.004, takesSet: true }],
    twists: [{ from: 0, twist: Math.PI / 4, straight: 128, needs: 72, enough: true }],
  },
  steps: [
    { line: 0, at: 512, step: 1, catches: 'going in', lead: { length: 3.7, push: 0.56 } },
    {
      line: 0,
      at: 513,
      step: 2,
      catches: 'coming out',
      lead: { length: 7.4, push: Number.POSITIVE_INFINITY },
    },
  ],
  push: { angle: Math.PI, low: 1.6, high: 2.2 },
};

export const STICK: StickSheet = {
  way: { centreline: 569, shortest: { low: 551, high: 552 }, longest: 586, uncertainty: 35 },
  seatToTip: { shortest: 561, middle: 579, longest: 596 },
  marks: [
    { name: 'low', litres: 3.5, at: 12, doubt: 17.5, perDegree: 2.3, from: 'fills' },
    { name: 'full', litres: 5, at: 31, doubt: 18.5, perDegree: null, from: 'pan' },
  ],
  pullOut: { from: [1, 2, 3], to: [1, 2, 30], direction: [0, 0, 1], length: 27 },
  tip: [400, 200, 7],
};

export const PRESSURE: LinePressure = {
  working: 10,
  straight: {
    barlowMPa: 20.56,
    boardmanMPa: 23,
    lameMPa: 23.16,
    leastMPa: 20.57,
    allowableMPa: 77.5,
    safetyFactor: 4,
    wallLeft: 0.63,
    thin: true,
    caution,
  },
  code: {
    straightMPa: 24.63,
    bendInsideMPa: 22.5,
    bendOutsideMPa: null,
    leastMPa: 22.39,
    safetyFactor: 1,
    allowableMPa: 137.9,
    caution,
  },
  proof: {
    pressureMPa: 20,
    burstMPa: null,
    medium: 'water or oil',
    source: 'a rule',
    mediumSource: 'common practice, no source',
    caution,
  },
};

export const FLOW: LineFlow = {
  drop: {
    velocityMPerS: 2.1,
    reynolds: 707,
    friction: { regime: 'laminar', factor: 0.091, low: 0.09, high: 0.092, caution },
    straightsMPa: 0.011,
    bendsMPa: 0.002,
    riseMPa: -0.0021,
    totalMPa: 0.0109,
    leastMPa: 0.0108,
    caution,
  },
  drain: { leastS: 6.2, evenS: 12.4, mostS: null, assumptions: ['full bore'], caution },
};

export const THERMAL: LineThermal = {
  deltaK: 100,
  growth: 1.72,
  movement: [1.1, -0.2, -0],
  leg: { length: 250, needed: 346, takes: false, stressMPa: 191, allowableMPa: 101, caution },
};

export const MASS: LineMass = {
  tubeKgPerM: 0.275,
  contentsKgPerM: 0.067,
  tubeKg: 0.156,
  contentsKg: 0.038,
  totalKg: 0.194,
  caution,
  contents: 44_700,
  frequency: { firstHz: 301, span: 300 },
};

const fact = (group: FactGroup, text: string, caution: string | null = null): Fact => ({
  group,
  label: `the ${group}`,
  text,
  basis: `what ${group} rests on`,
  caution,
});

export const FACTS: readonly Fact[] = [
  fact('pockets', '3.4 ml'),
  fact('passage', '38 mm'),
  fact('stick', '579 mm', 'verify by filling'),
  fact('stick', '31 mm', 'verify by filling'),
  fact('pressure', '20.6 MPa (206 bar)', caution),
  fact('flow', '12.4 s', caution),
  fact('thermal', '1.7 mm'),
  fact('mass', '0.2 kg', caution),
];

/** The line with every figure there is. */
export const withEverything = (worked: WorkedLine): WorkedLine => ({
  ...worked,
  slope: worked.slope && {
    ...worked.slope,
    proof: { holds: true, text: 'Falls everywhere toward end Z in every attitude.' },
  },
  pockets: POCKETS,
  passage: PASSAGE,
  stick: STICK,
  pressure: PRESSURE,
  flow: FLOW,
  thermal: THERMAL,
  mass: MASS,
  facts: FACTS,
});

/** A run through the line given, twice as far as its ids go. */
export const aRun = (worked: WorkedLine, lower: string): WorkedRun => ({
  run: {
    id: 'filler',
    name: 'filler and stick',
    lines: [worked.line.id, lower],
    drain: 'Z',
    stick: null,
    path: 'runs[0]',
  },
  verdict: 'note',
  findings: worked.findings.slice(0, 1),
  pockets: POCKETS,
  passage: { ...PASSAGE, tips: [{ line: 1, bend: 2, at: 700, longest: 39, alone: false }] },
  stick: STICK,
  facts: FACTS.slice(0, 3),
});
