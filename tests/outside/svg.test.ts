/** The sheets as SVG judged from outside: xmllint and the Nu checker for form, rsvg-convert and a ruler of pixels for true scale. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { FIRST_TRY, inFolder, ROOT, runback, TENDER } from '../helpers/run.ts';

const DPI = 600;
const PIXEL = 25.4 / DPI;
const A4 = { width: 210, height: 297 };

const wellFormed = (path: string): boolean => {
  const ran = spawnSync('xmllint', ['--noout', '--nonet', path], { encoding: 'utf8' });
  if (ran.error) throw new Error(`xmllint is needed (Debian package libxml2-utils): ${ran.error.message}`);
  return ran.status === 0;
};

interface Fault {
  readonly type: string;
  readonly url: string;
  readonly message: string;
}

const NU = join(ROOT, 'node_modules/vnu-jar/build/dist/vnu.jar');

/** What the Nu HTML checker says against SVG files. */
function faults(paths: readonly string[]): Fault[] {
  const ran = spawnSync('java', ['-jar', NU, '--svg', '--format', 'json', '--exit-zero-always', ...paths], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (ran.error)
    throw new Error(`java is needed (Debian package default-jre-headless): ${ran.error.message}`);
  const { messages } = JSON.parse(ran.stderr) as { messages: Fault[] };
  return messages.filter(({ type }) => type !== 'info');
}

function raster(path: string): PNG {
  const ran = spawnSync('rsvg-convert', ['-d', String(DPI), '-p', String(DPI), '-b', 'white', path], {
    maxBuffer: 256 * 1024 * 1024,
  });
  if (ran.error)
    throw new Error(`rsvg-convert is needed (Debian package librsvg2-bin): ${ran.error.message}`);
  expect(ran.stderr.toString()).toBe('');
  return PNG.sync.read(ran.stdout);
}

/** Lays a ruler along the foot of the page: the longest unbroken dark row below 270 mm, in mm. */
function footRule(image: PNG): number {
  let longest = 0;
  for (let y = Math.round(270 / PIXEL); y < image.height; y++) {
    let run = 0;
    for (let x = 0; x < image.width; x++) {
      const dark = image.data[(y * image.width + x) * 4]! < 128;
      run = dark ? run + 1 : 0;
      if (run > longest) longest = run;
    }
  }
  return longest * PIXEL;
}

describe('sheets as SVG', () => {
  it('are well-formed, titled and described', () =>
    inFolder((folder) => {
      runback(['sheet', TENDER, '--format', 'svg', '--out', folder]);
      runback(['sheet', FIRST_TRY, '--from', 'z', '--format', 'svg', '--out', folder]);
      const names = readdirSync(folder);
      expect(names.length).toBeGreaterThan(8);
      for (const name of names) {
        expect(wellFormed(join(folder, name)), name).toBe(true);
        const svg = readFileSync(join(folder, name), 'utf8');
        expect(svg).toMatch(/<title>[^<]+<\/title>/);
        expect(svg).toMatch(/<desc>[^<]+<\/desc>/);
        expect(svg).toContain(`width="${A4.width}mm" height="${A4.height}mm"`);
      }
    }));

  it('are SVG by the schema, and planted faults are seen', () =>
    inFolder((folder) => {
      runback(['sheet', TENDER, '--format', 'svg', '--out', folder]);
      runback(['sheet', FIRST_TRY, '--from', 'z', '--format', 'svg', '--out', folder]);
      const paths = readdirSync(folder).map((name) => join(folder, name));
      const svg = readFileSync(paths[0]!, 'utf8');
      const [attribute, element] = [join(folder, 'attribute.svg'), join(folder, 'element.svg')] as const;
      writeFileSync(attribute, svg.replace('<rect ', '<rect radius="2" '));
      writeFileSync(element, svg.replace('</svg>', '<blink/></svg>'));
      const seen = faults([...paths, attribute, element]);
      expect(seen.filter(({ url }) => paths.some((path) => url === `file:${path}`))).toEqual([]);
      const planted = (path: string): string =>
        seen
          .filter(({ url }) => url === `file:${path}`)
          .map(({ message }) => message)
          .join(' ');
      expect(planted(attribute)).toMatch(/“radius” not allowed on element “rect”/);
      expect(planted(element)).toMatch(/“blink” not allowed/);
    }));

  it('are true to scale: a ruler laid on the print reads 100 mm', () =>
    inFolder((folder) => {
      runback(['sheet', TENDER, '--line', 'dipstick', '--format', 'svg', '--out', folder]);
      const image = raster(join(folder, readdirSync(folder)[0]!));
      expect(Math.abs(image.width * PIXEL - A4.width)).toBeLessThan(0.2);
      expect(Math.abs(image.height * PIXEL - A4.height)).toBeLessThan(0.2);
      // The bar runs between the centres of its end ticks; a tick is up to 0.4 mm wide.
      expect(Math.abs(footRule(image) - 100)).toBeLessThan(0.5);
    }));

  it('the judges see planted faults: a broken tag, a page at 97 per cent', () =>
    inFolder((folder) => {
      runback(['sheet', TENDER, '--line', 'dipstick', '--format', 'svg', '--out', folder]);
      const path = join(folder, readdirSync(folder)[0]!);
      const svg = readFileSync(path, 'utf8');
      writeFileSync(path, svg.replace('</svg>', ''));
      expect(wellFormed(path)).toBe(false);
      writeFileSync(path, svg.replace('width="210mm" height="297mm"', 'width="203.7mm" height="288.09mm"'));
      expect(Math.abs(footRule(raster(path)) - 100)).toBeGreaterThan(0.5);
    }));
});
