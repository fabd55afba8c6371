import { signal } from '@preact/signals';

/** Wide enough for scene, run profile and words beside each other. */
export const WIDE = '(min-width: 900px)';

const media = matchMedia(WIDE);

/** Follows the window. */
export const wide = signal(media.matches);

media.addEventListener('change', ({ matches }) => {
  wide.value = matches;
});

/** What the column of words shows. */
export type Tab = 'checks' | 'points' | 'bends' | 'setup';

export const tab = signal<Tab>('checks');

/** The open dialog of the shell, if any. */
export const dialog = signal<'keys' | null>(null);
