/** The sheet exactly as it prints, and how it is printed. */
import { useEffect, useId, useState } from 'preact/hooks';
import type { WorkedJob } from 'runback';
import { store } from '../store/index.ts';
import { showFonts } from './fonts.ts';
import { choice, choose, drawing, follow, setNow, shown } from './live.ts';
import { OneOf, Options } from './Options.tsx';
import { OtherHand } from './OtherHand.tsx';
import { Pages, VerdictChip } from './Pages.tsx';
import { printWith } from './print.ts';
import { pagesOf } from './sheets.ts';
import { OtherFiles, PrintAndSave } from './Take.tsx';
import './sheet.css';

const WHICH = [
  ['line', 'This line'],
  ['all', 'All lines'],
] as const;
const ZOOMS = [
  ['width', 'Fit width'],
  ['actual', 'Actual size'],
] as const;

function WhichLine({ job }: { readonly job: WorkedJob }) {
  const id = useId();
  const line = store.line.value;
  const { which } = choice.value;
  return (
    <div class="sheet-which">
      <OneOf label="Print" known={WHICH} now={which} onChoose={(one) => choose({ which: one })} />
      {which === 'line' && (
        <div class="field">
          <label for={id}>Line</label>
          <select
            id={id}
            value={line?.line.id}
            onChange={({ currentTarget }) => store.chooseLine(currentTarget.value)}
          >
            {job.lines.map(({ line: { id: one, name } }) => (
              <option key={one} value={one}>
                {name}
              </option>
            ))}
          </select>
        </div>
      )}
      {which === 'line' && line && <VerdictChip worked={line} />}
      {which === 'all' && <p class="field-hint">A cover, then the sheets of {job.lines.length} lines.</p>}
    </div>
  );
}

const ROOM = '(min-width: 760px)';

/** True where controls and pages stand beside each other; as in sheet.css. */
function useRoom(): boolean {
  const [room, setRoom] = useState(() => matchMedia(ROOM).matches);
  useEffect(() => {
    const query = matchMedia(ROOM);
    const change = (): void => setRoom(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, []);
  return room;
}

function Side({ job }: { readonly job: WorkedJob }) {
  const room = useRoom();
  const line = store.line.value;
  const rest = (
    <div class="sheet-rest">
      <Options />
      {choice.value.which === 'line' && line && <OtherHand job={job} worked={line} />}
      <OtherFiles />
    </div>
  );
  return (
    <div class="sheet-side">
      <WhichLine job={job} />
      <PrintAndSave />
      {room && rest}
      {!room && (
        <details>
          <summary>Paper, units, pages, other files</summary>
          {rest}
        </details>
      )}
    </div>
  );
}

const PAPER = { a4: 'A4', letter: 'Letter' } as const;

function Desk() {
  const set = shown.value;
  const { zoom, paper } = choice.value;
  const count = set ? pagesOf(set).length : 0;
  const counted = count === 1 ? '1 page' : count > 0 ? `${count} pages` : 'No pages';
  return (
    <div class="sheet-desk">
      <div class="sheet-bar">
        <span role="status">{drawing.value ? 'Drawing …' : `${counted}, ${PAPER[paper]}`}</span>
        <OneOf label="Shown at" known={ZOOMS} now={zoom} onChoose={(one) => choose({ zoom: one })} />
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reached by keys */}
      <section class={`sheet-scroll sheet-zoom-${zoom}`} tabIndex={0} aria-label="Pages as they print">
        {set && <Pages set={set} />}
      </section>
    </div>
  );
}

export function SheetFace() {
  useEffect(() => {
    showFonts().catch(() =>
      store.say('The typeface of the sheet cannot be loaded: letters look otherwise here.', 'fault'),
    );
    const stops = [
      follow(),
      printWith(() => {
        const set = setNow();
        return set ? pagesOf(set) : [];
      }),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);
  const job = store.worked.value;
  if (!job) return null;
  return (
    <div class="sheet">
      <Side job={job} />
      <Desk />
    </div>
  );
}
