import { store, type ThemeChoice } from '../store/index.ts';

const THEMES: readonly (readonly [ThemeChoice, string])[] = [
  ['auto', 'as the device'],
  ['light', 'light'],
  ['dark', 'dark'],
  ['contrast', 'high contrast'],
];

export function ThemePick() {
  return (
    <label class="app-theme">
      <span class="field-label">Colours</span>
      <select
        class="input"
        value={store.looks.value.theme}
        onChange={(event) => store.setLooks({ theme: event.currentTarget.value as ThemeChoice })}
      >
        {THEMES.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}
