// Pictures of the viewer for these pages: the built viewer, served by the command, in the Chromium of the machine.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const root = join(import.meta.dirname, '..', '..');
const bin = join(root, 'apps', 'cli', 'bin', 'runback.js');
const flags = ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

function served(job) {
  const child = spawn(process.execPath, [
    bin,
    'view',
    join(root, 'docs/examples/tender-7', job),
    '--port',
    '0',
  ]);
  return new Promise((resolve, reject) => {
    child.on('exit', (code) => reject(new Error(`runback view ended with ${code}`)));
    child.stdout.on('data', (chunk) => {
      const url = /http:\S+/.exec(String(chunk))?.[0];
      if (url) resolve({ url, stop: () => child.kill() });
    });
  });
}

const ready = (page) =>
  page.waitForFunction(
    () => document.documentElement.dataset.working === 'no' && document.querySelector('.app-wait') === null,
  );

async function picture(browser, { job, file, viewport, touch = false, colorScheme = 'light', before }) {
  const { url, stop } = await served(job);
  const context = await browser.newContext({
    viewport,
    hasTouch: touch,
    colorScheme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto(url);
  await ready(page);
  await before?.(page);
  await ready(page);
  await page.waitForTimeout(800);
  await page.screenshot({ path: join(import.meta.dirname, file) });
  await context.close();
  stop();
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags });
const desk = { width: 1440, height: 900 };
await picture(browser, { job: 'first-try.job.json', file: 'viewer-desk.png', viewport: desk });
await picture(browser, {
  job: 'tender-7.job.json',
  file: 'viewer-steps.png',
  viewport: { width: 1024, height: 768 },
  touch: true,
  before: async (page) => {
    await page.getByRole('button', { name: 'Bend steps', exact: true }).click();
    await ready(page);
    for (let i = 0; i < 20 && !(await page.getByRole('heading', { name: /Bend 2 of/ }).count()); i++) {
      await page.keyboard.press('ArrowRight');
      await page.waitForTimeout(100);
    }
  },
});
await picture(browser, {
  job: 'first-try.job.json',
  file: 'viewer-phone.png',
  viewport: { width: 390, height: 844 },
  touch: true,
});
await browser.close();
