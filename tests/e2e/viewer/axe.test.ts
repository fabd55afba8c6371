/** Judged by axe-core (Deque, rules for WCAG 2.2 A and AA): every face, light and dark, wide and narrow. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY } from '../../helpers/run.ts';
import {
  DESK,
  openChromium,
  openPage,
  PHONE,
  ready,
  type Server,
  serve,
  TABLET,
} from '../../helpers/viewer.ts';

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

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return found.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary}`),
  );
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const tab = (page: Page, name: string) => page.getByRole('tab', { name }).click();

const WIDE_FACES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  checks: (page) => tab(page, 'Checks'),
  points: (page) => tab(page, 'Points'),
  bends: (page) => tab(page, 'Bends'),
  'set-up': (page) => tab(page, 'Set-up'),
  menu: (page) => press(page, 'Job'),
  sheet: (page) => press(page, 'Sheet'),
  steps: (page) => press(page, 'Bend steps'),
};
const NARROW_FACES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  checks: (page) => press(page, 'Checks'),
  look: (page) => press(page, 'Look'),
  words: (page) => press(page, 'Words'),
  sheet: (page) => press(page, 'Sheet'),
  steps: (page) => press(page, 'Bend steps'),
};

const LOOKS = [
  { name: 'desk', viewport: DESK, faces: WIDE_FACES },
  { name: 'tablet', viewport: TABLET, faces: WIDE_FACES },
  { name: 'phone', viewport: PHONE, faces: NARROW_FACES },
] as const;

describe('axe finds nothing', () => {
  for (const { name, viewport, faces } of LOOKS)
    for (const colorScheme of ['light', 'dark'] as const)
      it(`${name}, ${colorScheme}`, async () => {
        const { page, close } = await openPage(browser, server.url, { viewport, colorScheme });
        for (const [face, show] of Object.entries(faces)) {
          await show(page);
          await ready(page).catch(() => undefined);
          expect(await violations(page), face).toEqual([]);
          if (face === 'menu') await page.keyboard.press('Escape');
        }
        await close();
      }, 180_000);

  it('and sees a planted fault', async () => {
    const { page, close } = await openPage(browser, server.url);
    await page.evaluate(() => {
      const bad = document.createElement('button');
      bad.className = 'btn';
      document.querySelector('.app-top')!.append(bad);
    });
    expect((await violations(page)).join()).toContain('button-name');
    await close();
  });
});
