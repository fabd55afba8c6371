/** What became of a drop and what stays in the bore, in words. */
import { formatLength, type Kept, type LengthStyle, type PocketPlace, type WorkedLine } from 'runback';
import { mlText, shownPockets } from './amounts.ts';

export interface Lies {
  /** mm from end A. */
  readonly at: number;
  /** The end it fell out of; `null`: it stays. */
  readonly out: 'A' | 'Z' | null;
}

/** "runs out at end A", "stops in bend B2, 312 mm from end A" */
export function pourWords({ at, out }: Lies, worked: WorkedLine, style: LengthStyle): string {
  return out === null ? `stops ${placeWords(at, worked, style)}` : `runs out at end ${out}`;
}

export interface Stays {
  readonly liquid: Kept | null;
  readonly air: Kept | null;
}

/** "Liquid stays: 3.4 ml in bend B3, 438.8 mm from end A.", "No air stays."; nothing of what is not asked for. */
export function stayWords({ liquid, air }: Stays, worked: WorkedLine, style: LengthStyle): readonly string[] {
  const one = ({ volume, lowest }: PocketPlace): string =>
    `${mlText(volume)} ${placeWords(lowest, worked, style)}`;
  const said = (what: string, none: string, kept: Kept | null): readonly string[] => {
    if (kept === null) return [];
    const shown = shownPockets(kept);
    return [shown.length === 0 ? none : `${what}: ${shown.map(one).join('; ')}.`];
  };
  return [...said('Liquid stays', 'No liquid stays.', liquid), ...said('Air stays', 'No air stays.', air)];
}

/** "in bend B3, 438.8 mm from end A" */
const placeWords = (at: number, { centreline }: WorkedLine, style: LengthStyle): string =>
  `${whereOf(at, centreline?.bends ?? [])}, ${formatLength(at, style)} from end A`;

function whereOf(at: number, bends: readonly { readonly start: number; readonly end: number }[]): string {
  const inside = bends.findIndex(({ start, end }) => at > start && at < end);
  if (inside >= 0) return `in bend B${inside + 1}`;
  const before = bends.filter(({ end }) => end <= at).length;
  const from = before === 0 ? 'end A' : `B${before}`;
  return `between ${from} and ${before === bends.length ? 'end Z' : `B${before + 1}`}`;
}
