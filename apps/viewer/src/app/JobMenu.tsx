import { useEffect, useRef, useState } from 'preact/hooks';
import { store } from '../store/index.ts';
import { Mark } from './Mark.tsx';
import { ThemePick } from './ThemePick.tsx';

interface Entry {
  readonly label: string;
  readonly run: () => unknown;
}

const FILE: readonly Entry[] = [
  { label: 'Open a job file …', run: () => store.openFile() },
  { label: 'Save', run: () => store.save() },
  { label: 'Save under another name …', run: () => store.saveAs() },
];

const TAKE: readonly Entry[] = [
  { label: 'Sheet, PDF …', run: () => exported('pdf') },
  { label: 'Sheet pages, SVG …', run: () => exported('svg') },
  { label: 'Report, JSON …', run: () => exported('report') },
  { label: 'Bends, CSV …', run: () => exported('csv') },
];

const DEMO: readonly Entry[] = [
  { label: 'Tender 7', run: () => store.openDemo('tender-7') },
  { label: 'Tender 7, the first try', run: () => store.openDemo('first-try') },
];

async function exported(id: string): Promise<void> {
  const { exportActions } = await import('../sheet/index.ts');
  await exportActions.find((action) => action.id === id)?.run();
}

function Entries({ title, entries, done }: { title: string; entries: readonly Entry[]; done: () => void }) {
  if (entries.length === 0) return null;
  return (
    <section class="app-menu-part">
      <h2 class="field-label">{title}</h2>
      {entries.map(({ label, run }) => (
        <button
          key={label}
          type="button"
          class="btn-quiet"
          onClick={() => {
            done();
            void run();
          }}
        >
          {label}
        </button>
      ))}
    </section>
  );
}

/** Open, save and take away. A plain disclosure: Tab goes through it, Escape closes it. */
export function JobMenu() {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const close = (): void => setOpen(false);
  useEffect(() => {
    if (!open) return;
    const outside = (event: Event): void => {
      if (!box.current?.contains(event.target as Node)) close();
    };
    const onEscape = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      close();
      button.current?.focus();
    };
    addEventListener('pointerdown', outside);
    addEventListener('keydown', onEscape);
    return () => {
      removeEventListener('pointerdown', outside);
      removeEventListener('keydown', onEscape);
    };
  }, [open]);
  const recent = store.recent.value
    .filter(({ name }) => name !== store.name.value)
    .map(({ name }) => ({ label: name, run: () => store.openRecent(name) }));
  return (
    <div ref={box} class="app-menu">
      <button
        ref={button}
        type="button"
        class="btn app-menu-button"
        aria-expanded={open}
        aria-controls="job-menu"
        onClick={() => setOpen(!open)}
      >
        <Mark name="menu" />
        Job
      </button>
      {open && (
        <div id="job-menu" class="app-menu-box card">
          <Entries title="File" entries={FILE} done={close} />
          <Entries title="Take away" entries={TAKE} done={close} />
          <Entries title="Opened before" entries={recent} done={close} />
          <Entries title="Demo" entries={DEMO} done={close} />
          <section class="app-menu-part">
            <ThemePick />
          </section>
        </div>
      )}
    </div>
  );
}
