/** Where the camera goes so that some points fill the free part of the canvas. */
import { add, cross, dot, scale, type Vec3 } from 'runback';
import type { Inset } from '../types.ts';
import { type Stand, towardCamera } from './views.ts';

/** The camera's own directions, in the world. */
export interface Basis {
  readonly right: Vec3;
  readonly up: Vec3;
  /** From what is looked at to the camera. */
  readonly back: Vec3;
}

export function basisOf(stand: Stand): Basis {
  const back = towardCamera(stand);
  const right: Vec3 = [Math.cos(stand.azimuth), 0, -Math.sin(stand.azimuth)];
  return { right, up: cross(back, right), back };
}

export interface FitAsk {
  readonly points: readonly Vec3[];
  readonly stand: Stand;
  /** Of the canvas, px. */
  readonly width: number;
  readonly height: number;
  readonly inset: Inset;
  /** Left free round the points, part of the free canvas. */
  readonly margin: number;
  /** Pixels from the eye to the picture in perspective; `null`: parallel. */
  readonly focal: number | null;
}

export interface Framing {
  /** In the middle of the canvas. */
  readonly target: Vec3;
  /** mm across a pixel there. */
  readonly mmPerPx: number;
}

const ROUNDS = 12;
const LEAST_FREE_PX = 80;
const LEAST_MM_PER_PX = 0.02;
/** The first guess is from farther off, where perspective does little. */
const FARTHER = 2;
/** Nothing may come nearer to the eye than this part of the way to the target. */
const NEAREST = 0.1;

/** A point by the camera's directions. */
interface Seen {
  readonly x: number;
  readonly y: number;
  /** Towards the camera. */
  readonly z: number;
}

/** Steps from a guess: where the picture of the points is too large or aside, by as much. */
export function framed(ask: FitAsk): Framing {
  const { points, stand, width, height, inset, margin, focal } = ask;
  const basis = basisOf(stand);
  const free = {
    width: Math.max(LEAST_FREE_PX, width - inset.left - inset.right) * (1 - margin),
    height: Math.max(LEAST_FREE_PX, height - inset.top - inset.bottom) * (1 - margin),
  };
  const seen = points.map(
    (p): Seen => ({ x: dot(p, basis.right), y: dot(p, basis.up), z: dot(p, basis.back) }),
  );
  const z = rangeOf(seen.map((p) => p.z)).middle;
  // What is free has its middle beside that of the canvas.
  const [aside, above] = [(inset.left - inset.right) / 2, (inset.bottom - inset.top) / 2];
  let guess = { ...flatFit(seen, free), z };
  for (let round = 0; round < ROUNDS; round++) {
    const { across, high } = pictureOf(seen, guess, focal);
    const larger = Math.max(across.span / free.width, high.span / free.height);
    const mmPerPx = Math.max(guess.mmPerPx * larger, LEAST_MM_PER_PX);
    const [x, y] = [guess.x + (across.middle - aside) * mmPerPx, guess.y + (high.middle - above) * mmPerPx];
    guess = { x, y, z, mmPerPx };
  }
  const target = add(add(scale(basis.right, guess.x), scale(basis.up, guess.y)), scale(basis.back, z));
  return { target, mmPerPx: guess.mmPerPx };
}

interface Range {
  readonly middle: number;
  readonly span: number;
}

function rangeOf(values: readonly number[]): Range {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { middle: (low + high) / 2, span: high - low };
}

type Guess = Seen & { readonly mmPerPx: number };

function flatFit(
  seen: readonly Seen[],
  free: { readonly width: number; readonly height: number },
): Omit<Guess, 'z'> {
  const [across, high] = [rangeOf(seen.map(({ x }) => x)), rangeOf(seen.map(({ y }) => y))];
  const mmPerPx = FARTHER * Math.max(across.span / free.width, high.span / free.height, LEAST_MM_PER_PX);
  return { x: across.middle, y: high.middle, mmPerPx };
}

/** Where the points are in the picture, px from its middle to the right and up. */
function pictureOf(seen: readonly Seen[], { x, y, z, mmPerPx }: Guess, focal: number | null) {
  const far = focal === null ? 0 : focal * mmPerPx;
  const pixels = (p: Seen): number =>
    focal === null ? 1 / mmPerPx : focal / Math.max(far - (p.z - z), far * NEAREST);
  return {
    across: rangeOf(seen.map((p) => (p.x - x) * pixels(p))),
    high: rangeOf(seen.map((p) => (p.y - y) * pixels(p))),
  };
}
