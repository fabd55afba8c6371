/** Tells when an element comes near what can be seen, and when it goes away again. */

type Tell = (near: boolean) => void;

const told = new WeakMap<Element, Tell>();
let observer: IntersectionObserver | null = null;

/** A screen ahead and behind, also inside a box that scrolls. */
const AHEAD = '100%';

export function watch(element: Element, tell: Tell): () => void {
  observer ??= new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) told.get(target)?.(isIntersecting);
    },
    { rootMargin: AHEAD, scrollMargin: AHEAD } as IntersectionObserverInit,
  );
  told.set(element, tell);
  observer.observe(element);
  return () => {
    told.delete(element);
    observer?.unobserve(element);
  };
}
