import type { ViewName } from '../scene/index.ts';
import { local } from './local.ts';

const VIEWS: readonly (readonly [ViewName, string])[] = [
  ['forward', 'Forward'],
  ['left', 'Left'],
  ['above', 'Above'],
  ['corner', 'Corner'],
];

/** Where to look from. */
export function Views() {
  const handle = local.handle.value;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a row of joined buttons everywhere
    <div class="seg look-seg" role="group" aria-label="Look from">
      {VIEWS.map(([name, words]) => (
        <button key={name} type="button" onClick={() => handle?.view(name)}>
          {words}
        </button>
      ))}
      <button type="button" onClick={() => handle?.fit('line')}>
        Fit
      </button>
    </div>
  );
}
