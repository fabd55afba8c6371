import type { Vec3, WorkedJob, WorkedLine } from 'runback';
import type { Pose } from '../math/tilt.ts';
import type { Cloud } from '../shape/extent.ts';
import type { SceneState } from '../types.ts';
import type { Inks } from './inks.ts';
import type { Labels } from './labels.ts';
import type { Materials } from './materials.ts';

export type Surrounding = WorkedJob['surroundings'][number];

/** What is to be seen now, worked out once for all layers. */
export interface Shown {
  readonly state: SceneState;
  readonly line: WorkedLine;
  /** The chosen line as it is, or as it last could be; `null` when it never could. */
  readonly centreline: WorkedLine['centreline'];
  /** True when that is no longer what the points say. */
  readonly stale: boolean;
  readonly pose: Pose;
  /** Height of the ground in the world. */
  readonly ground: number;
  /** Middle (world) and radius of everything. */
  readonly middle: Vec3;
  readonly radius: number;
  /** Everything that stands or hangs there, machine axes. */
  readonly clouds: readonly Cloud[];
  readonly inks: Inks;
  readonly materials: Materials;
  readonly labels: Labels;
}

/** What a layer needs to know of the camera when a frame is drawn. */
export interface EyeNow {
  readonly pose: Pose;
  /** Of the camera, in the world. Unit. */
  readonly right: Vec3;
  readonly up: Vec3;
  /** From what is seen to the eye. */
  readonly back: Vec3;
  /** mm across a pixel at a place of the world. */
  mmPerPx(world: Vec3): number;
  mmAtDepth(depth: number): number;
  /** Toward the eye from a place of the world, unit. */
  toEye(world: Vec3): Vec3;
  /** How far in front of the eye's plane, mm. */
  depth(world: Vec3): number;
  /** Canvas pixels. */
  project(world: Vec3): readonly [number, number];
}

export interface Layer {
  update(now: Shown): void;
  /** Called before each frame. */
  place?(eye: EyeNow): void;
  dispose(): void;
}

/** What the mesh of a surrounding says of itself. */
export interface SolidData {
  readonly surrounding?: string;
  /** Stands for a half-space. */
  readonly plate?: boolean;
}
