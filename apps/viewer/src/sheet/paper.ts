/** A page of the display list as an element. */
import { type Page, renderSvg } from 'runback/sheet';

/**
 * Drawn into a root of its own in `host`, filling it: the clips of one page are numbered from 1 and must not meet
 * those of another. Its class sets what `styled: false` leaves out.
 */
export function showPage(host: HTMLElement, page: Page): void {
  const text = renderSvg(page, window, { styled: false });
  const { documentElement } = new DOMParser().parseFromString(text, 'image/svg+xml');
  const svg = document.importNode(documentElement, true);
  svg.setAttribute('width', '100%');
  svg.setAttribute('height', '100%');
  svg.style.display = 'block';
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  root.replaceChildren(svg);
}

export const clearPage = (host: HTMLElement): void => host.shadowRoot?.replaceChildren();

/** `a4`, `letter`, and the same lying. */
export function paperClass({ width, height }: Page): string {
  const name = Math.max(width, height) > A4_OR_LETTER ? 'a4' : 'letter';
  return `sheet-paper sheet-paper-${name}${width > height ? ' sheet-paper-lying' : ''}`;
}

/** Between the heights of Letter, 279.4, and A4, 297. mm */
const A4_OR_LETTER = 288;
