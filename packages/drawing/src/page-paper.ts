/** The pages behind the first: the same header and foot, a body between them. */
import { HEADER, type PaperName, papers, WIDTH } from './frame.ts';
import { joined, type Part } from './set.ts';
import { frameOf, type SheetContext } from './sheet-context.ts';
import { foot } from './sheet-foot.ts';
import { header } from './sheet-header.ts';
import { stamp } from './stamp.ts';
import type { Page, Zone } from './types.ts';

/** What stands between the header and the foot of one page. */
export interface Body {
  /** What the page shows, for its title. */
  readonly name: string;
  readonly part: Part;
}

/** Air between the header and the body, and between the body and the foot. mm */
const AIR = 2;

/** The place for a body. */
export function bodyZone(paper: PaperName = 'a4'): Zone {
  const top = HEADER.y + HEADER.height + AIR;
  const bottom = frameOf({ paper }).bands.foot.y - AIR;
  return { name: 'body', x: HEADER.x, y: top, width: WIDTH, height: bottom - top };
}

/** A whole page round a body: header, foot, and the stamp over all where the line fails. */
export function pageOf(context: SheetContext, { name, part }: Body): Page {
  const { worked, plan, options, page, pages } = context;
  const { zones, items } = joined([header(context), part, foot({ page, pages, options, unit: plan.unit })]);
  return {
    ...papers[options.paper ?? 'a4'],
    title: `${worked.line.name}: ${name} from END ${plan.from}, page ${page} of ${pages}`,
    description: `${name} of ${worked.line.name}, worked from END ${plan.from}.${worked.verdict === 'fail' ? ' Do not bend: a check fails.' : ''}`,
    lang: options.lang ?? 'en',
    zones,
    items: worked.verdict === 'fail' ? [...items, stamp(options.paper)] : items,
  };
}
