/** The places on the paper: A4 portrait, a punch margin on the left. Millimetres from the top left. */
import type { Zone } from './types.ts';

export const PAPER = { width: 210, height: 297 } as const;
const LEFT = 18;
const RIGHT = 198;
export const WIDTH = RIGHT - LEFT;

const band = (name: string, top: number, bottom: number): Zone => ({
  name,
  x: LEFT,
  y: top,
  width: WIDTH,
  height: bottom - top,
});

export const bands = {
  header: band('header', 12, 34),
  before: band('before', 34, 62),
  stand: band('stand', 62, 84),
  table: band('table', 84, 222),
  after: band('after', 222, 258),
  cautions: band('cautions', 258, 280),
  foot: band('foot', 280, 288),
} as const;

/** Everything between the header and the foot, for a page of words alone. */
export const wordsBand = band('more', 42, 278);

export const ROWS_PER_PAGE = 7;
export const ROW_HEIGHT = 17;
export const TABLE_HEAD = 9;
