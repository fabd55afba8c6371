export { WorkMemory } from './memory.ts';
export { movedPoint } from './moved-point.ts';
export { lineProfile, PROFILE_DEFAULTS } from './profile/line-profile.ts';
export { profileFalls } from './profile/profile-falls.ts';
export type * from './profile/types.ts';
export type * from './types.ts';
export { workJob } from './work-job.ts';
export { WORK_DEFAULTS, workLine } from './work-line.ts';
