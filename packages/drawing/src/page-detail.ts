import type { Body } from './page-paper.ts';
import { valueBodies } from './page-values.ts';
import { pictureBodies } from './picture-page.ts';
import type { PageKind, SheetContext } from './sheet-context.ts';
import { viewBodies } from './views-page.ts';

export interface Detail {
  readonly kind: Exclude<PageKind, 'bench'>;
  readonly body: Body;
}

/** Everything behind the table of a bend sheet: a picture of each bend, the whole line, the exact values. */
export function detailBodies(context: SheetContext): readonly Detail[] {
  return [
    ...pictureBodies(context).map((body): Detail => ({ kind: 'pictures', body })),
    ...viewBodies(context).map((body): Detail => ({ kind: 'views', body })),
    ...valueBodies(context).map((body): Detail => ({ kind: 'values', body })),
  ];
}
