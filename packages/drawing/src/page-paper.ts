/** The paper of the pages behind the first: the same header and foot, a body between them, on A4 or on Letter. */
import { bands, PAPER, WIDTH } from './frame.ts';
import { joined, type Part } from './set.ts';
import type { SheetContext, SheetOptions } from './sheet-context.ts';
import { foot } from './sheet-foot.ts';
import { header } from './sheet-header.ts';
import { stamp } from './stamp.ts';
import type { Page, Point, Zone } from './types.ts';

export type PaperName = 'a4' | 'letter';

/** A4 (ISO 216) and Letter (8 1/2 × 11 in), upright. mm */
export const papers: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  a4: PAPER,
  letter: { width: 215.9, height: 279.4 },
};

export interface PageOptions extends SheetOptions {
  /** Default A4. */
  readonly paper?: PaperName;
  /** Which side of a view its neighbour stands on; default first-angle in mm, third-angle in inches. */
  readonly projection?: 'first' | 'third';
}

export interface PageContext extends Omit<SheetContext, 'options'> {
  readonly options: PageOptions;
}

/** What stands between the header and the foot of one page. */
export interface Body {
  /** What the page shows, for its title. */
  readonly name: string;
  readonly part: Part;
}

/** How much higher the foot stands than on A4. */
const lift = (paper: PaperName): number => PAPER.height - papers[paper].height;

/** Air between the header and the body, and between the body and the foot. mm */
const AIR = 2;

/** The place for a body. */
export function bodyZone(paper: PaperName = 'a4'): Zone {
  const top = bands.header.y + bands.header.height + AIR;
  const bottom = bands.foot.y - AIR - lift(paper);
  return { name: 'body', x: bands.header.x, y: top, width: WIDTH, height: bottom - top };
}

/** A part moved over the page, its zones with it. */
export function shifted(part: Part, [dx, dy]: Point): Part {
  if (dx === 0 && dy === 0) return part;
  return {
    zones: part.zones.map((zone) => ({ ...zone, x: zone.x + dx, y: zone.y + dy })),
    items: [{ kind: 'group', at: [dx, dy], items: part.items }],
  };
}

type Footing = Pick<PageContext, 'page' | 'pages' | 'options'>;

/** The foot of any page on its paper. */
export function footOn(footing: Footing): Part {
  // The foot reads nothing of the line.
  return shifted(foot(footing as PageContext), [0, -lift(footing.options.paper ?? 'a4')]);
}

/** A whole page round a body: header, foot, and the stamp over all where the line fails. */
export function pageOf(context: PageContext, { name, part }: Body): Page {
  const { worked, plan, options, page, pages } = context;
  const { zones, items } = joined([header(context), part, footOn(context)]);
  return {
    ...papers[options.paper ?? 'a4'],
    title: `${worked.line.name}: ${name} from END ${plan.from}, page ${page} of ${pages}`,
    description: `${name} of ${worked.line.name}, worked from END ${plan.from}.${worked.verdict === 'fail' ? ' Do not bend: a check fails.' : ''}`,
    lang: options.lang ?? 'en',
    zones,
    items: worked.verdict === 'fail' ? [...items, stamp()] : items,
  };
}
