/** Prints the pages and nothing else: one on each paper, at true scale. */
import type { Page } from 'runback/sheet';
import { paperClass, showPage } from './paper.ts';
import './print.css';

const PRINTING = 'sheet-printing';

let laidOut: HTMLElement | null = null;

/** Puts the pages behind everything else of the document, where only the printer sees them. */
export function layOut(pages: readonly Page[]): void {
  takeAway();
  if (pages.length === 0) return;
  const all = document.createElement('div');
  all.className = 'sheet-print';
  for (const page of pages) {
    const leaf = document.createElement('div');
    const host = document.createElement('div');
    leaf.className = 'sheet-leaf';
    host.className = paperClass(page);
    showPage(host, page);
    leaf.append(host);
    all.append(leaf);
  }
  const letter = all.querySelector('.sheet-paper-letter') !== null;
  all.classList.add(letter ? 'sheet-print-letter' : 'sheet-print-a4');
  document.body.append(all);
  document.documentElement.classList.add(PRINTING);
  laidOut = all;
}

export function takeAway(): void {
  laidOut?.remove();
  laidOut = null;
  document.documentElement.classList.remove(PRINTING);
}

/** Opens the browser's print dialog. Some browsers return at once, so the pages go when the printing is over. */
export function printPages(pages: readonly Page[]): void {
  layOut(pages);
  addEventListener('afterprint', takeAway, { once: true });
  print();
}

/** While it holds, the browser's own print command prints these pages too. */
export function printWith(pages: () => readonly Page[]): () => void {
  const before = (): void => layOut(pages());
  addEventListener('beforeprint', before);
  addEventListener('afterprint', takeAway);
  return () => {
    removeEventListener('beforeprint', before);
    removeEventListener('afterprint', takeAway);
  };
}
