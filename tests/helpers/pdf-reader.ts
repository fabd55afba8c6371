/** Reads a PDF back with other people's tools, and lays a ruler on what it draws. Millimetres from the top left. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Item, Page, Point } from '@runback/drawing';
import { PNG } from 'pngjs';

const MM_PER_POINT = 25.4 / 72;

export interface Answer {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a tool of the Debian packages qpdf and poppler-utils. */
export function tool(name: string, args: readonly string[]): Answer {
  const ran = spawnSync(name, [...args], { encoding: 'latin1', maxBuffer: 256 * 1024 * 1024 });
  if (ran.error)
    throw new Error(`${name} is needed (Debian packages qpdf, poppler-utils): ${ran.error.message}`);
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

/** A whole file, readable without a repair: qpdf answers 0 and warns of nothing. */
export function sound(path: string): boolean {
  const { code, err } = tool('qpdf', ['--check', path]);
  return code === 0 && err === '';
}

/** The uncompressed file: same objects, plain operators. A character is a byte. */
export const plainPdf = (path: string): string =>
  tool('qpdf', ['--qdf', '--object-streams=disable', path, '-']).out;

export const textOf = (path: string, args: readonly string[] = ['-layout']): string =>
  Buffer.from(tool('pdftotext', ['-enc', 'UTF-8', ...args, path, '-']).out, 'latin1').toString('utf8');

export interface About {
  readonly title: string;
  readonly pages: number;
  readonly width: number;
  readonly height: number;
}

export function about(path: string, page = 1): About {
  const { out } = tool('pdfinfo', ['-enc', 'UTF-8', '-f', String(page), '-l', String(page), path]);
  const info = Buffer.from(out, 'latin1').toString('utf8');
  const [, width, height] = /Page +\d+ size: +([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
  return {
    title: /^Title: +(.*)$/m.exec(info)?.[1] ?? '',
    pages: Number(/^Pages: +(\d+)$/m.exec(info)?.[1]),
    width: Number(width) * MM_PER_POINT,
    height: Number(height) * MM_PER_POINT,
  };
}

export interface FontLine {
  readonly name: string;
  readonly embedded: boolean;
  readonly subset: boolean;
  readonly unicode: boolean;
}

export function fontsOf(path: string): FontLine[] {
  const lines = tool('pdffonts', [path]).out.trim().split('\n').slice(2);
  return lines.map((line) => {
    const [, name, embedded, subset, unicode] = /^(\S+).*? (yes|no) +(yes|no) +(yes|no) +\d+ +\d+$/.exec(
      line,
    )!;
    return {
      name: name!,
      embedded: embedded === 'yes',
      subset: subset === 'yes',
      unicode: unicode === 'yes',
    };
  });
}

/** How many pictures of pixels a file holds. */
export const pixelPictures = (path: string): number =>
  tool('pdfimages', ['-list', path]).out.trim().split('\n').slice(2).length;

type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

export interface Segment {
  readonly from: Point;
  readonly to: Point;
}

/** The straight segments that a page strokes or fills, in mm on the paper: its operators, followed one by one. */
export function segments(path: string, page = 1): Segment[] {
  const text = plainPdf(path);
  const object = text.slice(text.indexOf(`%% Page ${page}\n`));
  const [, height] = /\/MediaBox \[\s*0\s+0\s+[\d.]+\s+([\d.]+)/.exec(object)!;
  const content = text.slice(text.indexOf(`%% Contents for page ${page}\n`));
  const stream = content.slice(content.indexOf('stream\n') + 7, content.indexOf('\nendstream'));
  return follow(stream, Number(height));
}

function follow(stream: string, height: number): Segment[] {
  const found: Segment[] = [];
  const kept: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let at: Point = [0, 0];
  let numbers: number[] = [];
  const onPaper = (): Point => {
    const [x, y] = numbers.slice(-2) as [number, number];
    const [, , , , px, py] = times([1, 0, 0, 1, x, y], matrix);
    return [px * MM_PER_POINT, (height - py) * MM_PER_POINT];
  };
  for (const token of stream.replace(/<[^>]*>/g, '').split(/\s+/)) {
    if (/^[-\d.]+$/.test(token)) {
      numbers.push(Number(token));
      continue;
    }
    if (token === 'q') kept.push(matrix);
    if (token === 'Q') matrix = kept.pop()!;
    if (token === 'cm') matrix = times(numbers.slice(-6) as unknown as Matrix, matrix);
    if (token === 'l') found.push({ from: at, to: onPaper() });
    if (['m', 'l', 'c'].includes(token)) at = onPaper();
    if (!/^[[\]]/.test(token)) numbers = [];
  }
  return found;
}

/** Where the lines of a name stand on the page, by the display list, wherever they are in groups. */
export function placed(page: Page, name: string): Segment[] {
  const walk = (items: readonly Item[], matrix: Matrix): Segment[] =>
    items.flatMap((item): Segment[] => {
      if (item.kind === 'line' && item.name === name)
        return [{ from: moved(item.from, matrix), to: moved(item.to, matrix) }];
      if (item.kind !== 'group') return [];
      const turn = ((item.turn ?? 0) * Math.PI) / 180;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      return walk(item.items, times([c, s, -s, c, ...item.at], matrix));
    });
  return walk(page.items, [1, 0, 0, 1, 0, 0]);
}

function moved([x, y]: Point, matrix: Matrix): Point {
  const [, , , , px, py] = times([1, 0, 0, 1, x, y], matrix);
  return [px, py];
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** How far the drawn segment nearest to the wanted one is off, at its worse end. mm */
export function offBy(drawn: readonly Segment[], wanted: Segment): number {
  return Math.min(
    ...drawn.flatMap(({ from, to }) => [
      Math.max(apart(from, wanted.from), apart(to, wanted.to)),
      Math.max(apart(to, wanted.from), apart(from, wanted.to)),
    ]),
  );
}

/** Length of the drawn segment nearest to the wanted one. mm */
export function drawnLength(drawn: readonly Segment[], wanted: Segment): number {
  const off = drawn.map((segment) => offBy([segment], wanted));
  const nearest = drawn[off.indexOf(Math.min(...off))]!;
  return apart(nearest.from, nearest.to);
}

const DPI = 600;
const PIXEL = 25.4 / DPI;

/** Grey pixels, row by row from the top, 0 black. */
export interface Print {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** A page as a printer would see it, 600 dots to the inch. */
export function printed(path: string, page = 1): Print {
  const at = String(page);
  const { out } = tool('pdftoppm', ['-r', String(DPI), '-gray', '-f', at, '-l', at, path]);
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(out)!;
  return {
    width: Number(width),
    height: Number(height),
    grey: Buffer.from(out.slice(head.length), 'latin1'),
  };
}

/** The first page as cairo draws it, lines where they are and not pulled to whole pixels. */
export function smoothed(path: string, dpi: number): PNG {
  tool('pdftocairo', ['-r', String(dpi), '-gray', '-png', '-singlefile', path, `${path}-smoothed`]);
  return PNG.sync.read(readFileSync(`${path}-smoothed.png`));
}

/** How dark each pixel is along a row or a column, 0 … 1. */
function darkAlong(image: Print, lying: boolean, line: number): number[] {
  return Array.from({ length: lying ? image.width : image.height }, (_, i) => {
    const [x, y] = lying ? [i, line] : [line, i];
    return 1 - image.grey[y! * image.width + x!]! / 255;
  });
}

/** First and last pixel of the longest dark run. */
function longestRun(dark: readonly number[]): readonly [number, number] {
  let [best, start]: [readonly [number, number], number] = [[0, -1], 0];
  dark.forEach((d, i) => {
    if (d < 0.4) start = i + 1;
    else if (i - start > best[1] - best[0]) best = [start, i];
  });
  return best;
}

/**
 * Lays a ruler along a bar: finds the longest line within 8 mm of where the bar should be, then measures across its
 * end ticks, `beside` mm up from a bar lying or left of one standing, between the centres of the two ticks.
 */
export function ruled(image: Print, { from, to }: Segment, beside: number): number {
  const lying = Math.abs(to[0] - from[0]) > Math.abs(to[1] - from[1]);
  const wanted = from[lying ? 1 : 0];
  let found = { length: -1, line: 0, ends: [0, 0] as readonly [number, number] };
  for (let line = Math.floor((wanted - 8) / PIXEL); line < (wanted + 8) / PIXEL; line++) {
    const ends = longestRun(darkAlong(image, lying, line));
    if (ends[1] - ends[0] > found.length) found = { length: ends[1] - ends[0], line, ends };
  }
  const ticks = darkAlong(image, lying, found.line - Math.round(beside / PIXEL));
  const [first, last] = found.ends.map((end) => centreNear(ticks, end));
  return (last! - first!) * PIXEL;
}

/** The middle of what is dark within a millimetre of a pixel. */
function centreNear(dark: readonly number[], place: number): number {
  let [weight, moment] = [0, 0];
  const reach = Math.round(1 / PIXEL);
  for (let i = place - reach; i <= place + reach; i++) {
    weight += dark[i]!;
    moment += dark[i]! * i;
  }
  return moment / weight;
}
