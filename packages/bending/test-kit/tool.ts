/**
 * A bending tool and a rigid tube in it. It knows points, feeding, turning as a person is told to, and wrapping
 * round a former; it knows no planes of bend, no turns and no signs. Axes of the looker: X right, Y away, Z up.
 */
import { add, addScaled, cross, dot, scale, sub, type Vec3 } from '@runback/geometry';
import type { Bench } from '@runback/job';

const UP: Vec3 = [0, 0, 1];
const SIDES: Readonly<Record<string, Vec3>> = {
  left: [-1, 0, 0],
  right: [1, 0, 0],
  near: [0, -1, 0],
  far: [0, 1, 0],
  above: UP,
  below: [0, 0, -1],
};

export interface Tool {
  /** Where the START end of the tube lies for the looker: left, right, near or far. */
  readonly start: Vec3;
  /** From the tube to the former, square to the tube. */
  readonly former: Vec3;
  readonly swings: 'START' | 'FREE';
}

/** A made point of the tube: how far along the finished line from START, and where it now is. */
interface Made {
  readonly s: number;
  readonly at: Vec3;
}

export interface Tube {
  readonly points: readonly Made[];
  /** How much is used up, from START. */
  readonly used: number;
  /** Where the last bend ends; the rest of the tube goes straight on from here along the tool. */
  readonly tip: Vec3;
}

const PER_PIECE = 12;

/** A straight tube with its START end at the place of bending. */
export const freshTube: Tube = { points: [{ s: 0, at: [0, 0, 0] }], used: 0, tip: [0, 0, 0] };

/** `v` turned in the plane of two square unit vectors, `from` going towards `to`. */
function turnIn(v: Vec3, from: Vec3, to: Vec3, angle: number): Vec3 {
  const [a, b] = [dot(v, from), dot(v, to)];
  const rest = addScaled(addScaled(v, from, -a), to, -b);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return addScaled(addScaled(rest, from, a * c - b * s), to, a * s + b * c);
}

const moveAll = (tube: Tube, move: (at: Vec3) => Vec3): Tube => ({
  ...tube,
  points: tube.points.map(({ s, at }) => ({ s, at: move(at) })),
  tip: move(tube.tip),
});

const FREE_SIDE = (tool: Tool): Vec3 => scale(tool.start, -1);

/** Pushes the tube along until its last bend ends `straight` before the place of bending. */
export function feed(tube: Tube, tool: Tool, straight: number): Tube {
  const shift = sub(scale(tool.start, straight), tube.tip);
  return moveAll(tube, (at) => add(at, shift));
}

/** Points of a new straight of this length from the tip on. */
function withStraight(tube: Tube, tool: Tool, length: number): Tube {
  const added = Array.from({ length: PER_PIECE }, (_, k) => {
    const along = (length * (k + 1)) / PER_PIECE;
    return { s: tube.used + along, at: addScaled(tube.tip, FREE_SIDE(tool), along) };
  });
  return { points: [...tube.points, ...added], used: tube.used + length, tip: added.at(-1)!.at };
}

/** Bends the tube from its tip on round the former; then the free end is laid along the tool again. */
export function bend(tube: Tube, tool: Tool, ask: { straight: number; angle: number; radius: number }): Tube {
  return tool.swings === 'FREE' ? bendFree(tube, tool, ask) : bendStart(tube, tool, ask);
}

function bendFree(tube: Tube, tool: Tool, ask: { straight: number; angle: number; radius: number }): Tube {
  const fed = withStraight(feed(tube, tool, ask.straight), tool, ask.straight);
  // The tip is now at the place of bending; the tube ahead of it is wrapped round the former.
  const centre = scale(tool.former, ask.radius);
  const ahead = FREE_SIDE(tool);
  const wrapped = Array.from({ length: PER_PIECE }, (_, k) => {
    const t = (ask.angle * (k + 1)) / PER_PIECE;
    const spoke = turnIn(scale(tool.former, -1), scale(tool.former, -1), ahead, t);
    return { s: fed.used + ask.radius * t, at: addScaled(centre, spoke, ask.radius) };
  });
  const bent: Tube = {
    points: [...fed.points, ...wrapped],
    used: fed.used + ask.radius * ask.angle,
    tip: wrapped.at(-1)!.at,
  };
  // The free end points from `ahead` towards the former by the bend: swung back in the plane of the tool.
  return moveAll(bent, (at) => turnIn(at, tool.former, ahead, ask.angle));
}

function bendStart(tube: Tube, tool: Tool, ask: { straight: number; angle: number; radius: number }): Tube {
  const length = ask.radius * ask.angle;
  const fed = withStraight(feed(tube, tool, ask.straight + length), tool, ask.straight);
  // The tube behind the place of bending is wrapped, and all that is made swings round with it.
  const centre = scale(tool.former, ask.radius);
  const swing = (at: Vec3): Vec3 => {
    const pushed = addScaled(at, FREE_SIDE(tool), length);
    return add(centre, turnIn(sub(pushed, centre), scale(tool.former, -1), tool.start, ask.angle));
  };
  const swung = moveAll(fed, swing);
  const wrapped = Array.from({ length: PER_PIECE }, (_, k) => {
    const t = ask.angle * (1 - (k + 1) / PER_PIECE);
    const spoke = turnIn(scale(tool.former, -1), scale(tool.former, -1), tool.start, t);
    return {
      s: fed.used + ask.angle * ask.radius * ((k + 1) / PER_PIECE),
      at: addScaled(centre, spoke, ask.radius),
    };
  });
  return { points: [...swung.points, ...wrapped], used: fed.used + length, tip: wrapped.at(-1)!.at };
}

/** The last straight, to the FREE end. */
export const finish = (tube: Tube, tool: Tool, length: number): Tube => withStraight(tube, tool, length);

/** What the words tell a person to do: which way and how far, in whose view. Read from the printed line alone. */
export interface Told {
  readonly what: 'tube' | 'bender' | 'nothing';
  readonly degrees: number;
  readonly way: 'away' | 'toward' | 'clockwise' | 'anticlockwise';
  readonly seen: 'standing' | 'from START';
}

/** Reads a printed turn line as a person would. */
export function readLine(line: string): Told {
  const [order = ''] = line.split(' (');
  const still = { what: 'nothing', degrees: 0, way: 'clockwise', seen: 'standing' } as const;
  if (order === 'no turn' || order === 'pencil line at the former; no turn') return still;
  const what = order.startsWith('TURN TUBE: ')
    ? 'tube'
    : order.startsWith('CARRY BENDER: ')
      ? 'bender'
      : null;
  if (what === null) throw new Error(`cannot read "${line}"`);
  if (order.endsWith('half turn, either way')) return { ...still, what, degrees: 180 };
  const number = Number(/([\d.]+)°/.exec(order)?.[1]);
  const half = order.includes('HALF TURN');
  const degrees = half ? 180 + (order.includes('short') ? -number : number) : number;
  const way = /top away/i.test(order)
    ? 'away'
    : /top toward/i.test(order)
      ? 'toward'
      : /ANTICLOCKWISE/.test(order)
        ? 'anticlockwise'
        : /CLOCKWISE/.test(order)
          ? 'clockwise'
          : null;
  if (way === null || !Number.isFinite(degrees)) throw new Error(`cannot read "${line}"`);
  return { what, degrees, way, seen: order.includes('seen from END') ? 'from START' : 'standing' };
}

/** Turns a vector as told, round the tube. A person at the side sees the top; others look along the tube. */
export function turnAsTold(v: Vec3, told: Told, tool: Tool, standing: Bench['stand']): Vec3 {
  const angle = (told.degrees * Math.PI) / 180;
  if (told.way === 'away') return turnIn(v, UP, [0, 1, 0], angle);
  if (told.way === 'toward') return turnIn(v, UP, [0, -1, 0], angle);
  const looking = told.seen === 'from START' || standing === 'at-start' ? FREE_SIDE(tool) : tool.start;
  const right = cross(looking, UP);
  return turnIn(v, UP, told.way === 'clockwise' ? right : scale(right, -1), angle);
}

/** One turn at the bench: the tube turns in the still tool, or the tool goes round the still tube. */
export function turn(
  state: { readonly tube: Tube; readonly tool: Tool },
  told: Told,
  standing: Bench['stand'],
): { readonly tube: Tube; readonly tool: Tool } {
  const { tube, tool } = state;
  const turned = (v: Vec3): Vec3 => turnAsTold(v, told, tool, standing);
  if (told.what === 'nothing') return state;
  // The free tube lies along the axis of the tool, which runs through the place of bending.
  if (told.what === 'tube') return { tool, tube: moveAll(tube, turned) };
  return { tube, tool: { ...tool, former: turned(tool.former) } };
}

/** The tool as this looker sees it. */
export function toolOf(start: keyof typeof SIDES, former: keyof typeof SIDES, swings: Tool['swings']): Tool {
  return { start: SIDES[start]!, former: SIDES[former]!, swings };
}
