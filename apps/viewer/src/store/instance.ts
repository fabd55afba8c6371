import { served } from '../served/index.ts';
import { startWorker } from '../worker/start-worker.ts';
import { createStore } from './create.ts';
import { start } from './start.ts';

const work = startWorker();
const source = served();
const made = createStore({ work, served: source });

/** The one store of the page. */
export const store = made.store;

/** Opens what should be open; called once by the page. */
export const startStore = (): Promise<void> => start({ ...made, served: source });
