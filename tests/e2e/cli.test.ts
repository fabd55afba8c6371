/** The command line as a person uses it, on the built command. */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Fact } from '@runback/checks';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { textOf } from '../helpers/pdf-reader.ts';
import { FIRST_TRY, inFolder, ROOT, runback, TENDER } from '../helpers/run.ts';

const NO_STACK = /\n\s+at .*:\d+:\d+/;

describe('runback', () => {
  it('tells how it is used, with examples', () => {
    const ran = runback(['--help']);
    expect(ran.code).toBe(0);
    for (const word of ['check', 'sheet', 'new', 'rows', 'schema', 'Examples:', 'DO NOT BEND'])
      expect(ran.out).toContain(word);
    for (const command of ['check', 'sheet', 'new', 'rows', 'schema']) {
      const help = runback([command, '--help']);
      expect(help.code).toBe(0);
      expect(help.out).toMatch(/Examples?:/);
    }
  });

  it('answers 2 to a call it does not understand, and suggests', () => {
    const ran = runback(['chek', TENDER]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('check');
    expect(runback(['check']).code).toBe(2);
    expect(runback(['check', TENDER, '--jsn']).code).toBe(2);
    expect(runback(['sheet', TENDER, '--from', 'q']).code).toBe(2);
    expect(runback(['check', TENDER, '--json', '--csv']).code).toBe(2);
  });
});

describe('runback check', () => {
  it('prints a table for each line, and 0 for a job that passes', () => {
    const ran = runback(['check', TENDER]);
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    expect(ran.out).toContain('Tender 7');
    expect(ran.out).toMatch(/bend\s+straight\s+turn\s+angle/);
    expect(ran.out).not.toMatch(/\u001b/);
    expect(ran.out).not.toMatch(/NaN|undefined|-0\.0\b/);
  });

  it('answers 1 for a job with a failing line, with the cure', () => {
    const ran = runback(['check', FIRST_TRY]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('FAIL');
    expect(ran.out).toContain('Basis:');
    const { lines } = JSON.parse(runback(['check', FIRST_TRY, '--json']).out) as {
      lines: { verdict: string }[];
    };
    const fails = lines.filter(({ verdict }) => verdict === 'fail').length;
    expect(fails).toBeGreaterThan(0);
    expect(ran.out.match(/DO NOT SAW, DO NOT BEND/g)).toHaveLength(fails);
    expect(ran.out.match(/· saw \d/g) ?? []).toHaveLength(lines.length - fails);
  });

  it('reads standard input', () => {
    const ran = runback(['check', '-'], { input: readFileSync(TENDER, 'utf8') });
    expect(ran.code).toBe(0);
  });

  it('prints the report as JSON and the bends as CSV', () => {
    const json = runback(['check', TENDER, '--json']);
    expect(json.code).toBe(0);
    expect(JSON.parse(json.out)).toMatchObject({ format: 'runback-report', version: 1, jobUnits: 'mm' });
    const csv = runback(['check', TENDER, '--csv']);
    expect(csv.code).toBe(0);
    expect(csv.out.split('\r\n').length).toBeGreaterThan(10);
  });

  it('has every figure of the liquid and the stick in the report, by its own schema', () => {
    const found = JSON.parse(runback(['check', TENDER, '--json']).out);
    const schema = JSON.parse(runback(['schema', '--report']).out);
    const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);
    validate(found);
    expect(validate.errors).toBeNull();
    for (const key of ['pockets', 'passage', 'stick', 'pressure', 'flow', 'thermal', 'mass', 'facts'])
      for (const line of found.lines) expect(line, line.id).toHaveProperty(key);
    expect(Array.isArray(found.runs)).toBe(true);
  });

  it('prints figures with their unit, and what they rest on when asked', () => {
    const found = JSON.parse(runback(['check', TENDER, '--json']).out);
    const calm = runback(['check', TENDER]).out.replace(/\s+/g, ' ');
    const all = runback(['check', TENDER, '--all']).out.replace(/\s+/g, ' ');
    const facts = [...found.lines, ...found.runs].flatMap((worked) => worked.facts) as Fact[];
    for (const { group, label, text, basis } of facts) {
      expect(all).toContain(`${label}: ${text}`);
      expect(all).toContain(basis);
      if (['pockets', 'passage', 'stick'].includes(group)) {
        expect(calm).toContain(`${label}: ${text}`);
        expect(calm).toContain(basis);
      }
    }
    for (const { slope } of found.lines) if (slope) expect(calm).toContain(slope.proof.text);
    expect(all).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('keeps what a terminal would obey out of its output', () => {
    const job = readFileSync(TENDER, 'utf8').replace('"title": "Tender 7', '"title": "Te\u202ender 7');
    expect(runback(['check', '-'], { input: job }).out).not.toMatch(/\u202e|\u001b/);
  });

  it('answers 2 to files that are not jobs, naming place, expected and found', () => {
    const missing = runback(['check', 'nowhere.job.json']);
    expect(missing.code).toBe(2);
    expect(missing.err).toContain('there is no such file');
    expect(runback(['check', ROOT]).err).toContain('folder');
    // The tests of the job file read them all; here every fourth shows how the command tells of it.
    const bad = readdirSync(join(ROOT, 'tests/fixtures/bad')).filter((name) => name.endsWith('.json'));
    for (const name of bad.filter((_, i) => i % 4 === 0)) {
      const ran = runback(['check', join('tests/fixtures/bad', name)]);
      expect(ran.code, name).toBe(2);
      expect(ran.out, name).toBe('');
      expect(ran.err, name).toMatch(new RegExp(`${name}:\\d+:\\d+: `));
      expect(ran.err, name).not.toMatch(NO_STACK);
    }
  }, 120_000);

  it('answers 2 to bytes that are not text', () =>
    inFolder((folder) => {
      const path = join(folder, 'junk.job.json');
      writeFileSync(path, Buffer.from([0xff, 0xfe, 0x00, 0x80, 0x81]));
      const ran = runback(['check', path]);
      expect(ran.code).toBe(2);
      expect(ran.err).toContain('not a text file');
    }));
});

describe('runback sheet', () => {
  it('writes one PDF for each line, the same bytes each time', () =>
    inFolder((folder) => {
      const [one, two] = [join(folder, 'one'), join(folder, 'two')];
      expect(runback(['sheet', TENDER, '--out', one]).code).toBe(0);
      expect(runback(['sheet', TENDER, '--out', two]).code).toBe(0);
      const names = readdirSync(one);
      const lines = JSON.parse(runback(['check', TENDER, '--json']).out).lines as { id: string }[];
      expect(names.sort()).toEqual(lines.map(({ id }) => `${id}.pdf`).sort());
      for (const name of names) {
        const bytes = readFileSync(join(one, name));
        expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
        expect(bytes.equals(readFileSync(join(two, name)))).toBe(true);
      }
    }));

  it('writes SVG when asked, a file for each page, the same bytes each time', () =>
    inFolder((folder) => {
      const [one, two] = [join(folder, 'one'), join(folder, 'two')];
      expect(runback(['sheet', TENDER, '--format', 'svg', '--out', one]).code).toBe(0);
      expect(runback(['sheet', TENDER, '--format', 'svg', '--out', two]).code).toBe(0);
      const names = readdirSync(one);
      expect(names.length).toBeGreaterThanOrEqual(5);
      expect(names.every((name) => name.endsWith('.svg'))).toBe(true);
      for (const name of names)
        expect(readFileSync(join(one, name), 'utf8')).toBe(readFileSync(join(two, name), 'utf8'));
    }));

  it('writes one PDF for the whole job, named after it', () =>
    inFolder((folder) => {
      expect(runback(['sheet', TENDER, '--one', '--out', folder]).code).toBe(0);
      expect(runback(['sheet', TENDER, '--one', '--from', 'z', '--out', folder]).code).toBe(0);
      expect(readdirSync(folder).sort()).toEqual(['tender-7-from-z.pdf', 'tender-7.pdf']);
      const nameless = readFileSync(TENDER, 'utf8').replace('"title": "Tender 7"', '"title": "../ ."');
      expect(runback(['sheet', '-', '--one', '--out', folder], { input: nameless }).code).toBe(0);
      expect(readdirSync(folder)).toContain('job.pdf');
      const both = runback(['sheet', TENDER, '--one', '--format', 'svg', '--out', folder]);
      expect(both.code).toBe(2);
      expect(both.err).toContain('--one makes a PDF');
    }));

  it('writes one line, from Z', () =>
    inFolder((folder) => {
      const call = ['sheet', TENDER, '--line', 'dipstick', '--from', 'z', '--out', folder];
      expect(runback(call).code).toBe(0);
      expect(runback([...call, '--format', 'svg']).code).toBe(0);
      const names = readdirSync(folder);
      expect(names).toContain('dipstick-from-z.pdf');
      expect(names.filter((name) => /^dipstick-from-z(-\d+)?\.svg$/.test(name))).toHaveLength(
        names.length - 1,
      );
    }));

  it('prints the strip of a stick with the line it goes in at', () =>
    inFolder((folder) => {
      const ran = runback(['sheet', TENDER, '--pages', 'none', '--aids', 'stick', '--out', folder]);
      expect(ran.code, ran.err).toBe(0);
      const strip = textOf(join(folder, 'dipstick.pdf')).replace(/\s+/g, ' ');
      for (const words of ['STICK STRIP 1:1', 'VERIFY BY FILLING', 'MAX · 12 L', 'MIN · 9 L', '± 0.5 mm'])
        expect(strip).toContain(words);
      expect(textOf(join(folder, 'dipstick-foot.pdf'))).not.toContain('STICK STRIP 1:1');
      expect(runback(['sheet', TENDER, '--line', 'dipstick-foot', '--out', folder]).code).toBe(0);
      expect(textOf(join(folder, 'dipstick-foot.pdf'))).toMatch(/RUN: *Dipstick tube, stepped/);
    }));

  it('stamps a failing line, and still writes it', () =>
    inFolder((folder) => {
      const ran = runback(['sheet', FIRST_TRY, '--format', 'svg', '--out', folder]);
      expect(ran.code).toBe(1);
      expect(ran.out).toContain('.svg  DO NOT BEND');
      expect(runback(['sheet', FIRST_TRY, '--one', '--out', join(folder, 'one')]).out).toMatch(
        /DO NOT BEND$/m,
      );
      const files = readdirSync(folder).filter((name) => name.endsWith('.svg'));
      expect(files.length).toBeGreaterThan(0);
      for (const name of files) expect(readFileSync(join(folder, name), 'utf8')).toContain('DO NOT BEND');
    }));

  it('writes nothing when the job or the line is not understood', () =>
    inFolder((folder) => {
      const out = join(folder, 'sheets');
      expect(runback(['sheet', TENDER, '--line', 'dipstik', '--out', out]).code).toBe(2);
      expect(runback(['sheet', '-', '--out', out], { input: '{ "format": ' }).code).toBe(2);
      expect(existsSync(out)).toBe(false);
    }));

  it('answers 3 when it cannot write, and leaves the old sheet whole', () =>
    inFolder((folder) => {
      writeFileSync(join(folder, 'file'), 'in the way');
      expect(runback(['sheet', TENDER, '--out', join(folder, 'file')]).code).toBe(3);
      mkdirSync(join(folder, 'out', 'dipstick.pdf'), { recursive: true });
      const ran = runback(['sheet', TENDER, '--line', 'dipstick', '--out', join(folder, 'out')]);
      expect(ran.code).toBe(3);
      expect(ran.err).not.toMatch(NO_STACK);
      expect(readdirSync(join(folder, 'out'))).toEqual(['dipstick.pdf']);
    }));
});

describe('runback new', () => {
  for (const service of ['dipstick', 'brake', 'fuel', 'oil-drain', 'vent', 'cooler', 'sensing', 'general'])
    for (const units of ['mm', 'in'])
      it(`a ${service} job in ${units} is understood as it stands`, () => {
        const made = runback(['new', '--service', service, '--units', units]);
        expect(made.code).toBe(0);
        const checked = runback(['check', '-'], { input: made.out });
        expect(checked.err).toBe('');
        expect(checked.code, checked.out).toBe(0);
      });

  it('never replaces a file unasked', () =>
    inFolder((folder) => {
      const path = join(folder, 'mine.job.json');
      expect(runback(['new', '--out', path]).code).toBe(0);
      const before = readFileSync(path, 'utf8');
      const again = runback(['new', '--units', 'in', '--out', path]);
      expect(again.code).toBe(3);
      expect(again.err).toContain('--force');
      expect(readFileSync(path, 'utf8')).toBe(before);
      expect(runback(['new', '--units', 'in', '--out', path, '--force']).code).toBe(0);
      expect(readFileSync(path, 'utf8')).not.toBe(before);
    }));

  it('answers 2 to a service nobody knows, with a suggestion', () => {
    const ran = runback(['new', '--service', 'dipstik']);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('dipstick');
    expect(ran.out).toBe('');
  });
});

describe('runback rows', () => {
  const rows = '100, , 90, 20\n120, 90, 45, 20\n80\n';

  it('makes a line that comes back as the same rows', () => {
    const made = runback(['rows', '-', '--tube', 't', '--id', 'copied'], { input: rows });
    expect(made.code).toBe(0);
    const job = `{ "format": "runback-job", "version": 1, "title": "Copy", "units": "mm",
      "tubes": { "t": { "material": "stainless-304", "od": 8, "wall": 1 } }, "lines": [${made.out}] }`;
    const report = JSON.parse(runback(['check', '-', '--json'], { input: job }).out);
    const [first, second] = report.lines[0].bends;
    expect(first).toMatchObject({ turn_deg: null });
    expect(first.straightBefore_mm).toBeCloseTo(100, 6);
    expect(second.turn_deg).toBeCloseTo(90, 6);
    expect(second.angle_deg).toBeCloseTo(45, 6);
    expect(report.lines[0].lastStraight_mm).toBeCloseTo(80, 6);
  });

  it('takes a turn as a height above the plate', () => {
    const typed =
      'straight,angle,radius,height,along,curves,goes\n100,90,20\n120,90,20,50,100,right,on\n80\n';
    const made = runback(['rows', '-'], { input: typed });
    expect(made.code, made.err).toBe(0);
    const last = JSON.parse(made.out).points.at(-1).at as number[];
    const before = JSON.parse(made.out).points.at(-2).at as number[];
    const leg = [0, 1, 2].map((i) => last[i]! - before[i]!);
    // The first bend curves left about +Z; lying so that it curves right, up is −Z: a rise of 1 in 2 goes down in Z.
    expect(leg[2]! / Math.hypot(...leg)).toBeCloseTo(-0.5, 9);
  });

  it('reads inches and fractions, and leaves nothing behind on a fault', () => {
    const made = runback(['rows', '-', '--units', 'in', '--radius', '9/16'], {
      input: '4; ;90\n1 7/16;0;30\n2 1/2\n',
    });
    expect(made.code, made.err).toBe(0);
    expect(JSON.parse(made.out).points[1].at[0]).toBeCloseTo(4 + 9 / 16, 9);
    const bad = runback(['rows', '-', '--radius', '20'], { input: '100,,ninety\n50,200,30\n10,5\n' });
    expect(bad.code).toBe(2);
    expect(bad.out).toBe('');
    expect(bad.err).toMatch(/:1: angle.*"ninety"/);
    expect(bad.err).toMatch(/:2: turn.*"200"/);
    expect(bad.err).toMatch(/:3: .*last straight/);
  });
});

describe('runback schema', () => {
  it('prints both schemas', () => {
    for (const [call, title] of [
      [[], 'Runback job'],
      [['--report'], 'Runback report'],
    ] as const) {
      const schema = JSON.parse(runback(['schema', ...call]).out);
      expect(schema.$schema).toContain('2020-12');
      expect(schema.title).toBe(title);
    }
  });
});
