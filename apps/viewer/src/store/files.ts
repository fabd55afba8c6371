/** Opening and saving. What is open stays open until another text was read whole and without a fault. */
import { batch } from '@preact/signals';
import { fileOpen, fileSave } from 'browser-fs-access';
import type { Served } from '../served/index.ts';
import { keepRecent, type Recent, readRecent } from './drafts.ts';
import { begun } from './history.ts';
import type { State } from './state.ts';
import type { Origin, Store } from './types.ts';
import type { Working } from './working.ts';

const TYPES = { mimeTypes: ['application/json'], extensions: ['.json', '.jsonc'] };
const LARGEST = 16 * 1024 * 1024;

type Files = Pick<Store, 'open' | 'openFile' | 'openDropped' | 'openDemo' | 'openRecent' | 'save' | 'saveAs'>;

export interface FilesNeed {
  readonly state: State;
  readonly working: Working;
  readonly served: Served | null;
  readonly say: Store['say'];
}

export function makeFiles(need: FilesNeed): Files {
  const { state, say } = need;
  const open: Store['open'] = (text, from) => opened(need, text, from);
  const openDropped = async (file: File, handle: FileSystemFileHandle | null): Promise<void> => {
    const text = await readText(file);
    if (typeof text === 'string') await open(text, { name: file.name, origin: { kind: 'file', handle } });
    else state.openFault.value = { name: file.name, issues: [text] };
  };
  return {
    open,
    openDropped,
    openFile: async () => {
      const file = await asked(() => fileOpen({ ...TYPES, description: 'Job file' }));
      if (file) await openDropped(file, file.handle ?? null);
    },
    openDemo: async (name = 'tender-7') => {
      const file = `${name}.job.json`;
      const response = await fetch(new URL(`demo/${file}`, document.baseURI));
      if (!response.ok) return say(`The demo cannot be read (${response.status}).`, 'fault');
      await open(await response.text(), { name: file, origin: { kind: 'demo' } });
    },
    openRecent: async (name) => {
      const recent = (await readRecent()).find((one) => one.name === name);
      if (recent) await open(recent.text, recent);
    },
    save: () => saved(need, false),
    saveAs: () => saved(need, true),
  };
}

/** Null when the person changed their mind. */
async function asked<T>(ask: () => Promise<T>): Promise<T | null> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}

async function readText(file: File) {
  const place = { path: '', line: 1, column: 1, file: file.name };
  if (file.size > LARGEST)
    return {
      ...place,
      message: 'this file is too large for a job',
      expected: '16 MB at most',
      got: `${file.size} bytes`,
    };
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return {
      ...place,
      message: 'this is not a text file',
      expected: 'a job file, UTF-8 text',
      got: 'other bytes',
    };
  }
}

async function opened(
  { state, working }: FilesNeed,
  text: string,
  from: { name: string; origin: Origin },
): Promise<boolean> {
  const answer = await working.look(text, from.name);
  if (!answer.ok) {
    state.openFault.value = { name: from.name, issues: answer.issues };
    return false;
  }
  batch(() => {
    state.history.value = begun(text);
    state.saved.value = text;
    state.name.value = from.name;
    state.origin.value = from.origin;
    state.openFault.value = null;
    state.diskChange.value = null;
    state.wantedLine.value = null;
    state.selection.value = null;
    state.stand.value = null;
    state.peek.value = null;
    state.tilt.value = { pitch: 0, roll: 0 };
    working.take(answer);
  });
  working.refresh();
  state.recent.value = await keepRecent({ text, ...from } satisfies Recent);
  return true;
}

async function saved(need: FilesNeed, elsewhere: boolean): Promise<void> {
  const { state, say } = need;
  const text = state.text.value;
  const origin = state.origin.value;
  try {
    if (origin.kind === 'served' && need.served && !elsewhere) {
      if (!(await savedToServer(need, text))) return;
    } else if (!(await savedToFile(state, text, elsewhere))) return;
    state.saved.value = text;
    state.recent.value = await keepRecent({ name: state.name.value, text, origin: state.origin.value });
    say(`Saved ${state.name.value}.`);
  } catch (error) {
    say(`It could not be saved: ${error instanceof Error ? error.message : String(error)}`, 'fault');
  }
}

async function savedToServer({ state, served, say }: FilesNeed, text: string): Promise<boolean> {
  const answer = await served!.write(text, state.tag.value ?? '');
  if (answer.ok) {
    state.tag.value = answer.tag;
    return true;
  }
  state.diskChange.value = { text: answer.text, tag: answer.tag };
  say('The file on disk has changed: choose which to keep.', 'fault');
  return false;
}

async function savedToFile(state: State, text: string, elsewhere: boolean): Promise<boolean> {
  const origin = state.origin.value;
  const known = origin.kind === 'file' && !elsewhere ? origin.handle : null;
  const blob = new Blob([text], { type: 'application/json' });
  const ask = { fileName: state.name.value, extensions: ['.json'], description: 'Job file' };
  const handle = await asked(async () => ({ got: await fileSave(blob, ask, known) }));
  if (handle === null) return false;
  if (handle.got) {
    state.origin.value = { kind: 'file', handle: handle.got };
    state.name.value = handle.got.name;
  }
  return true;
}
