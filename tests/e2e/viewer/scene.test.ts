/** The picture is where the geometry says, follows the hand, and leaves nothing behind. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { pointAt, type Vec3, workUp } from 'runback';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../helpers/run.ts';
import { type Opened, openChromium, openPage, ready, type Server, serve } from '../../helpers/viewer.ts';

interface SceneWindow {
  readonly runbackScene: {
    project(point: Vec3): readonly [number, number];
    pixel(x: number, y: number): readonly [number, number, number];
    stats(): { readonly geometries: number; readonly textures: number; readonly programs: number };
    view(name: string): void;
  };
}

let browser: Browser;
const servers: Server[] = [];
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(async () => {
  await browser.close();
  for (const { stop } of servers) await stop();
});

async function opened(job: string): Promise<Opened> {
  const server = await serve(job);
  servers.push(server);
  const it = await openPage(browser, server.url, { reducedMotion: 'reduce' });
  await it.page.locator('.look-canvas[data-ready="true"]').waitFor();
  return it;
}

const project = (page: Page, point: Vec3): Promise<readonly [number, number]> =>
  page.evaluate(
    (at) => (document.querySelector('.look-canvas') as unknown as SceneWindow).runbackScene.project(at),
    point,
  );

const pixel = (page: Page, [x, y]: readonly [number, number]): Promise<readonly [number, number, number]> =>
  page.evaluate(
    (at) => (document.querySelector('.look-canvas') as unknown as SceneWindow).runbackScene.pixel(...at),
    [x, y] as [number, number],
  );

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

const line = (job: string) => workUp(readFileSync(job, 'utf8')).lines[0]!;

describe('the picture', () => {
  it('has the tube where the geometry says: blue where it falls enough, red where it does not', async () => {
    const { page, faults, close } = await opened(FIRST_TRY);
    const { centreline } = line(FIRST_TRY);
    const colourAt = async (at: number) => pixel(page, await project(page, pointAt(centreline!, at)));
    // In front of everything in the first view: halfway between B2 and B3, and on the last leg.
    const [r1, , b1] = await colourAt(400);
    expect(b1).toBeGreaterThan(r1 + 30);
    // Between two bands the leg is red, on a band it is dark: of a stretch of it, the most is red.
    let red = 0;
    for (let at = 560; at < 660; at += 5) {
      const [r, g, b] = await colourAt(at);
      if (r > g + 40 && r > b + 40) red += 1;
    }
    expect(red).toBeGreaterThan(5);
    // The judge shown wrong: beside the tube, more than its radius away, there is none.
    const beside = pointAt(centreline!, 400);
    const [r2, , b2] = await pixel(page, await project(page, [beside[0], beside[1] + 60, beside[2] + 60]));
    expect(b2).toBeLessThan(r2 + 30);
    expect(faults).toEqual([]);
    await close();
  });

  it('shows the plain tube in copper, and the other sides of it from the standard views', async () => {
    const { page, close } = await opened(TENDER);
    await press(page, 'Plain');
    const { centreline } = line(TENDER);
    for (const view of ['left', 'above']) {
      await page.evaluate(
        (name) => (document.querySelector('.look-canvas') as unknown as SceneWindow).runbackScene.view(name),
        view,
      );
      const [r, g, b] = await pixel(page, await project(page, pointAt(centreline!, 600)));
      expect(r, view).toBeGreaterThan(g + 15);
      expect(g, view).toBeGreaterThan(b);
    }
    await close();
  });

  it('tips the machine: at the worst attitude the fall it shows is the one the check found', async () => {
    const { page, close } = await opened(FIRST_TRY);
    const tilt = page.getByRole('button', { name: /Tilt/ });
    await tilt.click();
    await page.getByRole('button', { name: /worst/i }).first().click();
    const worst = line(FIRST_TRY).slope!.worst;
    const degrees = Math.round(((worst.slope * 180) / Math.PI) * 10) / 10;
    await page
      .getByRole('slider', { name: /run profile|along/i })
      .first()
      .focus();
    await page.keyboard.press('End');
    await expect
      .poll(() => page.locator('body').textContent())
      .toContain(`${String(degrees).replace('-', '−')}°`);
    await close();
  });
});

describe('a dragged corner', () => {
  it('moves with the hand, as one step, and everything with it', async () => {
    const { page, faults, close } = await opened(TENDER);
    const corner = line(TENDER).line.corners[2]!.at;
    const [x, y] = await project(page, corner);
    const box = (await page.locator('.look-canvas').boundingBox())!;
    await page.mouse.move(box.x + x, box.y + y);
    await page.mouse.down();
    for (let i = 1; i <= 8; i++) await page.mouse.move(box.x + x + 3 * i, box.y + y - 2 * i);
    await page.mouse.up();
    await ready(page);
    const undo = page.getByRole('button', { name: /^Undo: move point 2/ });
    await undo.waitFor();
    await page.getByRole('tab', { name: 'Points' }).click();
    const up = page.getByRole('textbox', { name: 'point 2, up', exact: true });
    expect(await up.inputValue()).not.toBe('340');
    // What was dragged lies under the hand: the handle is drawn where the pointer let go.
    const now: Vec3 = await cells(page, 'point 2');
    const [px, py] = await project(page, now);
    expect(Math.hypot(px - x - 24, py - y + 16)).toBeLessThan(6);
    await undo.click();
    await expect.poll(() => up.inputValue()).toBe('340');
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    expect(faults).toEqual([]);
    await close();
  });

  it('that cannot hold its radius says why, and the picture stays', async () => {
    const { page, faults, close } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    const box = page.getByRole('textbox', { name: 'point 1, up', exact: true });
    await box.fill('338');
    await box.press('Enter');
    await ready(page);
    await expect
      .poll(() => page.locator('.look-canvas').getAttribute('aria-label'))
      .toContain('cannot exist');
    await page.getByRole('tab', { name: 'Checks' }).click();
    expect(await page.locator('.words-finding-fail').first().textContent()).toMatch(/radius|leg/i);
    const at = line(TENDER).line.corners[3]!.at;
    const [x, y] = await project(page, at);
    expect(x).toBeGreaterThan(0);
    expect(y).toBeGreaterThan(0);
    expect(faults).toEqual([]);
    await close();
  });

  it('leaves nothing behind on the graphics card', async () => {
    const { page, close } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    const box = page.getByRole('textbox', { name: 'point 2, up', exact: true });
    const stats = () =>
      page.evaluate(() =>
        (document.querySelector('.look-canvas') as unknown as SceneWindow).runbackScene.stats(),
      );
    const set = async (value: number): Promise<void> => {
      await box.fill(String(value));
      await box.press('Enter');
      await ready(page);
    };
    await set(341);
    const before = await stats();
    for (let i = 0; i < 12; i++) await set(342 + i);
    const after = await stats();
    expect(after.geometries).toBeLessThanOrEqual(before.geometries + 2);
    expect(after.textures).toBeLessThanOrEqual(before.textures + 2);
    expect(after.programs).toBeLessThanOrEqual(before.programs + 1);
    await close();
  });
});

async function cells(page: Page, point: string): Promise<Vec3> {
  const values: number[] = [];
  for (const axis of ['forward', 'left', 'up'])
    values.push(
      Number(await page.getByRole('textbox', { name: `${point}, ${axis}`, exact: true }).inputValue()),
    );
  return values as unknown as Vec3;
}
