/** The bend plan: what the bench needs. Millimetres and radians; a name with `Deg` is in degrees. */
import type { Centreline, Vec3 } from '@runback/geometry';
import type { Bench, Die, LengthStyle, Line } from '@runback/job';

export type EndName = 'A' | 'Z';

/** One bend, numbered in the order it is made. */
export interface PlanRow {
  /** 1, 2, … in working order. */
  readonly bend: number;
  /** 1, 2, … counted from end A. */
  readonly bendFromA: number;
  /** Indices of the job's points (0 = end A). */
  readonly points: readonly number[];
  /** Straight before it, tangent to tangent. */
  readonly straightBefore: number;
  /** Right-hand about travel START→FREE; the same number from either end. `null` for the first bend. */
  readonly turn: number | null;
  /** Sum of the turns so far, [0, 2π). */
  readonly clock: number;
  readonly angle: number;
  readonly radius: number;
  /** Along the finished centreline from the START end. */
  readonly start: number;
  readonly end: number;
  /** Pencil mark from the sawn START end, before forming and trimming it. */
  readonly mark: number;
  /** The same mark from the finished START end. */
  readonly markFinished: number;
  /** The mark for bend-and-measure, see `measuredMark`. */
  readonly measured: MeasuredMark;
  /** What to set on the dial, radians; equals `angle` when not calibrated. */
  readonly dial: number;
  readonly calibrated: boolean;
  readonly die: Die | null;
}

/** So far along the straight from the finished START end, the back of the last bend, or its corner. */
export interface MeasuredMark {
  readonly from: 'end' | 'back' | 'corner';
  readonly distance: number;
}

export interface BendPlan {
  /** The end worked from: START. The other is FREE. */
  readonly from: EndName;
  readonly rows: readonly PlanRow[];
  readonly lastStraight: number;
  readonly developedLength: number;
  /** developedLength − stretch + spare and flare use at both ends. */
  readonly cutLength: number;
  /** Total growth of the tube over all bends. */
  readonly stretch: number;
  /** Spare plus flare use at START and at FREE. */
  readonly startExtra: number;
  readonly freeExtra: number;
}

export type PlanLine = Line;

/** A side as the person at the tool sees it, or as seen from START with the former at 12 o'clock. */
export type Side = 'above' | 'below' | 'away' | 'toward' | 'left' | 'right';

/** What the operator does to get into the next plane of bend, in words for where they stand. */
export interface TurnWords {
  /** Rounded turn, right-hand about travel START→FREE, (−180, 180]; `null` for the first bend. Never printed bare. */
  readonly turnDeg: number | null;
  /** `near-half`: over 150 and not 180. */
  readonly kind: 'first' | 'none' | 'turn' | 'near-half' | 'half';
  /** What is turned. */
  readonly moves: 'tube' | 'bender';
  /**
   * Who looks: from the side with the tube across; along it from FREE or from START; or, where the job does not
   * say how the operator stands or the bender is carried round, as seen from START.
   */
  readonly view: 'side' | 'behind-free' | 'at-start' | 'start';
  /** The way to turn as `view` says it, to go `goDeg`; `null` when there is nothing to choose. */
  readonly direction: 'away' | 'toward' | 'clockwise' | 'anticlockwise' | null;
  /** How far to turn that way, 0 to under 210. A half turn "25° past" is 205. */
  readonly goDeg: number;
  /** `TURN TUBE: TOP AWAY FROM YOU` */
  readonly head: string;
  /** `40°`; `half turn, either way`; `25° short, top AWAY` */
  readonly amount: string;
  /** What to see when it is right: `finished leg drops`. */
  readonly confirmation: string | null;
  /** The same movement (of what `moves`) seen from START; `null` when there is none or either way will do. */
  readonly seenFromStart: 'clockwise' | 'anticlockwise' | null;
  /** Where the next bend leaves, seen from START: so many degrees clockwise of the last, 0 ≤ x < 360. */
  readonly nextLeavesDeg: number;
  /** True for a turn near half: the sheet may offer it flat. */
  readonly offerFlat: boolean;
  /** Why the words are as seen from START, or null. */
  readonly note: string | null;
  /** All in one line, as the sheet and the terminal say it. */
  readonly line: string;
}

/** Which ways of checking a turn serve and what they read. */
export interface TurnChecks {
  /** Gauge on a flag clamped in the plane of the last bend, zeroed before the turn: |turn|, radians. */
  readonly flag: number;
  readonly flagWords: string;
  /** Gauge laid on the last leg with the clamped straight level; `null` when it does not serve. */
  readonly gauge: {
    /** Unsigned reading from level, radians. */
    readonly reading: number;
    /** The other turns that read the same, radians in (−π, π], this one left out. */
    readonly confusedWith: readonly number[];
    readonly words: string;
  } | null;
  /** The far end of the last leg over the tool plane; `null` when it does not serve. */
  readonly height: {
    /** mm, positive on the side `n = travel × toward-the-former` points to: seen from START with the former at 12, the right. */
    readonly over: number;
    /** Where it lies as the operator sees it; `null` when in the plane. */
    readonly side: Side | null;
    readonly words: string;
  } | null;
  /** True when the bend before is under 20°: only the flag or the pencil line serves. */
  readonly flagOnly: boolean;
}

/** A signed dimension to check before a bend is pulled, and the end-to-end after it. */
export interface BendCheck {
  /** In working order. */
  readonly bend: number;
  /**
   * After the turn for this bend and before pulling it: the START end over the tool plane, mm. Positive on the
   * side `travel × toward-the-former` points to: seen from START with the former at 12, the right. `null` for bend 1.
   */
  readonly over: number | null;
  /** What `over` would be, had this turn been made the wrong way. */
  readonly overIfWrongWay: number | null;
  /**
   * True when the wrong way reads at least 3 mm different: this check can tell. When it is false and there is a turn
   * other than a half, the height of the last leg (`turnCheck.height`) is the one to print.
   */
  readonly tells: boolean;
  /** As the operator sees it; `null` when in the plane (or bend 1). */
  readonly side: Side | null;
  /** `end A 26 off the tool plane, toward you`; `null` for bend 1. */
  readonly words: string | null;
  /** After this bend: START end to FREE end as they are then, sawn ends with their spare. */
  readonly endToEnd: number;
}

/** A height of a finished tube lying with the plane of one bend flat. */
export interface FlatHeight {
  /** Working number of the bend that lies flat, curving to the LEFT for someone walking from START to FREE. */
  readonly flatBend: number;
  /** What is measured: the centre of an end, or the middle of a bend (working number). */
  readonly of: { readonly end: EndName } | { readonly bend: number };
  /** mm, positive above. A tube of the other hand reads the opposite. */
  readonly height: number;
  readonly words: string;
}

/** What to check when all bends are made and both ends are finished. */
export interface FinalCheck {
  /** Centre to centre of the finished ends. */
  readonly endToEnd: number;
  /** Two, over the planes of the first and the last bend (of 20° or more); one for one bend, none for a straight tube. */
  readonly heights: readonly FlatHeight[];
}

export interface DimensionChecks {
  readonly rows: readonly BendCheck[];
  readonly final: FinalCheck;
}

/** How far an end comes from where it should, holding the START end and the first plane of bend. */
export interface Miss {
  /** mm */
  readonly distance: number;
  /** mm, START frame: X along travel from START, Y toward the side bend 1 leaves to, Z = X × Y. */
  readonly vector: Vec3;
  /** Angle between the directions of the last straight, radians. */
  readonly direction: number;
}

/** Which end the tape hooks on, and how it is then. */
export interface Hook {
  readonly end: EndName;
  /** `finished`: formed before bending. `sawn`: formed later, or not at all. */
  readonly face: 'finished' | 'sawn';
  /** `FLARED FACE of A` */
  readonly words: string;
}

/** One bend with the numbers rounded for the bench, and what they give. */
export interface BenchRow {
  readonly bend: number;
  readonly bendFromA: number;
  readonly exact: PlanRow;
  /** Rounded, from what the tape hooks on. */
  readonly mark: number;
  /** Rounded. */
  readonly measured: MeasuredMark;
  /** Rounded, radians and degrees; half turn +180. `null` for the first. */
  readonly turn: number | null;
  readonly turnDeg: number | null;
  /** Rounded. */
  readonly dial: number;
  readonly dialDeg: number;
  readonly calibrated: boolean;
  /** What the rounded numbers give. */
  readonly angle: number;
  readonly radius: number;
  readonly straightBefore: number;
  readonly words: TurnWords;
  /** How to check the turn; `null` for the first bend. */
  readonly turnCheck: TurnChecks | null;
  /** Of the line as the rounded numbers give it. */
  readonly check: BendCheck;
  /** The pencil line, radians clockwise seen from START, 0 at the former: before and after the turn. */
  readonly pencil: { readonly before: number; readonly after: number };
  /** For a turn near half: the miss at FREE were it made exactly half ("flat jog"). */
  readonly flatJog: Miss | null;
}

/** The plan as it is printed and done: rounded, worked again from the rounded numbers, in words. */
export interface BenchPlan {
  readonly from: EndName;
  readonly free: EndName;
  readonly unit: LengthStyle;
  /** Marks and lengths are rounded to this: 0.5 mm, or 1/32, 1/16 or 0.01 in. */
  readonly step: number;
  /** "OPPOSITE HAND" for a mirrored line. */
  readonly hand: 'AS DRAWN' | 'OPPOSITE HAND';
  /** `null` also when what the job says of it cannot be. */
  readonly bench: Bench | null;
  readonly hook: Hook;
  readonly rows: readonly BenchRow[];
  /** Rounded. */
  readonly cutLength: number;
  /** Rounded developed length: "finished 701". */
  readonly finishedLength: number;
  /** As the rounded numbers give it. */
  readonly lastStraight: number;
  /** The line as the rounded numbers give it, in the START frame (see Miss). */
  readonly centreline: Centreline;
  /** What rounding does to the FREE end. */
  readonly miss: Miss;
  readonly final: FinalCheck;
  readonly order: BenchOrder;
}

export type StepKind =
  | 'saw'
  | 'tag'
  | 'pencil-line'
  | 'trim'
  | 'nut'
  | 'sleeve'
  | 'form'
  | 'hook'
  | 'mark'
  | 'bend'
  | 'check';

/** One thing to do, in order. */
export interface OrderStep {
  readonly kind: StepKind;
  readonly end: EndName | null;
  /** mm: the length to saw, or for a trim the distance `from` says. */
  readonly distance: number | null;
  /** `SAW 772 (finished 701)` */
  readonly words: string;
  /** What would go wrong when left for later: `before END A is flared, or it cannot go on`. */
  readonly because: string | null;
}

/** Where a nut and a sleeve stay: on the straight of their own end. Distances from the finished end. */
export interface Park {
  readonly end: EndName;
  readonly part: 'nut' | 'sleeve';
  readonly length: number;
  /** Near face of the part while the tube is bent (formed before) or the end formed (formed after). */
  readonly park: number;
  /** Where its own straight ends: its far face must not pass here. */
  readonly straight: number;
  /** Radius of bend a nut passes, about L²/(8·slack); `null` when the bore is not given. */
  readonly passesRadius: number | null;
  /** False when the part is longer than its straight, with the other one on it. */
  readonly fits: boolean;
  readonly words: string;
}

/** The order at the bench. */
export interface BenchOrder {
  /** All of it. The first ones, up to and with `hook`, are the "before you bend" box. */
  readonly steps: readonly OrderStep[];
  readonly parks: readonly Park[];
  readonly hook: Hook;
  /** From the end of the last bend to where FREE is sawn off, before forming; `null` when nothing is trimmed. */
  readonly trim: number | null;
  /** Things worth saying in so many words, e.g. that nothing is left to trim. */
  readonly notes: readonly string[];
}
