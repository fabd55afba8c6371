/**
 * How long a person waits for paper: the sheet as PDF, beside printing the same pages as SVG from a browser that is
 * already open. Seeded; no assertions.
 */
import { readFileSync } from 'node:fs';
import { type WorkedLine, workUp } from 'runback';
import { renderPdf } from 'runback/pdf';
import { type Page, renderSvg, sheetPages } from 'runback/sheet';
import { createSVGWindow } from 'svgdom';
import { bench, describe } from 'vitest';
import { FONTS } from '../../packages/drawing/test/fonts.ts';
import { openChromium } from '../helpers/chromium.ts';
import { randomJobText } from '../helpers/random-job.ts';
import { seeded } from '../helpers/random-line.ts';
import { TENDER } from '../helpers/run.ts';

const browser = await openChromium();
const paper = await browser.newPage();
const short = { time: 2000, iterations: 5 };

const pagesOf = (line: WorkedLine): readonly Page[] => sheetPages(line, { from: 'A', checksum: '12345678' });
const pdf = (line: WorkedLine) =>
  renderPdf(pagesOf(line), { fonts: FONTS, title: line.line.name, lang: 'en' });

async function printed(line: WorkedLine): Promise<void> {
  const pages = pagesOf(line).map((page) => renderSvg(page, createSVGWindow()));
  const style = '<style>@page { size: A4; margin: 0 } body { margin: 0 } svg { display: block }</style>';
  await paper.setContent(`${style}${pages.join('')}`);
  await paper.pdf({ preferCSSPageSize: true });
}

const lines = [
  ['a line of Tender 7', workUp(readFileSync(TENDER, 'utf8')).lines[0]!],
  ['25 bends', workUp(randomJobText(seeded(25), { bends: 25, surroundings: 10 })).lines[0]!],
] as const;

for (const [name, line] of lines)
  describe(`worked line to PDF: ${name}`, () => {
    bench('runback', async () => void (await pdf(line)), short);
    bench('browser printing the SVG', () => printed(line), short);
  });
