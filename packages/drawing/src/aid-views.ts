/** Full-size side views: lay the tube on the paper. */

import type { LengthStyle } from '@runback/job';
import type { AidBody, AidContext, Made } from './aid-context.ts';
import { aidHow } from './aid-frame.ts';
import { type AidFrame, aidFrame } from './aid-paper.ts';
import { type Shelved, shelves } from './aid-shelf.ts';
import { type Stretch, stretchesOf } from './aid-stretches.ts';
import { drawTile } from './aid-view-draw.ts';
import { type Laid, layOut } from './aid-view-fit.ts';
import { bendNames, fine } from './aid-words.ts';
import { cell, joined, type Part, zone } from './set.ts';
import type { Box } from './types.ts';
import { length } from './words.ts';

/** More paper than this for one stretch, or for all of them, is not laid out on a bench. Judgement, no source. */
const MOST_SHEETS = 9;
const MOST_IN_ALL = 10;
/** Room for the words at the top, the same on every sheet, so that sheets join. mm */
const WORDS = 27;
/** What is said under one of several views on a page. mm */
const CAPTION = { height: 9, width: 62 } as const;
const APART = 3;
/** A height under this is not worth a word. mm */
const SEEN = 3;

export function viewPages(context: AidContext): Made {
  const { plan, worked } = context;
  if (plan.rows.length === 0) return { bodies: [], why: 'side views: this line has no bend' };
  const frame = aidFrame(context.paper, 'portrait');
  const { body } = frame;
  const room: Box = { ...body, y: body.y + WORDS, height: body.height - WORDS - 2 };
  const whole = { width: room.width, height: room.height - CAPTION.height };
  const all = stretchesOf(context).map((stretch) => layOut(stretch, worked.line.tube.od, whole));
  const { drawn, left } = chosen(all, room.height);
  const notes =
    left.length === 0
      ? []
      : [
          `Not drawn, too much paper: ${left.map(({ stretch }) => bendNames(stretch.bends)).join('; ')}. Use the cards.`,
        ];
  if (drawn.length === 0) return { bodies: [], why: `side views: ${notes.join(' ')}`.replace(/\.$/u, '') };
  const sheet = { context, frame, room, notes };
  return {
    bodies: [
      ...together(drawn.filter(isSmall), sheet),
      ...drawn.filter((one) => !isSmall(one)).flatMap((one) => tiled(one, sheet)),
    ],
  };
}

interface Sheet {
  readonly context: AidContext;
  readonly frame: AidFrame;
  readonly room: Box;
  readonly notes: readonly string[];
}

const isSmall = ({ tiles }: Laid): boolean => tiles.length === 1;

/** Stretches of several bends first: single ones have their card. */
function chosen(
  all: readonly Laid[],
  tall: number,
): { readonly drawn: readonly Laid[]; readonly left: readonly Laid[] } {
  const wanted = [...all].sort(
    (a, b) => Number(b.stretch.bends.length > 1) - Number(a.stretch.bends.length > 1),
  );
  let sheets = 0;
  const drawn = new Set<Laid>();
  for (const laid of wanted) {
    const { length: tiles } = laid.tiles;
    // A view of one sheet shares it with others as low.
    const needs =
      tiles > 1 ? tiles : 1 / Math.max(1, Math.floor(tall / (laid.height + CAPTION.height + APART)));
    if (needs > MOST_SHEETS || sheets + needs > MOST_IN_ALL) continue;
    sheets += needs;
    drawn.add(laid);
  }
  return { drawn: all.filter((laid) => drawn.has(laid)), left: all.filter((laid) => !drawn.has(laid)) };
}

/** Views that fit on one sheet, as many on each as there is room for, each with its own words under it. */
function together(small: readonly Laid[], sheet: Sheet): AidBody[] {
  const pieces = small.map((laid) => ({
    laid,
    width: Math.max(laid.width, CAPTION.width),
    height: laid.height + CAPTION.height,
  }));
  return shelves(pieces, sheet.room, APART).map((page) =>
    bodyOf(
      page.map(({ piece }) => piece.laid),
      sheet,
      { words: [], part: joined(page.map((one) => viewWithCaption(one, sheet.context))) },
    ),
  );
}

function viewWithCaption(
  { piece, x, y }: Shelved<{ readonly laid: Laid; readonly width: number; readonly height: number }>,
  context: AidContext,
): Part {
  const { laid, width } = piece;
  const { stretch } = laid;
  const words = [`${bendNames(stretch.bends)}, at full size.`, ...lies(context, stretch)].join(' ');
  const view: Box = { x, y, width: laid.width, height: laid.height };
  return joined([
    drawTile(laid, laid.tiles[0]!, { context, room: view }),
    cell(
      zone(`view words ${stretch.bends.join('-')}`, [x, y + laid.height], [width, CAPTION.height]),
      words.charAt(0).toUpperCase() + words.slice(1),
      { cap: 2.3, minCap: 1.4, lines: 4, at: 'top', first: 'wrap' },
    ),
  ]);
}

/** A view over several sheets, one tile on each. */
function tiled(laid: Laid, sheet: Sheet): AidBody[] {
  const { tiles, stretch } = laid;
  return tiles.map((tile, i) =>
    bodyOf([laid], sheet, {
      words: [
        `Sheet ${i + 1} of ${tiles.length}: lay each cross on the cross with the same letters, hold them against the light, tape; then measure a length across the joint.`,
        ...lies(sheet.context, stretch),
      ],
      part: drawTile(laid, tile, { context: sheet.context, room: sheet.room }),
    }),
  );
}

function bodyOf(
  laid: readonly Laid[],
  { context, frame, notes }: Sheet,
  own: { readonly words: readonly string[]; readonly part: Part },
): AidBody {
  const said = aidHow({ ...frame.body, height: 2 * (WORDS - 2) }, [
    ...howWords(context.plan.unit),
    ...own.words,
    ...notes,
  ]);
  const bends = laid.flatMap(({ stretch }) => stretch.bends);
  return {
    title: laid.length > 1 ? 'SIDE VIEWS' : 'SIDE VIEW',
    detail: bendNames(bends),
    frame,
    part: joined([said.part, own.part]),
  };
}

const howWords = (unit: LengthStyle): readonly string[] => [
  'Lay the bent tube on its outline, START as marked. Outline: true OD, as designed; the rounded marks and dial move it by what the sheet says of its far end.',
  `Accuracy: the eye sees ${fine(1, unit)} beside the outline, which is 1° over ${fine(180 / Math.PI, unit)} (common practice, no source for the eye).`,
];

/** What is not in the plane: up, or hanging over the edge of the bench; what is not drawn. */
function lies({ plan }: AidContext, { above, below, more }: Stretch): string[] {
  const say = (mm: number): string => `${length(mm, plan.unit)} ${plan.unit}`;
  const cut = [
    more.before >= 1 ? `${say(more.before)} before` : '',
    more.after >= 1 ? `${say(more.after)} after` : '',
  ].filter((one) => one !== '');
  return [
    ...(above >= SEEN ? [`The rest stands up to ${say(above)} above the paper.`] : []),
    ...(below >= SEEN ? [`Part goes ${say(below)} BELOW it: over the edge of the bench.`] : []),
    ...(cut.length > 0 ? [`Straights drawn short by ${cut.join(', ')}.`] : []),
  ];
}
