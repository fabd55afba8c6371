/** The viewer served to a browser on this machine, asked as a browser, and as a hostile page, would ask. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { Agent, type IncomingMessage, type OutgoingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text as allText } from 'node:stream/consumers';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { jobFile } from '../../apps/cli/src/serve/job-file.ts';
import { type Running, serve } from '../../apps/cli/src/serve/server.ts';
import { ROOT, runback, TENDER } from '../helpers/run.ts';

const SECRET = 'not for the browser';
const JOB = '// a job\n{ "title": "Größe" }\n';
const NAME = 'Größe 7.job.json';

const folder = mkdtempSync(join(tmpdir(), 'runback-view-'));
const dist = join(folder, 'dist');
const jobs = join(folder, 'jobs');
const path = join(jobs, NAME);

beforeAll(() => {
  mkdirSync(join(dist, 'assets'), { recursive: true });
  mkdirSync(join(dist, 'fonts'));
  mkdirSync(jobs);
  writeFileSync(join(folder, 'secret.txt'), SECRET);
  symlinkSync(join(folder, 'secret.txt'), join(dist, 'link.txt'));
  for (const [name, content] of Object.entries(SITE)) writeFileSync(join(dist, name), content);
});
/** Holds its connections, as a browser does. */
const agent = new Agent({ keepAlive: true });
afterAll(() => agent.destroy());
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => writeFileSync(path, JOB));

const SITE = {
  'index.html': '<!doctype html><title>Runback</title><!--served-->',
  'assets/main-B3hx9_2k.js': 'export {};',
  'assets/main-C4-x92kQ.css': 'body {}',
  'sw.js': '"the worker of the site"',
  'manifest.webmanifest': '{}',
  'icon.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
  'icon-192.png': 'png',
  'fonts/Sans.ttf': 'ttf',
  'odd.xyz': '?',
} as const;

interface Asked {
  readonly method?: string;
  readonly headers?: OutgoingHttpHeaders;
  readonly body?: string | Uint8Array;
}

interface Answered {
  readonly status: number | undefined;
  readonly headers: IncomingMessage['headers'];
  readonly body: string;
}

async function open(running: Running, at: string, { body, ...how }: Asked = {}): Promise<IncomingMessage> {
  const asked = request({ host: '127.0.0.1', port: running.port, path: at, agent, ...how });
  asked.end(body);
  const [response] = (await once(asked, 'response')) as [IncomingMessage];
  return response;
}

async function ask(running: Running, at: string, how: Asked = {}): Promise<Answered> {
  const response = await open(running, at, how);
  return { status: response.statusCode, headers: response.headers, body: await allText(response) };
}

/** A request line as no browser writes it. */
async function askRaw(running: Running, line: string): Promise<string> {
  const socket = connect(running.port, '127.0.0.1');
  socket.write(`${line} HTTP/1.1\r\nHost: 127.0.0.1:${running.port}\r\nConnection: close\r\n\r\n`);
  return allText(socket);
}

/** Serves while `use` runs. */
async function serving(use: (running: Running) => Promise<void>, job: string | null = path): Promise<void> {
  const running = await serve({ dist, job: job === null ? null : jobFile(job, NAME), port: 0 });
  try {
    await use(running);
  } finally {
    await running.close();
  }
}

/** Collects what comes in; `until` waits for words in what has come since it was last asked. */
function listen(stream: NodeJS.ReadableStream): { until(words: RegExp): Promise<RegExpExecArray> } {
  let heard = '';
  stream.setEncoding('utf8');
  stream.on('data', (words: string) => {
    heard += words;
  });
  return {
    async until(words) {
      for (;;) {
        const found = words.exec(heard);
        if (found) {
          heard = heard.slice(found.index + found[0].length);
          return found;
        }
        await once(stream, 'data');
      }
    },
  };
}

const CHANGE = /event: change\ndata: ("[\w-]+")\n\n/;
const asPage = ({ port }: Running, tag: string): OutgoingHttpHeaders => ({
  Origin: `http://127.0.0.1:${port}`,
  'Sec-Fetch-Site': 'same-origin',
  'Content-Type': 'text/plain; charset=utf-8',
  'If-Match': tag,
});
const tagOf = async (running: Running): Promise<string> => (await ask(running, '/served/job')).headers.etag!;
const save = async (running: Running, body: string | Uint8Array, tag?: string): Promise<Answered> =>
  ask(running, '/served/job', {
    method: 'PUT',
    headers: asPage(running, tag ?? (await tagOf(running))),
    body,
  });

describe('the site', () => {
  it('comes with the right types, under a strict policy', () =>
    serving(async (running) => {
      const types: Record<string, string> = {
        '': 'text/html; charset=utf-8',
        'index.html': 'text/html; charset=utf-8',
        'assets/main-B3hx9_2k.js': 'text/javascript; charset=utf-8',
        'assets/main-C4-x92kQ.css': 'text/css; charset=utf-8',
        'manifest.webmanifest': 'application/manifest+json; charset=utf-8',
        'icon.svg': 'image/svg+xml; charset=utf-8',
        'icon-192.png': 'image/png',
        'fonts/Sans.ttf': 'font/ttf',
        'odd.xyz': 'application/octet-stream',
      };
      for (const [name, type] of Object.entries(types)) {
        const { status, headers } = await ask(running, `/${name}?x#y`);
        expect([name, status, headers['content-type']]).toEqual([name, 200, type]);
        expect(headers['x-content-type-options']).toBe('nosniff');
        expect(headers['referrer-policy']).toBe('no-referrer');
        expect(headers['cross-origin-opener-policy']).toBe('same-origin');
        expect(headers['content-security-policy']).toContain("default-src 'none'; script-src 'self'; ");
      }
    }));

  it('says the same policy as the built page does', () =>
    serving(async (running) => {
      const config = readFileSync(join(ROOT, 'apps/viewer/vite.config.ts'), 'utf8');
      const said = String((await ask(running, '/')).headers['content-security-policy']).split('; ');
      const built = [...config.matchAll(/^ {2}"([a-z]+-(?:src|uri|action) .*)",$/gm)].map(
        (found) => found[1],
      );
      expect(built.length).toBeGreaterThan(5);
      expect(said).toEqual([...built, "frame-ancestors 'none'"]);
    }));

  it('keeps what has a hash in its name, and asks again for all else', () =>
    serving(async (running) => {
      const hashed = await ask(running, '/assets/main-B3hx9_2k.js');
      expect(hashed.headers['cache-control']).toBe('public, max-age=31536000, immutable');
      for (const name of ['', 'sw.js', 'icon.svg', 'fonts/Sans.ttf']) {
        const { headers } = await ask(running, `/${name}`);
        expect(headers['cache-control']).toBe('no-cache');
        const again = await ask(running, `/${name}`, { headers: { 'If-None-Match': headers.etag! } });
        expect([again.status, again.body]).toEqual([304, '']);
      }
    }));

  it('tells the page whether a job is served', async () => {
    await serving(async (running) =>
      expect((await ask(running, '/')).body).toContain('<meta name="runback-served" content="1">'),
    );
    await serving(async (running) => {
      expect((await ask(running, '/')).body).toContain('<meta name="runback-served" content="0">');
      expect((await ask(running, '/served/job')).status).toBe(404);
      expect((await ask(running, '/served/events')).status).toBe(404);
    }, null);
  });

  it('answers a worker kept from elsewhere with one that lets go', () =>
    serving(async (running) => {
      const { body } = await ask(running, '/sw.js');
      expect(body).toContain('unregister');
      expect(body).not.toContain('the worker of the site');
    }));

  it('finds files of a build made while it runs', () =>
    serving(async (running) => {
      expect((await ask(running, '/assets/new-aaaaaaaa.js')).status).toBe(404);
      writeFileSync(join(dist, 'assets/new-aaaaaaaa.js'), '1;');
      expect((await ask(running, '/assets/new-aaaaaaaa.js')).body).toBe('1;');
    }));

  it('is only read', () =>
    serving(async (running) => {
      const head = await ask(running, '/', { method: 'HEAD' });
      expect([head.status, head.body]).toEqual([200, '']);
      expect(Number(head.headers['content-length'])).toBe((await ask(running, '/')).body.length);
      for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
        expect((await ask(running, '/index.html', { method })).status).toBe(405);
    }));

  it('lets no path out of its folder', () =>
    serving(async (running) => {
      const up = ['/../secret.txt', '/assets/../../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt'];
      const odd = ['/%2e%2e%5csecret.txt', `/${join(folder, 'secret.txt')}`, '//secret.txt', '/link.txt'];
      const none = ['/assets', '/index.html%00.js', '/%00', '/%', '/%ff', '/index.html/', '/.', '/..'];
      for (const at of [...up, ...odd, ...none]) {
        const { status, body } = await ask(running, at);
        expect([400, 404], at).toContain(status);
        expect(body, at).not.toContain(SECRET);
      }
      for (const line of ['GET http://127.0.0.1/../secret.txt', 'GET ../secret.txt', 'GET /\0', 'GET *']) {
        const answer = await askRaw(running, line);
        expect(answer, line).toMatch(/^HTTP\/1\.1 40[04] /);
        expect(answer, line).not.toContain(SECRET);
      }
    }));
});

describe('who may ask', () => {
  it('no page whose name was made to point here', () =>
    serving(async (running) => {
      const own = [`127.0.0.1:${running.port}`, `localhost:${running.port}`];
      for (const Host of own) expect((await ask(running, '/', { headers: { Host } })).status).toBe(200);
      const other = ['elsewhere.test', `elsewhere.test:${running.port}`, '127.0.0.1', 'localhost:1'];
      for (const Host of other)
        for (const at of ['/', '/served/job', '/served/events']) {
          const { status, body } = await ask(running, at, { headers: { Host } });
          expect([Host, at, status]).toEqual([Host, at, 403]);
          expect(body).not.toContain('title');
        }
    }));

  it('no page of another site', () =>
    serving(async (running) => {
      for (const site of ['cross-site', 'same-site'])
        for (const at of ['/served/job', '/served/events'])
          expect((await ask(running, at, { headers: { 'Sec-Fetch-Site': site } })).status).toBe(403);
      expect((await ask(running, '/served/job', { headers: { 'Sec-Fetch-Site': 'none' } })).status).toBe(200);
    }));

  it('nobody writes but our own page, text, saying what it replaces', () =>
    serving(async (running) => {
      const good = asPage(running, await tagOf(running));
      const without = (name: string): OutgoingHttpHeaders =>
        Object.fromEntries(Object.entries(good).filter(([key]) => key !== name));
      const refused: [OutgoingHttpHeaders, number][] = [
        [without('Origin'), 403],
        [{ ...good, Origin: 'null' }, 403],
        [{ ...good, Origin: 'http://elsewhere.test' }, 403],
        [{ ...good, Origin: `http://localhost:${running.port}` }, 403],
        [{ ...good, Origin: `https://127.0.0.1:${running.port}` }, 403],
        [{ ...good, 'Sec-Fetch-Site': 'cross-site' }, 403],
        [{ ...good, 'Sec-Fetch-Site': 'none' }, 403],
        [without('Content-Type'), 415],
        [{ ...good, 'Content-Type': 'application/json' }, 415],
        [{ ...good, 'Content-Type': 'text/plain; charset=latin1' }, 415],
        [{ ...good, 'Content-Encoding': 'gzip' }, 415],
        [without('If-Match'), 428],
      ];
      for (const [headers, status] of refused) {
        const answer = await ask(running, '/served/job', { method: 'PUT', headers, body: 'changed' });
        expect([headers, answer.status]).toEqual([headers, status]);
      }
      for (const method of ['POST', 'DELETE', 'OPTIONS'])
        expect((await ask(running, '/served/job', { method, headers: good })).status).toBe(405);
      expect(readFileSync(path, 'utf8')).toBe(JOB);
      const accepted = await ask(running, '/served/job', { method: 'PUT', headers: good, body: 'changed' });
      expect(accepted.status).toBe(204);
    }));
});

describe('the job', () => {
  it('is read with its name and a tag of its text', () =>
    serving(async (running) => {
      const { status, headers, body } = await ask(running, '/served/job');
      expect([status, body, headers['cache-control']]).toEqual([200, JOB, 'no-store']);
      expect(headers['content-type']).toBe('text/plain; charset=utf-8');
      expect(decodeURIComponent(String(headers['x-runback-name']))).toBe(NAME);
      expect(await tagOf(running)).toBe(headers.etag);
      writeFileSync(path, `${JOB} `);
      expect(await tagOf(running)).not.toBe(headers.etag);
      expect((await ask(running, '/served/else')).status).toBe(404);
    }));

  it('is saved whole, with no other file left beside it', () =>
    serving(async (running) => {
      const text = `${JOB}// saved — ✓\n`;
      const before = statSync(path).ino;
      const { status, headers } = await save(running, text);
      expect(status).toBe(204);
      expect(readFileSync(path, 'utf8')).toBe(text);
      // Another file in its place, not the old one written over: at no moment is there half a text.
      expect(statSync(path).ino).not.toBe(before);
      expect(headers.etag).toBe(await tagOf(running));
      expect(readdirSync(jobs)).toEqual([NAME]);
    }));

  it('is not saved over what another wrote: that comes back', () =>
    serving(async (running) => {
      const tag = await tagOf(running);
      writeFileSync(path, 'from another');
      const { status, headers, body } = await save(running, 'mine', tag);
      expect([status, body, readFileSync(path, 'utf8')]).toEqual([412, 'from another', 'from another']);
      expect((await save(running, 'mine after all', headers.etag!)).status).toBe(204);
      expect(readFileSync(path, 'utf8')).toBe('mine after all');
    }));

  it('of two saved at once from one text, the second is told', () =>
    serving(async (running) => {
      const tag = await tagOf(running);
      const both = await Promise.all([save(running, 'one', tag), save(running, 'two', tag)]);
      expect(both.map(({ status }) => status).sort()).toEqual([204, 412]);
      const [won, lost] = both[0]!.status === 204 ? ['one', both[1]!] : ['two', both[0]!];
      expect([readFileSync(path, 'utf8'), lost.body]).toEqual([won, won]);
    }));

  it('is written again when it was gone', () =>
    serving(async (running) => {
      const tag = await tagOf(running);
      rmSync(path);
      expect((await ask(running, '/served/job')).status).toBe(404);
      expect((await save(running, 'back', tag)).status).toBe(204);
      expect(readFileSync(path, 'utf8')).toBe('back');
    }));

  it('is text of at most 16 MB', () =>
    serving(async (running) => {
      expect((await save(running, Uint8Array.of(0x7b, 0xff, 0x7d))).status).toBe(422);
      const large = Buffer.alloc(16 * 1024 * 1024 + 1, 'x');
      expect((await save(running, large)).status).toBe(413);
      const headers = { ...asPage(running, await tagOf(running)), 'Transfer-Encoding': 'chunked' };
      expect((await ask(running, '/served/job', { method: 'PUT', headers, body: large })).status).toBe(413);
      expect(readFileSync(path, 'utf8')).toBe(JOB);
    }));

  it('is never saved over a file that is no text', () =>
    serving(async (running) => {
      const tag = await tagOf(running);
      const junk = Buffer.from([0xff, 0xfe, 0x00]);
      writeFileSync(path, junk);
      expect((await ask(running, '/served/job')).body).toContain('not a text file');
      expect((await save(running, 'mine', tag)).status).toBe(500);
      expect(readFileSync(path).equals(junk)).toBe(true);
    }));
});

describe('news of the job', () => {
  it('comes when the file is written, renamed over, removed and made again, or saved by another page', () =>
    serving(async (running) => {
      const events = await open(running, '/served/events');
      expect(events.headers['content-type']).toBe('text/event-stream; charset=utf-8');
      const news = listen(events);
      expect((await news.until(CHANGE))[1]).toBe(await tagOf(running));

      writeFileSync(path, 'written in place');
      expect((await news.until(CHANGE))[1]).toBe(await tagOf(running));

      const beside = join(jobs, 'beside~');
      writeFileSync(beside, 'renamed over');
      renameSync(beside, path);
      expect((await news.until(CHANGE))[1]).toBe(await tagOf(running));

      renameSync(path, beside);
      writeFileSync(path, 'made again');
      rmSync(beside);
      expect((await news.until(CHANGE))[1]).toBe(await tagOf(running));

      await save(running, 'saved');
      expect((await news.until(CHANGE))[1]).toBe(await tagOf(running));
      events.destroy();
    }));

  it('ends with the server', async () => {
    let ended: Promise<unknown> | undefined;
    await serving(async (running) => {
      const events = await open(running, '/served/events');
      ended = once(events.resume(), 'close');
    });
    await expect(ended).resolves.toBeDefined();
  });
});

describe('runback view', () => {
  const BIN = join(ROOT, 'apps/cli/bin/runback.js');
  const start = (...args: string[]): ChildProcess =>
    spawn(process.execPath, [BIN, 'view', ...args, '--dist', dist], { stdio: ['ignore', 'pipe', 'pipe'] });

  for (const signal of ['SIGTERM', 'SIGINT'] as const)
    it(`says where it is, serves, and ends with 0 on ${signal}`, async () => {
      const child = start(TENDER, '--port', '0');
      const exit = once(child, 'exit');
      const line = await listen(child.stdout!).until(/^Runback is at http:\/\/127\.0\.0\.1:(\d+)\/ .*\n/);
      expect(line[0]).toMatch(/ with tender-7\.job\.json\. {2}Ctrl-C ends it\n$/);
      const running = { port: Number(line[1]) } as Running;
      expect((await ask(running, '/served/job')).body).toBe(readFileSync(TENDER, 'utf8'));
      const events = await open(running, '/served/events');
      events.on('error', () => undefined).resume();
      child.kill(signal);
      expect(await exit).toEqual([0, null]);
    });

  it('has the same address for the same job, and another one when that is taken', async () => {
    const children = [start(path), start(path)];
    const exits = children.map((child) => once(child, 'exit'));
    const [one, two] = await Promise.all(
      children.map(async (child) => (await listen(child.stdout!).until(/:(\d+)\//))[1]),
    );
    expect(one).not.toBe(two);
    for (const child of children) child.kill('SIGTERM');
    await Promise.all(exits);
    const again = start(path);
    const exit = once(again, 'exit');
    expect([one, two]).toContain((await listen(again.stdout!).until(/:(\d+)\//))[1]);
    again.kill('SIGTERM');
    await exit;
  });

  it('shows a job with faults: they are for the viewer to tell', async () => {
    const bad = join(jobs, 'bad.job.json');
    writeFileSync(bad, '{ "format": ');
    const child = start(bad, '--port', '0');
    const exit = once(child, 'exit');
    await listen(child.stdout!).until(/Runback is at/);
    child.kill('SIGTERM');
    expect(await exit).toEqual([0, null]);
    rmSync(bad);
  });

  it('answers 2 to what it cannot serve', () => {
    const call = (...args: string[]) => runback(['view', ...args]);
    const missing = call('nowhere.job.json', '--dist', dist);
    expect([missing.code, missing.out]).toEqual([2, '']);
    expect(missing.err).toContain('there is no such file');
    expect(call(ROOT, '--dist', dist).err).toContain('folder');
    expect(call('-', '--dist', dist)).toMatchObject({ code: 2, out: '' });
    for (const port of ['65536', '1.5', ''])
      expect(call(TENDER, '--port', port, '--dist', dist), port).toMatchObject({ code: 2, out: '' });
  });

  it('answers 2 when the port asked for is taken', () =>
    serving(async ({ port }) => {
      const child = start(TENDER, '--port', String(port));
      const said = allText(child.stderr!);
      expect(await once(child, 'exit')).toEqual([2, null]);
      expect(await said).toContain(`port ${port} cannot be used`);
    }));

  it('tells how it is used', () => {
    const { code, out } = runback(['view', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('Examples:');
    expect(out).not.toContain('--dist');
  });
});
