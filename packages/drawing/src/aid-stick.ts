/** The stick strip: the lower end of the stick at full size with its marks, to be carried over and verified by filling. */
import type { Fact, StickMark } from '@runback/checks';
import { type LengthStyle, MM_PER_INCH } from '@runback/job';
import type { AidBody, AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { GLUE, segmentsOf } from './aid-ribbon.ts';
import {
  doubtWords,
  litresWords,
  onStick,
  type StickPlan,
  seatDoubt,
  sticksOf,
  verifyWords,
} from './aid-stick-plan.ts';
import { type DrawnPiece, drawStick, STOP, stickHeight } from './aid-stick-strip.ts';
import { cautionRow, factLots } from './page-facts.ts';
import { type Block, flow, heading, paragraph, space } from './page-flow.ts';
import { tableBlocks } from './page-table.ts';
import { joined, type Part } from './set.ts';
import type { Paragraph } from './stack.ts';
import { length, missWords, size } from './words.ts';

/** Between pieces, mm. */
const APART = 4;
/** More joints than this carry the marks off farther than a rule does. Judgement, no source. */
const MOST_PIECES = 8;

export function stickPages(context: AidContext): Made {
  const { plans, why } = sticksOf(context);
  const bodies = plans.flatMap((plan) => bodiesOf(plan, context));
  if (bodies.length > 0) return { bodies };
  if (why.length > 0) return { bodies: [], why: `stick strip: ${why.join('; ')}` };
  return { bodies: [], why: 'stick strip: no stick goes in at this line', quiet: true };
}

function bodiesOf(plan: StickPlan, context: AidContext): readonly AidBody[] {
  const { unit } = context.plan;
  const frame = aidFrame(context.paper, 'landscape');
  const { width } = frame.body;
  const segments = segmentsOf(plan.length, width - GLUE - STOP, unit);
  const long = segments.length > MOST_PIECES;
  const drawn = long ? [] : segments.map((segment) => drawStick(plan, segment, { unit, width }));
  const lost = drawn.flatMap((one) => one.left);
  const head = aidHow(frame.body, [
    ...howWords(plan, unit, segments.length),
    ...(lost.length > 0 ? [`No room for the names of ${lost.join(', ')}: see the list.`] : []),
  ]);
  const tall = stickHeight(plan) + APART;
  const perPage = Math.max(1, Math.floor((head.rest.height + APART) / tall));
  const pages = strips(drawn, { perPage, tall, x: head.rest.x, y: head.rest.y });
  const used = drawn.length === 0 ? 0 : (((drawn.length - 1) % perPage) + 1) * tall;
  const list = listBlocks(plan, unit, width);
  const room = { name: 'list', ...head.rest, y: head.rest.y + used, height: head.rest.height - used };
  const needed = list.reduce((sum, { height }) => sum + height, 0);
  const fits = needed <= room.height;
  const listed = flow(list, fits ? room : { name: 'list', ...head.rest });
  const parts =
    fits && pages.length > 0
      ? [...pages.slice(0, -1), joined([pages.at(-1)!, ...listed])]
      : [...pages, ...listed];
  return parts.map((part) => ({
    title: 'STICK STRIP',
    ...(plan.run === null ? {} : { detail: plan.run }),
    frame,
    part: joined([head.part, part]),
  }));
}

interface Rows {
  readonly perPage: number;
  readonly tall: number;
  readonly x: number;
  readonly y: number;
}

function strips(drawn: readonly DrawnPiece[], { perPage, tall, x, y }: Rows): readonly Part[] {
  return Array.from({ length: Math.ceil(drawn.length / perPage) }, (_, page) =>
    joined(drawn.slice(page * perPage, (page + 1) * perPage).map((one, row) => one.at(x, y + row * tall))),
  );
}

function howWords(plan: StickPlan, unit: LengthStyle, pieces: number): (string | Paragraph)[] {
  const { sheet, mouth } = plan;
  const middle = length(sheet.seatToTip.middle, unit);
  return [
    {
      text: `${verifyWords(plan)}. Fill, seat the stick, read it, and only then cut or engrave.`,
      weight: 'bold',
    },
    `The stick goes in at ${mouth}. From the face its cap seats on to its end: ${middle} ± ${doubtWords(seatDoubt(sheet), unit)}, by the way it lies in the bore.`,
    pieces > MOST_PIECES
      ? `No strip: ${pieces} pieces would not stay true. Mark with a steel rule by the list.`
      : 'Cut out, fold the tab up at END, lay the stick on its outline with its end against the tab, and carry each line across. Grey: how far a mark may be off.',
    ...(pieces > 1 && pieces <= MOST_PIECES
      ? [
          'Joints: cut the left edge of the next piece on its line, lay it on the line with the same letter, top edges in one line.',
        ]
      : []),
    outlineWords(plan, unit),
    accuracy(plan, unit),
  ];
}

function outlineWords({ stick, outlines }: StickPlan, unit: LengthStyle): string {
  const say = (mm: number): string => size(mm, unit);
  const across = (width: number | null, thickness: number): string =>
    width === null ? `${say(thickness)} thick` : `${say(width)} wide, ${say(thickness)} thick`;
  const { tip, kind, link } = stick;
  const rest = `${kind} ${across(stick.width, stick.thickness)}${link === null ? '' : `, links ${say(link)} long`}`;
  const end =
    tip === null ? '' : `tip ${say(tip.length)} long, ${across(tip.width ?? stick.width, tip.thickness)}; `;
  const how =
    outlines.length === 0
      ? 'Too broad to be drawn'
      : outlines.length === 1
        ? 'Drawn true to size'
        : 'Drawn true to size, broad side and edge';
  return `${how}: ${end}${rest}.`;
}

function accuracy({ length: far }: StickPlan, unit: LengthStyle): string {
  const [off, said, bar] =
    unit === 'mm' ? [0.5, '0.5 mm', 100] : [MM_PER_INCH / 64, '1/64 in', 4 * MM_PER_INCH];
  return `Accuracy: a bar ${said} off is ${missWords((off * far) / bar, unit)} off at the end of the strip; carrying a line across is good to about ${said} (common practice, no source). The ± of a mark comes on top.`;
}

const CAP = 2.5;
const SMALL = 2.1;
const COLUMNS = [
  ['no.', 0.05],
  ['mark', 0.19],
  ['filled', 0.1],
  ['from the end of the stick', 0.15],
  ['may be off by ±', 0.12],
  ['one degree of tilt moves it, at most', 0.17],
  ['worked from', 0.22],
] as const;
const FROM: Readonly<Record<StickMark['from'], string>> = {
  fills: 'your fills',
  pan: 'the sizes of the pan',
};

/** Every mark in figures, then what they rest on. */
function listBlocks(plan: StickPlan, unit: LengthStyle, width: number): readonly Block[] {
  const { marks, facts, sheet } = plan;
  const where = (mark: StickMark): string =>
    onStick(mark, sheet) ? '' : mark.at < 0 ? ', BELOW THE STICK' : ', ABOVE THE SEAT';
  const rows = marks.map((mark, i) => [
    String(i + 1),
    mark.name,
    litresWords(mark.litres),
    onStick(mark, sheet) ? length(mark.at, unit) : 'not on it',
    doubtWords(mark.doubt, unit),
    mark.perDegree === null ? 'not known: no pan given' : missWords(Math.abs(mark.perDegree), unit),
    `${FROM[mark.from]}${where(mark)}`,
  ]);
  const columns = COLUMNS.map(([head, share], i) => ({
    head,
    width: share * width,
    ...(i === 3 ? ({ weight: 'bold' } as const) : {}),
  }));
  return [
    ...heading({ text: 'MARKS, from the end of the stick', width }),
    ...(rows.length > 0
      ? tableBlocks(columns, rows, { cap: CAP, minCap: 1.8, lines: 2 })
      : paragraph('The job asks for no marks: fill, seat the stick, mark what you read.', width, {
          cap: CAP,
        })),
    space(1),
    ...restsOn(facts, width),
  ];
}

/** Cautions and bases without their figures: those stand rounded for the bench on the strip, exact on the sheet. */
function restsOn(facts: readonly Fact[], width: number): readonly Block[] {
  if (facts.length === 0) return [];
  const { shared, lots } = factLots(facts);
  return [
    ...heading({ text: 'WHAT THIS RESTS ON', width }),
    ...shared.flatMap((text) => cautionRow(text, width)),
    ...lots.flatMap(({ facts: lot, basis, cautions }) => [
      ...cautions.flatMap((text) => cautionRow(`${labelsOf(lot)}: ${text}`, width)),
      ...paragraph(`${labelsOf(lot)}: ${basis}`, width, { cap: SMALL }),
    ]),
  ];
}

const labelsOf = (facts: readonly Fact[]): string => facts.map(({ label }) => label).join(', ');
