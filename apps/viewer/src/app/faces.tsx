/** How the parts stand beside each other on a wide screen and behind each other on a narrow one. */
import { useEffect } from 'preact/hooks';
import { RunProfile } from '../profile/index.ts';
import { store } from '../store/index.ts';
import { BendsTable, Findings, LineList, PointsTable } from '../words/index.ts';
import { Later } from './Later.tsx';
import { type Tab, tab } from './layout.ts';

const look = () => import('../look/index.ts').then(({ Look }) => Look);
const setup = () => import('./Setup.tsx').then(({ Setup }) => Setup);

const TABS: readonly (readonly [Tab, string])[] = [
  ['checks', 'Checks'],
  ['points', 'Points'],
  ['bends', 'Bends'],
  ['setup', 'Set-up'],
];

function Tabs({ shown }: { readonly shown: readonly (readonly [Tab, string])[] }) {
  const move = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    const at = shown.findIndex(([id]) => id === tab.value);
    tab.value = shown[(at + step + shown.length) % shown.length]![0];
    const list = event.currentTarget as HTMLElement;
    requestAnimationFrame(() => list.querySelector<HTMLElement>('[aria-selected="true"]')?.focus());
  };
  return (
    <div class="seg app-tabs" role="tablist" aria-label="Words of the line" onKeyDown={move}>
      {shown.map(([id, label]) => (
        <button
          key={id}
          id={`tab-${id}`}
          type="button"
          role="tab"
          aria-selected={tab.value === id}
          aria-controls="tab-panel"
          tabIndex={tab.value === id ? 0 : -1}
          onClick={() => {
            tab.value = id;
          }}
        >
          {label}
        </button>
      ))}
    </div>
  );
}

function TabPanel() {
  const now = tab.value;
  return (
    <div id="tab-panel" class="app-panel" role="tabpanel" aria-labelledby={`tab-${now}`}>
      {now === 'checks' && <Findings />}
      {now === 'points' && <PointsTable />}
      {now === 'bends' && <BendsTable />}
      {now === 'setup' && <Later load={setup} what="The set-up" />}
    </div>
  );
}

/** The scene and the line unrolled. */
const Pictures = () => (
  <>
    <section class="app-scene" aria-label="Scene">
      <Later load={look} what="The scene" />
    </section>
    <section class="app-profile" aria-label="Run profile">
      <RunProfile />
    </section>
  </>
);

/** Scene over run profile, words beside them. */
export function DeskFace() {
  return (
    <div class="app-desk">
      <Pictures />
      <section class="app-words" aria-label="Words">
        <LineList compact />
        <Tabs shown={TABS} />
        <TabPanel />
      </section>
    </div>
  );
}

export function LookFace() {
  return (
    <div class="app-stack">
      <Pictures />
    </div>
  );
}

/** The phone's first page: which lines, are they right, and what to do at the bender. */
export function ChecksFace() {
  return (
    <div class="app-scroll">
      <LineList />
      <button type="button" class="btn-main app-steps-button" onClick={() => store.setFace('steps')}>
        Bend steps of this line
      </button>
      <Findings />
    </div>
  );
}

const WORDS = TABS.filter(([id]) => id !== 'checks');

export function WordsFace() {
  useEffect(() => {
    if (tab.value === 'checks') tab.value = 'points';
  }, []);
  return (
    <div class="app-words">
      <LineList compact />
      <Tabs shown={WORDS} />
      <TabPanel />
    </div>
  );
}
