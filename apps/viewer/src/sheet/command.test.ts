import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { workUp } from 'runback';
import { describe, expect, it } from 'vitest';
import { inFolder, ROOT, runback, TENDER } from '../../../../tests/helpers/run.ts';
import { AT_FIRST, type SheetChoice } from './choice.ts';
import { sheetCall, typed } from './command.ts';
import { pdfName } from './names.ts';
import { pdfFile } from './pdf-file.ts';
import { sheetSet } from './sheets.ts';

const job = workUp(readFileSync(TENDER, 'utf8'));
const font = (name: string) => new Uint8Array(readFileSync(join(ROOT, 'apps/cli/fonts', `${name}.ttf`)));
const fonts = { regular: font('DejaVuSansCondensed'), bold: font('DejaVuSansCondensed-Bold') };

const written = (choice: SheetChoice, lineId: string) =>
  inFolder((folder) => {
    const { code, err } = runback([...sheetCall(TENDER, lineId, choice), '--out', folder]);
    expect([code, err]).toEqual([0, '']);
    return readdirSync(folder).map((name) => ({ name, bytes: readFileSync(join(folder, name)) }));
  });

describe('the call of the command', () => {
  it.each<[string, Partial<SheetChoice>, string]>([
    ['one line', { from: 'Z', units: 'in-16', paper: 'letter', aids: ['tape', 'cards'] }, 'breather'],
    ['one line of a run', { pages: ['values'], aids: ['stick'] }, 'dipstick'],
    ['a whole job', { which: 'all', pages: ['bench', 'views'] }, 'dipstick'],
  ])('writes the same file, byte for byte: %s', async (_, change, lineId) => {
    const choice = { ...AT_FIRST, ...change };
    const set = sheetSet(job, lineId, choice);
    const [file, ...more] = written(choice, lineId);
    const { bytes, missing } = await pdfFile(set, fonts);
    expect(file!.name).toBe(pdfName(set));
    expect(Buffer.compare(file!.bytes, bytes)).toBe(0);
    expect([more, missing]).toEqual([[], []]);
  });

  const call = (change: Partial<SheetChoice>): string =>
    typed(sheetCall('a.job.json', 'dipstick', { ...AT_FIRST, ...change }));

  it('leaves out what the command does anyway', () => {
    expect(call({})).toBe('runback sheet a.job.json --line dipstick');
    expect(call({ pages: [], aids: ['wheel'], units: 'in-decimal' })).toBe(
      'runback sheet a.job.json --line dipstick --units in --inch decimal --pages none --aids wheel',
    );
  });

  it('is quoted for a shell where it must be', () => {
    expect(typed(sheetCall(`Bob's; job.json`, null, AT_FIRST))).toBe(
      `runback sheet 'Bob'\\''s; job.json' --one`,
    );
  });
});

describe('pdfFile', () => {
  it('names the characters that print as boxes', async () => {
    const text = readFileSync(TENDER, 'utf8').replace('"Oil dipstick tube"', '"Oil 油 dipstick"');
    const set = sheetSet(workUp(text), 'dipstick', { ...AT_FIRST, pages: ['bench'] });
    expect((await pdfFile(set, fonts)).missing).toEqual(['油']);
  });
});
