/** One angle card: its edge is the tube's own, two straight legs and the arc between them. */
import { sinCos } from '@runback/geometry';
import { formatDegrees, toRadians } from '@runback/job';
import type { AidContext } from './aid-context.ts';
import { bendNames } from './aid-words.ts';
import { cell, joined, type Part, pen } from './set.ts';
import type { PathStep, Point, Zone } from './types.ts';
import { nameWords, size } from './words.ts';

/** What a card is for. */
export interface CardKind {
  readonly angleDeg: number;
  readonly radius: number;
  readonly bends: readonly number[];
}

/** In the card's own mm: the arc's centre at the origin, the middle of the bend straight up from it. */
export interface Card {
  readonly kind: CardKind;
  /** A card inside the bend has the inner profile, one outside it the outer. */
  readonly side: 'inside' | 'outside';
  /** Of the edge: R − OD/2 or R + OD/2. */
  readonly radius: number;
  /** Half the bend, radians. */
  readonly half: number;
  /** The end of the right leg; the left one is its mirror. */
  readonly leg: Point;
  readonly width: number;
  readonly height: number;
  /** The origin, from the top left of the card. */
  readonly origin: Point;
}

/** A smaller inside leaves nothing to cut: then the card goes outside. mm */
const LEAST_INNER = 3;
/** Height of the words below the legs, or above the arc. mm */
const WORDS = 19;
const NARROW_WORDS = 30;
const NARROW = 34;

export function cardOf(kind: CardKind, { od, leg }: { readonly od: number; readonly leg: number }): Card {
  const inner = kind.radius - od / 2;
  const side = inner >= LEAST_INNER ? 'inside' : 'outside';
  const radius = side === 'inside' ? inner : kind.radius + od / 2;
  const half = toRadians(kind.angleDeg) / 2;
  const [sine, cosine] = sinCos(half);
  const end: Point = [radius * sine + leg * cosine, -radius * cosine + leg * sine];
  const width = 2 * end[0];
  const words = width < NARROW ? NARROW_WORDS : WORDS;
  const top = side === 'inside' ? -radius : -radius - words;
  const bottom = side === 'inside' ? end[1] + words : end[1];
  return { kind, side, radius, half, leg: end, width, height: bottom - top, origin: [end[0], -top] };
}

export function drawCard(card: Card, [x, y]: Point, context: AidContext): Part {
  const { radius, half, leg, width, height, side, kind } = card;
  const name = kind.bends.join('-');
  const [sine, cosine] = sinCos(half);
  const [cx, cy] = [x + card.origin[0], y + card.origin[1]];
  const edge: PathStep[] = [
    ['M', cx - leg[0], cy + leg[1]],
    ['L', cx - radius * sine, cy - radius * cosine],
    ['A', radius, 0, 1, cx + radius * sine, cy - radius * cosine],
    ['L', cx + leg[0], cy + leg[1]],
  ];
  const back = side === 'inside' ? y + height : y;
  const rest: PathStep[] = [
    ['M', cx + leg[0], cy + leg[1]],
    ['L', cx + leg[0], back],
    ['L', cx - leg[0], back],
    ['L', cx - leg[0], cy + leg[1]],
  ];
  const narrow = width < NARROW;
  const tall = (narrow ? NARROW_WORDS : WORDS) - 2;
  const place: Zone = {
    name: `card ${name}`,
    x: x + Math.min(2, width / 12),
    y: side === 'inside' ? y + height - tall - 1 : y + 1,
    width: width - 2 * Math.min(2, width / 12),
    height: tall,
  };
  return joined([
    {
      zones: [],
      items: [
        { kind: 'path', steps: rest, stroke: pen(0.2), name: `card-back-${name}` },
        { kind: 'path', steps: edge, stroke: pen(0.5), name: `card-${name}` },
      ],
    },
    ...words(card, place, context),
  ]);
}

/** The bend large, then what it is of and which side of the bend the card goes on. */
function words({ kind, side }: Card, place: Zone, { plan, worked }: AidContext): Part[] {
  const bend = formatDegrees(toRadians(kind.angleDeg));
  const opening = formatDegrees(toRadians(180 - kind.angleDeg));
  const { unit } = plan;
  const big: Zone = { ...place, height: place.height * 0.36 };
  const gap = 0.8;
  const small: Zone = {
    ...place,
    name: `${place.name} words`,
    y: place.y + big.height + gap,
    height: place.height - big.height - gap,
  };
  const text = `bend wanted ${bend}° · opening ${opening}° · R ${size(kind.radius, unit)} · OD ${size(worked.line.tube.od, unit)} · thick edge ${side.toUpperCase()} the bend · ${nameWords(worked.line)}`;
  const style = { minCap: 0.9, anchor: 'middle', first: 'wrap' } as const;
  return [
    cell(big, `${bendNames(kind.bends).toUpperCase()}: ${bend}°`, {
      ...style,
      cap: 4,
      lines: 3,
      weight: 'bold',
    }),
    cell(small, text, { ...style, cap: 2.4, lines: 12, at: 'top' }),
  ];
}
