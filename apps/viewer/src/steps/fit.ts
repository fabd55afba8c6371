/** Type as large as the screen allows: a step is seen whole, and fills its screen. */
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import type { Step } from './step-list.ts';

/** A bend leaves what room there is to its picture. */
const MOST = { bend: 1, stand: 1.2 } as const;
/** Below this it is scrolled rather than read with a lens. */
const LEAST = 0.74;
const DOWN = 0.06;
const LISTS = 1.7;

const TYPE = '.steps-figure, .steps-words, .steps-head, .steps-notes';

/** Nothing to scroll for, and no word wider than its place. */
function fits(element: HTMLElement): boolean {
  if (element.scrollHeight > element.clientHeight || element.scrollWidth > element.clientWidth) return false;
  return [...element.querySelectorAll<HTMLElement>(TYPE)].every(
    (one) => one.scrollWidth <= one.clientWidth + 1,
  );
}

/** Sets `--fit` on the host, by which its type is multiplied. What is scrolled anyway keeps its size. */
export function useFit(host: RefObject<HTMLElement | null>, step: Step | null): void {
  useLayoutEffect(() => {
    const element = host.current;
    if (!element) return;
    const most = step === null ? 1 : (MOST[step.kind as keyof typeof MOST] ?? LISTS);
    const fit = (): void => {
      let size: number = most;
      element.style.setProperty('--fit', String(size));
      while (step !== null && size > LEAST && !fits(element)) {
        size -= DOWN;
        element.style.setProperty('--fit', size.toFixed(2));
      }
    };
    fit();
    const watch = new ResizeObserver(fit);
    watch.observe(element);
    return () => watch.disconnect();
  }, [host, step]);
}
