/** Where the words of the picture go, in pixels of its canvas. */
import { scale, type Vec3 } from 'runback';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { BenchPlaces } from './places.ts';

export type LabelName = 'start' | 'before' | 'free' | 'former' | 'amount' | 'you';

export interface Placed {
  readonly name: LabelName;
  readonly x: number;
  readonly y: number;
  /** False when its place lies outside: then x and y are where it leaves the picture. */
  readonly inside: boolean;
}

/** Words keep so far from the edge, px. */
const EDGE = 14;

/** Words, and places that no word may cover. */
export interface Labels {
  readonly words: readonly Placed[];
  readonly barriers: readonly Pick<Placed, 'x' | 'y'>[];
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const onCanvas = (at: Vec3, camera: PerspectiveCamera, { width, height }: Size): Pick<Placed, 'x' | 'y'> => {
  const seen = new Vector3(...at).project(camera);
  return { x: ((seen.x + 1) / 2) * width, y: ((1 - seen.y) / 2) * height };
};

export function labelsOf(places: BenchPlaces, camera: PerspectiveCamera, size: Size): Labels {
  const { pose, radius, ends, stock, arrows, frame, floor } = places;
  const put = (name: LabelName, at: Vec3 | undefined): readonly Placed[] => {
    if (!at) return [];
    const { x, y } = onCanvas(at, camera, size);
    const inside = x > EDGE && y > EDGE && x < size.width - EDGE && y < size.height - EDGE;
    return [{ name, x: held(x, size.width), y: held(y, size.height), inside }];
  };
  const near = Math.min(...frame.map((place) => place[1]));
  const words = [
    ...startTag(put('start', places.after[0]![0]), put('start', ends.after)),
    ...put('before', ends.before ?? undefined),
    ...put('free', stock[1]),
    ...put('former', scale(pose.former, 1.7 * radius)),
    ...put('amount', arrows[0]?.over),
    ...put('you', [0, near - radius * 0.4, floor]),
  ];
  const round = arrows.flatMap(({ shaft, tip }) => [...shaft.filter((_, i) => i % 4 === 0), tip]);
  return { words, barriers: round.map((at) => onCanvas(at, camera, size)) };
}

/** At START where it is seen; else where the tube to it leaves the picture. */
const startTag = (start: readonly Placed[], leaving: readonly Placed[]): readonly Placed[] =>
  start[0]?.inside ? start : leaving.map((placed) => ({ ...placed, inside: false }));

const held = (value: number, most: number): number => Math.min(Math.max(value, EDGE), most - EDGE);
