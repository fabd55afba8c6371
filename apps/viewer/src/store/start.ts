/** What happens by itself: what was left unsaved comes back, every change is kept, the disk is watched. */
import { effect } from '@preact/signals';
import type { Served } from '../served/index.ts';
import { takeDisk } from './create.ts';
import { type Draft, keepDraft, readDraft, readRecent } from './drafts.ts';
import { stepped } from './history.ts';
import type { State } from './state.ts';
import type { Store } from './types.ts';
import type { Working } from './working.ts';

export interface StartNeeds {
  readonly store: Store;
  readonly state: State;
  readonly working: Working;
  readonly served: Served | null;
}

/** Opens what should be open and keeps it safe from then on. */
export async function start(needs: StartNeeds): Promise<void> {
  const { store, state, served } = needs;
  state.recent.value = await readRecent();
  const name = served ? await openServed(needs, served) : null;
  const draft = await readDraft(name);
  if (draft && draft.text !== draft.saved && (!served || draft.name === state.name.value))
    await restored(needs, draft);
  else if (!served) await store.openDemo();
  keepEveryChange(state, name);
  if (served) followDisk(needs, served);
}

async function openServed({ store, state }: StartNeeds, served: Served): Promise<string> {
  const { text, name, tag } = await served.read();
  state.tag.value = tag;
  state.name.value = name;
  await store.open(text, { name, origin: { kind: 'served' } });
  return name;
}

/** The unsaved text as one step after what was saved, so that undo gives the file as it was. */
async function restored({ store, state, working }: StartNeeds, draft: Draft): Promise<void> {
  const onDisk = state.origin.value.kind === 'served' ? state.text.value : draft.saved;
  if (!(await store.open(draft.saved, { name: draft.name, origin: draft.origin }))) return;
  const step = { text: draft.text, label: 'bring back unsaved work', gesture: null };
  state.history.value = stepped(state.history.value, step);
  working.refresh();
  if (onDisk !== draft.saved && state.tag.value)
    state.diskChange.value = { text: onDisk, tag: state.tag.value };
  store.say('What you had not saved is back.');
}

/** IndexedDB takes each change as it is made: nothing waits for the page to be closed politely. */
function keepEveryChange(state: State, served: string | null): void {
  effect(() => {
    const draft: Draft = {
      name: state.name.value,
      origin: state.origin.value,
      text: state.text.value,
      saved: state.saved.value,
      tag: state.tag.value,
    };
    if (draft.text === '') return;
    state.kept.value = false;
    void keepDraft(draft.text === draft.saved ? null : draft, served).then((kept) => {
      if (draft.text === state.text.peek()) state.kept.value = kept;
    });
  });
  addEventListener('beforeunload', (event) => {
    if (state.text.value !== state.saved.value) event.preventDefault();
  });
}

/** One piece of news after the other: what comes twice, or while a copy is read, is not taken twice or over an edit. */
function followDisk(needs: StartNeeds, served: Served): void {
  let last = Promise.resolve();
  served.watch((tag) => {
    // A file that is gone for a moment is told again when it is back.
    last = last.then(() => diskChanged(needs, served, tag)).catch(() => undefined);
  });
}

async function diskChanged(
  { state, working, store }: StartNeeds,
  served: Served,
  tag: string,
): Promise<void> {
  if (tag === state.tag.value) return;
  const now = await served.read();
  if (now.text === state.saved.value) {
    state.tag.value = now.tag;
    return;
  }
  const over = state.saved.value;
  if (state.text.value !== over || !(await takeDisk(state, working, { text: now.text, over }))) {
    state.diskChange.value = { text: now.text, tag: now.tag };
    return;
  }
  state.tag.value = now.tag;
  if (state.saved.value === now.text) store.say(`${state.name.value} changed on disk and was read again.`);
}
