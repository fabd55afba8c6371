/** Pages of bend pictures: for each bend what to see and what to do, in the order of the hands. */
import type { BenchPlan, BenchRow } from '@runback/bending';
import { dialWords, pullWords, turnCheckWords } from './bench-words.ts';
import { drawnTurn, endView, endViewing } from './end-view.ts';
import { type Body, bodyZone } from './page-paper.ts';
import { bendPicture } from './picture-bend.ts';
import { project } from './picture-project.ts';
import { besideOf } from './picture-scene.ts';
import { cell, joined, line, type Part, pen, READABLE, rect, type Style, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import type { Box, Item, Point, Zone } from './types.ts';
import { length } from './words.ts';

const PER_PAGE = 4;
const HEAD = 13;
const TALLEST = 100;
const PICTURE_WIDTH = 112;

/** The pages; none for a tube without bends. */
export function pictureBodies(context: SheetContext): readonly Body[] {
  const { plan } = context;
  const pages = Math.ceil(plan.rows.length / PER_PAGE);
  const perPage = Math.ceil(plan.rows.length / Math.max(1, pages));
  return Array.from({ length: pages }, (_, i) => ({
    name: 'bend pictures',
    part: page(context, plan.rows.slice(i * perPage, (i + 1) * perPage), perPage),
  }));
}

function page(context: SheetContext, rows: readonly BenchRow[], perPage: number): Part {
  const body = bodyZone(context.options.paper);
  const tall = Math.min(TALLEST, (body.height - HEAD) / perPage);
  return joined([
    heading(context.plan, body),
    ...rows.map((row, i) => strip(context, row, { ...body, y: body.y + HEAD + i * tall, height: tall })),
  ]);
}

function heading(plan: BenchPlan, { x, y, width }: Zone): Part {
  return joined([
    { zones: [], items: [line([x, y], [x + width, y], pen(0.8))] },
    axes(plan, [x + width - AXES, y + 1.4]),
    cell(zone('pictures head', [x, y + 1.4], [width - AXES - 2, 4.6]), `BEND PICTURES, ${seenFrom(plan)}`, {
      cap: 3.4,
      minCap: 2.4,
      weight: 'bold',
    }),
    cell(
      zone('pictures legend', [x, y + 6.6], [width - AXES - 2, 5.6]),
      `${plan.bench?.moves === 'bender' ? 'Pale: the bender before you carry it round.' : 'Grey: before the turn. Black: turned, ready to pull.'} Dashed: the free leg once bent, with START held still. Not to one scale; a gap across a straight means it is longer.`,
      { cap: 2.2, minCap: 1.7, lines: 2, first: 'wrap', at: 'top' },
    ),
  ]);
}

const AXES = 26;

/** Which way is up and which is away in these pictures. */
function axes(plan: BenchPlan, [x, y]: Point): Part {
  const beside = besideOf(plan);
  if (beside === null) return joined([]);
  const from: Point = [x + 6, y + 9.6];
  const away = project([0, 1, 0], beside).at;
  const long = 8 / Math.hypot(...away);
  const tip: Point = [from[0] + away[0] * long, from[1] + away[1] * long];
  const label = { cap: 2, weight: 'bold' } as const;
  return joined([
    { zones: [], items: [...pointer(from, [from[0], from[1] - 8.6]), ...pointer(from, tip)] },
    cell(zone('axis up', [x, y], [5, 3]), 'UP', { ...label, anchor: 'end' }),
    cell(zone('axis away', [tip[0] + 1, tip[1] - 1], [x + AXES - tip[0] - 1, 3]), 'AWAY', {
      ...label,
      minCap: 1.5,
    }),
  ]);
}

function pointer(from: Point, tip: Point): Item[] {
  const [dx, dy] = [tip[0] - from[0], tip[1] - from[1]];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = [dx / long, dy / long];
  const neck: Point = [tip[0] - ux * 2.2, tip[1] - uy * 2.2];
  return [
    line(from, neck, pen(0.5)),
    {
      kind: 'path',
      fill: 0,
      steps: [
        ['M', ...tip],
        ['L', neck[0] - uy * 0.9, neck[1] + ux * 0.9],
        ['L', neck[0] + uy * 0.9, neck[1] - ux * 0.9],
        ['Z'],
      ],
    },
  ];
}

function seenFrom({ bench, from, free }: BenchPlan): string {
  if (!bench || bench.moves === 'bender')
    return `seen from START (END ${from}), looking towards FREE (END ${free})`;
  if (bench.stand === 'side') return `as you see them, START on your ${bench.startOn.toUpperCase()}`;
  return bench.stand === 'at-start'
    ? `as you see them from START (END ${from})`
    : `as you see them from FREE (END ${free}), behind the stock`;
}

function strip({ plan, worked }: SheetContext, row: BenchRow, box: Box): Part {
  const { x, y, width, height } = box;
  const name = `picture ${row.bend}`;
  const place = zone(name, [x, y + 1.6], [PICTURE_WIDTH, height - 2.6]);
  const ask = { plan, index: row.bend - 1, od: worked.line.tube.od, start: plan.from, free: plan.free };
  const right = {
    x: x + PICTURE_WIDTH + 2,
    y: y + 1.6,
    width: width - PICTURE_WIDTH - 2,
    height: height - 2.6,
  };
  return joined([
    { zones: [], items: [line([x, y], [x + width, y], pen(0.6))] },
    bendPicture(ask, place),
    words(plan, row, right),
  ]);
}

const VIEW = 21;
/** The words of the turn take no more than this, mm: the dial stays near them. */
const MOST_TURN = 20;

/** Mark, turn, dial, check: what the row of the table says, beside its picture. */
function words(plan: BenchPlan, row: BenchRow, box: Box): Part {
  const { x, y, width, height } = box;
  const left = width - VIEW - 1;
  const rest = height - VIEW - 1;
  const part = (name: string, [top, tall]: readonly [number, number], w = width): Zone =>
    zone(`picture ${row.bend} ${name}`, [x, y + top], [w, tall]);
  const bold: Style = { cap: 4, minCap: 2, weight: 'bold', lines: 4, first: 'wrap', at: 'top' };
  const lower = y + VIEW + 1;
  const turnTall = Math.min(rest * 0.42, MOST_TURN);
  return joined([
    cell(part('bend', [0, 6], left), `BEND ${row.bend}`, { cap: 4.5, minCap: 3, weight: 'bold' }),
    cell(part('mark', [6.8, 6], left), `MARK ${length(row.mark, plan.unit)}`, {
      cap: 4.5,
      minCap: 2.6,
      weight: 'bold',
    }),
    cell(part('view words', [VIEW - 6, 5], left), `on end, from ${endViewing(plan.bench).from}`, {
      cap: 2,
      minCap: READABLE,
      anchor: 'end',
    }),
    { zones: [], items: endViewOf(plan, row, { x: x + width - VIEW, y, width: VIEW, height: VIEW }) },
    cell(zone(`picture ${row.bend} turn`, [x, lower], [width, turnTall]), capital(row.words.line), bold),
    cell(zone(`picture ${row.bend} dial`, [x, lower + turnTall + 0.6], [width, 5.4]), dialWords(row), {
      cap: 4.5,
      minCap: 3,
      weight: 'bold',
    }),
    check(plan, row, { x, y: lower + turnTall + 7, width, height: rest - turnTall - 7 }),
  ]);
}

function endViewOf(plan: BenchPlan, row: BenchRow, { x, y, width, height }: Box): Part['items'] {
  const turn = { pencil: row.pencil, by: drawnTurn(row.words, plan.bench) };
  return endView([x + width / 2, y + height / 2], width * 0.86, { viewing: endViewing(plan.bench), turn });
}

const TICK = 4;

function check(plan: BenchPlan, row: BenchRow, { x, y, width, height }: Box): Part {
  const texts = [turnCheckWords(row, plan.bench), pullWords(row)].filter((text) => text !== null);
  if (texts.length === 0) return joined([]);
  const place = zone(`picture ${row.bend} check`, [x + TICK + 1.6, y], [width - TICK - 1.6, height]);
  return joined([
    { zones: [], items: [rect({ x, y: y + 0.4, width: TICK, height: TICK }, { stroke: pen(0.3) })] },
    cell(place, `Before you pull: ${texts.join('; ')}`, {
      cap: 3,
      minCap: READABLE,
      lines: 6,
      first: 'wrap',
      at: 'top',
    }),
  ]);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
