/** Edits as a person makes them, timed inside the page, so that nothing of the driver's is counted. */
import type { Locator, Page } from 'playwright-core';
import { ready } from '../helpers/viewer.ts';

/** The cell of a coordinate of the chosen line. */
export async function coordinateCell(page: Page, words: string): Promise<Locator> {
  await page.locator('.look-canvas[data-ready="true"]').waitFor();
  await page.getByRole('tab', { name: 'Points' }).click();
  const cell = page.getByRole('textbox', { name: words, exact: true });
  await cell.focus();
  await ready(page);
  return cell;
}

/**
 * Types each value and commits it; milliseconds from there until the run profile was drawn anew and a frame had passed.
 * Each value must differ from the one before.
 */
export const edited = (cell: Locator, values: readonly string[]): Promise<readonly number[]> =>
  cell.evaluate(async (element, texts) => {
    const input = element as HTMLInputElement;
    const frame = () =>
      new Promise((done) => requestAnimationFrame(() => setTimeout(() => done(undefined), 0)));
    const redrawn = () =>
      new Promise<void>((done) => {
        const watch = new MutationObserver(() => {
          watch.disconnect();
          done();
        });
        const everything = { subtree: true, childList: true, attributes: true, characterData: true };
        watch.observe(document.querySelector('.profile-svg')!, everything);
      });
    const took: number[] = [];
    for (const text of texts) {
      const began = performance.now();
      const drawn = redrawn();
      input.value = text;
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
      await drawn;
      await frame();
      took.push(performance.now() - began);
    }
    return took;
  }, values);
