/** Every place of a job where a length stands: "*" is any key, "[]" each element. Held to the schema by a test. */
const STICK = [
  ...['thickness', 'width', 'link', 'seat', 'beyond', 'tip.length', 'tip.thickness', 'tip.width'],
  ...['pan.middle[]', 'pan.size[]', 'fills[].at'],
];
const END = ['free', 'spare', 'opening', 'nut.length', 'nut.bore', 'nut.acrossFlats', 'sleeve.length'];
const CLEARANCE = ['clearance.self', 'clearance.lines', 'clearance.to.*'];
const HABITS = ['stretchPerDegree', 'markOffset'];
const REASONS = ['hot', 'moving', 'fixed', 'wiring'];

const under = (prefix: string, keys: readonly string[]): readonly string[] =>
  keys.map((key) => `${prefix}.${key}`);

export const LENGTH_PATHS: readonly string[] = [
  ...under('tubes.*', ['od', 'wall', 'stock']),
  ...under('benders.*', HABITS),
  ...under('benders.*.dies[]', ['od', 'radius', 'minStraight', 'minTail', ...HABITS]),
  ...under('surroundings[]', ['keepOff', 'od', 'radius', 'diameter', 'points[][]', 'point[]']),
  ...under('surroundings[]', ['min[]', 'max[]', 'centre[]', 'size[]', 'from[]', 'to[]']),
  ...under('lines[]', ['points[].at[]', 'points[].radius', 'clips[]', 'offset', ...CLEARANCE]),
  ...under('lines[].endA', END),
  ...under('lines[].stick', STICK),
  ...under('runs[].stick', STICK),
  ...under('lines[].endZ', END),
  ...under('fittings.*', ['uses', 'bar']),
  ...under('services.*.keepOff', REASONS),
  ...under('keepOff', REASONS),
  'clearance.self',
  'clearance.lines',
  'clipSpacing[].od',
  'clipSpacing[].spacing',
  'spareZ',
];
