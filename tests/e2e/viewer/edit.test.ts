/** The main job in the viewer: edit, undo, cure, save, and lose nothing. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { parseJob, workUp } from 'runback';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../helpers/run.ts';
import {
  type Opened,
  openChromium,
  openPage,
  openPersistent,
  ready,
  type Server,
  serve,
} from '../../helpers/viewer.ts';

let browser: Browser;
const servers: Server[] = [];
const pages: Opened[] = [];

beforeAll(async () => {
  browser = await openChromium();
});
afterAll(async () => {
  for (const { close } of pages) await close();
  await browser.close();
  for (const { stop } of servers) await stop();
});

async function opened(job: string): Promise<Opened & { readonly server: Server }> {
  const server = await serve(job);
  servers.push(server);
  const it = await openPage(browser, server.url);
  pages.push(it);
  return { ...it, server };
}

const cell = (page: Page, point: string, axis: string) =>
  page.getByRole('textbox', { name: `${point}, ${axis}`, exact: true });

async function type(page: Page, words: string, text: string): Promise<void> {
  const [point, axis] = words.split(', ') as [string, string];
  const box = cell(page, point, axis);
  await box.fill(text);
  await box.press('Enter');
  await ready(page);
}

const verdict = (page: Page) => page.locator('[role="option"][aria-selected="true"] .words-line-verdict');

describe('editing', () => {
  it('takes a typed length with a unit, works it at once, and undoes it', async () => {
    const { page, faults } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    await type(page, 'point 2, up', '340.5');
    await expect.poll(() => cell(page, 'point 2', 'up').inputValue()).toBe('340.5');
    await type(page, 'point 2, up', '13 1/2 in');
    await page.getByRole('tab', { name: 'Bends' }).click();
    const text = readFileSync(TENDER, 'utf8').replace('[90, 190, 340]', '[90, 190, "13 1/2 in"]');
    const cut = workUp(text).lines[0]!.plan!.cutLength;
    await expect
      .poll(() => page.locator('.words-bends').textContent())
      .toContain(String(Math.round(cut * 2) / 2));
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await ready(page);
    await page.getByRole('tab', { name: 'Points' }).click();
    expect(await cell(page, 'point 2', 'up').inputValue()).toBe('340');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: /^Redo/ }).click();
    await expect.poll(() => cell(page, 'point 2', 'up').inputValue()).toBe('340.5');
    expect(faults).toEqual([]);
  });

  it('keeps what is typed on while the last value is still worked', async () => {
    const { page } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    const box = cell(page, 'point 2', 'up');
    // All in one task of the page: no answer can come in between.
    await box.evaluate((input: HTMLInputElement) => {
      const typed = (text: string): void => {
        input.value = text;
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      };
      typed('341');
      input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
      typed('342');
    });
    await page.getByRole('button', { name: /^Undo/, disabled: false }).waitFor();
    await ready(page);
    expect(await box.inputValue()).toBe('342');
    await box.press('Enter');
    await ready(page);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => box.inputValue()).toBe('341');
  });

  it('refuses what cannot be read, at the cell, and changes nothing', async () => {
    const { page } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    const box = cell(page, 'point 1', 'up');
    await box.fill('1,5');
    await box.press('Enter');
    await expect.poll(() => box.getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await box.press('Escape');
    expect(await box.inputValue()).toBe('110');
  });

  it('makes a cure with one click, and the next verdict is announced', async () => {
    const { page } = await opened(FIRST_TRY);
    const fails = page.locator('.words-finding-fail');
    const before = await fails.count();
    expect(before).toBeGreaterThan(0);
    await page.locator('.words-finding-cure').first().click();
    await expect.poll(() => fails.count()).toBeLessThan(before);
    await ready(page);
    const announced = async () => (await page.locator('[role="status"]').allTextContents()).join(' ');
    await expect.poll(announced).toMatch(/check|pass/);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => fails.count()).toBe(before);
  });

  it('adds a point in the middle of a leg without changing the shape', async () => {
    const { page, server } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    await page.getByRole('button', { name: 'Add a point after end A' }).click();
    await expect.poll(() => cell(page, 'point 3', 'up').count()).toBe(1);
    expect(await cell(page, 'point 1', 'up').inputValue()).toBe('55');
    await page.keyboard.press('Control+s');
    await expect.poll(() => readFileSync(server.file!, 'utf8')).toContain('55');
    const [was, is] = [TENDER, server.file!].map((f) => workUp(readFileSync(f, 'utf8')).lines[0]!);
    expect(is!.centreline!.length).toBeCloseTo(was!.centreline!.length, 9);
    expect(is!.plan!.rows.length).toBe(was!.plan!.rows.length);
  });
});

describe('saving', () => {
  it('writes the file it was opened from, comments and all, and reads the same again', async () => {
    const { page, server } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    await type(page, 'point 2, left', '200');
    await expect.poll(() => page.locator('.app-file').textContent()).toContain('not saved');
    await page.keyboard.press('Control+s');
    await expect.poll(() => page.locator('.app-file').textContent()).not.toContain('not saved');
    const saved = readFileSync(server.file!, 'utf8');
    expect(saved).toBe(readFileSync(TENDER, 'utf8').replace('[90, 190, 340]', '[90, 200, 340]'));
    const again = await openPage(browser, server.url);
    await again.page.getByRole('tab', { name: 'Points' }).click();
    expect(await cell(again.page, 'point 2', 'left').inputValue()).toBe('200');
    await again.close();
  });

  it('has kept every change when the page is killed, and brings it back', async () => {
    const server = await serve(TENDER);
    servers.push(server);
    const profile = mkdtempSync(join(tmpdir(), 'runback-browser-'));
    const first = await openPersistent(profile);
    const page = await first.newPage();
    await page.goto(server.url);
    await ready(page);
    await page.getByRole('tab', { name: 'Points' }).click();
    await type(page, 'point 2, left', '201');
    await expect.poll(() => page.locator('.app-file').textContent()).toContain('kept here');
    // Killed from outside: nothing in the page or the browser gets a chance to tidy up.
    const gone = new Promise((resolve) => first.on('close', resolve));
    execFileSync('pkill', ['-9', '-f', profile]);
    await gone;
    const second = await openPersistent(profile);
    const next = await second.newPage();
    await next.goto(server.url);
    await ready(next);
    await next.getByRole('tab', { name: 'Points' }).click();
    await expect.poll(() => cell(next, 'point 2', 'left').inputValue()).toBe('201');
    await next.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => cell(next, 'point 2', 'left').inputValue()).toBe('190');
    await second.close();
    rmSync(profile, { recursive: true, force: true });
  });

  it('reads a change on disk again, and asks first when there are edits here', async () => {
    const { page, server } = await opened(TENDER);
    await page.getByRole('tab', { name: 'Points' }).click();
    const text = readFileSync(TENDER, 'utf8');
    writeFileSync(server.file!, text.replace('[90, 190, 340]', '[90, 191, 340]'));
    await expect.poll(() => cell(page, 'point 2', 'left').inputValue(), { timeout: 15_000 }).toBe('191');
    await type(page, 'point 2, left', '192');
    writeFileSync(server.file!, text.replace('[90, 190, 340]', '[90, 193, 340]'));
    await page.getByRole('dialog').waitFor();
    expect(await cell(page, 'point 2', 'left').inputValue()).toBe('192');
    await page.getByRole('button', { name: 'Take the file on disk' }).click();
    await expect.poll(() => cell(page, 'point 2', 'left').inputValue()).toBe('193');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => cell(page, 'point 2', 'left').inputValue()).toBe('192');
  });
});

describe('opening', () => {
  it('says where a dropped file is wrong and keeps what was open', async () => {
    const { page } = await opened(TENDER);
    await drop(
      page,
      'broken.job.json',
      '{ "format": "runback-job", "version": 1,\n  "units": "furlong", "lines": [] }',
    );
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    expect(await dialog.textContent()).toMatch(/broken\.job\.json cannot be read[\s\S]*line 2, column \d+/);
    await dialog.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(await page.locator('.app-top h1').textContent()).toBe('Tender 7');
  });

  it('opens a dropped job and shows its verdict', async () => {
    const { page } = await opened(TENDER);
    await drop(page, 'first-try.job.json', readFileSync(FIRST_TRY, 'utf8'));
    const title = parseJob(readFileSync(FIRST_TRY, 'utf8')).title;
    await expect.poll(() => page.locator('.app-top h1').textContent()).toBe(title);
    await ready(page);
    expect(await verdict(page).textContent()).toContain('fail');
  });
});

async function drop(page: Page, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([fileName, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content!], fileName!, { type: 'application/json' }));
      return data;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}
