/** What the run profile is drawn from and what the drawing is, in CSS pixels. Millimetres and radians where not. */
import type { Bend, LengthStyle, LineProfile, ProfileFall, Vec3, Verdict, WorkedLine } from 'runback';
import type { ColourMode, PocketsNow, Selection } from '../store/types.ts';

/** A pencil mark: where it lies on the finished line and what the tape reads there. */
export interface PencilMark {
  readonly at: number;
  /** Index of its bend from end A. */
  readonly bend: number;
  /** In the length style, without the unit. */
  readonly reads: string;
}

export interface ProfileInput {
  /** A line that can exist. */
  readonly worked: WorkedLine;
  readonly profile: LineProfile;
  /** One for each place of `profile`. */
  readonly falls: readonly ProfileFall[];
  /** Up in body axes, as tipped now. */
  readonly up: Vec3;
  /** What stays as it is tipped now. */
  readonly pockets: PocketsNow | null;
  readonly marks: readonly PencilMark[];
  readonly colour: ColourMode;
  readonly style: LengthStyle;
  readonly selection: Selection | null;
  readonly size: Size;
}

/** Pixels. `text` is the size of ordinary lettering. */
export interface Size {
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a part is coloured by: a verdict, or nothing judged. */
export type Tone = Verdict | 'plain';
export type Ink = 'ink' | 'muted' | 'select' | 'paper' | Verdict;

/** A piece of lettering: `box` is what it may cover, with the sign drawn beside it. */
export interface Label {
  readonly key: string;
  readonly text: string;
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly size: number;
  readonly ink: Ink;
  readonly bold: boolean;
  /** Stands on hatching or a line, and is set off from it. */
  readonly halo: boolean;
  readonly box: Box;
}

/** The rows of the drawing from the top down. A row that finds no room is `null`. */
export interface Rows {
  readonly head: Row;
  readonly bends: Row;
  readonly plot: Row;
  readonly straights: Row | null;
  readonly marks: Row | null;
  readonly lane: Row | null;
  readonly axis: Row;
}

export interface Row {
  readonly top: number;
  readonly bottom: number;
}

/** Where things are drawn. `x` and `y` turn mm along the line and mm of height into pixels. */
export interface Frame {
  readonly size: Size;
  readonly rows: Rows;
  /** Pixels of end A and end Z. */
  readonly left: number;
  readonly right: number;
  readonly length: number;
  /** Pixels per mm along the line. */
  readonly perMm: number;
  /** Heights are drawn so many times as large as lengths. */
  readonly exaggeration: number;
  /** Lowest and highest height on the line, mm. */
  readonly low: number;
  readonly high: number;
  /** The line across the plot that the lowest place stands on. */
  readonly ground: number;
}

/** A point of the profile's line in pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A part of the profile of one colour. */
export interface Stretch {
  readonly tone: Tone;
  readonly area: string;
  readonly line: string;
}

export interface Tick {
  readonly at: number;
  /** Lettering, or null for a bare tick. */
  readonly text: string | null;
}

export interface BendBand {
  /** From end A, from 0. */
  readonly index: number;
  readonly bend: Bend;
  readonly x: number;
  readonly width: number;
  readonly selected: boolean;
  /** What a pointer meets: never narrower than it need be. */
  readonly hit: Row & { readonly x: number; readonly width: number };
  /** From the lettering to the band, where they are apart. */
  readonly leader: string | null;
  readonly dial: Dial | null;
}

/** The clock face of a turn, seen from end A: the last bend left at 12, this one leaves at `turn`. */
export interface Dial extends Spot {
  readonly radius: number;
  readonly turn: number;
}

/** The thin measured line under a straight, broken where its length is written. */
export interface StraightRule {
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  /** `null` where nothing is written; the whole rule where its length covers it. */
  readonly gap: readonly [number, number] | null;
  readonly selected: boolean;
}

/** A pencil mark or a clip: on the tube, and its sign in the row of marks where there is room. */
export interface Seat extends Spot {
  readonly kind: 'mark' | 'clip';
  readonly at: number;
  /** Of the line there on the screen, degrees. */
  readonly lean: number;
  readonly sign: Spot | null;
  readonly selected: boolean;
}

/** A stretch of the bore that holds liquid, or air. */
export interface Pocket extends Spot {
  readonly kind: 'liquid' | 'air';
  /** Where it is deepest. */
  readonly at: number;
  /** mm³ */
  readonly volume: number;
  readonly fill: PocketFill;
  /** Of the sign: as many times the plain one. */
  readonly times: number;
  /** Indices of the findings that tell of it, at rest. */
  readonly findings: readonly number[];
  readonly selected: boolean;
}

/** The filled part of the bore; a strip along it where the bore is too thin in the drawing. */
export interface PocketFill {
  readonly area: string;
  /** The surface, level; empty for a strip. */
  readonly surface: string;
}

/** A little flag for findings of one place. */
export interface Flag extends Spot {
  readonly verdict: Verdict;
  /** Where its stem stands. */
  readonly foot: Spot;
  readonly findings: readonly number[];
  readonly selected: boolean;
}

export interface EndTag extends Spot {
  readonly name: 'A' | 'Z';
  /** The drop of an end that drains, or null. */
  readonly drop: Spot | null;
}

/** Which way liquid runs. */
export interface Flow extends Spot {
  readonly to: 'A' | 'Z';
  readonly ink: Ink;
}

/** The fall that is wanted, drawn to the scale of the profile at the place that falls least. */
export interface LimitTriangle {
  readonly slope: string;
  readonly level: string;
}

export interface Lane {
  /** The line where just the distance wanted is kept. */
  readonly zero: number;
  readonly clear: string;
  readonly clearLine: string;
  readonly short: string;
  readonly shortLine: string;
  /** Where one nearest thing gives way to the next. */
  readonly changes: readonly number[];
  /** Parts where the selected surrounding is the nearest. */
  readonly chosen: readonly Row[];
  readonly tightest: Spot | null;
}

export interface ProfilePicture {
  readonly frame: Frame;
  readonly spots: readonly Spot[];
  readonly stretches: readonly Stretch[];
  readonly bands: readonly BendBand[];
  readonly along: readonly Tick[];
  readonly heights: readonly Tick[];
  /** Where the height is that of the drain end. */
  readonly datum: number;
  readonly rules: readonly StraightRule[];
  readonly seats: readonly Seat[];
  readonly pockets: readonly Pocket[];
  readonly flags: readonly Flag[];
  readonly ends: readonly EndTag[];
  readonly flows: readonly Flow[];
  readonly limit: LimitTriangle | null;
  readonly lane: Lane | null;
  /** What is selected, unless it is a bend: from and to, pixels. */
  readonly chosen: readonly [number, number] | null;
  readonly labels: readonly Label[];
}
