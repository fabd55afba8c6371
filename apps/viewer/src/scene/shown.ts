/** Works out once for all layers what is to be seen. */
import { type Centreline, distance, dot, scale, type Vec3, type WorkedLine } from 'runback';
import { type Pose, tiltMatrix, toWorld, upOf } from './math/tilt.ts';
import { MadeFrom } from './parts/geometry.ts';
import { type Inks, inksOf } from './parts/inks.ts';
import type { Shown } from './parts/kinds.ts';
import { Labels } from './parts/labels.ts';
import { type Materials, makeMaterials } from './parts/materials.ts';
import type { PixelUniform } from './parts/wide.ts';
import { type Ball, ballRound, type Cloud, reachOf, solidCloud, tubeCloud } from './shape/extent.ts';
import type { SceneState } from './types.ts';

/** Farther than this many radii from where coordinates count from, they count anew: floats are fine near zero only. */
const FAR_RADII = 3;
const NOTHING: Ball = { centre: [0, 0, 0], radius: 100 };
const LEAST_RADIUS = 10;

export interface Inked {
  readonly inks: Inks;
  readonly materials: Materials;
  readonly labels: Labels;
}

export class Shower {
  private readonly pixel: PixelUniform;
  private readonly themes = new MadeFrom();
  private readonly lastGood = new Map<string, Centreline>();
  private inked: Inked | null = null;
  private old: Inked | null = null;
  private origin: Vec3 | null = null;
  private title: string | null = null;

  constructor(pixel: PixelUniform) {
    this.pixel = pixel;
  }

  work(state: SceneState): Shown {
    const line = state.job.lines.find((one) => one.line.id === state.lineId) ?? state.job.lines[0]!;
    if (this.title !== state.job.title) this.forget(state.job.title);
    const { centreline, stale } = this.centrelineOf(line);
    const clouds = cloudsOf(state, line);
    const ball = ballRound(clouds) ?? NOTHING;
    const radius = Math.max(ball.radius, LEAST_RADIUS);
    const pose: Pose = {
      turn: tiltMatrix(state.axes, state.tilt),
      origin: this.originFor(ball.centre, radius),
    };
    const middle = toWorld(pose, ball.centre);
    const ground = groundUnder(clouds, pose);
    return { state, line, centreline, stale, pose, ground, middle, radius, clouds, ...this.inksFor(state) };
  }

  /** Materials of a theme that is no longer shown; let go once every layer has taken the new ones. */
  letGo(): void {
    this.old?.materials.dispose();
    this.old?.labels.dispose();
    this.old = null;
  }

  dispose(): void {
    this.letGo();
    this.old = this.inked;
    this.letGo();
  }

  private forget(title: string): void {
    this.title = title;
    this.origin = null;
    this.lastGood.clear();
  }

  private centrelineOf({ line, centreline }: WorkedLine): Pick<Shown, 'centreline' | 'stale'> {
    if (centreline) {
      this.lastGood.set(line.id, centreline);
      return { centreline, stale: false };
    }
    return { centreline: this.lastGood.get(line.id) ?? null, stale: true };
  }

  private originFor(centre: Vec3, radius: number): Vec3 {
    if (this.origin === null || distance(this.origin, centre) > FAR_RADII * radius) this.origin = centre;
    return this.origin;
  }

  private inksFor({ theme }: SceneState): Inked {
    if (this.themes.changed(theme) || this.inked === null) {
      this.old = this.inked;
      const inks = inksOf(theme);
      this.inked = { inks, materials: makeMaterials(inks, this.pixel), labels: new Labels(inks) };
    }
    return this.inked;
  }
}

function cloudsOf({ job }: SceneState, chosen: WorkedLine): readonly Cloud[] {
  const tubes = job.lines.map(({ line, centreline }) =>
    centreline
      ? tubeCloud(centreline.pieces, line.tube.od / 2)
      : { points: line.corners.map(({ at }) => at), radius: line.tube.od / 2 },
  );
  const solids = chosen.line.surroundings.map(({ solid }) => solidCloud(solid));
  return [...tubes, ...solids.filter((cloud) => cloud !== null)];
}

/** Height (world) of the lowest thing there is. */
function groundUnder(clouds: readonly Cloud[], pose: Pose): number {
  const up = upOf(pose);
  const down = scale(up, -1);
  const lowest = clouds.map((cloud) => -reachOf(cloud, down) - dot(pose.origin, up));
  return lowest.length === 0 ? -NOTHING.radius : Math.min(...lowest);
}
