/** What the scene is given and what it tells. Millimetres, radians and machine axes; pixels are CSS pixels. */
import type { LineProfile, MachineAxes, ProfileFall, Vec3, WorkedJob } from 'runback';
import type { ColourMode, KeepOffShown, PocketsNow, Projection, Selection, Tilt } from '../store/types.ts';

/** What a dragged corner is held to: nothing, an axis of the job, or one of the legs beside it. */
export type AxisLock = 'x' | 'y' | 'z' | 'leg' | null;

/** Colours as CSS writes them. */
export interface Theme {
  readonly bg: string;
  readonly grid: string;
  readonly ink: string;
  readonly tube: string;
  readonly tubeOther: string;
  readonly pass: string;
  readonly note: string;
  readonly fail: string;
  readonly hot: string;
  readonly moving: string;
  readonly fixed: string;
  readonly wiring: string;
  readonly keepoff: string;
  readonly select: string;
  readonly bead: string;
}

/** Room at each side of the canvas that controls lie over. */
export interface Inset {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface SceneLooks {
  readonly projection: Projection;
  readonly keepOff: KeepOffShown;
  /** Dragged corners go to whole steps of this; 0: free. */
  readonly snap: number;
}

export interface SceneState {
  readonly job: WorkedJob;
  readonly lineId: string;
  readonly axes: MachineAxes;
  readonly tilt: Tilt;
  readonly colour: ColourMode;
  readonly profile: LineProfile | null;
  readonly falls: readonly ProfileFall[] | null;
  /** What stays in the chosen line as it is tipped now. */
  readonly pockets: PocketsNow | null;
  /** Where the drop of the pour test is, mm from end A. */
  readonly drop: number | null;
  readonly selection: Selection | null;
  readonly bead: number | null;
  readonly looks: SceneLooks;
  readonly axisLock: AxisLock;
  readonly theme: Theme;
  readonly inset: Inset;
  readonly reducedMotion: boolean;
}

/** Where to look from, in machine axes as they lie when level. `corner`: from above the side the line is on. */
export type ViewName = 'forward' | 'rear' | 'left' | 'right' | 'above' | 'below' | 'corner';

export type DragPhase = 'start' | 'move' | 'end';

export interface CornerDrag {
  /** Index of the point, 0 = end A. */
  readonly index: number;
  readonly at: Vec3;
  /** The same for all moves of one drag. */
  readonly gesture: string;
  readonly phase: DragPhase;
}

export interface SceneEvents {
  onSelect(selection: Selection | null): void;
  onBead(at: number | null): void;
  /** A pointer passes over a place of the chosen line; `null`: over none. */
  onPeek(at: number | null): void;
  onDrag(drag: CornerDrag): void;
  onChooseLine(id: string): void;
}

export interface SceneStats {
  readonly geometries: number;
  readonly textures: number;
  readonly programs: number;
  readonly calls: number;
}

export interface SceneHandle {
  show(state: SceneState): void;
  fit(what?: 'line' | 'all'): void;
  /** Fits again what was fitted last, unless a hand has turned the camera since. */
  settle(): void;
  view(name: ViewName): void;
  /** Where a point (machine axes) is on the canvas, px from its left top corner. */
  project(point: Vec3): readonly [number, number];
  /** Colour of the picture there, 0–255, drawn anew for it. */
  pixel(x: number, y: number): readonly [number, number, number];
  /** Turns the camera about what it looks at, px of a pointer's way. */
  orbit(dx: number, dy: number): void;
  pan(dx: number, dy: number): void;
  /** Above 1: nearer. */
  zoom(factor: number): void;
  /** Distance of two lines of the ground grid, mm. */
  gridStep(): number;
  stats(): SceneStats;
  resize(): void;
  dispose(): void;
}
