import { type KeepOffShown, store } from '../store/index.ts';
import { local } from './local.ts';
import { Seg } from './Seg.tsx';
import { TiltSliders } from './TiltSliders.tsx';
import { Views } from './Views.tsx';
import { tiltWords } from './words.ts';

const KEEP_OFF: readonly (readonly [KeepOffShown, string])[] = [
  ['near', 'Near'],
  ['all', 'All'],
  ['none', 'None'],
];

/** Says the tilt while there is one, so that nobody takes a tipped machine for a level one. */
export function PanelButton() {
  const open = local.panel.value;
  const tilt = tiltWords(store.tilt.value);
  return (
    <button
      type="button"
      class="btn look-panel-button"
      aria-expanded={open}
      aria-controls="look-panel"
      aria-pressed={open}
      onClick={() => {
        local.panel.value = !open;
      }}
    >
      {tilt === 'level' ? <ButtonWords /> : tilt}
    </button>
  );
}

/** On a narrow canvas the views are in there too. */
const ButtonWords = () => (
  <>
    <span class="look-wide-words">Tilt …</span>
    <span class="look-narrow-words">View …</span>
  </>
);

export function Panel() {
  if (!local.panel.value) return null;
  return (
    <div id="look-panel" class="look-panel card">
      <div class="look-narrow">
        <Views />
      </div>
      <TiltSliders />
      <div class="look-row">
        <span class="field-label">Kept-off surfaces</span>
        <Seg
          label="Kept-off surfaces shown"
          value={store.looks.value.keepOff}
          choices={KEEP_OFF}
          onChoose={(keepOff) => store.setLooks({ keepOff })}
        />
      </div>
      <button type="button" class="btn" onClick={() => local.handle.value?.fit('all')}>
        Show the whole machine
      </button>
    </div>
  );
}
