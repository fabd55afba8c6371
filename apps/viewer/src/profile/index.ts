export { profilePicture } from './picture.ts';
export { RunProfile } from './RunProfile.tsx';
export type { ProfileInput, ProfilePicture } from './types.ts';
