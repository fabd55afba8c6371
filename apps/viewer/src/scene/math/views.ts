/** Standard views: where the camera stands, as angles about the world's up. */
import type { Vec3 } from 'runback';
import type { ViewName } from '../types.ts';

/** Standing place: `azimuth` from the machine's right (0) over forward (90°) to the left; `polar` from straight above. */
export interface Stand {
  readonly azimuth: number;
  readonly polar: number;
}

const QUARTER = Math.PI / 2;
const CORNER_POLAR = 1.08;
const CORNER_ASIDE = 0.62;

export interface ViewAsk {
  /** Wider than high. */
  readonly landscape: boolean;
  /** Which corner shows the line from the free side: it lies forward (or rear), left (or right) of the middle of everything. */
  readonly lineForward: boolean;
  readonly lineLeft: boolean;
}

/** Where to stand for a view. From above forward is to the right of a wide canvas and to the top of a high one. */
export function standOf(name: ViewName, { landscape, lineForward, lineLeft }: ViewAsk): Stand {
  const flat = landscape ? 0 : -QUARTER;
  switch (name) {
    case 'forward':
      return { azimuth: QUARTER, polar: QUARTER };
    case 'rear':
      return { azimuth: -QUARTER, polar: QUARTER };
    case 'left':
      return { azimuth: Math.PI, polar: QUARTER };
    case 'right':
      return { azimuth: 0, polar: QUARTER };
    case 'above':
      return { azimuth: flat, polar: 0 };
    case 'below':
      return { azimuth: flat, polar: Math.PI };
    case 'corner': {
      const fore = lineForward ? 1 : -1;
      return { azimuth: lineLeft ? Math.PI - fore * CORNER_ASIDE : fore * CORNER_ASIDE, polar: CORNER_POLAR };
    }
  }
}

/** From what is looked at towards the camera, in the world (x forward, y up, z right). */
export const towardCamera = ({ azimuth, polar }: Stand): Vec3 => [
  Math.sin(polar) * Math.sin(azimuth),
  Math.cos(polar),
  Math.sin(polar) * Math.cos(azimuth),
];

/** The shorter way round from one azimuth to another. */
export function nearestAzimuth(from: number, to: number): number {
  const whole = 2 * Math.PI;
  return to + whole * Math.round((from - to) / whole);
}

/** Slow, quick, slow; 0 to 1. */
export const eased = (t: number): number => (t < 0.5 ? 4 * t ** 3 : 1 - (2 - 2 * t) ** 3 / 2);
