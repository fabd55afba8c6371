/** Whether the fall is proven, in one sentence that can be signed for once it was measured on the machine. */
import { fitLines } from './fit.ts';
import { blockHeight } from './lines.ts';
import { textWidth } from './measure.ts';
import { type Block, paragraph } from './page-flow.ts';
import { noFallWords } from './page-words.ts';
import { cell, joined, line, type Part, pen, rect, zone } from './set.ts';
import type { SheetContext } from './sheet-context.ts';
import type { Paragraph } from './stack.ts';
import type { Box } from './types.ts';

const CAP = 2.8;
const PAD = 2;
/** Room over a line to write on. mm */
const WRITE = 9;
/** Shares of the width. */
const FIELDS = [
  ['Measured on the machine:', 0.46],
  ['name', 0.3],
  ['date', 0.24],
] as const;
const LINES = 12;

/** A fall that is there may still be less than was asked. */
const UNSIGNED = 'A check of this line fails: nothing to sign.';

/** A box: the sentence, and lines to sign when it holds; bold and without lines when it does not. */
export function slopeProofBlocks({ worked }: SheetContext, width: number): readonly Block[] {
  if (worked.slope === null) return [];
  const { holds, text } = worked.slope.proof;
  const sign = holds && worked.verdict !== 'fail';
  const said = !holds ? `NOT PROVEN. ${text}` : sign ? text : `${text} ${UNSIGNED}`;
  const style = { cap: CAP, lines: LINES, weight: 'bold', at: 'top' } as const;
  const set = fitLines(said, { ...style, width: width - 2 * PAD });
  // A sentence longer than the box may be stands whole above it.
  const whole = set.cut ? paragraph(said, width, { cap: CAP, weight: 'bold', keep: true }) : [];
  if (set.cut && !sign) return whole;
  const tall = set.cut ? 0 : blockHeight(set.lines) * CAP + SLACK;
  const height = 2 * PAD + tall + (sign ? WRITE : 0);
  return [
    ...whole,
    {
      height: height + 2,
      draw: ({ x, y }, name) =>
        joined([
          {
            zones: [],
            items: [{ ...rect({ x, y, width, height }, { stroke: pen(0.4) }), name: 'slope-proof' }],
          },
          set.cut
            ? joined([])
            : cell(zone(`${name} said`, [x + PAD, y + PAD], [width - 2 * PAD, tall]), said, style),
          sign
            ? toSign({ x: x + PAD, y: y + PAD + tall, width: width - 2 * PAD, height: WRITE }, name)
            : joined([]),
        ]),
    },
  ];
}

/** A place exactly as tall as its text may be short of it by the last bit of a sum. mm */
const SLACK = 0.01;

function toSign({ x, y, width, height }: Box, name: string): Part {
  let left = x;
  return joined(
    FIELDS.map(([label, share]) => {
      const wide = share * width;
      const from = left;
      left += wide;
      const own = zone(`${name} ${label}`, [from, y + height - 4], [wide - 2, 4]);
      const start = from + textWidth(label, CAP, 'regular') + 1.5;
      return joined([
        cell(own, label, { cap: CAP }),
        {
          zones: [],
          items: [line([start, y + height - 0.4], [from + wide - 3, y + height - 0.4], pen(0.25))],
        },
      ]);
    }),
  );
}

/** The short form for page 1: where to sign, that there is nothing to sign for, or that no fall is asked. */
export function slopeProofWords({ worked }: SheetContext): readonly Paragraph[] {
  if (worked.slope === null) return [{ text: noFallWords(worked.line) }];
  if (!worked.slope.proof.holds)
    return [{ text: 'FALL NOT PROVEN: see FALL, exact values.', weight: 'bold' }];
  return worked.verdict === 'fail'
    ? [{ text: `It falls along its whole length, see FALL, exact values. ${UNSIGNED}` }]
    : [{ text: 'Fall proven along the whole line: measure it, sign under FALL, exact values.', tick: true }];
}
