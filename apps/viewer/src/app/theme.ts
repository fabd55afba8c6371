import { effect } from '@preact/signals';
import type { Store } from '../store/index.ts';

/** Puts on the page the chosen theme, which style/tokens.css reads, and whether something is being worked out. */
export function followTheme({ looks, working, worked }: Store): void {
  effect(() => {
    document.documentElement.dataset.theme = looks.value.theme;
  });
  effect(() => {
    document.documentElement.dataset.working = working.value || !worked.value ? 'yes' : 'no';
  });
}
