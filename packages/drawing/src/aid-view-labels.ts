/** Words on a side view: bend numbers, START and FREE, the names of the crosses. */
import type { AidContext } from './aid-context.ts';
import { type Label, placeLabels, type Spot } from './aid-place.ts';
import type { FlatPiece } from './aid-stretches.ts';
import { type Laid, samples, type Tile } from './aid-view-fit.ts';
import type { Box, Item, Point } from './types.ts';
import { degrees, size } from './words.ts';

/** The zone of a view's words. */
export const zoneOf = ({ stretch }: Laid): string => `view ${stretch.bends.join('-')}`;

export interface Crosses {
  readonly items: readonly Item[];
  readonly labels: readonly Label[];
  readonly lines: readonly (readonly [Point, Point])[];
}

/** Bend numbers outside their bends, START and FREE at their ends: on the sheet their place lies on. */
export function viewLabels(
  laid: Laid,
  { window }: Tile,
  { context, crosses }: { readonly context: AidContext; readonly crosses: Crosses },
): readonly Item[] {
  const { plan, worked } = context;
  const { od } = worked.line.tube;
  const centre = laid.pieces.flatMap((piece) => samples(piece, -1));
  const within = (box: Box): boolean =>
    box.x >= window.x &&
    box.y >= window.y &&
    box.x + box.width <= window.x + window.width &&
    box.y + box.height <= window.y + window.height;
  const offTube = (box: Box): boolean =>
    centre.every(
      ([x, y]) =>
        Math.hypot(
          Math.max(box.x - x, 0, x - box.x - box.width),
          Math.max(box.y - y, 0, y - box.y - box.height),
        ) >
        od / 2 + 0.4,
    );
  const here = ([x, y]: Point): boolean =>
    x >= window.x && x <= window.x + window.width && y >= window.y && y <= window.y + window.height;
  const wanted = [
    ...endLabels(laid, context),
    ...laid.pieces.flatMap((piece) => bendLabel(piece, plan.unit, od)),
  ].filter((one) => here(one.at));
  const first = placeLabels(crosses.labels, {
    zone: zoneOf(laid),
    boxes: [],
    lines: crosses.lines,
    allowed: within,
  });
  const room = { zone: zoneOf(laid), boxes: first.boxes, lines: crosses.lines };
  const clear = placeLabels(
    wanted.map((one) => one.label),
    { ...room, allowed: (box) => within(box) && offTube(box) },
  );
  const rest = wanted.map((one) => one.label).filter((one) => clear.left.includes(one.what));
  // Where there is no white left, a number on the tube is better than none.
  const over = placeLabels(rest, { ...room, boxes: [...room.boxes, ...clear.boxes], allowed: within });
  return [...first.items, ...clear.items, ...over.items];
}

interface Wanted {
  readonly at: Point;
  readonly label: Label;
}

function bendLabel(piece: FlatPiece, unit: AidContext['plan']['unit'], od: number): Wanted[] {
  if (piece.kind !== 'arc') return [];
  const all = samples(piece, -1);
  const middle = all[Math.floor(all.length / 2)]!;
  const out: Point = [
    (middle[0] - piece.centre[0]) / piece.radius,
    (middle[1] - piece.centre[1]) / piece.radius,
  ];
  const long = `B${piece.bend}: ${degrees(piece.angle)}° R ${size(piece.radius, unit)}`;
  return [
    {
      at: middle,
      label: around(middle, out, { od, texts: [long, `B${piece.bend}`], what: `B${piece.bend}` }),
    },
  ];
}

/** START and FREE, or the way there where the straight goes on. */
function endLabels({ pieces, stretch }: Laid, { plan, exact }: AidContext): Wanted[] {
  const [first, last] = [pieces[0]!, pieces.at(-1)!];
  const od = 0;
  const start = stretch.bends[0] === 1 && stretch.more.before === 0;
  const free = stretch.bends.at(-1) === exact.rows.length && stretch.more.after === 0;
  const named = (at: Point, other: Point, texts: readonly [string, string]): Wanted => {
    const long = Math.hypot(at[0] - other[0], at[1] - other[1]) || 1;
    const out: Point = [(at[0] - other[0]) / long, (at[1] - other[1]) / long];
    return { at, label: around(at, out, { od, texts, what: texts[0] }) };
  };
  return [
    named(first.from, first.to, [
      start ? `START, finished END ${plan.from}` : `to START (${plan.from})`,
      start ? `START ${plan.from}` : plan.from,
    ]),
    named(last.to, last.from, [
      free ? `finished END ${plan.free}` : `to FREE (${plan.free})`,
      free ? `END ${plan.free}` : plan.free,
    ]),
  ];
}

/** Places round a point, first straight out from it. */
function around(
  [x, y]: Point,
  [ox, oy]: Point,
  how: { readonly od: number; readonly texts: readonly string[]; readonly what: string },
): Label {
  const turns = [0, 40, -40, 80, -80, 120, -120, 180].map((d) => (d * Math.PI) / 180);
  const spots = how.texts.flatMap((text) =>
    [1.5, 5, 10, 18].flatMap((gap) =>
      turns.map((turn): Spot => {
        const [dx, dy] = [
          ox * Math.cos(turn) - oy * Math.sin(turn),
          ox * Math.sin(turn) + oy * Math.cos(turn),
        ];
        const reach = how.od / 2 + gap;
        const cap = 3;
        return {
          text,
          cap,
          weight: 'bold',
          x: x + dx * reach,
          y: y + dy * reach + (dy > 0.5 ? cap : dy < -0.5 ? 0 : cap / 2),
          anchor: dx > 0.35 ? 'start' : dx < -0.35 ? 'end' : 'middle',
        };
      }),
    ),
  );
  return { what: how.what, spots };
}
