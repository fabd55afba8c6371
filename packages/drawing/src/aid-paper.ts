/** The paper of an aid and what is left of it between header and foot. Millimetres. */
import type { Box, Point } from './types.ts';

export type Paper = 'a4' | 'letter';

/** Short and long side, mm. */
const SHEETS: Readonly<Record<Paper, Point>> = { a4: [210, 297], letter: [215.9, 279.4] };
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

export function aidFrame(paper: Paper, way: 'portrait' | 'landscape'): AidFrame {
  const [short, long] = SHEETS[paper];
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
