/** Long work, away from the page that has to follow the hand. */
import { expose } from 'comlink';
import { catalogue, editJob, JobError, lineProfile, parseJob, resolve, WorkMemory, workJob } from 'runback';
import type { JobWorker, WorkAnswer, WorkAsk } from './types.ts';

const memory = new WorkMemory();

function work({ text: before, edits, file, lineId, cures }: WorkAsk): WorkAnswer {
  try {
    const text = edits.length === 0 ? before : editJob(before, edits);
    const job = parseJob(text, { file });
    const worked = workJob(resolve(job, catalogue), { cures, memory });
    const line = worked.lines.find((one) => one.line.id === lineId) ?? worked.lines[0]!;
    return { ok: true, text, job, worked, profile: lineProfile(line, worked), lineId: line.line.id };
  } catch (error) {
    if (error instanceof JobError) return { ok: false, issues: error.issues };
    throw error;
  }
}

expose({ work } satisfies JobWorker);
