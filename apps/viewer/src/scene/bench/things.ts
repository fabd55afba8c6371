/** The solid things of a bench picture: tube, former, arrows, bench top. */
import { addScaled, cross, distance, scale, sub, unit, type Vec3 } from 'runback';
import {
  ConeGeometry,
  DoubleSide,
  ExtrudeGeometry,
  GridHelper,
  Group,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Object3D,
  Quaternion,
  Shape,
  Vector3,
} from 'three';
import type { BenchColours } from './colours.ts';
import type { Arrow, BenchPlaces } from './places.ts';
import { band, bar, ringsAlong } from './sweep.ts';

const vector = (v: Vec3): Vector3 => new Vector3(v[0], v[1], v[2]);

export interface BenchThings {
  readonly whole: Group;
  /** What turns when the turn is shown: the finished tube, or the bender. */
  readonly turning: Group;
}

export function benchThings(places: BenchPlaces, colours: BenchColours): BenchThings {
  const whole = new Group();
  const turning = new Group();
  const carried = places.pose.formerBefore !== null;
  const tube = finishedTube(places, colours);
  const former = formerOf(places, places.pose.former, new MeshLambertMaterial({ color: colours.tool }));
  whole.add(
    benchTop(places, colours),
    ...palePart(places, colours),
    ...places.ghost.map(
      (dash) => new Mesh(bar(dash, places.od * 0.42), new MeshLambertMaterial({ color: colours.tube })),
    ),
    ...places.arrows.map((arrow) => arrowOf(arrow, places.od * 0.3, colours)),
    turning,
  );
  if (places.sweep) whole.add(arrowOf(places.sweep, places.od * 0.12, colours));
  // The stock beyond the bend turns with the tube: its pencil line shows it.
  turning.add(carried ? former : tube);
  whole.add(carried ? tube : former);
  return { whole, turning };
}

function finishedTube(places: BenchPlaces, colours: BenchColours): Group {
  const group = new Group();
  const metal = new MeshLambertMaterial({ color: colours.tube });
  const pencil = new MeshBasicMaterial({ color: colours.ink, side: DoubleSide });
  let side = places.pencil;
  for (const stretch of [...places.after, places.stock]) {
    group.add(new Mesh(bar(stretch, places.od / 2), metal));
    group.add(new Mesh(band(stretch, { side, radius: places.od / 2 }), pencil));
    side = ringsAlong(stretch, side).at(-1)!.side;
  }
  return group;
}

/** Where the tube was before the turn, or the bender. */
function palePart(places: BenchPlaces, colours: BenchColours): readonly Object3D[] {
  const pale = new MeshLambertMaterial({
    color: colours.pale,
    transparent: true,
    opacity: 0.5,
    depthWrite: false,
  });
  const { formerBefore } = places.pose;
  return [
    ...(places.before ?? []).map((stretch) => new Mesh(bar(stretch, places.od * 0.46), pale)),
    ...(formerBefore ? [formerOf(places, formerBefore, pale)] : []),
  ];
}

/** A half-round on the side the free leg goes to, the tube against its rim. */
function formerOf({ pose, radius, od }: BenchPlaces, side: Vec3, material: MeshLambertMaterial): Group {
  const rim = Math.max(radius - od / 2, radius * 0.4);
  const wide = od * 1.3;
  const shape = new Shape();
  // In the plane of the tool: x along travel, y from the tube to the former, the axis of the former at the origin.
  shape.moveTo(-rim * 0.12, rim);
  shape.lineTo(-rim * 0.12, -rim * 0.99);
  shape.absarc(0, 0, rim, -Math.PI / 2, Math.PI / 2, false);
  const body = new ExtrudeGeometry(shape, { depth: wide, bevelEnabled: false, curveSegments: 40 });
  body.translate(0, 0, -wide / 2);
  const mesh = new Mesh(body, material);
  const axis = cross(pose.travel, side);
  mesh.applyMatrix4(
    new Matrix4()
      .makeBasis(vector(pose.travel), vector(side), vector(axis))
      .setPosition(vector(scale(side, radius))),
  );
  const group = new Group();
  group.add(mesh);
  return group;
}

function arrowOf({ shaft, tip }: Arrow, thick: number, colours: BenchColours): Group {
  const material = new MeshLambertMaterial({ color: colours.arrow });
  const neck = shaft.at(-1)!;
  const long = distance(neck, tip);
  const cone = new Mesh(new ConeGeometry(thick * 2.6, long, 24), material);
  cone.quaternion.copy(fromTo([0, 1, 0], sub(tip, neck)));
  cone.position.copy(vector(addScaled(neck, sub(tip, neck), 0.5)));
  const group = new Group();
  group.add(new Mesh(bar(shaft, thick), material), cone);
  return group;
}

const fromTo = (from: Vec3, to: Vec3): Quaternion =>
  new Quaternion().setFromUnitVectors(vector(unit(from)), vector(unit(to)));

/** A grid under everything, so that away reads as away. */
function benchTop({ frame, floor, radius }: BenchPlaces, colours: BenchColours): GridHelper {
  const low = [0, 1].map((i) => Math.min(...frame.map((place) => place[i]!)));
  const high = [0, 1].map((i) => Math.max(...frame.map((place) => place[i]!)));
  const size = Math.max(high[0]! - low[0]!, high[1]! - low[1]!) * 1.5;
  const lines = Math.max(6, Math.min(24, Math.round(size / radius)));
  const grid = new GridHelper(size, lines, colours.grid, colours.grid);
  grid.rotation.x = Math.PI / 2;
  grid.position.set((low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, floor);
  return grid;
}

/** Frees what the graphics card holds. */
export function freeThings(root: Object3D): void {
  root.traverse((thing) => {
    if (thing instanceof Mesh || thing instanceof GridHelper) {
      thing.geometry.dispose();
      for (const material of [thing.material].flat()) material.dispose();
    }
  });
}
