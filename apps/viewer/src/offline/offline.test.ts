/** A page built as the viewer is, kept by a real browser, opened with its server gone. */
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';

const VIEWER = join(import.meta.dirname, '..', '..');
const FLAGS = ['--no-sandbox', '--disable-quic', '--disable-background-networking'];
const UNDER = '/tools/runback/';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
};

const folder = mkdtempSync(join(tmpdir(), 'runback-offline-'));
let browser: Browser;

/** A page that shows its version and registers the real worker, under the real configuration. */
async function built(version: string): Promise<string> {
  const root = join(folder, `source-${version}`);
  mkdirSync(join(root, 'src'), { recursive: true });
  cpSync(join(VIEWER, 'index.html'), join(root, 'index.html'));
  writeFileSync(join(root, 'src/later.ts'), `export const later = 'later of ${version}';`);
  writeFileSync(
    join(root, 'src/main.tsx'),
    `import { registerOffline } from ${JSON.stringify(join(VIEWER, 'src/offline/index.ts'))};
     const app = document.getElementById('app')!;
     app.textContent = 'version ${version}';
     app.onclick = async () => { app.textContent = (await import('./later.ts')).later; };
     registerOffline((use) => { app.textContent += ', another waits'; app.ondblclick = use; });`,
  );
  const outDir = join(folder, `site-${version}`);
  const publicDir = join(VIEWER, 'public');
  await build({
    root,
    publicDir,
    configFile: join(VIEWER, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir, emptyOutDir: true },
  });
  return outDir;
}

/** Any plain server, with the site in a folder of it; this one sends `index.html` on to the folder, as some do. */
async function hosted(site: string, port = 0): Promise<Server> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '', 'http://localhost').pathname;
    const name = path.startsWith(UNDER) ? path.slice(UNDER.length) || 'index.html' : 'none';
    const file = join(site, name);
    if (path.endsWith('/index.html')) response.writeHead(301, { Location: UNDER }).end();
    else if (!existsSync(file) || !statSync(file).isFile()) response.writeHead(404).end();
    else {
      const type = TYPES[extname(name)] ?? 'application/octet-stream';
      response.writeHead(200, { 'Content-Type': type, Vary: 'Origin', 'Cache-Control': 'max-age=600' });
      response.end(readFileSync(file));
    }
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return server;
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;
const gone = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });

const shows = async (page: Page, words: string): Promise<void> => {
  await page.getByText(words, { exact: true }).waitFor();
};
/** Names of what the browser keeps for the site. */
const kept = (page: Page): Promise<string[]> => page.evaluate(() => caches.keys());
const inCharge = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null);

beforeAll(async () => {
  // As a person builds it; under a test runner the build would be one for trying out.
  vi.stubEnv('NODE_ENV', 'production');
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS });
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the built site', () => {
  it('opens without its server, whole, and takes a newer version when the person says so', async () => {
    const [one, two] = [await built('one'), await built('two')];
    const page = await browser.newPage();
    let server = await hosted(one);
    const port = portOf(server);
    const address = `http://127.0.0.1:${port}${UNDER}`;
    await page.goto(address);
    await inCharge(page);
    await gone(server);

    for (const path of ['', 'index.html', '?again#here']) {
      await page.goto(address + path);
      await shows(page, 'version one');
    }
    await page.getByText('version one').click();
    await shows(page, 'later of one');
    const demo = await page.evaluate(() =>
      fetch('demo/tender-7.job.json').then((response) => response.text()),
    );
    expect(demo).toContain('runback-job');
    expect(await page.evaluate(() => fetch('served/job').catch(() => 'no network'))).toBe('no network');

    server = await hosted(two, port);
    const before = await kept(page);
    await page.goto(address);
    await shows(page, 'version one, another waits');
    await page.getByText('version one').dispatchEvent('dblclick');
    await shows(page, 'version two');
    const after = await kept(page);
    expect([before.length, after.length]).toEqual([1, 1]);
    expect(after).not.toEqual(before);
    await gone(server);
    await page.close();
  }, 120_000);

  it('keeps every file that was built, and has the policy in its page', async () => {
    const site = await built('three');
    const worker = readFileSync(join(site, 'sw.js'), 'utf8');
    for (const name of ['index.html', 'icon.svg', 'manifest.webmanifest', 'demo/first-try.job.json'])
      expect(worker).toContain(name);
    expect(worker).not.toMatch(/\bimport\b|\bexport\b|sw\.js/);
    const page = readFileSync(join(site, 'index.html'), 'utf8');
    expect(page).toContain('http-equiv="Content-Security-Policy"');
    expect(page).toContain('<!--served-->');
    expect(page).not.toMatch(/(?:src|href)="\//);
  }, 120_000);
});
