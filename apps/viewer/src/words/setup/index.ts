export { LineActions } from './actions/LineActions.tsx';
export { JobSetup } from './job/JobSetup.tsx';
export { LineSetup } from './line/LineSetup.tsx';
