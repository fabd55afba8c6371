/** What the viewer weighs: what it loads, and what a thousand edits leave behind. Kept beside the times of this version. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { runnerImport } from 'vite';

/** Fewer when given, to try it out. */
const EDITS = Number(process.argv[2] ?? 1000);
/** Where a picture is drawn without a graphics card, a small one keeps the thousand short. */
const SMALL = { width: 1024, height: 500 };
const HEAD = '\n## Weight of the viewer';
const here = (path) => new URL(path, import.meta.url);
const helper = async (path) => (await runnerImport(here(path).pathname)).module;
const [viewer, { TENDER }, { coordinateCell, edited }] = await Promise.all(
  ['../helpers/viewer.ts', '../helpers/run.ts', './edit-in-page.ts'].map(helper),
);
const kB = (bytes) => (bytes / 1000).toFixed(1);
const MB = (bytes) => (bytes / 1e6).toFixed(1);
const weighed = ([name, body]) => ({ name, raw: body.length, gz: gzipSync(body).length });
const table = (heads, rows) =>
  [heads, heads.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');

/** Every file the page asks for until it is ready with the demo. */
async function firstLoad(browser, viewport) {
  const server = await viewer.serve();
  const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
  const page = await context.newPage();
  const bodies = [];
  page.on('response', (response) => bodies.push(response));
  await page.goto(server.url);
  await viewer.ready(page);
  const files = [];
  for (const response of bodies)
    if (response.ok())
      files.push([new URL(response.url()).pathname.slice(1) || 'index.html', await response.body()]);
  await context.close();
  await server.stop();
  return files.map(weighed).sort((a, b) => b.gz - a.gz);
}

function later(first) {
  const assets = here('../../apps/viewer/dist/assets/');
  const had = new Set(first.map(({ name }) => name));
  return readdirSync(assets)
    .map((name) => [`assets/${name}`, readFileSync(new URL(name, assets))])
    .filter(([name]) => !had.has(name))
    .map(weighed)
    .sort((a, b) => b.gz - a.gz);
}

/** Heap of the page and of its worker, after both have thrown away what they can. */
async function heaps(cdp) {
  const page = async (method) => cdp.send(method);
  let asked = 0;
  const worker = (method) =>
    new Promise((resolve) => {
      const id = ++asked;
      const hear = ({ message }) => {
        const answer = JSON.parse(message);
        if (answer.id !== id) return;
        cdp.off('Target.receivedMessageFromTarget', hear);
        resolve(answer.result);
      };
      cdp.on('Target.receivedMessageFromTarget', hear);
      void cdp.send('Target.sendMessageToTarget', {
        sessionId: cdp.workerId,
        message: JSON.stringify({ id, method }),
      });
    });
  const used = async (send) => {
    for (let i = 0; i < 3; i++) await send('HeapProfiler.collectGarbage');
    return (await send('Runtime.getHeapUsage')).usedSize;
  };
  return { page: await used(page), worker: await used(worker) };
}

async function afterEdits(browser) {
  const server = await viewer.serve(TENDER);
  const { page, close } = await viewer.openPage(browser, server.url, { viewport: SMALL });
  const cdp = await page.context().newCDPSession(page);
  cdp.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') cdp.workerId = sessionId;
  });
  await cdp.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  const cell = await coordinateCell(page, 'point 2, up');
  const values = (count) => Array.from({ length: count }, (_, i) => String(340 + (i % 20) / 2 + 0.5));
  const now = async () => {
    await viewer.ready(page);
    const card = await page.locator('.look-canvas').evaluate((canvas) => canvas.runbackScene.stats());
    return { ...(await heaps(cdp)), ...card };
  };
  await edited(cell, values(20));
  const before = await now();
  await edited(cell, values(EDITS));
  const after = await now();
  await close();
  await server.stop();
  return { before, after };
}

const browser = await viewer.openChromium();
const desk = await firstLoad(browser, viewer.DESK);
const phone = await firstLoad(browser, viewer.PHONE);
const { before, after } = await afterEdits(browser);
await browser.close();

const sum = (files) => files.reduce((all, { gz }) => all + gz, 0);
const files = (list) =>
  table(
    ['file', 'kB', 'kB gz'],
    list.map(({ name, raw, gz }) => [name.replace(/-[\w-]{8}\./, '.'), kB(raw), kB(gz)]),
  );
const history = EDITS * readFileSync(TENDER, 'utf8').length;
const text = `${HEAD}: loaded until ready with the demo\n
On a desk ${kB(sum(desk))} kB gz, of which:\n
${files(desk)}\n
On a phone ${kB(sum(phone))} kB gz: without ${
  desk
    .filter(({ name }) => !phone.some((one) => one.name === name))
    .map(({ name }) => name.replace(/-[\w-]{8}\./, '.'))
    .join(', ') || 'nothing'
}.\n
## Weight of the viewer: loaded when first needed\n
${files(later(desk))}\n
## Weight of the viewer: after ${EDITS.toLocaleString('en')} edits of Tender 7\n
${table(
  ['what', 'before', 'after'],
  [
    ['heap of the page, MB', MB(before.page), MB(after.page)],
    ['heap of the worker, MB', MB(before.worker), MB(after.worker)],
    ...['geometries', 'textures', 'programs'].map((key) => [
      `${key} on the graphics card`,
      before[key],
      after[key],
    ]),
  ],
)}\n
Undo is without limit: every text is kept, ${MB(history)} MB of letters in all.\n`;
console.log(text);

const { version } = JSON.parse(readFileSync(here('../../package.json'), 'utf8'));
const kept = here(`./results/${version}.md`);
const rest = existsSync(kept)
  ? readFileSync(kept, 'utf8').split(HEAD)[0]
  : `# Benchmarks, version ${version}\n`;
writeFileSync(kept, `${rest.trimEnd()}\n${text}`);
