/** From which side, and how near, something is looked at. */
import { dot, sub, type Vec3 } from 'runback';
import { framed } from './math/fit.ts';
import { toMachine, toWorld } from './math/tilt.ts';
import { type Stand, standOf } from './math/views.ts';
import type { Gaze } from './parts/eye.ts';
import type { Shown } from './parts/kinds.ts';
import { ballRound, type Cloud, tubeCloud } from './shape/extent.ts';
import type { Inset, ViewName } from './types.ts';

interface Canvas {
  readonly width: number;
  readonly height: number;
}

/** The corner view stands on the side of everything that the line is on. */
export function standFor(name: ViewName, now: Shown, { width, height }: Canvas): Stand {
  const line = ballRound([lineCloud(now)])!;
  const aside = sub(line.centre, toMachine(now.pose, now.middle));
  const { forward, left } = now.state.axes;
  return standOf(name, {
    landscape: width >= height,
    lineForward: dot(aside, forward) >= 0,
    lineLeft: dot(aside, left) >= 0,
  });
}

interface GazeAsk extends Canvas {
  readonly stand: Stand;
  readonly what: 'line' | 'all';
  readonly focal: number | null;
}

/** Some of what is around a line is shown with it. */
const MARGIN = { line: 0.42, all: 0.06 };
/** Under a line there is room for a drop and how much it is, and over one that is bled for a bubble, px. */
const SIGNS_PX = 74;

export function gazeFor(now: Shown, { what, stand, ...canvas }: GazeAsk): Gaze {
  const clouds = what === 'all' ? now.clouds : [lineCloud(now)];
  const points = clouds.flatMap(({ points: of }) => of.map((point) => toWorld(now.pose, point)));
  const inset = what === 'all' ? now.state.inset : withSigns(now, canvas.height);
  return {
    ...framed({ ...canvas, points, stand, inset, margin: MARGIN[what] }),
    azimuth: stand.azimuth,
    polar: stand.polar,
  };
}

function withSigns({ state: { inset, pockets } }: Shown, height: number): Inset {
  const spare = ((height - inset.top - inset.bottom) * MARGIN.line) / 2;
  const more = Math.max(0, SIGNS_PX - spare);
  return { ...inset, top: inset.top + (pockets?.air ? more : 0), bottom: inset.bottom + more };
}

/** Of the chosen line, in the world. */
export const lineMiddle = (now: Shown): Vec3 => toWorld(now.pose, ballRound([lineCloud(now)])!.centre);

const lineCloud = ({ line, centreline }: Shown): Cloud =>
  centreline
    ? tubeCloud(centreline.pieces, line.line.tube.od / 2)
    : { points: line.line.corners.map(({ at }) => at), radius: 0 };
