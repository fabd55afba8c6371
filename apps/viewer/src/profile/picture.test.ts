import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  lineProfile,
  pocketsIn,
  profileFalls,
  upIn,
  type Vec3,
  type WorkedJob,
  type WorkedLine,
  workUp,
} from 'runback';
import { describe, expect, it } from 'vitest';
import { curveY } from './curve.ts';
import { xOf, yOf } from './frame.ts';
import { overlap } from './measure.ts';
import { profilePicture } from './picture.ts';
import { readOut } from './read-out.ts';
import { readingAt } from './readings.ts';
import { pencilMarks } from './seats.ts';
import type { Label, ProfileInput, ProfilePicture } from './types.ts';

const EXAMPLES = join(import.meta.dirname, '../../../../docs/examples/tender-7');
const read = (name: string): WorkedJob => workUp(readFileSync(join(EXAMPLES, name), 'utf8'));

const tender = read('tender-7.job.json');
const firstTry = read('first-try.job.json');

/** Bends one after the other, up and down, right and left. */
const manyBends = (bends: number): WorkedJob => {
  const points = Array.from({ length: bends + 2 }, (_, i) => ({
    at: [i * 70, (i % 3) * 40, 300 + (i % 2) * 45 - i * 12],
    ...(i > 0 && i <= bends ? { radius: 15 } : {}),
  }));
  return workUp(
    JSON.stringify({
      format: 'runback-job',
      version: 1,
      units: 'mm',
      tubes: { t: { material: 'copper-nickel-90-10', od: 5, wall: 0.7 } },
      lines: [{ id: 'many', tube: 't', points, drain: { to: 'Z' }, clips: [35, 400, 405, 410, 900] }],
    }),
  );
};

const straight = (over: object = {}): WorkedJob =>
  workUp(
    JSON.stringify({
      format: 'runback-job',
      version: 1,
      units: 'in',
      tubes: { t: { material: 'stainless-304', od: 0.5, wall: 0.049 } },
      lines: [{ id: 'rail', tube: 't', points: [{ at: [0, 0, 0] }, { at: [20, 0, 0] }], ...over }],
    }),
  );

const all: readonly (readonly [string, WorkedJob, WorkedLine])[] = [
  ['tender-7', tender],
  ['first-try', firstTry],
  ['25 bends', manyBends(25)],
  ['straight', straight()],
].flatMap(([name, job]) =>
  (job as WorkedJob).lines.map((line) => [`${name} ${line.line.id}`, job as WorkedJob, line] as const),
);

const sizes = [320, 360, 390, 480, 600, 674, 768, 900, 1008, 1200, 1400].map((width) => ({
  width,
  height: width < 500 ? 300 : 220,
  text: width < 500 ? 13 : 11.5,
}));

function inputOf(job: WorkedJob, worked: WorkedLine, over: Partial<ProfileInput> = {}): ProfileInput {
  const up: Vec3 = over.up ?? worked.line.axes.up;
  const style = over.style ?? job.units;
  const profile = lineProfile(worked, job)!;
  return {
    worked,
    profile,
    falls: profileFalls(profile, worked.line, up),
    up,
    pockets: worked.line.drain ? pocketsIn(worked, up) : null,
    marks: pencilMarks(worked, style),
    colour: 'slope',
    style,
    selection: null,
    size: { width: 900, height: 220, text: 11.5 },
    ...over,
  };
}

function touching(labels: readonly Label[]): readonly string[] {
  return labels.flatMap((a, i) =>
    labels.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [`"${a.text}" and "${b.text}"`] : [])),
  );
}

const outside = ({ labels, frame: { size } }: ProfilePicture): readonly string[] =>
  labels
    .filter(
      ({ box }) =>
        box.x < 0 || box.x + box.width > size.width || box.y < 0 || box.y + box.height > size.height,
    )
    .map(({ text }) => text);

describe('lettering', () => {
  it.each(all)('%s: no two labels touch and all lie inside, at every width', (_, job, worked) => {
    const input = inputOf(job, worked);
    for (const size of sizes) {
      const picture = profilePicture({ ...input, size });
      expect([size.width, touching(picture.labels)]).toEqual([size.width, []]);
      expect([size.width, outside(picture)]).toEqual([size.width, []]);
    }
  });

  it('keeps apart in inches, tipped, and with a bend selected', () => {
    for (const worked of [...tender.lines, ...firstTry.lines]) {
      const job = tender.lines.includes(worked) ? tender : firstTry;
      const up = upIn(worked.line.axes, 0.08, -0.05);
      const selection = { kind: 'bend', index: 1 } as const;
      const input = inputOf(job, worked, { style: 'in', up, selection });
      for (const size of sizes) expect(touching(profilePicture({ ...input, size }).labels)).toEqual([]);
    }
  });

  it('names every bend where there is room, and always the selected one', () => {
    const [job, line] = [manyBends(25), manyBends(25).lines[0]!];
    const heads = (width: number, selected: number): readonly string[] =>
      profilePicture(
        inputOf(job, line, {
          selection: { kind: 'bend', index: selected },
          size: { width, height: 300, text: 11.5 },
        }),
      )
        .labels.filter(({ key }) => key.startsWith('bend-'))
        .map(({ text }) => text);
    expect(heads(1400, 3)).toHaveLength(25);
    expect(heads(320, 13).length).toBeLessThan(25);
    for (let i = 0; i < 25; i++) expect(heads(320, i)).toContain(`B${i + 1}`);
  });

  it('says the turn in words and never a bare sign', () => {
    const picture = profilePicture(inputOf(tender, tender.lines[0]!));
    expect(picture.labels.find(({ key }) => key === 'bend-1')?.text).toBe('B2 · 64.7°');
    expect(picture.labels.find(({ key }) => key === 'turn-1')?.text).toBe('turn 59°');
    expect(picture.bands[1]!.dial!.turn).toBeCloseTo((-58.6 * Math.PI) / 180, 2);
    expect(picture.bands[0]!.dial).toBeNull();
  });
});

describe('places', () => {
  it.each(all)('%s: bands lie where the bends are, and the line where its height is', (_, job, worked) => {
    const input = inputOf(job, worked);
    const { frame, bands, spots } = profilePicture(input);
    for (const [i, { start, end }] of worked.centreline!.bends.entries()) {
      expect(bands[i]!.x).toBeCloseTo(xOf(frame, start), 9);
      expect(bands[i]!.x + bands[i]!.width).toBeCloseTo(xOf(frame, end), 9);
    }
    expect([spots[0]!.x, spots.at(-1)!.x]).toEqual([frame.left, frame.left + frame.perMm * frame.length]);
    for (let i = 0; i <= 40; i++) {
      const at = (frame.length * i) / 40;
      expect(curveY(spots, xOf(frame, at))).toBeCloseTo(yOf(frame, readingAt(input, at).height), 6);
    }
  });

  it.each(all)('%s: the scale of heights is what it says', (_, job, worked) => {
    const input = inputOf(job, worked);
    for (const size of sizes) {
      const { frame, spots, labels } = profilePicture({ ...input, size });
      const rise =
        (spots[0]!.y - spots.at(-1)!.y) / (input.falls.at(-1)!.height - input.falls[0]!.height || 1);
      const along = (spots.at(-1)!.x - spots[0]!.x) / frame.length;
      const level = input.falls.at(-1)!.height === input.falls[0]!.height;
      if (!level) expect(rise / along).toBeCloseTo(frame.exaggeration, 6);
      const said = labels
        .filter(({ key }) => key === 'height-scale' || key === 'height-unit')
        .map(({ text }) => text)
        .join(' ');
      expect(said).toContain(
        frame.exaggeration === 1
          ? 'height to scale'
          : `×${frame.exaggeration.toFixed(said.match(/\.(\d+)/u)![1]!.length)}`,
      );
      expect(Math.min(...spots.map(({ y }) => y))).toBeGreaterThanOrEqual(frame.rows.plot.top);
      expect(Math.max(...spots.map(({ y }) => y))).toBeLessThanOrEqual(frame.rows.plot.bottom);
    }
  });

  it('writes distances and heights in the style that is read', () => {
    const picture = profilePicture(inputOf(tender, tender.lines[0]!, { style: 'in' }));
    expect(picture.labels.find(({ key }) => key === 'along-end')?.text).toBe('27 19/32 in');
  });
});

describe('colours', () => {
  const tones = (over: Partial<ProfileInput>, line: WorkedLine): readonly string[] =>
    profilePicture(inputOf(firstTry, line, over)).stretches.map(({ tone }) => tone);
  const [dipstick] = firstTry.lines as [WorkedLine];

  it('follow the verdict of the slope, the clearance, or nothing', () => {
    expect(tones({ colour: 'slope' }, dipstick)).toEqual(['pass', 'fail']);
    expect(tones({ colour: 'clearance' }, dipstick)).toEqual(['pass', 'fail', 'pass']);
    expect(tones({ colour: 'plain' }, dipstick)).toEqual(['plain']);
  });

  it('change as the machine is tipped', () => {
    const rest = tones({}, dipstick);
    const steep = tones({ up: upIn(dipstick.line.axes, -0.2, 0) }, dipstick);
    expect(steep).not.toEqual(rest);
  });

  it('are neutral without a drain', () => {
    const job = straight();
    const picture = profilePicture(inputOf(job, job.lines[0]!));
    expect(picture.stretches.map(({ tone }) => tone)).toEqual(['plain']);
    expect(picture.limit).toBeNull();
    expect(picture.ends.map(({ drop }) => drop)).toEqual([null, null]);
  });
});

describe('signs', () => {
  const drain = firstTry.lines.find(({ line }) => line.id === 'pump-drain')!;
  const brake = firstTry.lines.find(({ line }) => line.id === 'brake-rear')!;
  const amounts = ({ labels }: ProfilePicture): readonly string[] =>
    labels.map(({ text }) => text).filter((text) => text.endsWith(' ml'));

  it('puts a drop where liquid stays, with how much and its finding at rest', () => {
    const picture = profilePicture(inputOf(firstTry, drain));
    expect(picture.pockets.map(({ kind, at }) => [kind, Math.round(at)])).toEqual([['liquid', 439]]);
    expect(amounts(picture)).toEqual(['liquid 3.4 ml']);
    const [pocket] = picture.pockets;
    expect(pocket!.findings.map((i) => drain.findings[i]!.message).join()).toMatch(/liquid/u);
  });

  it('follows the tilt, when no finding tells of it', () => {
    const up = upIn(drain.line.axes, -0.08, 0);
    const picture = profilePicture(inputOf(firstTry, drain, { up }));
    expect(amounts(picture)).not.toEqual(['liquid 3.4 ml']);
    expect(picture.pockets.flatMap(({ findings }) => findings)).toEqual([]);
    expect(profilePicture(inputOf(firstTry, drain, { pockets: null })).pockets).toEqual([]);
  });

  it('fills the bore as far as the level, where the bore is wide enough in the drawing', () => {
    const input = inputOf(firstTry, drain, { size: { width: 2400, height: 900, text: 11.5 } });
    const { frame, pockets, spots } = profilePicture(input);
    const { level, point } = input.pockets!.liquid!.pockets[0]!;
    const { fill, x } = pockets[0]!;
    const [, x1, y, x2] = /^M([\d.]+) ([\d.]+)H([\d.]+)$/u.exec(fill.surface)!.map(Number) as number[];
    const [, , upward] = input.up.map((part, k) => part * point[k]!);
    const above = level - upward!;
    expect(Math.abs(y! - (curveY(spots, x) - above * frame.perMm * frame.exaggeration))).toBeLessThan(0.5);
    expect(x1).toBeLessThan(x);
    expect(x2).toBeGreaterThan(x);
    const thin = profilePicture(inputOf(firstTry, drain, { size: { width: 390, height: 220, text: 13 } }));
    expect(thin.pockets[0]!.fill.surface).toBe('');
  });

  it('puts a bubble where air stays in a line that is bled', () => {
    const picture = profilePicture(inputOf(firstTry, brake));
    const air = picture.pockets.filter(({ kind }) => kind === 'air');
    expect(air.length).toBeGreaterThan(0);
    expect(amounts(picture)).toHaveLength(picture.pockets.length);
  });

  it('flags what fails or notes at a place, those of one place together', () => {
    const line = drain;
    const { flags, pockets } = profilePicture(inputOf(firstTry, line));
    const told = [
      ...flags.flatMap(({ findings }) => findings),
      ...pockets.flatMap((pocket) => pocket.findings),
    ];
    const wanted = line.findings.flatMap(({ verdict, at }, i) =>
      verdict !== 'pass' && at !== null ? [i] : [],
    );
    expect(told.sort()).toEqual(wanted.map(Number).sort());
    expect(flags.some(({ findings }) => findings.length > 1)).toBe(true);
  });

  it('shows what is selected', () => {
    const line = tender.lines.find(({ line: { id } }) => id === 'brake-rear')!;
    const leg = profilePicture(inputOf(tender, line, { selection: { kind: 'leg', index: 2 } }));
    expect(leg.rules.map(({ selected }) => selected)).toEqual([false, false, true, false, false]);
    const corner = profilePicture(inputOf(tender, line, { selection: { kind: 'point', index: 2 } }));
    expect(corner.bands.map(({ selected }) => selected)).toEqual([false, true, false, false]);
    const thing = profilePicture(
      inputOf(tender, line, { selection: { kind: 'surrounding', id: 'left-rail' } }),
    );
    expect(thing.lane!.chosen.length).toBeGreaterThan(0);
  });
});

describe('read-out', () => {
  it('stays inside the drawing from end to end', () => {
    for (const size of sizes) {
      const input = inputOf(firstTry, firstTry.lines[0]!, { size });
      const picture = profilePicture(input);
      for (let i = 0; i <= 20; i++) {
        const { box } = readOut(picture, input, (picture.frame.length * i) / 20);
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(size.width);
        expect(box.y + box.height).toBeLessThanOrEqual(picture.frame.rows.head.bottom);
      }
    }
  });
});
