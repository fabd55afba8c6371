/** The colours of the scene, read from the page, and read again when the page changes them. */
import type { Theme } from '../scene/index.ts';

const NAMES: Readonly<Record<keyof Theme, string>> = {
  bg: '--scene-bg',
  grid: '--scene-grid',
  ink: '--scene-ink',
  tube: '--scene-tube',
  tubeOther: '--scene-tube-other',
  pass: '--scene-pass',
  note: '--scene-note',
  fail: '--scene-fail',
  hot: '--scene-hot',
  moving: '--scene-moving',
  fixed: '--scene-fixed',
  wiring: '--scene-wiring',
  keepoff: '--scene-keepoff',
  select: '--scene-select',
  bead: '--scene-bead',
};

export function readTheme(): Theme {
  const style = getComputedStyle(document.documentElement);
  const read = Object.entries(NAMES).map(([key, name]) => [key, style.getPropertyValue(name).trim()]);
  return Object.fromEntries(read) as Theme;
}

/** Calls back when the colours may be others; returns what stops it. */
export function followColours(changed: () => void): () => void {
  const watch = new MutationObserver(changed);
  watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class'] });
  const medias = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)'].map((query) =>
    matchMedia(query),
  );
  for (const media of medias) media.addEventListener('change', changed);
  return () => {
    watch.disconnect();
    for (const media of medias) media.removeEventListener('change', changed);
  };
}
