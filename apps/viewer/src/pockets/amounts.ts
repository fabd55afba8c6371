/** How much stays where, as the pictures show it. Volumes in mm³. */
import type { Kept, PocketPlace } from 'runback';

const MM3_PER_ML = 1000;
/** Less than a tenth of a millilitre is not shown, mm³. */
const LEAST = 100;

/** Pockets that are worth a sign. */
export const shownPockets = (kept: Kept | null): readonly PocketPlace[] =>
  kept?.pockets.filter(({ volume }) => volume >= LEAST) ?? [];

/** What stays. */
export type Staying = 'liquid' | 'air';

/** "3.4 ml" */
export const mlText = (volume: number): string => `${(volume / MM3_PER_ML).toFixed(1)} ml`;

/** "liquid 3.4 ml": a figure that is told from another without its sign. */
export const amountText = (kind: Staying, volume: number): string => `${kind} ${mlText(volume)}`;

const SMALLEST = 0.8;
const LARGEST = 1.5;
const PER_CUBE_ROOT_ML = 0.3;

/** How many times as large as a sign of 1 ml one of this volume is drawn: by its edge, within what can be seen and fits. */
export function signScale(volume: number): number {
  const scale = 1 + PER_CUBE_ROOT_ML * (Math.cbrt(volume / MM3_PER_ML) - 1);
  return Math.min(Math.max(scale, SMALLEST), LARGEST);
}
