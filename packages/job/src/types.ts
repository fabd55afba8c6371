/** A Line is one tube after `resolve`: nothing left to look up. Millimetres and radians throughout. */
import type { AttitudeSet, DrainEnd, MachineAxes, Piece, Solid, Vec3 } from '@runback/geometry';
import type { Bleed, Duty, Fluid } from './fluid-types.ts';
import type { Run, Stick } from './stick-types.ts';

/** A figure with where it came from. */
export interface Figure {
  readonly value: number;
  /** Published source, "common practice, no source", "from memory", or "the job". */
  readonly source: string;
  /** Path in the job file that set it, e.g. `lines[0].drain.minSlope`; `null` when it is from the catalogue. */
  readonly path: string | null;
}

export type JobUnit = 'mm' | 'in';

/** How lengths are printed for the bench: mm, inches in 1/32 (`in`), in 1/16, or in hundredths. */
export type LengthStyle = JobUnit | 'in-16' | 'in-decimal';

export interface Material {
  readonly id: string;
  readonly name: string;
  /** kg/m³ */
  readonly density: Figure | null;
  /** MPa */
  readonly youngs: Figure | null;
  /** MPa, annealed or as bent */
  readonly yield: Figure | null;
  /** 1/K */
  readonly expansion: Figure | null;
  /** Least tensile strength, MPa. */
  readonly strength: Figure | null;
  /** Allowable stress of a piping code near room temperature, MPa. */
  readonly allowable: Figure | null;
  /** Short cautions for the sheet, e.g. "Stainless: do not bend back." */
  readonly cautions: readonly string[];
}

export interface Tube {
  readonly id: string;
  readonly od: number;
  readonly wall: number;
  readonly bore: number;
  readonly material: Material;
  /** Length of a stick or coil, mm. */
  readonly stock: number | null;
  readonly path: string;
}

export interface Die {
  readonly od: number;
  readonly radius: number;
  readonly minStraight: Figure | null;
  readonly minTail: Figure | null;
  /** Of the dial, radians. */
  readonly maxAngle: Figure | null;
  /** dial = factor·bend + fixed; fixed in radians. `null` until calibrated. */
  readonly springBack: { readonly factor: number; readonly fixed: number; readonly path: string } | null;
  /** mm the tube grows per radian bent. */
  readonly stretch: number;
  readonly markOffset: number;
  readonly path: string;
}

/** How the operator stands and what the tool is like; decides the turn words. */
export interface Bench {
  readonly stand: 'side' | 'behind-free' | 'at-start';
  readonly startOn: 'left' | 'right';
  readonly plane: 'flat' | 'upright';
  readonly former: 'near' | 'far' | 'above' | 'below';
  readonly moves: 'tube' | 'bender';
  /** The check of a turn that the sheet prints where it serves: a flag on the tube, a gauge on the last leg, or that leg's height. Default the flag. */
  readonly turnCheck?: 'flag' | 'gauge' | 'height';
}

export interface Bender {
  readonly id: string;
  readonly dies: readonly Die[];
  /** `null`: the job does not say how the operator stands. */
  readonly bench: Bench | null;
  readonly path: string;
}

export interface Nut {
  readonly length: number;
  readonly bore: number | null;
  readonly acrossFlats: number | null;
}

export interface FlareSize {
  /** Smallest diameter of the finished flare, mm. */
  readonly diameter: Figure;
  /** Thickest wall it is made on, mm. */
  readonly maxWall: Figure;
}

export interface EndFitting {
  readonly id: string;
  readonly name: string;
  /** Tube that forming this end uses up, mm. */
  readonly uses: Figure;
  /** Straight the forming bar needs behind the formed end, mm, besides nut and sleeve (0: not formed). */
  readonly bar: Figure;
  /** True when a formed end stops a nut from coming off over it (flares, beads). */
  readonly traps: boolean;
  /** Sizes of this flare on this tube; 'no row' when its table has no such tube, `null` when it has no table. */
  readonly flare: FlareSize | 'no row' | null;
  readonly cautions: readonly string[];
}

export interface LineEnd {
  readonly fitting: EndFitting;
  /** Ids of the surroundings this end joins: their clearance is not judged within `free` of the end. */
  readonly joins: readonly string[];
  readonly free: number;
  /** Unit vector out of the port into the line, or null. */
  readonly direction: Vec3 | null;
  /** Misfit the fitting forgives, radians, or null. */
  readonly misfit: Figure | null;
  /** Extra length cut off last, mm. */
  readonly spare: Figure;
  readonly nut: Nut | null;
  readonly sleeve: { readonly length: number } | null;
  /** Formed before or after bending. */
  readonly flareWhen: 'before' | 'after';
  /** `rigid` unless the job says the far side can move (a hose). */
  readonly rigid: boolean;
  /** Smallest inside diameter of what is on this end, where it is smaller than the bore: a lip. mm. */
  readonly opening: number | null;
  readonly path: string;
}

export interface Corner {
  readonly at: Vec3;
  readonly radius: number;
  /** Where the radius was said. */
  readonly radiusSource: string;
  readonly die: Die | null;
  readonly note: string | null;
  /** `lines[0].points[2]`: for a mirrored line the point of the line it mirrors. */
  readonly path: string;
}

export type KeepOffReason = 'hot' | 'moving' | 'fixed' | 'wiring';

export interface Surrounding {
  readonly id: string;
  readonly solid: Solid;
  readonly because: KeepOffReason | null;
  readonly keepOff: Figure;
  readonly path: string;
}

export interface Service {
  readonly id: string;
  readonly name: string;
  /** Lives by its fall: a line of it without a drain end is a note. */
  readonly drains: boolean;
  /** Is filled and bled: air that stays at a high point matters. */
  readonly bleeds: boolean;
  readonly cautions: readonly string[];
  /** Check ids this service leaves out or softens to a note, with the reason. */
  readonly notes: readonly { readonly check: string; readonly reason: string }[];
}

export interface Drain {
  readonly to: DrainEnd;
  /** At rest, radians. */
  readonly minSlope: Figure;
  /** In every attitude, strictly above, radians. */
  readonly minSlopeTilted: Figure;
}

export interface Mirror {
  readonly of: string;
  readonly axis: 0 | 1 | 2;
  readonly offset: number;
}

/** One tube from end A to end Z. */
export interface Line {
  readonly id: string;
  readonly name: string;
  /** `lines[0]` */
  readonly path: string;
  readonly title: string;
  readonly revision: string | null;
  readonly units: JobUnit;
  readonly service: Service;
  readonly quantity: number;
  /** Set when this line is the opposite hand of another. */
  readonly mirror: Mirror | null;
  readonly tube: Tube;
  readonly bender: Bender | null;
  /** All points from A to Z; the first and the last have radius 0. */
  readonly corners: readonly Corner[];
  readonly endA: LineEnd;
  readonly endZ: LineEnd;
  readonly drain: Drain | null;
  /** `null`: not filled and bled, so air that stays is not judged. */
  readonly bleed: Bleed | null;
  readonly fluid: Fluid | null;
  readonly duty: Duty;
  /** What goes through this line alone; a stick through several belongs to their run. */
  readonly stick: Stick | null;
  readonly attitudes: AttitudeSet;
  readonly axes: MachineAxes;
  readonly clearance: {
    readonly self: Figure;
    readonly lines: Figure;
    /** By surrounding id; overrides its keepOff. */
    readonly to: Readonly<Record<string, Figure>>;
  };
  readonly surroundings: readonly Surrounding[];
  /** Distances from finished end A along the centreline, mm; `null` when the job gives none. */
  readonly clips: readonly number[] | null;
  readonly clipSpacing: Figure | null;
  /** Limits for estimates, with their sources: smallest D of bend, flattening. */
  readonly bendLimits: { readonly minRadiusOverOd: Figure | null };
}

export interface ResolvedJob {
  readonly title: string;
  readonly revision: string | null;
  readonly units: JobUnit;
  readonly axes: MachineAxes;
  readonly lines: readonly Line[];
  readonly runs: readonly Run[];
  readonly surroundings: readonly Surrounding[];
  /** Short checksum of the job text, for the foot of the sheet. */
  readonly checksum: string;
}

export type { Piece };
