import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Served, served } from './served.ts';

/** Stands for the server: what is on disk, and the page's ear for news. */
const disk = { text: 'first', up: true, put: Promise.resolve() };
const tagNow = (): string => `"${disk.text}"`;
let tellNews: (tag: string) => void = () => undefined;

async function answer(address: URL, { method = 'GET', headers, body }: RequestInit): Promise<Response> {
  if (!disk.up) throw new TypeError('no network');
  expect(address.href).toBe('http://127.0.0.1:20000/served/job');
  if (disk.text === 'gone') return new Response('The job is gone.\n', { status: 404 });
  const replaces = (headers as Record<string, string> | undefined)?.['If-Match'];
  const good = method === 'PUT' && replaces === tagNow();
  if (good) disk.text = String(body);
  const head = { ETag: tagNow(), 'X-Runback-Name': encodeURIComponent('Größe 7.job.json') };
  if (method === 'PUT') await disk.put;
  if (good) return new Response(null, { status: 204, headers: head });
  return new Response(method === 'HEAD' ? null : disk.text, {
    status: method === 'PUT' ? 412 : 200,
    headers: head,
  });
}

/** The server keeps its answers to writing until the function that comes back is called. */
function holdAnswers(): () => void {
  let release = (): void => undefined;
  disk.put = new Promise((resolve) => {
    release = resolve;
  });
  return () => release();
}

class News {
  closed = false;
  addEventListener(type: string, heard: (event: { data: string }) => void): void {
    expect(type).toBe('change');
    tellNews = (data) => this.closed || heard({ data });
  }
  close(): void {
    this.closed = true;
  }
}

function page(meta: string | null): Served | null {
  vi.stubGlobal('document', {
    baseURI: 'http://127.0.0.1:20000/',
    querySelector: () => (meta === null ? null : { content: meta }),
  });
  return served();
}

/** Everything that is under way comes to its end. */
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

beforeEach(() => {
  Object.assign(disk, { text: 'first', up: true, put: Promise.resolve() });
  vi.stubGlobal('fetch', answer);
  vi.stubGlobal('EventSource', News);
});
afterEach(() => vi.unstubAllGlobals());

describe('a served job', () => {
  it('is there only on a page made for one', () => {
    expect(page(null)).toBeNull();
    expect(page('0')).toBeNull();
    expect(page('1')).not.toBeNull();
  });

  it('is read with its name and tag, and written over the text it began from', async () => {
    const job = page('1')!;
    expect(await job.read()).toEqual({ text: 'first', name: 'Größe 7.job.json', tag: '"first"' });
    expect(await job.write('second', '"first"')).toEqual({ ok: true, tag: '"second"' });
    expect(disk.text).toBe('second');
  });

  it('gives back what another wrote instead of writing over it', async () => {
    const job = page('1')!;
    const { tag } = await job.read();
    disk.text = 'of another';
    expect(await job.write('mine', tag)).toEqual({ ok: false, text: 'of another', tag: '"of another"' });
    expect(disk.text).toBe('of another');
  });

  it('fails in words for the person', async () => {
    const job = page('1')!;
    disk.text = 'gone';
    await expect(job.read()).rejects.toThrow(/^The job is gone\.$/);
    disk.up = false;
    await expect(job.write('mine', '"first"')).rejects.toThrow('has ended in the terminal');
  });
});

describe('news of a served job', () => {
  it('tells of another text on disk, once it was read not again', async () => {
    const job = page('1')!;
    const told = vi.fn();
    await job.read();
    const end = job.watch(told);
    tellNews('"first"');
    disk.text = 'of another';
    tellNews('"of another"');
    await settled();
    expect(told.mock.calls).toEqual([['"of another"']]);
    await job.read();
    tellNews('"of another"');
    end();
    disk.text = 'later still';
    tellNews('"later still"');
    await settled();
    expect(told).toHaveBeenCalledTimes(1);
  });

  it('tells nothing of what was written here, though the news comes before the answer or long after', async () => {
    const job = page('1')!;
    const told = vi.fn();
    await job.read();
    job.watch(told);
    const answerNow = holdAnswers();
    const writing = job.write('second', '"first"');
    tellNews('"second"');
    await settled();
    answerNow();
    expect((await writing).ok).toBe(true);
    await job.write('third', '"second"');
    tellNews('"second"');
    await settled();
    expect(told).not.toHaveBeenCalled();
  });

  it('tells after the writing what came in between', async () => {
    const job = page('1')!;
    const told = vi.fn();
    await job.read();
    job.watch(told);
    const answerNow = holdAnswers();
    const writing = job.write('second', '"first"');
    await settled();
    disk.text = 'of another';
    tellNews('"of another"');
    await settled();
    expect(told).not.toHaveBeenCalled();
    answerNow();
    await writing;
    await settled();
    expect(told.mock.calls).toEqual([['"of another"']]);
  });
});
