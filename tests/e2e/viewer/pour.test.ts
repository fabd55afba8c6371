/** What stays in a line and where a drop runs: on the screen as the library says, in every tilt and without a picture. */
import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { formatLength, pocketsIn, pourIn, upIn, type WorkedLine, workUp } from 'runback';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../helpers/run.ts';
import {
  DESK,
  type Opened,
  openChromium,
  openPage,
  PHONE,
  ready,
  type Server,
  serve,
} from '../../helpers/viewer.ts';

const DEGREE = Math.PI / 180;
const SLOW = { timeout: 30_000 };
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

let browser: Browser;
const servers = new Map<string, Server>();
beforeAll(async () => {
  browser = await openChromium();
  for (const job of [FIRST_TRY, TENDER]) servers.set(job, await serve(job));
}, 60_000);
afterAll(async () => {
  await browser.close();
  for (const { stop } of servers.values()) await stop();
});

const lineOf = (job: string, id: string): WorkedLine =>
  workUp(readFileSync(job, 'utf8')).lines.find(({ line }) => line.id === id)!;

const choose = async (page: Page, { line: { name } }: WorkedLine): Promise<void> => {
  await page.locator('.words-line', { hasText: new RegExp(`${name}(?!,)`) }).click();
  await ready(page);
};

async function opened(job: string, worked: WorkedLine, options = {}): Promise<Opened> {
  const it = await openPage(browser, servers.get(job)!.url, { reducedMotion: 'reduce', ...options });
  await choose(it.page, worked);
  return it;
}

const ml = (volume: number): string => `${(volume / 1000).toFixed(1)} ml`;

/** Amounts in the run profile, in alphabetical order. */
const amounts = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.profile-labels text')]
      .map((one) => one.textContent ?? '')
      .filter((text) => text.endsWith(' ml'))
      .sort(),
  );

/** The same from the library. */
function wanted(worked: WorkedLine, pitch: number): string[] {
  const { liquid, air } = pocketsIn(worked, upIn(worked.line.axes, pitch, 0))!;
  const of = (kind: string, pockets: readonly { readonly volume: number }[]): string[] =>
    pockets.filter(({ volume }) => volume >= 100).map(({ volume }) => `${kind} ${ml(volume)}`);
  return [...of('air', air?.pockets ?? []), ...of('liquid', liquid.pockets)].sort();
}

const openPanel = (page: Page): Promise<void> => page.locator('.look-panel-button').click();

/** By keys alone: to the end of the slider, nose down. */
async function noseDown(page: Page): Promise<number> {
  const pitch = page.getByRole('slider', { name: 'Pitch' });
  await pitch.focus();
  await pitch.press('End');
  return Number(await pitch.inputValue()) * DEGREE;
}

const said = (page: Page): Promise<string | null> =>
  page.locator('.look-poured[role="status"]').textContent();

/** Puts the bead on the run profile by keys: to an end, then so many steps. */
async function beadAt(page: Page, end: 'Home' | 'End', steps: number): Promise<number> {
  const slider = page.locator('.profile-slider');
  await slider.focus();
  await slider.press(end);
  for (let i = 0; i < steps; i++) await slider.press(end === 'Home' ? 'Shift+ArrowRight' : 'Shift+ArrowLeft');
  return Number(await slider.getAttribute('aria-valuenow'));
}

describe('what stays', () => {
  const cases = [
    ['pump-drain', ['liquid 3.4 ml']],
    ['brake-front', ['air 2.0 ml', 'liquid 2.1 ml']],
    ['brake-rear', ['air 2.1 ml', 'liquid 11.0 ml']],
  ] as const;
  it.each(cases)(
    'of %s is what the job says at rest, and follows the tilt',
    async (id, figures) => {
      const worked = lineOf(FIRST_TRY, id);
      const { page, faults, close } = await opened(FIRST_TRY, worked);
      const kept = worked.pockets!;
      const reported = [
        ...(kept.air ? [`air ${ml(kept.air.volume)}`] : []),
        `liquid ${ml(kept.liquid.volume)}`,
      ];
      expect(reported).toEqual(figures);
      await expect.poll(() => amounts(page), SLOW).toEqual(figures);
      expect(wanted(worked, 0)).toEqual(figures);
      await openPanel(page);
      const pitch = await noseDown(page);
      expect(pitch).toBeGreaterThan(0);
      const tipped = wanted(worked, pitch);
      expect(tipped).not.toEqual(figures);
      await expect.poll(() => amounts(page), SLOW).toEqual(tipped);
      const staying = page.locator('.look-staying[role="status"]');
      for (const figure of tipped)
        expect(await staying.textContent()).toContain(figure.replace(/^\w+ /u, ''));
      await page.getByRole('button', { name: 'Level', exact: true }).click();
      await expect.poll(() => amounts(page), SLOW).toEqual(figures);
      expect(faults).toEqual([]);
      await close();
    },
    120_000,
  );

  it('is nothing in the cured job', async () => {
    for (const id of ['pump-drain', 'brake-front']) {
      const { page, close } = await opened(TENDER, lineOf(TENDER, id));
      await page.locator('.profile-svg').waitFor();
      expect(await amounts(page)).toEqual([]);
      await close();
    }
  }, 120_000);
});

describe('the pour test', () => {
  it('lets a drop go with a key, stops it where the library says, and runs it on as the world tilts', async () => {
    const worked = lineOf(FIRST_TRY, 'pump-drain');
    const { page, faults, close } = await opened(FIRST_TRY, worked);
    await page.getByRole('button', { name: /^Let a drop go/ }).waitFor();
    const at = await beadAt(page, 'Home', 5);
    await page.locator('.profile-slider').press('d');
    const { up } = worked.line.axes;
    const level = pourIn(worked, { up, at })!;
    expect(level.out).toBeNull();
    const place = `${formatLength(level.stops, 'mm')} from end A`;
    await expect.poll(() => said(page), SLOW).toContain(`stops in bend B3, ${place}`);
    await openPanel(page);
    const pitch = await noseDown(page);
    const next = pourIn(worked, { up: upIn(worked.line.axes, pitch, 0), at: level.stops })!;
    expect(next.stops).not.toBeCloseTo(level.stops, 0);
    await expect.poll(() => said(page), SLOW).toContain(`${formatLength(next.stops, 'mm')} from end A`);
    await page.getByRole('button', { name: 'Take it away' }).click();
    await expect.poll(() => said(page), SLOW).toBe('');
    expect(faults).toEqual([]);
    await close();
  }, 120_000);

  it('runs a drop out at the drain end once the job is cured', async () => {
    const worked = lineOf(TENDER, 'pump-drain');
    const { page, close } = await opened(TENDER, worked);
    await page.getByRole('button', { name: /^Let a drop go/ }).waitFor();
    const at = await beadAt(page, 'Home', 2);
    expect(pourIn(worked, { up: worked.line.axes.up, at })!.out).toBe('Z');
    // From the button, by keys: the bead says where.
    const button = page.getByRole('button', { name: /^Let a drop go/ });
    await button.focus();
    await button.press('Enter');
    await expect.poll(() => said(page), SLOW).toContain('runs out at end Z');
    await page.keyboard.press('Escape');
    await expect.poll(() => said(page), SLOW).toBe('');
    await close();
  }, 120_000);

  it('takes its time where things may move, and says where it ended once it is there', async () => {
    const worked = lineOf(TENDER, 'pump-drain');
    const { page, close } = await opened(TENDER, worked, { reducedMotion: 'no-preference' });
    await page.getByRole('button', { name: /^Let a drop go/ }).waitFor();
    await beadAt(page, 'Home', 0);
    const [words, begun] = await page.evaluate(async () => {
      const slider = document.querySelector('.profile-slider')!;
      slider.dispatchEvent(new KeyboardEvent('keydown', { key: 'd', bubbles: true }));
      await new Promise((resolve) => requestAnimationFrame(resolve));
      const sign = document.querySelector('.profile-running');
      return [document.querySelector('.look-poured')!.textContent, sign?.getAttribute('transform')];
    });
    expect(words).toBe('');
    expect(begun).toMatch(/^translate/u);
    await expect.poll(() => said(page), SLOW).toContain('runs out at end Z');
    expect(await page.locator('.profile-running').getAttribute('transform')).not.toBe(begun);
    await close();
  }, 120_000);

  it('keeps the bead where it was put when the pointer only passes over the line', async () => {
    const worked = lineOf(FIRST_TRY, 'pump-drain');
    const { page, close } = await opened(FIRST_TRY, worked);
    const button = page.getByRole('button', { name: /^Let a drop go/ });
    await button.waitFor();
    await beadAt(page, 'Home', 5);
    const before = await button.textContent();
    const box = (await page.locator('.profile-slider').boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2);
    await expect.poll(() => button.textContent(), SLOW).not.toBe(before);
    await page.mouse.move(box.x + box.width + 200, 5);
    await expect.poll(() => button.textContent(), SLOW).toBe(before);
    await close();
  }, 120_000);
});

describe('without a picture', () => {
  it('tilt, what stays and the drop are there in words', async () => {
    const plain = await chromium.launch({
      executablePath: '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-gpu', '--disable-3d-apis', '--disable-background-networking'],
    });
    const worked = lineOf(FIRST_TRY, 'pump-drain');
    const { page, close } = await openPage(plain, servers.get(FIRST_TRY)!.url, { reducedMotion: 'reduce' });
    await choose(page, worked);
    await page.getByText(/shows no 3D pictures/).waitFor();
    await expect.poll(() => page.locator('.look-staying').textContent(), SLOW).toContain('3.4 ml');
    const pitch = await noseDown(page);
    const [tipped] = wanted(worked, pitch);
    await expect
      .poll(() => page.locator('.look-staying').textContent(), SLOW)
      .toContain(tipped!.replace('liquid ', ''));
    await page.getByRole('button', { name: /^Let a drop go/ }).click();
    await expect.poll(() => said(page), SLOW).toMatch(/stops .* from end A|runs out at end/u);
    await close();
    await plain.close();
  }, 120_000);
});

describe('with the panel open and a drop let go', () => {
  for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
    for (const colorScheme of ['light', 'dark'] as const)
      it(`axe finds nothing and everything can be touched: ${name}, ${colorScheme}`, async () => {
        const worked = lineOf(FIRST_TRY, 'brake-front');
        const { page, close } = await openPage(browser, servers.get(FIRST_TRY)!.url, {
          viewport,
          colorScheme,
          reducedMotion: 'reduce',
          hasTouch: name === 'phone',
          isMobile: name === 'phone',
        });
        if (name === 'phone') await page.getByRole('button', { name: 'Checks', exact: true }).click();
        await choose(page, worked);
        if (name === 'phone') await page.getByRole('button', { name: 'Look', exact: true }).click();
        await page.locator('.look-panel-button').waitFor();
        await openPanel(page);
        await noseDown(page);
        await page.getByRole('button', { name: /^Let a drop go/ }).click();
        await expect.poll(() => said(page), SLOW).not.toBe('');
        const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        expect(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} ${target}`))).toEqual(
          [],
        );
        const least = name === 'phone' ? 44 : 24;
        const boxes = await page.locator('#look-panel button, #look-panel input').all();
        expect(boxes.length).toBeGreaterThan(8);
        for (const one of boxes) {
          if (!(await one.isVisible())) continue;
          expect((await one.boundingBox())!.height).toBeGreaterThanOrEqual(least);
        }
        await close();
      }, 120_000);
});
