/** The paper of an aid and what is left of it between header and foot. Millimetres. */
import { type PaperName, papers } from './frame.ts';
import type { Box } from './types.ts';

/** The left margin is for the punch and holds the upright bar. */
export const MARGIN = { left: 18, right: 12, top: 10, bottom: 9 } as const;
const HEADER = 15;
export const NOTICE = 10;
export const BAR = 8;

export interface AidFrame {
  readonly width: number;
  readonly height: number;
  /** Between header and notices. */
  readonly body: Box;
}

export function aidFrame(paper: PaperName, way: 'portrait' | 'landscape'): AidFrame {
  const { width: short, height: long } = papers[paper];
  const [width, height] = way === 'portrait' ? [short, long] : [long, short];
  const y = MARGIN.top + HEADER + 1;
  const body: Box = {
    x: MARGIN.left,
    y,
    width: width - MARGIN.left - MARGIN.right,
    height: height - MARGIN.bottom - BAR - NOTICE - 1 - y,
  };
  return { width, height, body };
}
