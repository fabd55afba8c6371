import { type Remote, wrap } from 'comlink';
import type { WorkDesk } from './types.ts';

/** The worker, started when it is first asked for. */
export function workDesk(): Remote<WorkDesk> {
  return wrap<WorkDesk>(
    new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'runback-work' }),
  );
}
