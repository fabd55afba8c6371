/** Long work, away from the page that has to follow the hand. */
import { expose } from 'comlink';
import { catalogue, editJob, JobError, lineProfile, parseJob, resolve, WorkMemory, workJob } from 'runback';
import { Sender } from './thin.ts';
import type { JobWorker, ThinAnswer, WorkAsk } from './types.ts';

const memory = new WorkMemory();
const sender = new Sender();

function work({ text: before, edits, file, lineId, cures }: WorkAsk): ThinAnswer {
  try {
    const text = edits.length === 0 ? before : editJob(before, edits);
    const job = parseJob(text, { file });
    const worked = workJob(resolve(job, catalogue), { cures, memory });
    const line = worked.lines.find((one) => one.line.id === lineId) ?? worked.lines[0]!;
    const profile = lineProfile(line, worked);
    // Last: what is noted as sent has to be sent.
    return { ok: true, text, job, profile, lineId: line.line.id, worked: sender.thin(worked) };
  } catch (error) {
    if (error instanceof JobError) return { ok: false, issues: error.issues };
    throw error;
  }
}

expose({ work } satisfies JobWorker);
