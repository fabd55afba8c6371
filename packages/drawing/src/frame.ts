/** The places on the paper, upright, a punch margin on the left. Millimetres from the top left. */
import type { Zone } from './types.ts';

export type PaperName = 'a4' | 'letter';

/** A4 (ISO 216) and Letter (8 1/2 × 11 in), upright. mm */
export const papers: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

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

export const ROW_HEIGHT = 17;
export const TABLE_HEAD = 9;

export interface Frame {
  readonly bands: Readonly<
    Record<'header' | 'before' | 'stand' | 'table' | 'after' | 'cautions' | 'foot', Zone>
  >;
  /** Everything between the header and the foot, for a page of words alone. */
  readonly words: Zone;
  readonly rowsPerPage: number;
}

/** A shorter paper has a shorter table; what stands under it keeps its size and moves up. */
function frame(paper: PaperName): Frame {
  const lift = papers.a4.height - papers[paper].height;
  const bands = {
    header: band('header', 12, 34),
    before: band('before', 34, 62),
    stand: band('stand', 62, 84),
    table: band('table', 84, 222 - lift),
    after: band('after', 222 - lift, 258 - lift),
    cautions: band('cautions', 258 - lift, 280 - lift),
    foot: band('foot', 280 - lift, 288 - lift),
  };
  return {
    bands,
    words: band('more', 42, 278 - lift),
    rowsPerPage: Math.floor((bands.table.height - TABLE_HEAD) / ROW_HEIGHT),
  };
}

export const frames: Readonly<Record<PaperName, Frame>> = { a4: frame('a4'), letter: frame('letter') };

/** The bands that stand at the same place on every paper. */
export const { header: HEADER, before: BEFORE, stand: STAND } = frames.a4.bands;

/** Where columns begin and end does not hang on the paper. */
export const TABLE_LEFT = LEFT;
