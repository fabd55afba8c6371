import type { StickMark, WorkedLine } from '@runback/checks';
import fc from 'fast-check';
import { createSVGWindow } from 'svgdom';
import { describe, expect, it } from 'vitest';
import { byName, inked, lineOf } from '../test/aids.ts';
import { FONTS } from '../test/fonts.ts';
import { blade, fact, MIN_MAX, mark, runOf, stickSheet, withStick } from '../test/stick.ts';
import { texts, words } from '../test/texts.ts';
import { dipstick, finding, worked } from '../test/worked.ts';
import type { AidOptions } from './aid-context.ts';
import { aidPages } from './aid-pages.ts';
import { jointName } from './aid-ribbon.ts';
import { doubtWords, markLabels } from './aid-stick-plan.ts';
import { layoutFaults } from './boxes.ts';
import { pageContent } from './pdf-content.ts';
import { Face } from './pdf-face.ts';
import { renderSvg } from './svg.ts';
import type { GroupItem, Item, Page, Point, RectItem } from './types.ts';

const line = worked({ points: dipstick });
const strip = (of: WorkedLine, options: Partial<AidOptions> = {}): readonly Page[] =>
  aidPages(of, { checksum: 'a1b2c3d4', aids: ['stick'], ...options });
const all = (pages: readonly Page[]): string => pages.map(words).join(' ');

const pieces = (pages: readonly Page[]): readonly GroupItem[] =>
  pages.flatMap((page) => byName(page.items, /^stick-strip-\d+$/)) as readonly GroupItem[];

/** Places of lines of a name from the end of the stick, the pieces laid on their joints. */
function onPaper(pages: readonly Page[], name: string): readonly number[] {
  let origin = 0;
  const found: number[] = [];
  pieces(pages).forEach((piece, i) => {
    if (i === 0) origin = -lineOf(piece.items, 'stick-end').from[0];
    else {
      const joint = `stick-joint-${jointName(i)}`;
      origin +=
        lineOf(pieces(pages)[i - 1]!.items, `${joint}-right`).from[0] -
        lineOf(piece.items, `${joint}-left`).from[0];
    }
    for (const item of byName(piece.items, name)) if (item.kind === 'line') found.push(origin + item.from[0]);
  });
  return found;
}

const only = <T extends Item['kind']>(
  pages: readonly Page[],
  name: string,
  kind: T,
): Extract<Item, { kind: T }> => {
  const found = pages.flatMap((page) => byName(page.items, name))[0];
  if (found?.kind !== kind) throw new Error(`no ${kind} ${name}`);
  return found as Extract<Item, { kind: T }>;
};

const high: readonly StickMark[] = [
  mark('LOW', 31.4),
  mark('MIN', 233.3, { doubt: 6 }),
  mark('MAX', 418.7),
  mark('OVER', 611.05),
];

describe('the stick strip', () => {
  it('has every mark where it is, from the end of the stick, over all joints', () => {
    for (const paper of ['a4', 'letter'] as const)
      for (const units of ['mm', 'in'] as const) {
        const pages = strip(withStick(line, { sheet: { marks: high } }), { paper, units });
        expect(pieces(pages).length).toBeGreaterThan(2);
        // Numbered from the top down, as they are listed.
        high.forEach(({ at }, i) => {
          const found = onPaper(pages, `stick-mark-${high.length - i}`);
          expect(found).toHaveLength(1);
          expect(found[0]).toBeCloseTo(at, 9);
        });
      }
  });

  it('has them there in the SVG and in the PDF, in true millimetres', () => {
    const [page] = strip(withStick(line));
    const svg = renderSvg(page!, createSVGWindow());
    expect(svg).toContain('width="297mm"');
    expect(svg).toContain('viewBox="0 0 297 210"');
    const inSvg = (name: string): number =>
      Number(/ x1="(-?[\d.]+)"/.exec(new RegExp(`<line[^>]*class="${name}"[^>]*>`).exec(svg)![0])![1]);
    expect(inSvg('stick-mark-2') - inSvg('stick-end')).toBeCloseTo(31.4, 3);
    expect(inSvg('stick-mark-1') - inSvg('stick-end')).toBeCloseTo(58.9, 3);
    const pdf = pageContent(page!, {
      regular: new Face(FONTS.regular, 'regular'),
      bold: new Face(FONTS.bold, 'bold'),
    });
    // 72/25.4 points a millimetre, then the strip's own origin, neither turned nor scaled.
    expect(pdf).toMatch(/^2\.834645669 0 0 -2\.834645669 0 595\.\d+ cm\n/);
    expect(pdf).toMatch(/\nq 1 0 0 1 30 [\d.]+ cm\n/);
    for (const at of ['0', '31.4', '58.9']) expect(pdf).toMatch(new RegExp(`\n${at} 0 m\n${at} [\\d.]+ l\n`));
  });

  it('shows how far a mark may be off as a band, over a joint too', () => {
    const band = (name: string): RectItem => only(strip(withStick(line)), name, 'rect');
    expect(band('stick-doubt-2').x).toBeCloseTo(27.8, 9);
    expect(band('stick-doubt-2').width).toBeCloseTo(7.2, 9);
    const end = strip(withStick(line, { sheet: { marks: [mark('LOW', 2)] } }));
    expect(only(end, 'stick-doubt-1', 'rect').x).toBe(0);
    // MIN stands at 233.3 ± 6; a piece of the A4 strip ends between 227 and 240.
    const pages = strip(withStick(line, { sheet: { marks: high.map((m) => ({ ...m, doubt: 60 })) } }));
    const bands = pages.flatMap((page) => byName(page.items, 'stick-doubt-3')) as readonly RectItem[];
    expect(bands).toHaveLength(2);
    expect(bands[0]!.width + bands[1]!.width).toBeCloseTo(120, 9);
  });

  it('draws tip and stick true to size, broad side and edge', () => {
    const pages = strip(withStick(line));
    const ys = (name: string): readonly Point[] =>
      only(pages, name, 'path').steps.flatMap((s): Point[] =>
        s[0] === 'M' || s[0] === 'L' ? [[s[1], s[2]]] : [],
      );
    const tall = (points: readonly Point[], on: (x: number) => boolean): number => {
      const some = points.filter(([x]) => on(x)).map(([, y]) => y);
      return Math.max(...some) - Math.min(...some);
    };
    for (const [name, tip, rest] of [
      ['stick-broad', 7, 5],
      ['stick-edge', 2, 0.8],
    ] as const) {
      expect(tall(ys(name), (x) => x === 0)).toBeCloseTo(tip, 9);
      expect(tall(ys(name), (x) => x > 25)).toBeCloseTo(rest, 9);
      expect(ys(name).some(([x]) => Math.abs(x - 25) < 1e-9)).toBe(true);
    }
    const cable = strip(withStick(line, { stick: { kind: 'cable', width: null, thickness: 4, tip: null } }));
    expect(cable.flatMap((page) => byName(page.items, 'stick-edge'))).toEqual([]);
    expect(words(cable[0]!)).toContain('Drawn true to size: cable 4 thick.');
    const broad = strip(withStick(line, { stick: { width: 44 } }));
    expect(broad.flatMap((page) => byName(page.items, /^stick-(broad|edge)$/))).toEqual([]);
    expect(words(broad[0]!)).toContain('Too broad to be drawn');
  });

  it('ends the outline where a short stick seats', () => {
    const short = { seatToTip: { shortest: 78, middle: 80, longest: 82 } };
    const path = only(strip(withStick(line, { sheet: short })), 'stick-broad', 'path');
    const xs = path.steps.flatMap((s) => (s[0] === 'M' || s[0] === 'L' ? [s[1]] : []));
    expect(Math.max(...xs)).toBe(80);
  });

  it('says on the strip itself that filling decides, and what the marks rest on', () => {
    const from = (...kinds: readonly StickMark['from'][]): string =>
      all(
        strip(
          withStick(line, { sheet: { marks: kinds.map((k, i) => mark(`M${i}`, 20 + 30 * i, { from: k })) } }),
        ),
      );
    const inStrip = texts(strip(withStick(line))[0]!)
      .filter((t) => t.zone === 'stick strip 1')
      .map((t) => t.text);
    expect(inStrip).toContain('VERIFY BY FILLING. Marks are worked, not measured');
    expect(inStrip).toContain('MIN · 3.2 L · 31.5 ± 3.6 mm');
    expect(inStrip).toContain('MAX · 4.5 L · 59 ± 3.7 mm');
    expect(inStrip.join(' ')).toContain('seat to end of stick 806 ± 4 mm');
    expect(from('fills', 'fills')).toContain('VERIFY BY FILLING. Marks are from your fills');
    expect(from('fills', 'pan')).toContain('VERIFY BY FILLING. Marks are worked, not measured');
    expect(from()).toContain('VERIFY BY FILLING. Marks are worked, not measured');
    expect(from()).toContain('The job asks for no marks');
  });

  it('lists every mark with its tilt, and what is not on the stick', () => {
    const marks = [...MIN_MAX, mark('DRY', -4), mark('FLOOD', 900), mark('ODD', 45, { perDegree: null })];
    const said = all(strip(withStick(line, { sheet: { marks } })));
    expect(said).toContain('2 MAX 4.5 L 59 3.7 mm 1.7 mm the sizes of the pan');
    expect(said).toMatch(/DRY 4 L not on it .*BELOW THE STICK/);
    expect(said).toMatch(/FLOOD 4 L not on it .*ABOVE THE SEAT/);
    expect(said).toMatch(/ODD 4 L 45 3\.6 mm not known: no pan given/);
    const pages = strip(withStick(line, { sheet: { marks } }));
    expect(pages.flatMap((page) => byName(page.items, /^stick-mark-/))).toHaveLength(3);
  });

  it('prints what it rests on, cautions bold, and no exact figure beside a rounded one', () => {
    const [page] = strip(withStick(line));
    expect(words(page!)).toContain('WHAT THIS RESTS ON');
    expect(words(page!)).toContain('one degree of tilt: Upright walls, level liquid.');
    expect(words(page!)).not.toContain('809.2');
    const caution = texts(page!).find((t) => t.text.startsWith('Worked, not measured: verify'));
    expect(caution?.weight).toBe('bold');
    expect(all(strip(withStick(line, { facts: [fact('mass', 'tube')] })))).not.toContain('RESTS ON');
  });

  it('is a list alone where too many joints would carry the marks off', () => {
    const sheet = { marks: [mark('MAX', 2400)], seatToTip: { shortest: 2990, middle: 3000, longest: 3010 } };
    const pages = strip(withStick(line, { sheet }));
    expect(pieces(pages)).toEqual([]);
    expect(all(pages)).toMatch(/No strip: \d+ pieces would not stay true/);
    expect(all(pages)).toContain('1 MAX 4 L 2400');
  });
});

describe('a stick of a run', () => {
  it('is printed once, with the line it goes in at', () => {
    const runs = [runOf(['upper', 'line'])];
    expect(all(strip(line, { runs }))).toContain('goes in at END Z of Oil dipstick tube');
    expect(strip(line, { runs })[0]!.title).toContain('stick strip stepped dipstick');
    const other = { ...line, line: { ...line.line, id: 'upper' } };
    expect(all(strip(other, { runs }))).toContain(
      'Not made: stick strip: the stick of run “Stepped dipstick” is printed with the line it goes in at, line.',
    );
    const fromA = [runOf(['upper', 'line'], { run: { ...runs[0]!.run, stick: blade({ enters: 'A' }) } })];
    expect(pieces(strip(line, { runs: fromA }))).toEqual([]);
    expect(all(strip(other, { runs: fromA }))).toContain('goes in at END A of Oil dipstick tube');
  });

  it('stands beside the line’s own, and neither is made of what could not be worked', () => {
    const both = strip(withStick(line), { runs: [runOf(['line'])] });
    expect(both.map(({ title }) => title.includes('stepped dipstick'))).toEqual([false, true]);
    expect(all(strip(withStick(line, { sheet: null })))).toContain('could not be worked, see the findings');
    expect(pieces(strip(line, { runs: [runOf(['line'], { stick: null })] }))).toEqual([]);
    expect(pieces(strip(line, { runs: [runOf(['upper'])] }))).toEqual([]);
  });

  it('says nothing of sticks among other aids where none goes in', () => {
    expect(all(aidPages(line, { checksum: 'x', aids: ['tape', 'stick'] }))).not.toContain('stick strip');
    expect(all(strip(line))).toContain('Not made: stick strip: no stick goes in at this line.');
  });

  it('is stamped when its line fails', () => {
    const failing = withStick(worked({ points: dipstick, findings: [finding('fail', 'too near')] }));
    for (const page of strip(failing)) expect(byName(page.items, 'do-not-bend')).toHaveLength(1);
  });
});

describe('the words of a mark', () => {
  it('round a doubt up, never down', () => {
    expect(doubtWords(3.6, 'mm')).toBe('3.6 mm');
    expect(doubtWords(3.601, 'mm')).toBe('3.7 mm');
    expect(doubtWords(0, 'mm')).toBe('0 mm');
    expect(doubtWords(25.5, 'in')).toBe('1.01 in');
  });

  it('grow shorter down to the number in the list', () => {
    expect(markLabels(mark('MAX', 20), 2, 'mm')).toEqual([
      'MAX · 4 L · 20 ± 3.6 mm',
      'MAX · 4 L ± 3.6 mm',
      'MAX ± 3.6 mm',
      'MAX',
      'no. 2',
    ]);
    expect(markLabels(mark('\u202e', 20), 1, 'mm').slice(-2)).toEqual(['4 L', 'no. 1']);
  });
});

const name = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.constant('W'.repeat(80)));
const marks = fc.array(
  fc
    .record({
      name,
      at: fc.double({ min: -20, max: 1500, noNaN: true }),
      litres: fc.double({ min: 0, max: 400, noNaN: true }),
      doubt: fc.double({ min: 0, max: 80, noNaN: true }),
      perDegree: fc.option(fc.double({ min: -9, max: 9, noNaN: true }), { nil: null }),
      from: fc.constantFrom('fills', 'pan'),
    })
    .map((one): StickMark => one),
  { maxLength: 14 },
);
const sticks = fc.record({
  kind: fc.constantFrom('blade', 'cable', 'links'),
  enters: fc.constantFrom('A', 'Z'),
  thickness: fc.double({ min: 0.2, max: 12, noNaN: true }),
  width: fc.option(fc.double({ min: 1, max: 60, noNaN: true }), { nil: null }),
  tip: fc.option(
    fc.record({
      length: fc.double({ min: 2, max: 400, noNaN: true }),
      thickness: fc.double({ min: 0.5, max: 20, noNaN: true }),
      width: fc.option(fc.double({ min: 1, max: 50, noNaN: true }), { nil: null }),
    }),
    { nil: null },
  ),
} as const);

describe('every page of a stick strip', () => {
  it('keeps its words in their zones and off each other, all ink on the paper, and names every mark', () => {
    fc.assert(
      fc.property(
        marks,
        sticks,
        fc.record({ paper: fc.constantFrom('a4', 'letter'), units: fc.constantFrom('mm', 'in') }),
        (list, stick, how) => {
          const of = withStick(line, { stick, sheet: stickSheet({ marks: list }) });
          const pages = strip(of, { ...how, runs: [runOf(['line'])] });
          for (const page of pages) {
            expect(layoutFaults(page), page.title).toEqual([]);
            for (const box of inked(page)) {
              expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(4);
              expect(box.x).toBeLessThanOrEqual(page.width - 4);
              expect(box.y).toBeLessThanOrEqual(page.height - 4);
            }
            expect(words(page)).toMatch(/VERIFY BY FILLING.*Accuracy: .*no source/);
          }
          const listed = texts(pages.find((page) => words(page).includes('MARKS, from'))!).filter((t) =>
            /^flow .* 1$/.test(t.zone),
          );
          expect(listed.length).toBeGreaterThanOrEqual(Math.min(1, list.length));
        },
      ),
      { seed: 42, numRuns: 40 },
    );
  });
});
