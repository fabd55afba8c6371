/** The bead by keyboard. */
import type { Bend, LengthStyle } from 'runback';

export interface KeyMove {
  readonly at: number;
  /** Bend to select, from end A. */
  readonly bend: number | null;
}

export interface KeyPlace {
  /** Where the bead is, mm. */
  readonly at: number;
  readonly length: number;
  readonly bends: readonly Bend[];
  readonly style: LengthStyle;
}

const INCH = 25.4;
/** A step and a large one, mm. */
const STEPS = { mm: [5, 50], in: [INCH / 4, 2 * INCH] } as const;

/** What a key does; `null`: not one of ours. Arrows left and right go by steps, up and down from bend to bend. */
export function keyMove(key: string, shift: boolean, place: KeyPlace): KeyMove | null {
  const [step, large] = STEPS[place.style === 'mm' ? 'mm' : 'in'];
  const by = shift ? large : step;
  switch (key) {
    case 'ArrowLeft':
      return toStep(place, by, -1);
    case 'ArrowRight':
      return toStep(place, by, 1);
    case 'PageDown':
      return toStep(place, large, -1);
    case 'PageUp':
      return toStep(place, large, 1);
    case 'Home':
      return { at: 0, bend: null };
    case 'End':
      return { at: place.length, bend: null };
    case 'ArrowUp':
      return toBend(place, 1);
    case 'ArrowDown':
      return toBend(place, -1);
    default:
      return null;
  }
}

/** To the next whole step, so that the numbers are round. A hair beside a step counts as on it. */
function toStep({ at, length }: KeyPlace, step: number, way: 1 | -1): KeyMove {
  const hair = step / 1000;
  const steps = way > 0 ? Math.floor((at + hair) / step) + 1 : Math.ceil((at - hair) / step) - 1;
  return { at: Math.min(Math.max(steps * step, 0), length), bend: null };
}

function toBend({ at, bends }: KeyPlace, way: 1 | -1): KeyMove | null {
  const middles = bends.map(({ start, end }) => (start + end) / 2);
  const hair = 1 / 1000;
  const next =
    way > 0 ? middles.findIndex((middle) => middle > at + hair) : middles.findLastIndex((m) => m < at - hair);
  return next < 0 ? null : { at: middles[next]!, bend: next };
}
