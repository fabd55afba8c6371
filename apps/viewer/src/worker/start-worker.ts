import { type Remote, wrap } from 'comlink';
import type { JobWorker } from './types.ts';

/** The worker, started when it is first asked for. */
export function startWorker(): Remote<JobWorker> {
  return wrap<JobWorker>(
    new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'runback-work' }),
  );
}
