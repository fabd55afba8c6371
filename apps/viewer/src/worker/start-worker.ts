import { wrap } from 'comlink';
import { Receiver } from './thin.ts';
import type { JobWorker, WorkAnswer, WorkAsk } from './types.ts';

/** The worker, started when it is first asked for. */
export function startWorker(): (ask: WorkAsk) => Promise<WorkAnswer> {
  const worker = wrap<JobWorker>(
    new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'runback-work' }),
  );
  const receiver = new Receiver();
  return async (ask) => {
    const answer = await worker.work(ask);
    return answer.ok ? { ...answer, worked: receiver.whole(answer.worked) } : answer;
  };
}
