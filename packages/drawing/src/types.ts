/**
 * The display list: a page as plain JSON data, in millimetres, y down from the top of the paper, angles in
 * degrees clockwise as seen on the page. A renderer only translates it; nothing is measured or decided there.
 */

/** Black 0 … white 1. The sheet knows no colour: it must survive a photocopier. */
export type Grey = number;

export type Point = readonly [number, number];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Stroke {
  readonly width: number;
  readonly grey: Grey;
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
}

/** What an item may carry besides its shape: a stable name, so that a reader can find it again. */
interface Named {
  readonly name?: string;
}

export interface LineItem extends Named {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
  readonly stroke: Stroke;
}

export interface RectItem extends Named, Box {
  readonly kind: 'rect';
  readonly fill?: Grey;
  readonly stroke?: Stroke;
  /** Radius of the corners. */
  readonly round?: number;
}

export interface CircleItem extends Named {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
  readonly fill?: Grey;
  readonly stroke?: Stroke;
}

/**
 * Move, line, cubic, circular arc (radius, large 0/1, clockwise on the page 0/1, end), close.
 * Absolute millimetres.
 */
export type PathStep =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['A', number, 0 | 1, 0 | 1, number, number]
  | readonly ['Z'];

export interface PathItem extends Named {
  readonly kind: 'path';
  readonly steps: readonly PathStep[];
  readonly fill?: Grey;
  readonly stroke?: Stroke;
}

export type Weight = 'regular' | 'bold';
export type Anchor = 'start' | 'middle' | 'end';

export interface TextItem extends Named {
  readonly kind: 'text';
  /** Where the anchor stands on the baseline. */
  readonly x: number;
  readonly y: number;
  /** Height of a capital letter, mm. */
  readonly cap: number;
  readonly weight: Weight;
  readonly anchor: Anchor;
  /** `null`: outline only. */
  readonly fill: Grey | null;
  readonly outline?: Stroke;
  readonly text: string;
  /** Name of the zone the text must stay in. */
  readonly zone: string;
  /** Printed across the others on purpose (a stamp): not held against overlapping. */
  readonly across?: true;
}

export interface GroupItem extends Named {
  readonly kind: 'group';
  /** Origin of the group on the page (or in the group around it). */
  readonly at: Point;
  /** Degrees, clockwise on the page, about `at`. */
  readonly turn?: number;
  /** In the group's own millimetres. */
  readonly clip?: Box;
  readonly items: readonly Item[];
}

export type Item = LineItem | RectItem | CircleItem | PathItem | TextItem | GroupItem;

/** A named rectangle of the page: the texts of that name stay inside it. */
export interface Zone extends Box {
  readonly name: string;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
  /** BCP 47 */
  readonly lang: string;
  readonly zones: readonly Zone[];
  readonly items: readonly Item[];
}
