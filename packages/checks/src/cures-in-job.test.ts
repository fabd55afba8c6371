/** Cures as a person would take them over: written into the job file, and the file worked again. */
import { catalogue } from '@runback/catalogue';
import { parseJob, parsePath, resolve } from '@runback/job';
import { describe, expect, it } from 'vitest';
import type { Cure, Finding, WorkedJob } from './types.ts';
import { workJob } from './work-job.ts';

const workText = (text: string): WorkedJob => workJob(resolve(parseJob(text, { catalogue }), catalogue));

/** The job file with the edits of a cure done. */
function edited(text: string, cure: Cure): string {
  const job = JSON.parse(text);
  for (const { path, value } of cure.edits) {
    const keys = [...parsePath(path)];
    const last = keys.pop()!;
    keys.reduce((at, key) => at[key], job)[last] = value;
  }
  return JSON.stringify(job);
}

type Rule = string;

/** What fails, and for which line: a cured job has lost one of these and gained none. */
const failures = (job: WorkedJob): Rule[] =>
  job.lines.flatMap((l) =>
    l.findings
      .filter((f) => f.verdict === 'fail')
      .map((f) => `${l.line.id} ${f.check} ${f.to ?? ''} ${f.path ?? f.basis}`),
  );

const JOG = {
  format: 'runback-job',
  version: 1,
  title: 'Tender 7',
  units: 'mm',
  attitudes: { pitch: [-5, 5], roll: [-3, 3] },
  tubes: { t: { material: 'stainless-304', od: 12, wall: 1 } },
  benders: { bench: { dies: [{ od: 12, radius: 36, minStraight: 30, minTail: 45, maxAngle: 180 }] } },
  surroundings: [{ id: 'pump', shape: 'sphere', centre: [700, -45, 0], diameter: 60, because: 'fixed' }],
  lines: [
    {
      id: 'jog',
      tube: 't',
      bender: 'bench',
      drain: { to: 'Z', minSlope: 1, minSlopeTilted: -90 },
      clips: [195, 600],
      endA: { direction: [1, 0, 0], misfit: 2 },
      points: [
        { at: [0, 0, 100] },
        { at: [200, 12, 95] },
        { at: [215, 90, 90] },
        { at: [450, 90, 91] },
        { at: [800, 0, 0] },
      ],
    } as Record<string, unknown>,
  ],
};

const MIRRORED = {
  ...JOG,
  lines: [...JOG.lines, { id: 'left', mirrorOf: 'jog', across: 'y', offset: -400 }],
};

/** The same part written in inches. */
function inInches(job: typeof JOG): unknown {
  const inch = (v: number) => v / 25.4;
  const [line] = job.lines as [{ points: { at: number[] }[]; clips: number[] } & Record<string, unknown>];
  const die = { od: inch(12), radius: inch(36), minStraight: inch(30), minTail: inch(45), maxAngle: 180 };
  return {
    ...job,
    units: 'in',
    tubes: { t: { material: 'stainless-304', od: inch(12), wall: inch(1) } },
    benders: { bench: { dies: [die] } },
    surroundings: [{ ...job.surroundings[0], centre: [700, -45, 0].map(inch), diameter: inch(60) }],
    lines: [
      { ...line, clips: line.clips.map(inch), points: line.points.map(({ at }) => ({ at: at.map(inch) })) },
    ],
  };
}

const cured = (job: WorkedJob): Finding[] =>
  job.lines.flatMap((line) => line.findings.filter((f) => f.verdict === 'fail' && f.cure !== null));

describe.each([
  ['in mm', JOG],
  ['in inches', inInches(JOG)],
  ['with its opposite hand', MIRRORED],
])('the cures of a job %s', (_, source) => {
  const text = JSON.stringify(source);
  const job = workText(text);
  const before = failures(job);

  it('are many', () => {
    const checks = new Set(cured(job).map((f) => f.check));
    expect([...checks].sort()).toEqual(
      expect.arrayContaining(['clips', 'port-direction', 'slope', 'straights']),
    );
  });

  it('each take away a failure and bring no new one', () => {
    for (const f of cured(job)) {
      const after = failures(workText(edited(text, f.cure!)));
      expect(after.length, `${f.message} ${f.cure!.text}`).toBeLessThan(before.length);
      expect(
        after.filter((rule) => !before.includes(rule)),
        f.cure!.text,
      ).toEqual([]);
    }
  });
});

it('a corner that does not fit is cured in the file', () => {
  const text = JSON.stringify({
    ...JOG,
    lines: [
      {
        id: 'step',
        tube: 't',
        bender: 'bench',
        points: [
          [0, 0, 0],
          [150, 0, 0],
          [150, 60, 0],
          [300, 60, 0],
        ].map((at) => ({ at })),
      },
    ],
  });
  const [step] = workText(text).lines;
  expect(step!.centreline).toBeNull();
  const after = workText(edited(text, step!.findings[0]!.cure!)).lines[0]!;
  expect(after.centreline).not.toBeNull();
});
