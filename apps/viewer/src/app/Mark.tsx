/** Our own small line drawings. Always beside or inside something that says the same in words. */
const PATHS = {
  menu: 'M4 7h16M4 12h16M4 17h16',
  undo: 'M9 6L4 11l5 5M4 11h9a6 6 0 0 1 6 6v1',
  redo: 'M15 6l5 5-5 5M20 11h-9a6 6 0 0 0-6 6v1',
  close: 'M6 6l12 12M18 6L6 18',
} as const;

export function Mark({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg class="app-mark" viewBox="0 0 24 24" width="22" height="22" aria-hidden="true" focusable="false">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        stroke-width="2"
        stroke-linecap="round"
        stroke-linejoin="round"
      />
    </svg>
  );
}
