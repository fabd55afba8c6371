import { JobSetup, LineActions, LineSetup } from '../words/setup/index.ts';

/** What the chosen line and the job are made of. */
export const Setup = () => (
  <>
    <LineActions />
    <LineSetup />
    <JobSetup />
  </>
);
