/** What follows the pointer and the keys: one slider along the line. */
import type { ComponentChildren } from 'preact';
import { useId, useRef } from 'preact/hooks';
import { store } from '../store/index.ts';
import type { Drawing } from './Bead.tsx';
import { atOf } from './frame.ts';
import { keyMove } from './keys.ts';
import { spoken } from './read-out.ts';

/** A press that moves less than this is a click, pixels. */
const CLICK = 5;

interface Press {
  readonly x: number;
  readonly target: Element;
  moved: boolean;
}

export function Slider({ picture, input, children }: Drawing & { readonly children: ComponentChildren }) {
  const how = useId();
  const at = store.bead.value;
  const events = usePointer({ picture, input });
  const { profile, worked } = input;
  return (
    <div
      class="profile-slider"
      role="slider"
      tabIndex={0}
      aria-label={`Place along ${worked.line.name}`}
      aria-describedby={how}
      aria-orientation="horizontal"
      aria-valuemin={0}
      aria-valuemax={Math.round(profile.length)}
      aria-valuenow={Math.round(at ?? 0)}
      aria-valuetext={at === null ? 'no place chosen' : spoken(input, at)}
      {...events}
    >
      {children}
      <span id={how} class="visually-hidden">
        Left and right arrows move along the line, with Shift farther, Home and End to its ends; up and down
        go from bend to bend. D lets a drop go there, Escape takes it away.
      </span>
    </div>
  );
}

function usePointer({ picture, input }: Drawing) {
  const press = useRef<Press | null>(null);
  const ride = (event: PointerEvent): void => {
    const { left } = (event.currentTarget as Element).getBoundingClientRect();
    const at = atOf(picture.frame, event.clientX - left);
    if (press.current) store.setBead(at);
    else store.peekBead(at);
  };
  return {
    onPointerDown: (event: PointerEvent): void => {
      if (event.button !== 0) return;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      press.current = { x: event.clientX, target: event.target as Element, moved: false };
      ride(event);
    },
    onPointerMove: (event: PointerEvent): void => {
      const now = press.current;
      if (now && Math.abs(event.clientX - now.x) > CLICK) now.moved = true;
      if (now || event.pointerType === 'mouse') ride(event);
    },
    onPointerUp: (): void => {
      const now = press.current;
      press.current = null;
      if (now && !now.moved) choose(now.target);
    },
    onPointerCancel: (): void => {
      press.current = null;
    },
    onPointerLeave: (): void => store.peekBead(null),
    onFocus: (): void => {
      if (store.bead.value === null) store.setBead(0);
    },
    onKeyDown: (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === 'd' || event.key === 'D') store.letGo();
      const { profile, style } = input;
      const place = { at: store.bead.value ?? 0, length: profile.length, bends: profile.bends, style };
      const move = keyMove(event.key, event.shiftKey, place);
      if (!move) return;
      event.preventDefault();
      if (move.bend !== null) store.select({ kind: 'bend', index: move.bend });
      store.setBead(move.at);
    },
  };
}

/** What was clicked is selected everywhere; the findings of one flag in turn. */
function choose(target: Element): void {
  const findings = target.closest('[data-findings]')?.getAttribute('data-findings');
  if (findings) {
    chooseFinding(findings.split(' ').map(Number));
    return;
  }
  const bend = target.closest('[data-bend]')?.getAttribute('data-bend');
  if (bend) store.select({ kind: 'bend', index: Number(bend) });
}

function chooseFinding(findings: readonly number[]): void {
  const now = store.selection.value;
  const at = now?.kind === 'finding' ? findings.indexOf(now.index) : -1;
  store.select({ kind: 'finding', index: findings[(at + 1) % findings.length]! });
}
