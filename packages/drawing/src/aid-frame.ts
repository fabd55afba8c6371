/** Round an aid: header, the two bars to measure before anything is cut, notices. */
import { type LengthStyle, MM_PER_INCH, plainUnit } from '@runback/job';
import type { AidContext } from './aid-context.ts';
import { type AidFrame, BAR, MARGIN, NOTICE } from './aid-paper.ts';
import { cell, joined, line, type Part, pen, READABLE, rect, zone } from './set.ts';
import { type Paragraph, stack } from './stack.ts';
import type { Box, Item, Point, Zone } from './types.ts';
import { handWords, nameWords, tubeWords } from './words.ts';

/** The bar on an aid: 100 mm, or 4 in. mm */
export const aidBar = (unit: LengthStyle): number => (unit === 'mm' ? 100 : 4 * MM_PER_INCH);

export interface Heading {
  readonly title: string;
  /** `aids page 2 of 5` */
  readonly page: string;
}

export function aidHeader(
  { worked: { line: of }, plan, options }: AidContext,
  at: AidFrame,
  { title }: Heading,
): Part {
  const { x, width } = at.body;
  const { top } = MARGIN;
  const hand = zone('hand', [x + width - 62, top], [62, 7.4]);
  const unit = zone('unit', [x + width - 82, top], [18, 7.4]);
  const facts = [
    nameWords(of),
    options.jobTitle ?? of.title,
    of.revision === null ? '' : `rev ${of.revision}`,
    tubeWords(of, plan.unit),
    `START is END ${plan.from}`,
  ];
  return joined([
    cell(zone('title', [x, top], [width - 86, 7.4]), title, { cap: 5, minCap: 3, weight: 'bold' }),
    { zones: [], items: [rect(unit, { stroke: pen(0.5) }), rect(hand, { fill: 0 })] },
    cell({ ...unit, y: unit.y - 0.5 }, plainUnit(plan.unit), { cap: 4.4, weight: 'bold', anchor: 'middle' }),
    cell(hand, handWords(plan), { cap: 4.4, minCap: 3, weight: 'bold', anchor: 'middle', fill: 1 }),
    cell(zone('facts', [x, top + 8.2], [width, 5.6]), facts.filter((word) => word !== '').join(' · '), {
      cap: 2.8,
      minCap: 1.4,
      lines: 2,
    }),
    { zones: [], items: [line([x, top + 14.4], [x + width, top + 14.4], pen(0.6))] },
  ]);
}

/** The two bars, page and checksum, and above them what must be known before a knife is taken up. */
export function aidFoot(
  context: AidContext,
  frame: AidFrame,
  how: Heading & { notices: readonly Paragraph[] },
): Part {
  const { x, width } = frame.body;
  const y = frame.height - MARGIN.bottom - BAR;
  const { unit } = context.plan;
  const bar = aidBar(unit);
  const said = unit === 'mm' ? '100 mm' : '4 in';
  const right = x + bar + 5;
  return joined([
    notice({ x, y: y - NOTICE, width, height: NOTICE - 1 }, caution(said), how.notices),
    {
      zones: [],
      items: [...barAcross([x + 0.3, y + 2.4], bar), ...barUp([10, (frame.height + bar) / 2], bar)],
    },
    cell(zone('bar words', [x, y + 3.4], [bar, 4]), `${said} between the end ticks, across and up the page`, {
      cap: 2.2,
      minCap: 1.7,
    }),
    cell(zone('bar up', [11.2, (frame.height - bar) / 2], [6.2, 9]), said, {
      cap: 2.1,
      minCap: 1.6,
      lines: 2,
      first: 'wrap',
    }),
    cell(
      zone('foot', [right, y + 0.8], [width - bar - 5, 4.4]),
      `${how.page} · job ${context.options.checksum}`,
      {
        cap: 2.5,
        minCap: 1.5,
        anchor: 'end',
      },
    ),
  ]);
}

/** The caution keeps its size whatever else there is to say. */
function notice(box: Box, first: Paragraph, more: readonly Paragraph[]): Part {
  const own = more.length === 0 ? box.width : box.width * 0.55;
  const style = { cap: 2.8, minCap: READABLE } as const;
  if (more.length === 0) return stack({ ...box, name: 'notice' }, [first], style).part;
  const rest = { ...box, x: box.x + own + 4, width: box.width - own - 4 };
  return joined([
    stack({ ...box, width: own, name: 'notice' }, [first], style).part,
    stack({ ...rest, name: 'not made' }, more, { ...style, minCap: 1.2 }).part,
  ]);
}

const caution = (said: string): Paragraph => ({
  text: `MEASURE BOTH BARS FIRST, across and up. Not ${said}? Do not cut: print again at 100 %, never "fit to page".`,
  weight: 'bold',
});

const TICK = 2.2;
const TENTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

function ticks(bar: number): readonly Point[] {
  return [
    [0, TICK],
    [bar, TICK],
    ...TENTHS.map((i): Point => [(i * bar) / 10, TICK * (i === 5 ? 0.8 : 0.45)]),
  ];
}

function barAcross([x, y]: Point, bar: number): Item[] {
  return [
    { ...line([x, y], [x + bar, y], pen(0.25)), name: 'check-bar' },
    ...ticks(bar).map(([at, tall]) => line([x + at, y - tall], [x + at, y], pen(0.25))),
  ];
}

function barUp([x, y]: Point, bar: number): Item[] {
  return [
    { ...line([x, y], [x, y - bar], pen(0.25)), name: 'check-bar-y' },
    ...ticks(bar).map(([at, tall]) => line([x - tall, y - at], [x, y - at], pen(0.25))),
  ];
}

/** How to use an aid and what it can give, at the top of its page; what is left of the page below it. */
export function aidHow(
  body: Box,
  words: readonly (string | Paragraph)[],
): { readonly part: Part; readonly rest: Box } {
  const said = words.map((one): Paragraph => (typeof one === 'string' ? { text: one } : one));
  const most = body.height / 2;
  const place = (height: number): Zone => zone('how', [body.x, body.y], [body.width, height]);
  const below = (height: number): Box => ({
    ...body,
    y: body.y + height + 2,
    height: body.height - height - 2,
  });
  for (let height = 8; height < most; height += 2) {
    const set = stack(place(height), said, { cap: 2.6, minCap: 2.3, columns: 2 });
    if (set.left.length === 0) return { part: set.part, rest: below(height) };
  }
  // So many notes that they must be small: half the page is for the aid.
  return { part: stack(place(most), said, { cap: 2.2, minCap: 1.1, columns: 2 }).part, rest: below(most) };
}
