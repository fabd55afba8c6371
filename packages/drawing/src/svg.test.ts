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
