import type { WorkedLine } from '@runback/checks';
import { cardPages } from './aid-cards.ts';
import {
  AIDS,
  type Aid,
  type AidBody,
  type AidContext,
  type AidOptions,
  aidContext,
  type Made,
} from './aid-context.ts';
import { aidFoot, aidHeader, aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { stickPages } from './aid-stick.ts';
import { stripPages } from './aid-strip.ts';
import { tapePages } from './aid-tape.ts';
import { viewPages } from './aid-views.ts';
import { wheelPages } from './aid-wheel.ts';
import { joined } from './set.ts';
import type { Paragraph } from './stack.ts';
import { stamp } from './stamp.ts';
import type { GroupItem, Page } from './types.ts';

const MAKERS: Readonly<Record<Aid, (context: AidContext) => Made>> = {
  tape: tapePages,
  wheel: wheelPages,
  strip: stripPages,
  cards: cardPages,
  'side-views': viewPages,
  stick: stickPages,
};

/**
 * The aids of a worked line at full size, to cut out and use at the bench: marking tape, turn wheel, wrap strip,
 * angle cards, side views, stick strip. They follow the bend sheet: the same end, the same rounded marks and turns. Each page has
 * two bars to measure first (items `check-bar` and `check-bar-y`: 100 mm, or 4 in). An aid that cannot be made for
 * this line is named on the first page with the reason. The stick strip is made of a line with a stick, and of the
 * line a run's stick goes in at when `runs` is given; where no stick goes in nothing is said of it. A line with a failing finding is stamped DO NOT BEND; a line
 * whose geometry cannot exist has no pages.
 *
 * @throws RangeError when an aid, the paper or a bend to snap is not known
 * @example
 * import { aidPages } from '@runback/drawing';
 * import { workUp } from 'runback';
 * const job = workUp(`{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "lines": [{ "id": "drain", "tube": "t", "points": [
 *     { "at": [0, 0, 100] }, { "at": [0, 0, 0], "radius": 36 }, { "at": [100, 0, 0] } ] }] }`);
 * aidPages(job.lines[0], { checksum: job.checksum, aids: ['tape', 'cards'], paper: 'letter' }).length; // => 2
 */
export function aidPages(worked: WorkedLine, options: AidOptions): readonly Page[] {
  const { aids = AIDS, paper = 'a4' } = options;
  for (const aid of aids)
    if (!AIDS.includes(aid)) throw new RangeError(`aidPages: aids must be of ${AIDS.join(', ')}, got ${aid}`);
  if (paper !== 'a4' && paper !== 'letter')
    throw new RangeError(`aidPages: paper must be a4 or letter, got ${paper}`);
  if (worked.centreline === null) return [];
  const context = aidContext(worked, worked.centreline, options);
  const made = AIDS.filter((aid) => aids.includes(aid)).map((aid) => MAKERS[aid](context));
  const refused = made.flatMap((one) => ('why' in one ? [one] : []));
  const bodies = made.flatMap((one): readonly AidBody[] => one.bodies);
  if (bodies.length === 0 && refused.length > 0)
    return [assembled(context, nothing(context, refused.map(whyOf)), { page: 1, pages: 1, why: [] })];
  const why = refused.filter(({ quiet }) => !quiet).map(whyOf);
  return bodies.map((body, i) =>
    assembled(context, body, { page: i + 1, pages: bodies.length, why: i === 0 ? why : [] }),
  );
}

function nothing({ paper }: AidContext, why: readonly string[]): AidBody {
  const frame = aidFrame(paper, 'portrait');
  return { title: 'AIDS', frame, part: aidHow(frame.body, why.map(notMade)).part };
}

const whyOf = ({ why }: { readonly why: string }): string => why;

const notMade = (why: string): string => `Not made: ${why}.`;

function assembled(
  context: AidContext,
  { title, detail, frame, part }: AidBody,
  how: { page: number; pages: number; why: readonly string[] },
): Page {
  const { worked, options, plan } = context;
  const named = detail === undefined ? title : `${title} ${detail}`;
  const heading = {
    title: detail === undefined ? `${title} 1:1` : `${title} 1:1 · ${detail}`,
    page: `aids page ${how.page} of ${how.pages}`,
  };
  const notices: readonly Paragraph[] = how.why.length === 0 ? [] : [{ text: notMade(how.why.join('; ')) }];
  const { zones, items } = joined([
    aidHeader(context, frame, heading),
    part,
    aidFoot(context, frame, { ...heading, notices }),
  ]);
  const failed = worked.verdict === 'fail';
  return {
    width: frame.width,
    height: frame.height,
    title: `${worked.line.name}: ${named.toLowerCase()} from END ${plan.from}, page ${how.page} of ${how.pages}`,
    description: `${named} at full size for ${worked.line.name}, worked from END ${plan.from}.${failed ? ' Do not bend: a check fails.' : ''}`,
    lang: options.lang ?? 'en',
    zones,
    items: failed ? [...items, stampOn(frame.width, frame.height)] : items,
  };
}

/** The sheet's stamp in the middle of any page; on a broad one it lies flatter. */
function stampOn(width: number, height: number): GroupItem {
  const one = stamp();
  return { ...one, at: [width / 2, height / 2], turn: width > height ? FLAT : (one.turn ?? 0) };
}

/** Degrees. */
const FLAT = -32;
