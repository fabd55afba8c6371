import { type PaperName, papers } from './frame.ts';
import { textWidth } from './measure.ts';
import { pen } from './set.ts';
import type { GroupItem } from './types.ts';

const WORDS = 'DO NOT BEND';
const CAP = 25;
/** Along the diagonal of the table, degrees clockwise on the page. */
const TURN = -54;

/** Across the page in outline: nobody bends by this sheet, yet every figure on it can be read. */
export function stamp(paper: PaperName = 'a4'): GroupItem {
  const { width, height } = papers[paper];
  const longest = textWidth(WORDS, CAP, 'bold');
  const cap = (CAP * Math.min(longest, STAMP_LENGTH)) / longest;
  return {
    kind: 'group',
    at: [width / 2, height / 2],
    turn: TURN,
    name: 'do-not-bend',
    items: [
      {
        kind: 'text',
        x: 0,
        y: cap / 2,
        cap,
        weight: 'bold',
        anchor: 'middle',
        fill: null,
        outline: pen(0.5, 0.5),
        text: WORDS,
        zone: 'stamp',
        across: true,
      },
    ],
  };
}

const STAMP_LENGTH = 270;
