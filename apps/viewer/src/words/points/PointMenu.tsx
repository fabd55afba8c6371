/** What else can be done with a point, over everything else and beside the button that opened it. */
import type { TargetedKeyboardEvent } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Editing } from './editing.ts';
import type { PointRow } from './rows.ts';
import { pointWords } from './words.ts';

export interface MenuPlace {
  readonly row: PointRow;
  readonly anchor: HTMLElement;
}

export interface PointMenuProps {
  readonly place: MenuPlace | null;
  /** Points of the line. */
  readonly count: number;
  readonly edits: Editing;
  readonly onClose: () => void;
}

interface Item {
  readonly words: string;
  readonly can: boolean;
  readonly run: () => unknown;
}

function itemsOf({ index }: PointRow, count: number, edits: Editing): readonly Item[] {
  return [
    {
      words: 'Add a point after',
      can: index < count - 1,
      run: () => edits.split(index),
    },
    {
      words: 'Add a point before',
      can: index > 0,
      run: () => edits.split(index - 1),
    },
    { words: 'Move up, toward A', can: index > 0, run: () => edits.move(index, index - 1) },
    { words: 'Move down, toward Z', can: index < count - 1, run: () => edits.move(index, index + 1) },
    { words: 'Remove this point', can: count > 2, run: () => edits.remove(index) },
  ];
}

export function PointMenu({ place, count, edits, onClose }: PointMenuProps) {
  const menu = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = menu.current;
    if (!place || !element) return;
    element.showPopover();
    putBeside(element, place.anchor);
    element.querySelector<HTMLElement>('[role="menuitem"]:not(:disabled)')?.focus();
  }, [place]);
  if (!place) return null;
  const close = (): void => {
    menu.current?.hidePopover();
    place.anchor.focus();
  };
  return (
    <div
      ref={menu}
      popover="auto"
      role="menu"
      tabIndex={-1}
      class="words-points-menu"
      aria-label={pointWords(place.row)}
      onKeyDown={step}
      onToggle={(event) => (event.newState === 'closed' ? onClose() : undefined)}
    >
      {itemsOf(place.row, count, edits).map(({ words, can, run }) => (
        <button
          key={words}
          type="button"
          role="menuitem"
          tabIndex={-1}
          class="btn-quiet"
          disabled={!can}
          onClick={() => {
            close();
            void run();
          }}
        >
          {words}
        </button>
      ))}
    </div>
  );
}

/** Below the button where there is room, else above it; inside the window either way. */
function putBeside(menu: HTMLElement, anchor: HTMLElement): void {
  const [to, own] = [anchor.getBoundingClientRect(), menu.getBoundingClientRect()];
  const below = to.bottom + own.height <= window.innerHeight;
  menu.style.top = `${Math.max(0, below ? to.bottom : to.top - own.height)}px`;
  menu.style.left = `${Math.max(0, Math.min(to.left, window.innerWidth - own.width))}px`;
}

function step(event: TargetedKeyboardEvent<HTMLElement>): void {
  const items = [...event.currentTarget.querySelectorAll<HTMLElement>('[role="menuitem"]:not(:disabled)')];
  const now = items.indexOf(document.activeElement as HTMLElement);
  const to = { ArrowDown: now + 1, ArrowUp: now - 1, Home: 0, End: items.length - 1 }[event.key];
  if (event.key === 'Tab') event.currentTarget.hidePopover();
  if (to === undefined) return;
  event.preventDefault();
  items[(to + items.length) % items.length]?.focus();
}
