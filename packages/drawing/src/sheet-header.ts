import { plainUnit } from '@runback/job';
import { HEADER } from './frame.ts';
import { cell, joined, type Part, pen, READABLE, rect, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import type { Zone } from './types.ts';
import { dieWords, handWords, nameWords, springWords, tubeWords } from './words.ts';

const { x: LEFT, y: TOP, width: WIDTH } = HEADER;
const RIGHT = LEFT + WIDTH;
const HAND_WIDTH = 80;
const UNIT_WIDTH = 27;
const SPRING_WIDTH = 36;
const DATE_WIDTH = 34;
/** The second row: facts, the date to fill in, spring-back, units. */
const SECOND = TOP + 10.9;
const SECOND_HEIGHT = 10.2;

/** Which line this is, which hand, which tube and die, which units. */
export function header(context: SheetContext): Part {
  const { worked, plan } = context;
  const hand = zone('hand', [RIGHT - HAND_WIDTH, TOP], [HAND_WIDTH, 9.8]);
  return joined([
    cell(zone('name', [LEFT, TOP], [WIDTH - HAND_WIDTH - 4, 10.2]), nameWords(worked.line), {
      cap: 7,
      minCap: 2.6,
      weight: 'bold',
      lines: 3,
    }),
    { zones: [], items: [rect(hand, { fill: 0 })] },
    cell(hand, handWords(plan), { cap: 6, minCap: 4, weight: 'bold', anchor: 'middle', fill: 1 }),
    facts(context),
    date(),
    springBack(context),
    unit(context),
  ]);
}

function facts({ worked, plan, options }: SheetContext): Part {
  const wide = WIDTH - UNIT_WIDTH - SPRING_WIDTH - DATE_WIDTH - 6;
  const { line } = worked;
  const job = [
    options.jobTitle ?? line.title,
    line.revision === null ? '' : `rev ${line.revision}`,
    `make ${line.quantity}`,
  ];
  return joined([
    cell(zone('tube', [LEFT, SECOND], [wide, 5]), `${tubeWords(line, plan.unit)} · ${dieWords(plan)}`, {
      cap: 3.4,
      minCap: 1.8,
      weight: 'bold',
      lines: 2,
    }),
    cell(zone('job', [LEFT, SECOND + 5.3], [wide, 4.9]), job.filter((word) => word !== '').join(' · '), {
      cap: 3,
      minCap: READABLE,
      lines: 2,
    }),
  ]);
}

const dateBox: Zone = zone(
  'date',
  [RIGHT - UNIT_WIDTH - SPRING_WIDTH - DATE_WIDTH - 4, SECOND],
  [DATE_WIDTH, SECOND_HEIGHT],
);

/** Blank but for its label: no clock is read, and the day of bending is the operator's to write. */
function date(): Part {
  const label = { ...dateBox, x: dateBox.x + 1, y: dateBox.y + 0.8, width: dateBox.width - 2, height: 3 };
  return joined([
    { zones: [], items: [rect(dateBox, { stroke: pen(0.3) })] },
    cell(label, 'date, by', { cap: 1.9, at: 'top' }),
  ]);
}

function springBack({ plan }: SheetContext): Part {
  const place = zone(
    'spring-back',
    [RIGHT - UNIT_WIDTH - SPRING_WIDTH - 2, SECOND],
    [SPRING_WIDTH, SECOND_HEIGHT],
  );
  const { text, calibrated } = springWords(plan);
  return cell(place, text, {
    cap: 3,
    minCap: 1.8,
    weight: calibrated ? 'regular' : 'bold',
    lines: 4,
    first: 'wrap',
    anchor: 'middle',
  });
}

function unit({ plan }: SheetContext): Part {
  const box = zone('unit', [RIGHT - UNIT_WIDTH, SECOND], [UNIT_WIDTH, SECOND_HEIGHT]);
  // Small letters stand low in a box that is laid out for capitals.
  const lifted = { ...box, y: box.y - (plainUnit(plan.unit) === 'mm' ? 1 : -0.3) };
  return joined([
    { zones: [], items: [rect(box, { stroke: pen(0.7) })] },
    cell(lifted, plainUnit(plan.unit), { cap: 8, minCap: 5, weight: 'bold', anchor: 'middle' }),
  ]);
}
