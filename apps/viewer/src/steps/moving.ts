/** Next and back by keys and by a swipe. */
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect } from 'preact/hooks';

export interface Moves {
  readonly next: () => void;
  readonly back: () => void;
  /** Ticks what is on the screen and goes on. */
  readonly done: () => void;
  readonly leave: () => void;
}

const TAKES_KEYS = 'input:not([type="checkbox"]), select, textarea, [contenteditable]';
/** What takes a space of its own when it has the focus. */
const TAKES_SPACE = 'button, summary, a, input';

export function keyMove(
  event: Pick<KeyboardEvent, 'target' | 'key' | 'altKey' | 'ctrlKey' | 'metaKey'>,
  moves: Moves,
): (() => void) | null {
  const { target, key, altKey, ctrlKey, metaKey } = event;
  if (altKey || ctrlKey || metaKey) return null;
  const element = target !== null && target instanceof Element ? target : null;
  if (key === 'Escape') return moves.leave;
  if (element?.closest(TAKES_KEYS)) return null;
  if (key === 'ArrowRight') return moves.next;
  if (key === 'ArrowLeft') return moves.back;
  return key === ' ' && !element?.closest(TAKES_SPACE) ? moves.done : null;
}

export function useKeys(moves: Moves): void {
  // Bound with the picture, not after it: the first key of a quick hand counts too.
  useLayoutEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      const move = event.defaultPrevented ? null : keyMove(event, moves);
      if (!move) return;
      event.preventDefault();
      move();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  });
}

/** Across, far enough, and far more across than up or down. px */
const FAR = 70;
const FLAT = 2.2;

/** Which way a finger went; null when it was no swipe. */
export function swipe(dx: number, dy: number): 'next' | 'back' | null {
  if (Math.abs(dx) < FAR || Math.abs(dx) < FLAT * Math.abs(dy)) return null;
  return dx < 0 ? 'next' : 'back';
}

/** Swipes on the screen, but on nothing that is itself turned with a finger. */
export function useSwipe(host: RefObject<HTMLElement | null>, moves: Moves): void {
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    let from: { readonly x: number; readonly y: number } | null = null;
    const down = (event: TouchEvent): void => {
      const touch = event.touches.length === 1 ? event.touches[0] : undefined;
      const own = event.target instanceof Element && event.target.closest('[data-swipe="no"]');
      from = touch && !own ? { x: touch.clientX, y: touch.clientY } : null;
    };
    const up = (event: TouchEvent): void => {
      const touch = event.changedTouches[0];
      const way = from && touch ? swipe(touch.clientX - from.x, touch.clientY - from.y) : null;
      from = null;
      if (way) moves[way]();
    };
    element.addEventListener('touchstart', down, { passive: true });
    element.addEventListener('touchend', up, { passive: true });
    return () => {
      element.removeEventListener('touchstart', down);
      element.removeEventListener('touchend', up);
    };
  });
}
