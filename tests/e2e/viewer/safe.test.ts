/** What a page that opens other people's files must hold: its policy, hostile text, and work without a network. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { editJob, parseJob } from 'runback';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inFolder, TENDER } from '../../helpers/run.ts';
import { DIST, staticSite } from '../../helpers/static-site.ts';
import { listen, openChromium, openPage, PHONE, ready, serve } from '../../helpers/viewer.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser.close());

const HOSTILE = `"><img src=x onerror="window.hacked=1"><script>window.hacked=1</script><svg onload="window.hacked=1">{{7*7}}\${7*7}`;

/** Every text a person may write, written by somebody who means harm. */
function hostileJob(): string {
  const text = readFileSync(TENDER, 'utf8');
  const words = HOSTILE.slice(0, 190);
  const paths = [
    'title',
    'revision',
    'lines[0].name',
    'lines[0].points[1].note',
    'lines[0].endA.note',
    'tubes["ss-12x1"].note',
    'benders.bench.name',
    'surroundings[0].note',
  ];
  return editJob(
    text,
    paths.map((path) => ({ path, value: words })),
  );
}

async function everyFace(page: Page): Promise<void> {
  for (const tab of ['Points', 'Bends', 'Set-up', 'Checks']) {
    await page.getByRole('tab', { name: tab }).click();
    await ready(page);
  }
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.locator('.sheet-page svg, [class*="sheet"] svg').first().waitFor();
  await page.getByRole('button', { name: 'Bend steps', exact: true }).click();
  await ready(page);
  await page.keyboard.press('Escape');
}

describe('the policy of the page', { timeout: 180_000 }, () => {
  it('comes with the file and with the server, and forbids everything from elsewhere', async () => {
    const html = readFileSync(join(DIST, 'index.html'), 'utf8');
    const server = await serve();
    const header = (await fetch(server.url)).headers.get('content-security-policy') ?? '';
    await server.stop();
    for (const policy of [
      header,
      /Content-Security-Policy"\s+content="([^"]+)"/i.exec(html)?.[1]?.replaceAll('&#39;', "'") ?? '',
    ]) {
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|https?:|\*/);
    }
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)[^>]*>/i);
    expect(html).not.toMatch(/\son[a-z]+=/i);
  });

  it('is kept by every face, and stops a script that is put into the page', async () => {
    const server = await serve(TENDER);
    const { page, faults, close } = await openPage(browser, server.url);
    await everyFace(page);
    expect(faults).toEqual([]);
    // The judge shown red: the same listener hears a breach.
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.hacked = 1';
      document.body.append(script);
    });
    expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
    await expect.poll(() => faults.join()).toMatch(/Content Security Policy/i);
    await close();
    await server.stop();
  });
});

describe('a hostile job', { timeout: 180_000 }, () => {
  it('is shown as the words it is, on every face', async () => {
    const text = hostileJob();
    expect(parseJob(text).title).toContain('onerror');
    const file = inFolder((folder) => {
      const path = join(folder, 'hostile.job.json');
      writeFileSync(path, text);
      return readFileSync(path, 'utf8');
    });
    const server = await serve(TENDER);
    writeFileSync(server.file!, file);
    const { page, faults, close } = await openPage(browser, server.url);
    expect(await page.locator('.app-top h1').textContent()).toContain('<script>');
    await everyFace(page);
    expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
    expect(await page.locator('img[src="x"]').count()).toBe(0);
    expect(faults).toEqual([]);
    await close();
    await server.stop();
  });
});

describe('a plain web site', () => {
  it('works under a sub-path, and without a network after the first visit', async () => {
    const site = await staticSite();
    const context = await browser.newContext();
    const page = await context.newPage();
    const faults: string[] = [];
    listen(page, faults);
    await page.goto(site.url);
    await ready(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await site.stop();
    await page.reload();
    await ready(page);
    expect(await page.locator('.app-top h1').textContent()).toBe('Tender 7');
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    await page.locator('[class*="sheet"] svg').first().waitFor();
    await page.getByRole('button', { name: 'Bend steps', exact: true }).click();
    await ready(page);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('fits a phone: nothing stands out of the page, and every control can be hit with a thumb', async () => {
    const server = await serve(TENDER);
    const { page, close } = await openPage(browser, server.url, {
      viewport: PHONE,
      hasTouch: true,
      isMobile: true,
    });
    for (const face of ['Checks', 'Look', 'Words', 'Sheet']) {
      await page.getByRole('button', { name: face, exact: true }).tap();
      await ready(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), face).toBeLessThanOrEqual(390);
      expect(await smallTargets(page), face).toEqual([]);
    }
    await close();
    await server.stop();
  });
});

/** Controls in view smaller than 44 px either way, but for those inside a line of text. */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, select, summary, input:not([type="hidden"])')]
      .filter((element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
      .map((element) => ({ element, box: (element.closest('label') ?? element).getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && box.height > 1 && (box.height < 43.5 || box.width < 43.5))
      .map(({ element, box }) =>
        `${element.tagName} ${element.getAttribute('aria-label') ?? element.textContent} ${box.width}×${box.height}`.slice(
          0,
          90,
        ),
      ),
  );
