import type { AttitudeSet } from '@runback/geometry';

/** Whether level is all there is: at rest, or ranges or a tilt that leave nothing else. */
export function onlyLevel(attitudes: AttitudeSet): boolean {
  if (attitudes.kind === 'rest') return true;
  if (attitudes.kind === 'cone') return attitudes.tilt === 0;
  return [...attitudes.pitch, ...attitudes.roll].every((angle) => angle === 0);
}
