/** Blocks under each other over as many pages as they need: nothing is clipped, nothing covers its neighbour. */
import { blockHeight, broken, evened, type Line, shortened, wordsOf } from './lines.ts';
import { CAP_EM } from './measure.ts';
import { joined, type Part, typeset, zone } from './set.ts';
import type { Box, Weight, Zone } from './types.ts';

/** Something that is never split over two pages. */
export interface Block {
  /** mm, the air under it included. */
  readonly height: number;
  /** Stays on the page of the block behind it: a heading never ends a page. */
  readonly keep?: boolean;
  /** Drawn again on top of a page that goes on with the same list: the head of a table. */
  readonly again?: Block;
  readonly draw: (place: Box, name: string) => Part;
}

/** The blocks, page by page. A block taller than a page is given a page of its own. */
export function flow(blocks: readonly Block[], place: Zone): readonly Part[] {
  const pages: Part[][] = [[]];
  let y = place.y;
  const bottom = place.y + place.height;
  const put = (block: Block, name: string): void => {
    pages.at(-1)?.push(block.draw({ x: place.x, y, width: place.width, height: block.height }, name));
    y += block.height;
  };
  blocks.forEach((block, i) => {
    const needed = heightWithNext(blocks, i);
    if (y + needed > bottom + SLACK && y > place.y) {
      pages.push([]);
      y = place.y;
      if (block.again) put(block.again, `flow again ${pages.length}`);
    }
    put(block, `flow ${i + 1}`);
  });
  return pages.map(joined);
}

/** Sums of heights are off by rounding; no page overflows by a thousandth of a millimetre. */
const SLACK = 0.001;

function heightWithNext(blocks: readonly Block[], i: number): number {
  const block = blocks[i]!;
  return block.height + (block.keep && i + 1 < blocks.length ? heightWithNext(blocks, i + 1) : 0);
}

export interface ParagraphStyle {
  readonly cap: number;
  readonly weight?: Weight;
  /** mm the whole of it stands in from the left. */
  readonly indent?: number;
  /** Air under it, in cap heights. Default 0.7. */
  readonly gap?: number;
  readonly keep?: boolean;
  readonly again?: Block;
}

/** A paragraph of so many lines at the most goes over the page in one piece. */
const LINES_TOGETHER = 12;

/** A paragraph of any length, `width` mm wide, in pieces that each stay on one page. */
export function paragraph(text: string, width: number, style: ParagraphStyle): readonly Block[] {
  const { cap, weight = 'regular', indent = 0, gap = 0.7, keep = false, again } = style;
  const words = wordsOf(text, weight);
  if (words.words.every((word) => word.text === '')) return [];
  const widthEm = ((width - indent) * CAP_EM) / cap;
  const lines = broken(words, widthEm, { anywhere: true }).map((line) =>
    evened(shortened(line, weight, { widthEm })),
  );
  const pieces: Block[] = [];
  for (let i = 0; i < lines.length; i += LINES_TOGETHER) {
    const piece = lines.slice(i, i + LINES_TOGETHER);
    const last = i + LINES_TOGETHER >= lines.length;
    pieces.push({
      height: blockHeight(piece) * cap + (last ? gap : 0.45) * cap,
      keep: keep && last,
      ...(again ? { again } : {}),
      draw: drawLines(piece, { cap, weight, indent }),
    });
  }
  return pieces;
}

function drawLines(
  lines: readonly Line[],
  { cap, weight, indent }: { readonly cap: number; readonly weight: Weight; readonly indent: number },
): Block['draw'] {
  return ({ x, y, width }, name) => {
    const height = blockHeight(lines) * cap;
    const own = zone(name, [x + indent, y], [width - indent, height]);
    const how = { x: own.x, y: y + lines[0]!.up * cap, cap, weight, anchor: 'start', fill: 0 } as const;
    return { zones: [own], items: typeset(lines, { ...how, zone: name }) };
  };
}

/** Empty space; at the top of a page it costs as much as anywhere. */
export const space = (height: number): Block => ({
  height,
  keep: true,
  draw: () => ({ zones: [], items: [] }),
});

export interface Heading {
  readonly text: string;
  readonly width: number;
  readonly again?: Block;
}

/** A heading with a rule over it, kept with what follows. */
export function heading({ text, width, again }: Heading): readonly Block[] {
  const rule: Block = {
    height: 1.8,
    keep: true,
    draw: ({ x, y }) => ({
      zones: [],
      items: [
        { kind: 'line', from: [x, y + 0.4], to: [x + width, y + 0.4], stroke: { width: 0.6, grey: 0 } },
      ],
    }),
  };
  return [
    rule,
    ...paragraph(text, width, { cap: 3, weight: 'bold', keep: true, ...(again ? { again } : {}) }),
  ];
}
