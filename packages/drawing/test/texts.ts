/** Reading a page the way a person does: by its words and by where they stand. */
import { type Item, type Page, type TextItem, textBoxes } from '@runback/drawing';

export const texts = (page: Page): readonly TextItem[] => textBoxes(page).map((box) => box.item);

/** All words of a page, in drawing order. */
export const words = (page: Page): string =>
  texts(page)
    .map((t) => t.text)
    .join(' ');

/** The words of one zone, its lines joined again. */
export const wordsIn = (page: Page, zone: string): string =>
  texts(page)
    .filter((t) => t.zone === zone)
    .map((t) => t.text)
    .join(' ');

/** Items of a name, wherever they stand in groups. */
export function named(items: readonly Item[], name: string): readonly Item[] {
  return items.flatMap((item) => [
    ...(item.name === name ? [item] : []),
    ...(item.kind === 'group' ? named(item.items, name) : []),
  ]);
}
