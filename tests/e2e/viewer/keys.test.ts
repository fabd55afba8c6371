/** The main job without a pointer: choose a line, read what fails, cure it, edit, print, step through the bends. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY } from '../../helpers/run.ts';
import { openChromium, openPage, ready, type Server, serve } from '../../helpers/viewer.ts';

let browser: Browser;
let server: Server;
beforeAll(async () => {
  browser = await openChromium();
  server = await serve(FIRST_TRY);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

/** Tab until the focus is on something of this name; the focus must be seen on every stop. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press('Tab');
    const now = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      const style = getComputedStyle(element);
      const label = element.getAttribute('aria-label') ?? element.textContent ?? '';
      const labels = (element as HTMLInputElement).labels;
      return {
        name: `${label} ${labels ? [...labels].map((one) => one.textContent).join(' ') : ''}`.trim(),
        seen: style.outlineStyle !== 'none' || element === document.body,
      };
    });
    expect(now.seen, `the focus is not seen on ${now.name}`).toBe(true);
    if (name.test(now.name)) return;
  }
  throw new Error(`Tab does not come to ${name}`);
}

describe('with the keyboard alone', () => {
  it('does the main job', async () => {
    const { page, faults, close } = await openPage(browser, server.url);
    // Another line, and back.
    await tabTo(page, /Oil dipstick tube/);
    await page.keyboard.press('ArrowRight');
    await ready(page);
    await page.keyboard.press('ArrowLeft');
    await ready(page);
    // The cure of what fails.
    const fails = page.locator('.words-finding-fail');
    const before = await fails.count();
    await tabTo(page, /^Do it:/);
    await page.keyboard.press('Enter');
    await expect.poll(() => fails.count()).toBeLessThan(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => fails.count()).toBe(before);
    // The bead along the run profile.
    await page
      .getByRole('slider', { name: /run profile|along/i })
      .first()
      .focus();
    const words = () =>
      page
        .getByRole('slider', { name: /run profile|along/i })
        .first()
        .getAttribute('aria-valuetext');
    await page.keyboard.press('Home');
    const home = await words();
    await page.keyboard.press('ArrowRight');
    expect(await words()).not.toBe(home);
    // Sheet, steps and back; the list of keys.
    await page.keyboard.press('Alt+4');
    await page.locator('[class*="sheet"] svg').first().waitFor();
    await page.keyboard.press('Alt+5');
    await expect.poll(() => page.locator('body').textContent()).toMatch(/DO NOT BEND/);
    const step = await page.locator('h2, h1').first().textContent();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('h2, h1').first().textContent()).not.toBe(step);
    await page.keyboard.press('Escape');
    await page.locator('.app-top').waitFor();
    await page.keyboard.press('F1');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(faults).toEqual([]);
    await close();
  }, 180_000);

  it('moves a corner from the scene', async () => {
    const { page, close } = await openPage(browser, server.url);
    await page.getByRole('tab', { name: 'Points' }).click();
    await page.getByRole('button', { name: /^Select point 1/ }).click();
    await page.locator('.look-canvas').focus();
    await page.keyboard.press('Alt+PageUp');
    await expect
      .poll(() => page.getByRole('textbox', { name: 'point 1, up', exact: true }).inputValue())
      .toBe('91');
    await close();
  });
});
