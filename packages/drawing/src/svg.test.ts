import { createSVGWindow } from 'svgdom';
import { describe, expect, it } from 'vitest';
import { dipstick, finding, worked } from '../test/worked.ts';
import { sheetPages } from './sheet.ts';
import { renderSvg } from './svg.ts';
import type { Page } from './types.ts';

const window = createSVGWindow();
const HOSTILE = '<script>alert("1")</script> & \'x\' ]]> \u0000\u001b[2J\u202e';

function hostile(): Page {
  const line = worked({
    points: dipstick,
    name: HOSTILE,
    title: HOSTILE,
    findings: [finding('note', HOSTILE)],
  });
  return sheetPages(line, { checksum: HOSTILE, jobTitle: HOSTILE })[0]!;
}

/** Serialises as a document of HTML does, and writes down which attributes are set. */
function likeABrowser() {
  const browser = createSVGWindow();
  const document = browser.document as unknown as { createElementNS(ns: string, name: string): Made };
  const create = document.createElementNS.bind(document);
  const set: string[] = [];
  document.createElementNS = (ns, name) => {
    const node = create(ns, name);
    const setAttribute = node.setAttribute.bind(node);
    node.setAttribute = (key, value) => {
      set.push(key);
      setAttribute(key, value);
    };
    if (name === 'svg') Object.defineProperty(node, 'outerHTML', { get: () => asHtml(node) });
    return node;
  };
  return { browser, set };
}

interface Made {
  readonly outerHTML: string;
  setAttribute(key: string, value: string): void;
}

function asHtml(node: Made): string {
  const xml = Reflect.get(Object.getPrototypeOf(node), 'outerHTML', node) as string;
  return xml.replace(/>[^<]+/g, (text) => text.replaceAll('&quot;', '"'));
}

describe('renderSvg', () => {
  const [page] = sheetPages(worked({ points: dipstick }), { checksum: 'a1b2c3d4' });
  const svg = renderSvg(page!, window);

  it('is at true scale and says first what it is', () => {
    expect(svg).toMatch(
      /^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"[^>]*><title>[^<]+<\/title><desc>/,
    );
    expect(svg).toContain('lang="en"');
  });

  it('gives the same bytes every time, in micrometres and without ids of its own', () => {
    expect(renderSvg(page!, createSVGWindow())).toBe(svg);
    expect(svg).not.toMatch(/\d\.\d{4,}/);
    expect(svg).not.toMatch(/\bid="|svgjs/i);
    expect(svg).not.toContain('-0 ');
  });

  it('prints text from a job as text and nothing else', () => {
    const out = renderSvg(hostile(), window);
    expect(out).not.toMatch(/<script/i);
    expect(out).toContain('&lt;script&gt;');
    expect(out).toContain('&amp;');
    expect(out).not.toMatch(/[\u0000-\u001f\u202e]/u);
    const tags = [...out.matchAll(/<([a-zA-Z]+)/g)].map((match) => match[1]);
    expect([...new Set(tags)].sort()).toEqual([
      'circle',
      'desc',
      'g',
      'line',
      'path',
      'rect',
      'svg',
      'text',
      'title',
    ]);
    expect(out.match(/</g)!.length).toBe(out.match(/>/g)!.length);
  });

  it('says nothing of style where a policy forbids it, and is else the same', () => {
    const bare = renderSvg(page!, window, { styled: false });
    expect(bare).not.toMatch(/\sstyle=/);
    expect(svg.replace(' style="font-kerning:none;font-variant-ligatures:none"', '')).toBe(bare);
  });

  it('sets no style while it draws, and writes in a browser what it writes under Node', () => {
    const { browser, set } = likeABrowser();
    const named = { ...page!, title: 'A\u00a0"tube" &nbsp; &quot; <b>' };
    const out = renderSvg(named, browser);
    expect(set).toContain('stroke-linejoin');
    expect(set).not.toContain('style');
    expect(out).toContain('<title>A &quot;tube&quot; &amp;nbsp; &amp;quot; &lt;b&gt;</title>');
    expect(out).toBe(renderSvg(named, window));
  });

  it('knows only greys', () => {
    for (const [, colour] of svg.matchAll(/(?:fill|stroke)="(#[^"]+)"/g))
      expect(colour).toMatch(/^#(..)\1\1$/);
  });

  it('clips a group, turns it, and numbers the clips of a page', () => {
    const clip = { x: 0, y: 0, width: 5, height: 5 };
    const group = { kind: 'group', at: [1, 2], turn: 30, clip, items: [] } as const;
    const out = renderSvg({ ...page!, items: [group, { ...group, turn: 0 }] }, window);
    expect(out).toContain('transform="translate(1 2) rotate(30)"');
    expect(out).toContain('transform="translate(1 2)"');
    expect(out.match(/clip-path="url\(#clip-\d\)"/g)).toEqual([
      'clip-path="url(#clip-1)"',
      'clip-path="url(#clip-2)"',
    ]);
    expect(out).toMatch(/<clipPath id="clip-1"><rect [^>]*width="5" height="5"/);
  });
});
