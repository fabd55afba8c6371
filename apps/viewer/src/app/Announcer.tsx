import { useEffect, useState } from 'preact/hooks';
import { store } from '../store/index.ts';

const SHOWN_MS = 6000;

/** What was said last: read out by screen readers, shown for a while, faults until something else is said. */
export function Announcer() {
  const said = store.said.value;
  const [gone, setGone] = useState(0);
  useEffect(() => {
    if (!said || said.kind === 'fault') return;
    const timer = setTimeout(() => setGone(said.count), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [said]);
  const shown = said !== null && said.count > gone;
  return (
    <>
      <div class="visually-hidden" role="status" aria-live="polite">
        {said?.words}
      </div>
      {shown && (
        <div class={`app-said card ${said.kind === 'fault' ? 'verdict-fail' : ''}`} aria-hidden="true">
          {said.words}
          <button type="button" class="btn-quiet" tabIndex={-1} onClick={() => setGone(said.count)}>
            ×
          </button>
        </div>
      )}
    </>
  );
}
