/** One sheet of a side view: outline, centreline, bend numbers, and the crosses that join sheets. */
import type { AidContext } from './aid-context.ts';
import type { Spot } from './aid-place.ts';
import type { FlatPiece } from './aid-stretches.ts';
import { type Laid, OVERLAP, type Tile } from './aid-view-fit.ts';
import { type Crosses, viewLabels, zoneOf } from './aid-view-labels.ts';
import { line, type Part, pen, rect } from './set.ts';
import type { Box, Item, PathStep, Point, Stroke } from './types.ts';

export function drawTile(
  laid: Laid,
  tile: Tile,
  how: { readonly context: AidContext; readonly room: Box },
): Part {
  const { room, context } = how;
  const { od } = context.worked.line.tube;
  const { window } = tile;
  const name = laid.stretch.bends.join('-');
  const outline = laid.pieces.flatMap((piece) => outlineOf(piece, od, name));
  const crosses = crossesOf(laid, tile);
  const labels = viewLabels(laid, tile, { context, crosses });
  const at: Point = [room.x - window.x, room.y - window.y];
  const group: Item = {
    kind: 'group',
    at,
    clip: window,
    name: `side-view-${name}-${tile.column}-${tile.row}`,
    items: [...outline, ...ends(laid, od)],
  };
  // Words and crosses stand in the same mm but are never clipped.
  const over: Item = { kind: 'group', at, items: [...crosses.items, ...labels] };
  const edge =
    laid.tiles.length > 1
      ? [
          rect(
            { ...room, width: window.width, height: window.height },
            { stroke: { ...pen(0.15, 0.5), dash: [1, 2] } },
          ),
        ]
      : [];
  return { zones: [{ ...room, name: zoneOf(laid) }], items: [...edge, group, over] };
}

const THIN = pen(0.3);
const CENTRE: Stroke = { ...pen(0.15), dash: [6, 1.2, 1, 1.2] };

/** Both sides and the centreline of a piece, as lines and arcs of their own. */
function outlineOf(piece: FlatPiece, od: number, name: string): Item[] {
  if (piece.kind === 'straight') {
    if (!(piece.length > 0)) return [];
    const [nx, ny] = [
      -(piece.to[1] - piece.from[1]) / piece.length,
      (piece.to[0] - piece.from[0]) / piece.length,
    ];
    const side = (k: number): readonly [Point, Point] => [
      [piece.from[0] + k * nx, piece.from[1] + k * ny],
      [piece.to[0] + k * nx, piece.to[1] + k * ny],
    ];
    return [
      line(...side(od / 2), THIN),
      line(...side(-od / 2), THIN),
      { ...line(piece.from, piece.to, CENTRE), name: `view-straight-${name}` },
    ];
  }
  const arc = (radius: number, stroke: Stroke, called?: string): Item[] =>
    radius > 0
      ? [{ kind: 'path', steps: arcSteps(piece, radius), stroke, ...(called ? { name: called } : {}) }]
      : [];
  return [
    ...arc(piece.radius + od / 2, THIN, `view-outer-${piece.bend}`),
    ...arc(piece.radius - od / 2, THIN, `view-inner-${piece.bend}`),
    ...arc(piece.radius, CENTRE, `view-centre-${piece.bend}`),
  ];
}

/** In thirds, so that no arc is so large that its ends do not say which way it goes. */
function arcSteps(
  { from, centre, radius: own, angle, left }: FlatPiece & { kind: 'arc' },
  radius: number,
): PathStep[] {
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  // Left of travel is anticlockwise on paper, which is against the angle where y goes down.
  const way = left ? -1 : 1;
  const point = (share: number): Point => {
    if (share === 0)
      return [
        centre[0] + ((from[0] - centre[0]) * radius) / own,
        centre[1] + ((from[1] - centre[1]) * radius) / own,
      ];
    const a = start + way * angle * share;
    return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)];
  };
  return [
    ['M', ...point(0)],
    ...[1, 2, 3].map((i): PathStep => ['A', radius, 0, left ? 0 : 1, ...point(i / 3)]),
  ];
}

/** Lines across the tube at the tangent points and the ends of the drawing. */
function ends({ pieces }: Laid, od: number): Item[] {
  return pieces.flatMap((piece, i): Item[] => {
    if (piece.kind !== 'straight' || !(piece.length > 0)) return [];
    const [nx, ny] = [
      -(piece.to[1] - piece.from[1]) / piece.length,
      (piece.to[0] - piece.from[0]) / piece.length,
    ];
    const across = ([x, y]: Point, stroke: Stroke): Item =>
      line([x - (nx * od) / 2, y - (ny * od) / 2], [x + (nx * od) / 2, y + (ny * od) / 2], stroke);
    const edge = (end: boolean): Stroke => (end ? pen(0.5) : pen(0.15));
    return [across(piece.from, edge(i === 0)), across(piece.to, edge(i === pieces.length - 1))];
  });
}

/** Crosses in the strip two sheets share, at the same place of the drawing on both. */
function crossesOf(laid: Laid, { column, row, window }: Tile): Crosses {
  const has = (c: number, r: number): boolean =>
    laid.tiles.some((tile) => tile.column === c && tile.row === r);
  const spots: { readonly name: string; readonly at: Point }[] = [];
  const [stepX, stepY] = [window.width - OVERLAP, window.height - OVERLAP];
  for (const [c, r] of [
    [column - 1, row],
    [column, row],
  ] as const)
    if (has(c, r) && has(c + 1, r))
      for (const [i, share] of [0.2, 0.8].entries())
        spots.push({
          name: `${letter(c)}${r + 1}${'ab'[i]}`,
          at: [(c + 1) * stepX + OVERLAP / 2, window.y + share * window.height],
        });
  for (const [c, r] of [
    [column, row - 1],
    [column, row],
  ] as const)
    if (has(c, r) && has(c, r + 1))
      for (const [i, share] of [0.2, 0.8].entries())
        spots.push({
          name: `${letter(c)}${r + 1}${'cd'[i]}`,
          at: [window.x + share * window.width, (r + 1) * stepY + OVERLAP / 2],
        });
  const lines = spots.flatMap(({ at: [x, y] }): (readonly [Point, Point])[] => [
    [
      [x - 4, y],
      [x + 4, y],
    ],
    [
      [x, y - 4],
      [x, y + 4],
    ],
  ]);
  return {
    items: spots.flatMap(({ name, at: [x, y] }): Item[] => [
      { ...line([x - 4, y], [x + 4, y], pen(0.25)), name: `cross-${name}` },
      line([x, y - 4], [x, y + 4], pen(0.25)),
    ]),
    labels: spots.map(({ name, at: [x, y] }) => ({
      what: name,
      spots: (
        [
          [0.8, -0.9, 'start'],
          [-0.8, -0.9, 'end'],
          [0.8, 3, 'start'],
          [-0.8, 3, 'end'],
        ] as const
      ).map(
        ([dx, dy, anchor]): Spot => ({ text: name, cap: 2, weight: 'regular', x: x + dx, y: y + dy, anchor }),
      ),
    })),
    lines,
  };
}

const letter = (column: number): string => String.fromCharCode(65 + column);
