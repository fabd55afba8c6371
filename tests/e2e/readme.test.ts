/** What the documentation tells a person to type is typed, and what it shows is what comes. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY, inFolder, ROOT, runback } from '../helpers/run.ts';

const BIN = join(ROOT, 'apps/cli/bin/runback.js');
const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');

const shellBlocks = (text: string): string[] =>
  [...text.matchAll(/^```sh\n([\s\S]*?)^```/gm)].map((m) => m[1]!);

const pages = [
  'README.md',
  ...readdirSync(join(ROOT, 'docs'))
    .filter((n) => n.endsWith('.md'))
    .map((n) => join('docs', n)),
  'docs/examples/tender-7/README.md',
  'docs/examples/inch/README.md',
];

/** Commands of one page, in their order, with the command's own name put in the place of npx. */
const commandsOf = (page: string): string[] =>
  shellBlocks(readFileSync(join(ROOT, page), 'utf8'))
    .flatMap((block) => block.split('\n'))
    .map((line) => line.replace(/\s+#.*$/, '').trim())
    .filter((line) => line.startsWith('npx runback '));

describe('README', () => {
  it('opens with the job, a picture, and exactly two commands', () => {
    const [first, second] = shellBlocks(readme);
    expect(first).toBe('npm ci && npm run demo\n');
    expect(second).toBe('npm ci && npm test\n');
    const beforeTheFirst = readme.slice(0, readme.indexOf('```sh'));
    expect(beforeTheFirst).toContain('Runback is for people who make bent tubes');
    const pictures = [...readme.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map((m) => m[1]!);
    expect(pictures.length).toBeGreaterThan(0);
    for (const picture of pictures) expect(readFileSync(join(ROOT, picture)).length).toBeGreaterThan(1000);
  });

  it('its first command is the main job: tables printed, sheets written', () => {
    const demo = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts.demo as string;
    inFolder((folder) => {
      const script = demo.replaceAll('runback ', `node ${BIN} `).replace('--out sheets', `--out ${folder}`);
      const ran = spawnSync('bash', ['-c', script], { cwd: ROOT, encoding: 'utf8' });
      expect(ran.stderr).toBe('');
      expect(ran.status).toBe(0);
      expect(ran.stdout).toContain('Tender 7');
      expect(readdirSync(folder).length).toBeGreaterThanOrEqual(5);
    });
  });

  it('the finding it shows is found', () => {
    const shown = /^```text\n([\s\S]*?)^```/m.exec(readme)![1]!;
    const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();
    expect(flat(runback(['check', FIRST_TRY]).out)).toContain(flat(shown));
  });

  it('every page it points to is there', () => {
    for (const [, link] of readme.matchAll(/\]\(([^)#]+)\)/g))
      expect(
        () => readFileSync(join(ROOT, link!.endsWith('tender-7') ? `${link}/README.md` : link!)),
        link,
      ).not.toThrow();
  });
});

describe('commands in the documentation', () => {
  for (const page of pages) {
    const commands = commandsOf(page);
    if (commands.length === 0) continue;
    it(`${relative('.', page)}: ${commands.length} commands work as written`, () =>
      inFolder((folder) => {
        symlinkSync(join(ROOT, 'docs'), join(folder, 'docs'));
        mkdirSync(join(folder, 'sheets'));
        writeFileSync(join(folder, 'sample.csv'), '100,,90,20\n120,90,45,20\n80\n');
        for (const command of commands) {
          const typed = command.replace('npx runback', `node ${BIN}`);
          const ran = spawnSync('bash', ['-c', typed], { cwd: folder, encoding: 'utf8', input: '' });
          expect([0, 1], `${command}\n${ran.stderr}`).toContain(ran.status);
          expect(ran.stderr.replace(/.* written; next: .*\n/, ''), command).toBe('');
        }
      }));
  }
});
