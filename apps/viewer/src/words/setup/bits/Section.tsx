/** A fold with a title and, beside it, what is set inside in a few words. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** Folds that were left open stay so as long as the page is there. */
const opened = new Set<string>(['what']);

/** Opens a fold there will be; what it gives back leaves it as it was, should there be none. */
export function openFold(id: string): () => void {
  const was = opened.has(id);
  opened.add(id);
  return () => {
    if (!was) opened.delete(id);
  };
}

export interface SectionProps {
  /** Tells it from the other folds. */
  readonly id: string;
  readonly title: string;
  readonly brief?: string;
  /** A fold within a fold. */
  readonly inner?: boolean;
  /** Opens when this becomes true. */
  readonly wanted?: boolean;
  readonly onOpen?: () => void;
  readonly children: ComponentChildren;
}

export function Section({ id, title, brief, inner = false, wanted = false, onOpen, children }: SectionProps) {
  const [, drawAgain] = useState({});
  const open = opened.has(id);
  const fold = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (!wanted) return;
    opened.add(id);
    drawAgain({});
    if (inner) requestAnimationFrame(() => fold.current?.scrollIntoView({ block: 'nearest' }));
  }, [wanted, inner, id]);
  const toggled = (now: boolean): void => {
    if (now && !open) onOpen?.();
    if (now) opened.add(id);
    else opened.delete(id);
    drawAgain({});
  };
  return (
    <details
      ref={fold}
      class={inner ? 'setup-inner' : 'setup-section card'}
      open={open}
      onToggle={(event) => toggled(event.currentTarget.open)}
    >
      <summary>
        <span class="setup-title">{title}</span>
        {brief !== undefined && <span class="setup-brief">{brief}</span>}
      </summary>
      {open && <div class="setup-body">{children}</div>}
    </details>
  );
}

/** Fields that belong together, under a name. */
export function Group({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <fieldset class="setup-group">
      <legend>{name}</legend>
      <div class="setup-grid">{children}</div>
    </fieldset>
  );
}
