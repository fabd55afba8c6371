import type { Body, PageContext } from './page-paper.ts';
import { valueBodies } from './page-values.ts';
import { pictureBodies } from './picture-page.ts';
import { viewBodies } from './views-page.ts';

/** Everything behind the table of a bend sheet: a picture of each bend, the whole line, the exact values. */
export function detailBodies(context: PageContext): readonly Body[] {
  return [...pictureBodies(context), ...viewBodies(context), ...valueBodies(context)];
}
