/** Puts the store together from its parts. */
import { batch } from '@preact/signals';
import { movedPoint } from 'runback';
import type { Served } from '../served/index.ts';
import { makeFiles } from './files.ts';
import { redone, undone } from './history.ts';
import { keepLooks } from './looks.ts';
import { makePouring } from './pour.ts';
import { makeState, type State } from './state.ts';
import type { Said, Selection, Store } from './types.ts';
import { type WorkFn, Working } from './working.ts';

export interface StoreNeeds {
  readonly work: WorkFn;
  readonly served: Served | null;
}

export interface MadeStore {
  readonly store: Store;
  readonly state: State;
  readonly working: Working;
}

/** A store with nothing open yet. */
export function createStore({ work, served }: StoreNeeds): MadeStore {
  const state = makeState();
  let count = 0;
  const say = (words: string, kind: Said['kind'] = 'done'): void => {
    count += 1;
    state.said.value = { words, kind, count };
  };
  const working = new Working(state, work, say);
  const store: Store = {
    ...state,
    ...makeFiles({ state, working, served, say }),
    ...looking(state, working),
    ...editing(state, working, say),
    ...makePouring(state),
    say,
  };
  return { store, state, working };
}

type Looking = Pick<
  Store,
  'chooseLine' | 'select' | 'setBead' | 'peekBead' | 'setTilt' | 'setLooks' | 'setFace' | 'dismissFault'
>;

function looking(state: State, working: Working): Looking {
  return {
    chooseLine: (id) => {
      if (state.lineId.value === id) return;
      batch(() => {
        state.wantedLine.value = id;
        state.profile.value = null;
        state.selection.value = null;
        putBead(state, null);
      });
      working.refresh();
    },
    select: (selection) => {
      batch(() => {
        state.selection.value = selection;
        const at = placeOf(state, selection);
        if (at !== null) putBead(state, at);
      });
    },
    setBead: (at) => putBead(state, at),
    peekBead: (at) => {
      state.peek.value = at;
    },
    setTilt: (tilt) => {
      state.tilt.value = tilt;
    },
    setLooks: (change) => {
      state.looks.value = { ...state.looks.value, ...change };
      keepLooks(state.looks.value);
    },
    setFace: (face) => {
      state.face.value = face;
    },
    dismissFault: () => {
      state.openFault.value = null;
    },
  };
}

const putBead = ({ stand, peek }: State, at: number | null): void =>
  batch(() => {
    stand.value = at;
    peek.value = null;
  });

/** Where the bead goes when something is selected. */
function placeOf({ line }: State, selection: Selection | null): number | null {
  const now = line.value;
  if (selection === null || !now) return null;
  if (selection.kind === 'finding') return now.findings[selection.index]?.at ?? null;
  if (selection.kind !== 'bend') return null;
  const bend = now.centreline?.bends[selection.index];
  return bend ? (bend.start + bend.end) / 2 : null;
}

type Editing = Pick<Store, 'edit' | 'movePoint' | 'undo' | 'redo' | 'answerDisk'>;

function editing(state: State, working: Working, say: Store['say']): Editing {
  const through = (change: typeof undone) => (): void => {
    const next = change(state.history.value);
    if (next === state.history.value) return;
    state.history.value = next;
    working.refresh();
  };
  return {
    edit: async (label, edits, { gesture = null } = {}) => {
      const issues = await working.change({ label, edits, gesture });
      if (issues[0]) say(`Not changed: ${issues[0].message}.`, 'fault');
      return issues;
    },
    movePoint: (index, at, gesture) => {
      const line = state.line.value?.line;
      if (!line?.corners[index]) return;
      const name = index === 0 ? 'A' : index === line.corners.length - 1 ? 'Z' : String(index);
      const edits = [movedPoint(line, index, at)];
      working.changeLatest({ label: `move point ${name} of ${line.name}`, edits, gesture });
    },
    undo: through(undone),
    redo: through(redone),
    answerDisk: (answer) => {
      const change = state.diskChange.value;
      if (!change) return;
      state.diskChange.value = null;
      state.tag.value = change.tag;
      // Kept: what is on disk is no longer what was last saved here.
      if (answer === 'keep') state.saved.value = change.text;
      else void takeDisk(state, working, { text: change.text });
    },
  };
}

/**
 * The text on disk as one more step, so that undo brings the edits back. With `over`, only over that text: false when an
 * edit came in between.
 */
export async function takeDisk(
  state: State,
  working: Working,
  { text, over }: { readonly text: string; readonly over?: string },
): Promise<boolean> {
  const answer = await working.look(text, state.name.value);
  if (over !== undefined && state.text.value !== over) return false;
  if (!answer.ok) {
    state.openFault.value = { name: state.name.value, issues: answer.issues };
    return true;
  }
  const { past, now } = state.history.value;
  batch(() => {
    state.history.value = {
      past: [...past, now],
      now: { text, label: 'take the file from disk', gesture: null },
      future: [],
    };
    state.saved.value = text;
    working.take(answer);
  });
  working.refresh();
  return true;
}
