/** Sticks, facts and runs made by hand for the tests of the sheet: only what it reads. */
import type { Fact, FactGroup, StickMark, StickSheet, WorkedLine, WorkedRun } from '@runback/checks';
import type { Stick } from '@runback/job';

export const blade = (over: Partial<Stick> = {}): Stick => ({
  kind: 'blade',
  enters: 'Z',
  material: null,
  thickness: 0.8,
  width: 5,
  link: null,
  tip: { length: 25, thickness: 2, width: 7 },
  seat: 6,
  beyond: 90,
  friction: null,
  pan: null,
  fills: [],
  levels: [],
  path: 'lines[0].stick',
  ...over,
});

export const mark = (name: string, at: number, over: Partial<StickMark> = {}): StickMark => ({
  name,
  litres: 4,
  at,
  doubt: 3.6,
  perDegree: 1.72,
  from: 'pan',
  ...over,
});

export const MIN_MAX: readonly StickMark[] = [
  mark('MIN', 31.4, { litres: 3.2 }),
  mark('MAX', 58.9, { litres: 4.5, doubt: 3.61 }),
];

export const stickSheet = (over: Partial<StickSheet> = {}): StickSheet => ({
  way: { centreline: 710, shortest: { low: 706, high: 706.4 }, longest: 713.2, uncertainty: 7.2 },
  seatToTip: { shortest: 802, middle: 806, longest: 809.2 },
  marks: MIN_MAX,
  pullOut: { from: [0, 0, 0], to: [0, 0, 800], direction: [0, 0, 1], length: 806 },
  tip: [60, 130, -90],
  ...over,
});

export const fact = (group: FactGroup, label: string, over: Partial<Fact> = {}): Fact => ({
  group,
  label,
  text: '3.4 ml',
  basis: `${group}: worked from the bore, no surface tension.`,
  caution: null,
  ...over,
});

/** A line with the stick its own. */
export const withStick = (
  line: WorkedLine,
  how: {
    readonly stick?: Partial<Stick>;
    readonly sheet?: Partial<StickSheet> | null;
    readonly facts?: readonly Fact[];
  } = {},
): WorkedLine => ({
  ...line,
  line: { ...line.line, stick: blade(how.stick) },
  stick: how.sheet === null ? null : stickSheet(how.sheet),
  facts: how.facts ?? [
    fact('stick', 'seat to tip', {
      text: '806 mm, 802 to 809.2 by the way it lies',
      basis: 'Shortest and longest way in the bore; a blade that snakes is longer.',
    }),
    fact('stick', 'one degree of tilt', {
      text: 'up to 1.7 mm of reading',
      basis: 'Upright walls, level liquid.',
      caution: 'Worked, not measured: verify by filling before the engine runs by it.',
    }),
  ],
});

export const runOf = (lines: readonly string[], over: Partial<WorkedRun> = {}): WorkedRun => ({
  run: {
    id: 'dipstick-run',
    name: 'Stepped dipstick',
    lines,
    drain: null,
    stick: blade({ path: 'runs[0].stick' }),
    path: 'runs[0]',
  },
  verdict: 'pass',
  findings: [],
  pockets: null,
  passage: null,
  stick: stickSheet(),
  facts: [fact('stick', 'seat to tip'), fact('pockets', 'stays in it at rest')],
  ...over,
});

export const GROUPS: readonly FactGroup[] = [
  'pockets',
  'passage',
  'stick',
  'pressure',
  'flow',
  'thermal',
  'mass',
];

export const ALL_FACTS: readonly Fact[] = [
  fact('pockets', 'stays in it at rest'),
  fact('pockets', 'stays at the worst', { text: '12.0 ml, nose down 5°' }),
  fact('passage', 'longest stiff tip', { text: '38.2 mm through bend 2' }),
  fact('stick', 'seat to tip', { text: '806 mm ± 4' }),
  fact('pressure', 'Barlow, straight tube', {
    text: '20.6 MPa (206 bar)',
    basis: 'Outside diameter, nominal wall less 10 %, safety factor 4.',
    caution: 'An estimate, not approval: have it tested.',
  }),
  fact('pressure', 'Lamé, straight tube', {
    text: '19.1 MPa (191 bar)',
    basis: 'Thick wall.',
    caution: 'An estimate, not approval: have it tested.',
  }),
  fact('flow', 'pressure drop', { text: '1.2 kPa at 8 L/min' }),
  fact('thermal', 'grows', { text: '1.1 mm from 20 °C to 120 °C' }),
  fact('mass', 'tube', { text: '0.19 kg' }),
];
