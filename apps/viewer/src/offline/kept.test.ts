import { describe, expect, it } from 'vitest';
import { isOld, type Kept, keptFor, storeName } from './kept.ts';

const kept: Kept = {
  scope: 'https://shop.test/tools/runback/',
  version: 'b',
  files: ['index.html', 'assets/main-B3hx9_2k.js', 'demo/tender-7.job.json'],
};
const asked = (path: string, method = 'GET'): string | null =>
  keptFor(kept, { method, url: new URL(path, kept.scope).href });
const at = (path: string): string => kept.scope + path;

describe('what answers a request', () => {
  it('the page, under its folder and its name, whatever is asked of it', () => {
    for (const path of ['', 'index.html', '?job=1', 'index.html?x#y', '#bead'])
      expect(asked(path)).toBe(at('index.html'));
  });
  it('a kept file, under its own name', () => {
    expect(asked('assets/main-B3hx9_2k.js')).toBe(at('assets/main-B3hx9_2k.js'));
    expect(asked('demo/tender-7.job.json?fresh')).toBe(at('demo/tender-7.job.json'));
  });
  it('the network for all else', () => {
    for (const path of ['served/job', 'served/events', 'assets/', 'assets/other.js', '../', '../index.html'])
      expect(asked(path), path).toBeNull();
    expect(asked('https://elsewhere.test/tools/runback/index.html')).toBeNull();
    expect(asked('index.html', 'POST')).toBeNull();
    expect(asked('index.html', 'HEAD')).toBeNull();
  });
});

describe('what is thrown away', () => {
  it('other versions of this site, nothing else', () => {
    expect(isOld(kept, storeName({ ...kept, version: 'a' }))).toBe(true);
    expect(isOld(kept, storeName(kept))).toBe(false);
    expect(isOld(kept, storeName({ ...kept, scope: `${kept.scope}next/`, version: 'a' }))).toBe(false);
    expect(isOld(kept, 'of another program')).toBe(false);
  });
});
