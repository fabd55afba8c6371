import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Size } from './types.ts';

/** Lettering, pixels: larger where fingers point. */
const TEXT = 11.5;
const TEXT_COARSE = 13;
const coarse = matchMedia('(pointer: coarse)');

/** The box an element is given, followed. `null` until it is known. */
export function useSize() {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = box.current!;
      const text = coarse.matches ? TEXT_COARSE : TEXT;
      const changed = (old: Size | null): boolean =>
        old?.width !== width || old.height !== height || old.text !== text;
      if (width > 0 && height > 0) setSize((old) => (changed(old) ? { width, height, text } : old));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(box.current!);
    coarse.addEventListener('change', measure);
    measure();
    return () => {
      observer.disconnect();
      coarse.removeEventListener('change', measure);
    };
  }, []);
  return { box, size };
}
