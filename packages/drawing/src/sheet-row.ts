/** One row of the bend table: mark, turn, check the turn, dial, check before pulling. */
import type { BenchPlan, BenchRow } from '@runback/bending';
import { flatWords, mainTurnWords, pullWords, turnCheckWords, wantedWords } from './bench-words.ts';
import { type Column, column } from './columns.ts';
import { drawnTurn, endView, endViewing } from './end-view.ts';
import { fitText } from './fit.ts';
import { ROW_HEIGHT, TABLE_LEFT, WIDTH } from './frame.ts';
import { textWidth } from './measure.ts';
import { cell, joined, line, type Part, pen, READABLE, rect, type Style } from './set.ts';
import type { Zone } from './types.ts';
import { degrees, length } from './words.ts';

export interface RowPlace {
  readonly plan: BenchPlan;
  readonly top: number;
  readonly grey: boolean;
  /** Cap height of the bend numbers. */
  readonly bends: number;
  readonly marks: Figures;
  readonly dials: Figures;
}

/** Alternate rows lie on 8 % grey, so that the eye keeps its row at arm's length. */
const ROW_GREY = 0.92;
const NUMBER = { cap: 6, minCap: 4, weight: 'bold' } as const satisfies Style;

export function tableRow(row: BenchRow, place: RowPlace): Part {
  const [x, width] = [TABLE_LEFT, WIDTH];
  const { top, grey, plan } = place;
  const background = grey ? [rect({ x, y: top, width, height: ROW_HEIGHT }, { fill: ROW_GREY })] : [];
  return joined([
    { zones: [], items: [...background, line([x, top], [x + width, top], pen(0.6))] },
    cell(spot('bend', row, [top + 1, ROW_HEIGHT - 2]), String(row.bend), {
      cap: place.bends,
      weight: 'bold',
    }),
    figure(spot('mark', row, [top + 1, ROW_HEIGHT - 2]), length(row.mark, plan.unit), place.marks),
    picture(row, place),
    turnWords(row, place),
    cell(spot('flag', row, [top + 1, ROW_HEIGHT - 2]), turnCheckWords(row, plan.bench) ?? '', {
      cap: 4,
      minCap: 1.8,
      lines: 6,
      first: 'wrap',
    }),
    dial(row, place),
    check(row, place),
  ]);
}

const spot = (name: Column, row: BenchRow, span: readonly [number, number]): Zone =>
  column(name, `row ${row.bend}`, span);

/**
 * The figures of one column at one size, largest that holds them all, with their decimal points under each other:
 * a whole one leaves room for the half.
 */
export function figures(
  texts: readonly string[],
  { width, decimal }: { width: number; decimal: boolean },
): Figures {
  const { cap, weight } = NUMBER;
  const half = (size: number, text: string): number =>
    decimal && !text.includes('.') ? textWidth('.5', size, weight) : 0;
  const widest = Math.max(...texts.map((text) => textWidth(text, cap, weight) + half(cap, text)));
  // Rounded down, so that the widest fits whatever the last bit of a double says.
  const size = Math.floor(Math.min(cap, (cap * width) / widest) * 100) / 100;
  return { cap: size, room: (text) => half(size, text) };
}

export interface Figures {
  readonly cap: number;
  readonly room: (text: string) => number;
}

function figure(zone: Zone, text: string, { cap, room }: Figures): Part {
  return cell({ ...zone, width: zone.width - room(text) }, text, {
    cap,
    minCap: cap * 0.9,
    weight: 'bold',
    anchor: 'end',
  });
}

function picture(row: BenchRow, { plan, top }: RowPlace): Part {
  const box = spot('picture', row, [top, ROW_HEIGHT]);
  const turn = { pencil: row.pencil, by: drawnTurn(row.words, plan.bench) };
  const centre = [box.x + box.width / 2, top + ROW_HEIGHT / 2] as const;
  return { zones: [], items: endView(centre, 12.8, { viewing: endViewing(plan.bench), turn }) };
}

/** What the confirmation below the turn may become, best first, and the height it then has. mm */
const SEEN = [
  { tall: 4, cap: 2.8, minCap: 2.1, lines: 1 },
  { tall: 5.9, cap: 2.1, minCap: READABLE, lines: 2 },
  { tall: 5.9, cap: READABLE, minCap: 1.3, lines: 3 },
] as const;
/** Air between the rule over a row and its words, mm. */
const UNDER_RULE = 0.85;

/** The turn in words, never cut; what to see when it is right; a flat jog where that is worth offering. */
function turnWords(row: BenchRow, { top, plan }: RowPlace): Part {
  const place = spot('turn', row, [top + UNDER_RULE, ROW_HEIGHT - 2 * UNDER_RULE]);
  const main = mainTurnWords(row.words);
  const more = [seenWords(row.words.confirmation ?? '', main), flatWords(row, plan.unit)]
    .filter((text) => text !== null && text !== '')
    .join('; ');
  if (more === '') return bold(place, main);
  const style = SEEN.find(({ tall, ...fit }) => !fitText(more, { ...fit, ...WRAP, width: place.width }).cut);
  const { tall, ...fit } = style ?? SEEN.at(-1)!;
  const seen = { ...place, name: `${place.name} seen`, y: top + ROW_HEIGHT - 0.4 - tall, height: tall };
  return joined([
    bold({ ...place, height: seen.y - 0.5 - place.y }, main),
    cell(seen, more, { ...fit, ...WRAP, at: 'top' }),
  ]);
}

const WRAP = { first: 'wrap' } as const;

/** Where the turn is seen from is not said twice in one place. */
function seenWords(confirmation: string, main: string): string {
  const from = confirmation.match(/, (seen from END [AZ])$/u);
  return from && main.includes(from[1]!) ? confirmation.slice(0, -from[0].length) : confirmation;
}

/** Two lines as long as they stay readable, more and smaller before a word is lost. */
function bold(place: Zone, text: string): Part {
  const two = { cap: 4.5, minCap: 2.7, weight: 'bold', lines: 2, first: 'wrap' } as const;
  const fits = !fitText(text, { ...two, width: place.width, height: place.height }).cut;
  return cell(place, text, fits ? two : { ...two, minCap: 2, lines: 4 });
}

/** What to set, and small below it, named, the bend wanted: never two bare figures. */
function dial(row: BenchRow, { plan, top, dials }: RowPlace): Part {
  const place = spot('dial', row, [top + 1.2, 8.2]);
  const small = { ...place, name: `${place.name} wanted`, y: top + 9.6, height: ROW_HEIGHT - 10.4 };
  return joined([
    figure(place, degrees(row.dial), dials),
    cell(small, wantedWords(row, plan), {
      cap: 2.2,
      minCap: READABLE,
      lines: 3,
      anchor: 'end',
      at: 'top',
      first: 'wrap',
    }),
  ]);
}

const TICK = 4;

/** The signed check that end-to-end cannot replace. */
function check(row: BenchRow, { top }: RowPlace): Part {
  const text = pullWords(row);
  if (text === null) return joined([]);
  const place = spot('check', row, [top + 0.8, ROW_HEIGHT - 1.6]);
  const box = { x: place.x, y: top + (ROW_HEIGHT - TICK) / 2, width: TICK, height: TICK };
  return joined([
    { zones: [], items: [rect(box, { fill: 1, stroke: pen(0.3) })] },
    cell({ ...place, x: place.x + TICK + 1.6, width: place.width - TICK - 1.6 }, text, {
      cap: 4,
      minCap: 1.6,
      lines: 6,
      first: 'wrap',
    }),
  ]);
}
