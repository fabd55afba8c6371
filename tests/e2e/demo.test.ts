/** The examples are jobs a person can run: their cures pass, their first tries fail as told, and their tables are true. */
import { readFileSync } from 'node:fs';
import { catalogue } from '@runback/catalogue';
import { type WorkedJob, type WorkedLine, workJob } from '@runback/checks';
import { distance, fromRows, pointAt } from '@runback/geometry';
import { type LineEnd, parseJob, resolve } from '@runback/job';
import { describe, expect, it } from 'vitest';

const read = (file: string): string =>
  readFileSync(new URL(`../../docs/examples/${file}`, import.meta.url), 'utf8');
const work = (file: string): WorkedJob =>
  workJob(resolve(parseJob(read(file), { catalogue, file }), catalogue));

const DEGREE = Math.PI / 180;
const cured = work('tender-7/tender-7.job.json');
const first = work('tender-7/first-try.job.json');
const inch = work('inch/pump-set.job.json');
const readme = read('tender-7/README.md');

function lineOf(job: WorkedJob, id: string): WorkedLine {
  const found = job.lines.find((worked) => worked.line.id === id);
  if (!found) throw new Error(`no line "${id}" in ${job.title}`);
  return found;
}

const failed = (worked: WorkedLine) => worked.findings.filter((f) => f.verdict === 'fail');
const told = (worked: WorkedLine) => failed(worked).map((f) => `${worked.line.id}: ${f.check}: ${f.message}`);

describe('Tender 7, cured', () => {
  it('has seven lines and the opposite hand of one', () => {
    expect(cured.lines.map((worked) => worked.line.id)).toEqual([
      'dipstick',
      'dipstick-foot',
      'brake-rear',
      'brake-front',
      'fuel-feed',
      'pump-drain',
      'breather',
      'dipstick-right',
    ]);
  });

  it('every line passes or notes', () => {
    expect(cured.lines.flatMap(told)).toEqual([]);
    expect(cured.verdict).toBe('note');
    expect(['dipstick', 'dipstick-right'].map((id) => lineOf(cured, id).verdict)).toEqual(['pass', 'pass']);
  });

  it('what stays in the fuel line on a slope is a note', () => {
    const tilted = lineOf(cured, 'fuel-feed').findings.filter(
      (f) => f.check === 'slope' && (f.found ?? 0) < 0,
    );
    expect(tilted.map((f) => f.verdict)).toEqual(['note']);
  });

  it('every line has its own place: nothing nearer than wanted, lines among each other too', () => {
    for (const worked of cured.lines) {
      const between = worked.clearance.filter((row) => row.kind === 'line');
      expect(between.length, worked.line.id).toBe(cured.lines.length - 1);
      for (const row of worked.clearance)
        expect(row.distance, `${worked.line.id} to ${row.to}`).toBeGreaterThan(row.keepOff);
    }
  });

  it('the opposite hand is the same but for its turns', () => {
    const [left, right] = [lineOf(cured, 'dipstick'), lineOf(cured, 'dipstick-right')];
    expect(right.plan?.developedLength).toBeCloseTo(left.plan?.developedLength ?? Number.NaN, 9);
    const turns = (worked: WorkedLine) =>
      worked.plan?.rows.slice(1).map((row) => row.turn ?? Number.NaN) ?? [];
    expect(turns(right).length).toBe(1);
    turns(right).forEach((turn, i) => {
      expect(turn).toBeCloseTo(-(turns(left)[i] ?? Number.NaN), 9);
    });
  });

  it('shows calibrated dies and ones that are not, and benches that differ', () => {
    const calibrated = (id: string) => lineOf(cured, id).plan?.rows.map((row) => row.calibrated);
    expect(calibrated('dipstick')).toEqual([true, true]);
    expect(calibrated('breather')).toEqual([false, false, false]);
    const stands = new Set(
      cured.lines.flatMap(({ line: { bender } }) => (bender ? [JSON.stringify(bender.bench)] : [])),
    );
    expect(stands.size).toBe(3);
    expect(lineOf(cured, 'brake-rear').plan?.rows.every((row) => row.markFinished === row.start - 2)).toBe(
      true,
    );
  });

  it('a wrong turn at bend 2 of the dipstick moves its end and not its end-to-end', () => {
    const { plan } = lineOf(cured, 'dipstick');
    if (!plan) throw new Error('dipstick has no plan');
    const wrong = plan.rows.map((row) => ({ ...row, turn: row.turn === null ? null : -row.turn }));
    const [right, other] = [fromRows(plan.rows, plan.lastStraight), fromRows(wrong, plan.lastStraight)];
    const [z, zWrong] = [pointAt(right, right.length), pointAt(other, other.length)];
    const said = Number(/ends (\d+) mm off/.exec(readme)?.[1]);
    expect(Math.round(distance(z, zWrong))).toBe(said);
    expect(Math.hypot(...z)).toBeCloseTo(Math.hypot(...zWrong), 9);
  });
});

describe('the stepped dipstick run', () => {
  const runOf = (job: WorkedJob) => job.runs.find((worked) => worked.run.id === 'dipstick-run');

  it('steps from 12 down to 10, lets its stick through once cured, and drains', () => {
    expect(runOf(first)?.verdict).toBe('fail');
    expect(runOf(cured)?.verdict).toBe('note');
    expect(runOf(cured)?.pockets?.liquid.volume).toBe(0);
    expect(runOf(cured)?.passage?.steps.map(({ step, catches }) => [step, catches])).toEqual([
      [1, 'going in'],
    ]);
  });

  it('marks the stick where it was read when it was filled', () => {
    const marks = runOf(cured)?.stick?.marks.map(({ name, at, from }) => [name, at, from]);
    expect(marks).toEqual([
      ['MIN', 45, 'fills'],
      ['MAX', 64.5, 'fills'],
    ]);
    const said = Number(/(\d\.\d) mm along the stick for each\s+degree/.exec(readme)?.[1]);
    expect(runOf(cured)?.stick?.marks[0]?.perDegree?.toFixed(1)).toBe(said.toFixed(1));
  });
});

it('the loop of the front brake line keeps its air until it is turned flat', () => {
  const airOf = (job: WorkedJob) => (lineOf(job, 'brake-front').pockets?.air?.volume ?? Number.NaN) / 1000;
  expect(airOf(first)).toBeGreaterThan(1.5);
  expect(airOf(cured)).toBe(0);
});

it('the brake line turns by nearly a half turn twice, as its story says', () => {
  const said = /bends 2 and 3 are (\d\.\d)° and (\d\.\d)° short/.exec(readme)?.slice(1);
  const turns = lineOf(cured, 'brake-rear').plan?.rows.slice(1, 3) ?? [];
  expect(turns.map((row) => (180 - Math.abs(row.turn ?? 0) / DEGREE).toFixed(1))).toEqual(said);
});

/** What a figure of the table is: found and wanted, mm, degrees, ml or per cent, and null where the line has none. */
type Figure = (worked: WorkedLine, job: WorkedJob) => readonly [found: number, wanted: number] | null;

/** Behind a formed end nut, sleeve and bar; at a plain one the tool's tail. */
function wantedAt(worked: WorkedLine, end: LineEnd): number {
  const behind = end.fitting.bar.value + (end.nut?.length ?? 0) + (end.sleeve?.length ?? 0);
  const die = worked.line.corners.find((corner) => corner.die)?.die;
  return Math.max(
    behind,
    end === worked.line.endA && end.spare.value === 0 ? (die?.minTail?.value ?? 0) : behind,
  );
}

const clearanceTo = (worked: WorkedLine, to: string): ReturnType<Figure> => {
  const row = worked.clearance.find((r) => r.kind === 'surrounding' && r.to === to);
  return row ? [row.distance, row.keepOff] : null;
};

/** mm³ as ml, where nothing is wanted. */
const left = (volume: number | undefined): ReturnType<Figure> => [(volume ?? Number.NaN) / 1000, 0];

/** The passage of the stick through the first bend of a line of the run: null where the line has no bend. */
function stickIn(worked: WorkedLine, job: WorkedJob) {
  const run = job.runs.find(({ run: { lines } }) => lines.includes(worked.line.id));
  const line = run?.run.lines.indexOf(worked.line.id);
  const tip = run?.passage?.tips.find((t) => t.line === line && t.bend === 0);
  const bend = run?.passage?.blade?.bends.find((b) => b.line === line && b.bend === 0);
  const stick = run?.run.stick;
  return tip && bend && stick?.kind === 'blade' ? { tip, bend, stick } : null;
}

/** Strain a blade springs back from: yield over modulus. */
function springsBack({ material }: NonNullable<ReturnType<typeof stickIn>>['stick']): number {
  const [yields, modulus] = [material?.yield?.value, material?.youngs?.value];
  return yields === undefined || modulus === undefined ? Number.NaN : yields / modulus;
}

const FIGURES: Readonly<Record<string, Figure>> = {
  'least fall at rest': ({ findings }) => {
    const told = findings.find(({ check }) => check === 'slope');
    return told ? [told.found ?? Number.NaN, told.limit ?? Number.NaN] : null;
  },
  'least fall, worst attitude': ({ slope, line }) =>
    slope && line.drain ? [slope.worst.slope / DEGREE, line.drain.minSlopeTilted.value / DEGREE] : null,
  'clear of exhaust-1': (worked) => clearanceTo(worked, 'exhaust-1'),
  'clear of exhaust-2': (worked) => clearanceTo(worked, 'exhaust-2'),
  'clear of the silencer': (worked) => clearanceTo(worked, 'silencer'),
  'clear of the prop shaft': (worked) => clearanceTo(worked, 'prop-shaft'),
  'first straight': (worked) => [
    worked.plan?.rows[0]?.straightBefore ?? Number.NaN,
    wantedAt(worked, worked.line.endA),
  ],
  'last straight': (worked) => [worked.plan?.lastStraight ?? Number.NaN, wantedAt(worked, worked.line.endZ)],
  'last straight, nut alone': ({ plan, line }) => [
    plan?.lastStraight ?? Number.NaN,
    (line.endZ.nut?.length ?? Number.NaN) + (line.endZ.sleeve?.length ?? 0),
  ],
  'shortest straight between bends': ({ plan, line }) => [
    Math.min(...(plan?.rows.slice(1).map((row) => row.straightBefore) ?? [])),
    line.corners.find((corner) => corner.die)?.die?.minStraight?.value ?? Number.NaN,
  ],
  'bends in all': ({ plan }) => [
    (plan?.rows.reduce((sum, row) => sum + row.angle, 0) ?? Number.NaN) / DEGREE,
    Number.NaN,
  ],
  'liquid left at rest': ({ pockets }) => left(pockets?.liquid.volume),
  'liquid left, worst attitude': ({ pockets }) => left(pockets?.worst?.volume),
  'air left when bled': ({ pockets }) => left(pockets?.air?.volume),
  'stiff tip in its bend': (worked, job) => {
    const seen = stickIn(worked, job);
    return seen && [seen.stick.tip?.length ?? Number.NaN, seen.tip.longest];
  },
  'strain of the blade in its bend': (worked, job) => {
    const seen = stickIn(worked, job);
    return seen && [100 * seen.bend.strain, 100 * springsBack(seen.stick)];
  },
  'finished length': ({ plan }) => [plan?.developedLength ?? Number.NaN, Number.NaN],
};

interface Row {
  readonly line: string;
  readonly figure: string;
  readonly check: string;
  readonly first: string;
  readonly cured: string;
  readonly wanted: string;
}

/** The table of the README: line, figure, check, first try (bold: fails), cured, wanted. */
function table(): Row[] {
  const lines = readme.split('\n');
  const from = lines.findIndex((text) => /^\|\s*line\s*\|\s*figure\s*\|/.test(text));
  const rest = lines.slice(from + 2);
  return rest
    .slice(
      0,
      rest.findIndex((text) => !text.startsWith('|')),
    )
    .map((text) =>
      text
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    )
    .map(([line = '', figure = '', check = '', tried = '', cure = '', wanted = '']) => ({
      line,
      figure,
      check,
      first: tried,
      cured: cure,
      wanted,
    }));
}

const rows = table();
const bare = (cell: string): string =>
  cell
    .replaceAll('*', '')
    .replace(/ mm| ml| %|°/, '')
    .replace('−', '-');
const say = (value: number): string =>
  Number.isNaN(value) ? '–' : value.toFixed(1).replace(/^-0\.0$/, '0.0');

describe('the table of docs/examples/tender-7/README.md', () => {
  it('covers every line of the story', () => {
    expect(new Set(rows.map((row) => row.line))).toEqual(
      new Set(first.lines.map((worked) => worked.line.id)),
    );
  });

  it.each(rows)('$line: $figure', (row) => {
    const figure = FIGURES[row.figure];
    if (!figure) throw new Error(`unknown figure "${row.figure}"`);
    const [before, after] = [figure(lineOf(first, row.line), first), figure(lineOf(cured, row.line), cured)];
    expect({ first: bare(row.first), cured: bare(row.cured), wanted: bare(row.wanted) }).toEqual({
      first: say(before?.[0] ?? Number.NaN),
      cured: say(after?.[0] ?? Number.NaN),
      wanted: say((after ?? before)?.[1] ?? Number.NaN),
    });
  });

  it.each(first.lines.map((worked) => worked.line.id))('%s fails in its first try just as told', (id) => {
    const bold = rows.filter((row) => row.line === id && row.first.startsWith('**'));
    expect(bold.length).toBeGreaterThan(0);
    const said = bold.map((row) => `${row.check} ${bare(row.first)} ${bare(row.wanted)}`).sort();
    const found = failed(lineOf(first, id)).map(
      (f) => `${f.check} ${say(f.found ?? Number.NaN)} ${say(f.limit ?? Number.NaN)}`,
    );
    expect(found.sort()).toEqual(said);
  });
});

describe('the inch example', () => {
  it('is in inches and passes', () => {
    expect(inch.units).toBe('in');
    expect(inch.lines.flatMap(told)).toEqual([]);
  });

  it('reads fractions and feet exactly', () => {
    const [line] = inch.lines;
    expect(line?.line.tube.od).toBe(9.525);
    expect(line?.line.corners[0]?.at).toEqual([0, 107.95, 457.2]);
    expect(line?.line.corners.at(-1)?.at[0]).toBe(787.4);
  });

  it('its README gives the finished length and the least fall as worked', () => {
    const text = read('inch/README.md');
    const [line] = inch.lines;
    const inches = /finished length (\d+\.\d+) in/.exec(text)?.[1];
    expect(inches).toBe(((line?.plan?.developedLength ?? Number.NaN) / 25.4).toFixed(2));
    const fall = /least\s+fall (\d+\.\d)°/.exec(text)?.[1];
    expect(fall).toBe(((line?.slope?.rest.slope ?? Number.NaN) / DEGREE).toFixed(1));
  });
});

describe('the commands of the READMEs', () => {
  it.each(['tender-7', 'inch'])('%s names files that are there', (folder) => {
    const text = read(`${folder}/README.md`);
    const named = [...text.matchAll(/docs\/examples\/([\w./-]+\.job\.json)/g)].map((match) => match[1] ?? '');
    expect(named.length).toBeGreaterThan(0);
    for (const file of named) expect(parseJob(read(file), { catalogue, file })).toBeDefined();
  });
});
