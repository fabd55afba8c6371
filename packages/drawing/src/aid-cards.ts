/** Angle cards: one for each bend that differs, with the finished bend's own profile, to lay against it. */
import type { BenchRow } from '@runback/bending';
import { toDegrees, toRadians } from '@runback/job';
import { type Card, cardOf, drawCard } from './aid-card.ts';
import type { AidBody, AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { aidFrame } from './aid-paper.ts';
import { shelves } from './aid-shelf.ts';
import { bendNames, fine } from './aid-words.ts';
import { joined, type Part } from './set.ts';

/** Under this a card lies as well on a bend twice as large. Judgement, no source. Degrees. */
const LEAST_DEG = 5;
/** Over this the card would not come out of the bend again. Degrees. */
const MOST_DEG = 180;
/** Leg along the straights beside the bend, where they are so long. mm */
const LEG = 30;
const APART = 5;

/** Bends that come out alike: to half degrees, on one radius. */
export interface Kind {
  readonly angleDeg: number;
  readonly radius: number;
  /** Working numbers. */
  readonly bends: readonly number[];
  /** The shortest straight beside any of them. mm */
  readonly straight: number;
}

export function cardPages(context: AidContext): Made {
  const { plan, worked } = context;
  if (plan.rows.length === 0) return { bodies: [], why: 'angle cards: this line has no bend' };
  const frame = aidFrame(context.paper, 'portrait');
  const kinds = kindsOf(context);
  const notes = [...kinds.flatMap(refusal)];
  const cards = kinds
    .filter((kind) => refusal(kind).length === 0)
    .map((kind) => cardOf(kind, { od: worked.line.tube.od, leg: Math.min(LEG, kind.straight) }));
  const room = aidHow(
    frame.body,
    howWords(context, [...notes, ...cards.filter((c) => c.width > frame.body.width).map(tooLarge)]),
  ).rest;
  const fits = cards.filter((card) => card.width <= room.width && card.height <= room.height);
  const large = cards.filter((card) => !fits.includes(card)).map(tooLarge);
  if (fits.length === 0)
    return { bodies: [], why: `angle cards: ${[...notes, ...large].join(' ')}`.replace(/\.$/u, '') };
  const head = aidHow(frame.body, howWords(context, [...notes, ...large]));
  const pages = shelves(fits, head.rest, APART);
  return {
    bodies: pages.map(
      (page): AidBody => ({
        title: 'ANGLE CARDS',
        frame,
        part: joined([head.part, ...page.map(({ piece, x, y }): Part => drawCard(piece, [x, y], context))]),
      }),
    ),
  };
}

function kindsOf({ plan }: AidContext): readonly Kind[] {
  const kinds = new Map<string, Kind>();
  for (const [i, row] of plan.rows.entries()) {
    const angleDeg = Math.round(toDegrees(row.exact.angle) * 2) / 2;
    const key = `${angleDeg} ${row.radius}`;
    const before = kinds.get(key);
    const straight = Math.min(
      row.exact.straightBefore,
      after(plan.rows, i, plan.lastStraight),
      before?.straight ?? LEG,
    );
    kinds.set(key, { angleDeg, radius: row.radius, straight, bends: [...(before?.bends ?? []), row.bend] });
  }
  return [...kinds.values()];
}

const after = (rows: readonly BenchRow[], i: number, last: number): number =>
  rows[i + 1]?.exact.straightBefore ?? last;

function refusal({ angleDeg, bends }: Kind): readonly string[] {
  if (angleDeg < LEAST_DEG)
    return [`No card for ${bendNames(bends)}: under ${LEAST_DEG}° a card tells nothing.`];
  if (angleDeg > MOST_DEG)
    return [`No card for ${bendNames(bends)}: over ${MOST_DEG}° it cannot be laid in.`];
  return [];
}

const tooLarge = ({ kind }: Card): string => `No card for ${bendNames(kind.bends)}: larger than the page.`;

function howWords({ plan }: AidContext, notes: readonly string[]): string[] {
  return [
    'Cut on the thick line exactly, the rest roughly. Check with the tube out of the tool: only then has it sprung back.',
    'Lay the thick edge on the tube, on the side of the bend the card names, flat in the plane of the bend; either face up.',
    'Card INSIDE: light at the leg ends, bent too little; light in the middle, too much. Card OUTSIDE: the other way round.',
    `Accuracy: ±1° with a gap one can see (common practice, no source); 1° opens ${fine(LEG * toRadians(1), plan.unit)} at the end of a ${fine(LEG, plan.unit)} leg.`,
    ...notes,
  ];
}
