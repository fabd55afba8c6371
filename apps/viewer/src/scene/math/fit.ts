/** Where the camera goes so that some points fill the free part of the canvas. */
import { add, addScaled, cross, dot, scale, sub, type Vec3 } from 'runback';
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

const ROUNDS = 4;
const LEAST_FREE_PX = 80;
const LEAST_MM_PER_PX = 0.02;

/** A point by the camera's directions. */
interface Seen {
  readonly x: number;
  readonly y: number;
  /** Towards the camera. */
  readonly z: number;
}

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
  const { x, y, z, mmPerPx } = focal === null ? flatFit(seen, free) : deepFit(seen, free, focal);
  const middle = add(add(scale(basis.right, x), scale(basis.up, y)), scale(basis.back, z));
  // The points stand in the middle of what is free, the target in the middle of the canvas.
  const [aside, down] = [(inset.left - inset.right) / 2, (inset.top - inset.bottom) / 2];
  const target = addScaled(sub(middle, scale(basis.right, aside * mmPerPx)), basis.up, down * mmPerPx);
  return { target, mmPerPx };
}

interface Free {
  readonly width: number;
  readonly height: number;
}

const middleOf = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
const spanOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

function flatFit(seen: readonly Seen[], free: Free): Seen & { readonly mmPerPx: number } {
  const [xs, ys, zs] = [seen.map(({ x }) => x), seen.map(({ y }) => y), seen.map(({ z }) => z)];
  const mmPerPx = Math.max(spanOf(xs) / free.width, spanOf(ys) / free.height, LEAST_MM_PER_PX);
  return { x: middleOf(xs), y: middleOf(ys), z: middleOf(zs), mmPerPx };
}

/** In perspective what is nearer is larger: the distance that each point needs, and the middle as it is then seen. */
function deepFit(seen: readonly Seen[], free: Free, focal: number): Seen & { readonly mmPerPx: number } {
  const flat = flatFit(seen, free);
  const { z } = flat;
  let { x, y } = flat;
  let far = flat.mmPerPx * focal;
  for (let round = 0; round < ROUNDS; round++) {
    const needed = seen.map((p) => {
      const aside = Math.max(Math.abs(p.x - x) / free.width, Math.abs(p.y - y) / free.height);
      return p.z - z + 2 * aside * focal;
    });
    far = Math.max(...needed, LEAST_MM_PER_PX * focal);
    const scaleAt = (p: Seen): number => far / (far - (p.z - z));
    x += middleOf(seen.map((p) => (p.x - x) * scaleAt(p)));
    y += middleOf(seen.map((p) => (p.y - y) * scaleAt(p)));
  }
  return { x, y, z, mmPerPx: far / focal };
}
