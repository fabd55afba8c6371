/** The tube seen on its end: where the former is, where the pencil line was, where it is after the turn. */
import type { TurnWords } from '@runback/bending';
import type { Bench } from '@runback/job';
import { pen } from './set.ts';
import type { Item, PathItem, PathStep, Point } from './types.ts';

/** What decides how an end-on view is drawn. Degrees are clockwise on the page from straight up. */
export interface EndViewing {
  /** Whose end one looks from. */
  readonly from: 'START' | 'FREE';
  /** Where the former stands; 12 o'clock when the job does not say. */
  readonly former: number;
  /** Where the operator stands, or null when they stand in line with the tube or nobody said. */
  readonly you: number | null;
  readonly moves: Bench['moves'];
}

const DEGREES = 180 / Math.PI;

/**
 * How the end of the tube is looked at on this bench. Looking from START along the tube with START on the
 * operator's left, the operator and the near side are to the right; with START on the right, to the left. Behind
 * the stock one looks from FREE, and the sides change over. Without a bench, or with a bender that is carried
 * round, one looks from START and the first bend is at 12 o'clock.
 */
export function endViewing(bench: Bench | null): EndViewing {
  if (!bench || bench.moves === 'bender')
    return { from: 'START', former: 0, you: null, moves: bench?.moves ?? 'tube' };
  const from = bench.stand === 'behind-free' ? 'FREE' : 'START';
  const near = (bench.startOn === 'left') === (from === 'START') ? 90 : 270;
  const former = { above: 0, below: 180, near, far: 360 - near }[bench.former];
  return { from, former, you: bench.stand === 'side' ? near : null, moves: bench.moves };
}

/** One turn as the end-on view shows it. */
export interface EndViewTurn {
  /** The pencil line before and after, radians clockwise seen from START, 0 at the former. */
  readonly pencil: { readonly before: number; readonly after: number };
  /** Degrees clockwise as the view is drawn, as the words say it; `both` for a half turn, 0 for none. */
  readonly by: number | 'both';
}

/**
 * Degrees clockwise on the page that the words of a turn ask for: away from somebody at the side is anticlockwise
 * seen from START when START is on the left. `both` when either way will do.
 */
export function drawnTurn(words: TurnWords, bench: Bench | null): number | 'both' {
  if (words.direction === null) return words.goDeg === 0 ? 0 : 'both';
  if (words.direction === 'clockwise') return words.goDeg;
  if (words.direction === 'anticlockwise') return -words.goDeg;
  const awayClockwise = bench?.startOn === 'right';
  return (words.direction === 'away') === awayClockwise ? words.goDeg : -words.goDeg;
}

/** The end-on view round `middle`, `size` mm across: former, pencil line before (grey) and after, the way to turn. */
export function endView(
  middle: Point,
  size: number,
  how: { viewing: EndViewing; turn: EndViewTurn },
): Item[] {
  const { viewing, turn } = how;
  const r = size / 3;
  const centre = balanced(middle, viewing, r);
  const ring: Item = { kind: 'circle', centre, radius: r, fill: 1, stroke: pen(0.35) };
  const [before, after] = hours(viewing, turn);
  const still = turn.by === 0;
  const moving = viewing.moves === 'tube' ? pencil : (c: Point, _r: number, p: Spot) => [former(c, r, p)];
  const fixed: Item[] =
    viewing.moves === 'tube'
      ? [former(centre, r, { at: viewing.former, grey: 0.72 })]
      : pencil(centre, r, { at: 0, grey: 0 });
  const ghost = still ? [] : moving(centre, r, { at: before, grey: viewing.moves === 'tube' ? 0.6 : 0.93 });
  const moved = moving(centre, r, { at: after, grey: viewing.moves === 'tube' ? 0 : 0.72 });
  const round =
    viewing.moves === 'tube' ? [...fixed, ring, ...ghost, ...moved] : [...ghost, ...moved, ring, ...fixed];
  const turning =
    turn.by === 0
      ? []
      : turn.by === 'both'
        ? either(centre, r * 0.56, after)
        : arrow(centre, r * 0.56, { to: after, by: turn.by });
  return [
    ...round,
    ...turning,
    ...(viewing.you === null ? [] : person(centre, personOut(viewing, r), viewing.you)),
  ];
}

/** Moves the tube aside so that tube, former and operator together stand in the middle. */
function balanced([x, y]: Point, viewing: EndViewing, r: number): Point {
  if (viewing.you === null) return [x, y];
  const side = Math.sin(viewing.you / DEGREES);
  const far = viewing.former === (viewing.you + 180) % 360 ? r * FORMER_OUT : r;
  return [x - (side * (personOut(viewing, r) + 1.25 - far)) / 2, y];
}

interface Spot {
  readonly at: number;
  readonly grey: number;
}

/**
 * Where what moves stands before and after, degrees clockwise on the page. In a still tool that is the pencil
 * line; a bender carried round a still tube moves, and is as far from the pencil line the other way.
 */
export function hours(viewing: EndViewing, { pencil: line }: EndViewTurn): readonly [number, number] {
  const sense = (viewing.from === 'START' ? 1 : -1) * (viewing.moves === 'tube' ? 1 : -1);
  return [viewing.former + sense * line.before * DEGREES, viewing.former + sense * line.after * DEGREES];
}

/** The point `r` from the centre at so many degrees clockwise from up. */
export function at(centre: Point, r: number, degrees: number): Point {
  const a = degrees / DEGREES;
  return [centre[0] + r * Math.sin(a), centre[1] - r * Math.cos(a)];
}

/** Half a turn, either way: a bow with a head on both ends. */
function either(centre: Point, r: number, after: number): Item[] {
  return [
    ...arrow(centre, r, { to: after - 30, by: 120 }),
    ...arrow(centre, r, { to: after + 150, by: -LEAST_TAIL }),
  ];
}

/** Half the former's width as seen on the end, degrees. */
const FORMER_HALF = 42;
/** Its outer edge, in radii of the tube. */
const FORMER_OUT = 1.45;

/** The former: the block that hugs one side of the tube. */
export function former(centre: Point, r: number, how: { at: number; grey: number }): PathItem {
  const [inner, outer] = [r * 1.1, r * FORMER_OUT];
  const [left, right] = [how.at - FORMER_HALF, how.at + FORMER_HALF];
  const steps: PathStep[] = [
    ['M', ...at(centre, inner, left)],
    ['A', inner, 0, 1, ...at(centre, inner, right)],
    ['L', ...at(centre, outer, right)],
    ['A', outer, 0, 0, ...at(centre, outer, left)],
    ['Z'],
  ];
  return { kind: 'path', steps, fill: how.grey, stroke: pen(0.2) };
}

/** A pencil line seen on its end: a spoke with a dot on the rim. */
export function pencil(centre: Point, r: number, how: { at: number; grey: number }): Item[] {
  const rim = at(centre, r, how.at);
  return [
    {
      kind: 'line',
      from: at(centre, r * 0.74, how.at),
      to: rim,
      stroke: { width: how.grey === 0 ? 0.7 : 0.5, grey: how.grey },
    },
    { kind: 'circle', centre: rim, radius: how.grey === 0 ? 0.75 : 0.6, fill: how.grey },
  ];
}

/** The tail is drawn at least this long, degrees: a small turn must still show which way. */
const LEAST_TAIL = 70;
/** The head takes this much of the arc, degrees. */
const HEAD = 34;

/** A fat arrow ending where the turn ends. */
export function arrow(centre: Point, r: number, how: { to: number; by: number }): Item[] {
  const way = Math.sign(how.by);
  const tail = how.to - way * Math.max(Math.abs(how.by), LEAST_TAIL);
  const neck = how.to - way * HEAD;
  const large = Math.abs(neck - tail) > 180 ? 1 : 0;
  const shaft: PathItem = {
    kind: 'path',
    steps: [
      ['M', ...at(centre, r, tail)],
      ['A', r, large, way > 0 ? 1 : 0, ...at(centre, r, neck)],
    ],
    stroke: pen(0.75),
  };
  const head: PathItem = {
    kind: 'path',
    steps: [
      ['M', ...at(centre, r, how.to)],
      ['L', ...at(centre, r * 1.36, neck - way * 4)],
      ['L', ...at(centre, r * 0.64, neck - way * 4)],
      ['Z'],
    ],
    fill: 0,
  };
  return [shaft, head];
}

/** How far from the centre the operator is drawn: beyond the former when it is on the same side. */
export const personOut = (viewing: EndViewing, r: number): number =>
  viewing.former === viewing.you ? r * FORMER_OUT + 1.9 : r + 2.6;

/** The operator beside the tube, head and shoulders, so that "toward you" has a side. */
export function person(centre: Point, out: number, side: number): Item[] {
  const x = centre[0] + Math.sin(side / DEGREES) * out;
  const y = centre[1] - 0.6;
  return [
    { kind: 'circle', centre: [x, y - 1.1], radius: 0.8, fill: 0 },
    {
      kind: 'path',
      fill: 0,
      steps: [
        ['M', x - 1.25, y + 2.4],
        ['C', x - 1.25, y - 0.3, x + 1.25, y - 0.3, x + 1.25, y + 2.4],
        ['Z'],
      ],
    },
  ];
}
