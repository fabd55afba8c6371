/** Ways of looking, remembered on this device. A device that forbids remembering still works. */
import type { Looks } from './types.ts';

const KEY = 'runback-looks';

export const LOOKS: Looks = {
  colour: 'slope',
  projection: 'perspective',
  keepOff: 'near',
  theme: 'auto',
  style: null,
  snap: 1,
  stance: null,
};

export function readLooks(): Looks {
  try {
    return { ...LOOKS, ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Looks>) };
  } catch {
    return LOOKS;
  }
}

export function keepLooks(looks: Looks): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(looks));
  } catch {
    // Private windows and full disks: the choice holds until the page closes.
  }
}
