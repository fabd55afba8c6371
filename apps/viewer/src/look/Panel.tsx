import { useLayoutEffect, useRef } from 'preact/hooks';
import { type KeepOffShown, type Projection, store } from '../store/index.ts';
import { local } from './local.ts';
import { PourTest, Staying } from './PourTest.tsx';
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

const NOTHING = { right: 0, bottom: 0 };
/** Between the panel and the edge of the picture, px. */
const EDGE = 8;

/** The picture makes room for the panel, below it or beside it. */
function usePanelInset() {
  const box = useRef<HTMLDivElement>(null);
  const open = local.panel.value;
  useLayoutEffect(() => {
    const panel = box.current;
    if (!open || panel === null) return;
    const below = panel.offsetWidth === panel.parentElement?.clientWidth;
    local.panelTakes.value = below
      ? { right: 0, bottom: panel.offsetHeight }
      : { right: panel.offsetWidth + EDGE, bottom: 0 };
    return () => {
      local.panelTakes.value = NOTHING;
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
    <div
      id="look-panel"
      class="look-panel card"
      ref={box}
      style={{ '--under': `${local.buttonsEnd.value}px` }}
    >
      <TiltSliders />
      <PourTest />
      <Staying />
      <div class="look-narrow">
        <Views />
      </div>
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
