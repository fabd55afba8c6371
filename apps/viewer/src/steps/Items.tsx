import type { ComponentChildren } from 'preact';
import type { Done } from './done.ts';
import type { Item, Step } from './step-list.ts';

interface ItemsProps {
  /** Beside the words of the turn. */
  readonly turning?: ComponentChildren;
  readonly step: Step;
  readonly done: Done;
  readonly toggle: (id: string) => void;
  /** Read, not done. */
  readonly locked: boolean;
}

/** What is to be done on this screen, each with its tick. */
export function Items({ step, done, toggle, locked, turning }: ItemsProps) {
  return (
    <ol class={`steps-items steps-items-${step.kind}`}>
      {step.items.map((item, i) => (
        <li key={item.id} class={`steps-area-${item.id.split(' ').at(-1)}`}>
          <ItemTick
            item={item}
            number={step.items.length > 1 && step.kind !== 'marks' ? i + 1 : null}
            done={done.has(item.id)}
            locked={locked}
            toggle={() => toggle(item.id)}
            shape={shapeOf(step, item)}
            aside={shapeOf(step, item) === 'turning' ? turning : null}
          />
        </li>
      ))}
    </ol>
  );
}

type Shape = 'plain' | 'beside' | 'under' | 'turning' | 'inline';

const SHAPES: Readonly<Record<Shape, string>> = {
  plain: '',
  beside: 'steps-beside',
  under: 'steps-under',
  turning: 'steps-turning',
  inline: 'steps-inline',
};

function shapeOf({ kind }: Step, { label, figure }: Item): Shape {
  if (kind === 'marks') return 'under';
  if (kind !== 'bend') return 'plain';
  if (figure !== null) return 'beside';
  return label === 'TURN' ? 'turning' : label === 'CHECK THE TURN' ? 'inline' : 'plain';
}

interface ItemTickProps {
  readonly item: Item;
  readonly number: number | null;
  readonly done: boolean;
  readonly locked: boolean;
  readonly toggle: () => void;
  readonly shape: Shape;
  readonly aside: ComponentChildren;
}

function ItemTick({ item, number, done, locked, toggle, shape, aside }: ItemTickProps) {
  const { label, figure, notes, loud } = item;
  return (
    <label class={`steps-item ${SHAPES[shape]} ${loud ? 'steps-loud' : ''}`}>
      <input type="checkbox" class="visually-hidden" checked={done} disabled={locked} onChange={toggle} />
      {(number !== null || label !== null) && (
        <span class="steps-head">
          {number !== null && <span class="steps-number">{number} </span>}
          {label !== null && <span class="steps-label">{label} </span>}
        </span>
      )}
      {figure !== null && <Figure figure={figure} />}
      <Words item={item} />
      {notes.length > 0 && (
        <span class="steps-notes">
          {notes.map((note) => (
            <span key={note} class={note === 'NOT CALIBRATED' ? 'steps-note steps-warn' : 'steps-note'}>
              {note}{' '}
            </span>
          ))}
        </span>
      )}
      {aside}
      {!locked && (
        <span class={shape === 'inline' ? 'steps-tick steps-tick-inline' : 'steps-tick'} aria-hidden="true">
          {done ? '✓' : ''}
        </span>
      )}
    </label>
  );
}

/** The longer, the smaller: it must stand in one line. */
function Figure({ figure }: { readonly figure: string }) {
  const size = figure.length > 8 ? 'steps-figure-longest' : figure.length > 5 ? 'steps-figure-long' : '';
  return <span class={`steps-figure mono ${size}`}>{figure} </span>;
}

/** An order as it is called out: what moves small, what to do large, how far largest. */
function Words({ item: { lead, words, amount } }: { readonly item: Item }) {
  if (words === null) return null;
  return (
    <span class="steps-words">
      {lead !== null && <span class="steps-lead">{lead} </span>}
      {words}
      {amount !== null && <span class="steps-amount mono"> {amount}</span>}{' '}
    </span>
  );
}
