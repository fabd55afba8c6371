/** Type as large as the screen allows: smaller only where a step would not be seen whole. */
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import type { Step } from './step-list.ts';

const SIZES = [1, 0.92, 0.85, 0.78, 0.72, 0.66] as const;

/** Sets `--fit` on the host, by which its type is multiplied. A list that may be scrolled keeps its size. */
export function useFit(host: RefObject<HTMLElement | null>, step: Step | null): void {
  useLayoutEffect(() => {
    const element = host.current;
    if (!element) return;
    const fit = (): void => {
      for (const size of step === null ? [1] : SIZES) {
        element.style.setProperty('--fit', String(size));
        if (element.scrollHeight <= element.clientHeight) return;
      }
    };
    fit();
    const watch = new ResizeObserver(fit);
    watch.observe(element);
    return () => watch.disconnect();
  }, [host, step]);
}
