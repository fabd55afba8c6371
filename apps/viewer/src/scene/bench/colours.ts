/** The colours of the bench picture, read from the page, so that they follow its theme. */
import { Color } from 'three';

const NAMES = {
  ground: '--scene-bg',
  grid: '--scene-grid',
  tube: '--scene-tube',
  pale: '--scene-tube-other',
  tool: '--scene-fixed',
  ink: '--scene-ink',
  arrow: '--scene-select',
} as const;

export type BenchColours = Readonly<Record<keyof typeof NAMES, Color>>;

export function readColours(host: HTMLElement): BenchColours {
  const style = getComputedStyle(host);
  const read = (name: string): Color => new Color(style.getPropertyValue(name).trim());
  return Object.fromEntries(
    Object.entries(NAMES).map(([key, name]) => [key, read(name)]),
  ) as unknown as BenchColours;
}

/** Calls back when the page or the system changes its theme. */
export function onTheme(changed: () => void): () => void {
  const media = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'].map((query) =>
    matchMedia(query),
  );
  const watch = new MutationObserver(changed);
  watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
  for (const one of media) one.addEventListener('change', changed);
  return () => {
    watch.disconnect();
    for (const one of media) one.removeEventListener('change', changed);
  };
}
