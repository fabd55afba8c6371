import { useLayoutEffect, useRef } from 'preact/hooks';
import { type KeepOffShown, type Projection, store } from '../store/index.ts';
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

const PROJECTIONS: readonly (readonly [Projection, string])[] = [
  ['perspective', 'Perspective'],
  ['parallel', 'Parallel'],
];

/** Says the tilt while there is one, so that nobody takes a tipped machine for a level one. */
export function PanelButton() {
  const open = local.panel.value;
  const tilt = tiltWords(store.tilt.value);
  const tilted = tilt !== 'level';
  return (
    <button
      type="button"
      class="btn look-panel-button"
      aria-expanded={open}
      aria-controls="look-panel"
      onClick={() => {
        local.panel.value = !open;
      }}
    >
      <span class="look-wide-words">{tilted ? tilt : 'Tilt …'}</span>
      <span class="look-narrow-words">{tilted ? 'Tilted …' : 'View …'}</span>
    </button>
  );
}

/** Where the panel lies below the picture, the picture makes room for it. */
function usePanelInset() {
  const box = useRef<HTMLDivElement>(null);
  const open = local.panel.value;
  useLayoutEffect(() => {
    const panel = box.current;
    const below = open && panel !== null && panel.offsetWidth === panel.parentElement?.clientWidth;
    if (!below) return;
    local.panelHeight.value = panel.offsetHeight;
    local.handle.value?.settle();
    return () => {
      local.panelHeight.value = 0;
      local.handle.value?.settle();
    };
  }, [open]);
  return box;
}

/** What is set now and then. On a narrow canvas the views are in here too. */
export function Panel() {
  const box = usePanelInset();
  if (!local.panel.value) return null;
  const { keepOff, projection } = store.looks.value;
  return (
    <div id="look-panel" class="look-panel card" ref={box}>
      <div class="look-narrow">
        <Views />
      </div>
      <TiltSliders />
      <div class="look-row">
        <span class="field-label">Kept-off surfaces</span>
        <Seg
          label="Kept-off surfaces shown"
          value={keepOff}
          choices={KEEP_OFF}
          onChoose={(shown) => store.setLooks({ keepOff: shown })}
        />
      </div>
      <Seg
        label="Drawn in"
        value={projection}
        choices={PROJECTIONS}
        onChoose={(drawn) => store.setLooks({ projection: drawn })}
      />
      <button type="button" class="btn" onClick={() => local.handle.value?.fit('all')}>
        Show the whole machine
      </button>
    </div>
  );
}
