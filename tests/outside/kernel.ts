/**
 * An outside boundary-representation kernel (Open CASCADE Technology as the npm package replicad-opencascadejs) as
 * a judge of lengths and distances. It shares no code and no method with ours.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Piece, Solid, Vec3 } from '@runback/geometry';
import { norm, scale, sub } from '@runback/geometry';

const PACKAGE = 'replicad-opencascadejs';

// The package types a good part of its own classes as `unknown`; what is used here is named below.
// biome-ignore lint/suspicious/noExplicitAny: the kernel's own types are incomplete
type Any = any;

export interface Kernel {
  /** Length of a path, mm. */
  length(path: readonly Piece[]): number;
  /** Smallest distance from a path to a solid, mm; 0 where they touch or overlap. */
  toSolid(path: readonly Piece[], solid: Solid): number;
  /** Smallest distance between two paths, mm. */
  between(a: readonly Piece[], b: readonly Piece[]): number;
}

/** Loads the kernel (about half a second). */
export async function loadKernel(): Promise<Kernel> {
  const folder = dirname(createRequire(import.meta.url).resolve(PACKAGE));
  const module = await import(join(folder, 'replicad_single.js'));
  const oc: Any = await module.default({ wasmBinary: readFileSync(join(folder, 'replicad_single.wasm')) });
  const pnt = (p: Vec3): Any => new oc.gp_Pnt(p[0], p[1], p[2]);
  const dir = (d: Vec3): Any => new oc.gp_Dir(d[0], d[1], d[2]);

  const edge = (piece: Piece): Any => {
    if (piece.kind === 'straight')
      return new oc.BRepBuilderAPI_MakeEdge(pnt(piece.from), pnt(piece.to)).Edge();
    const circle = new oc.gp_Circ(
      new oc.gp_Ax2(pnt(piece.centre), dir(piece.normal), dir(piece.u)),
      piece.radius,
    );
    return new oc.BRepBuilderAPI_MakeEdge(circle, 0, piece.angle).Edge();
  };

  const wire = (path: readonly Piece[]): Any => {
    const maker = new oc.BRepBuilderAPI_MakeWire();
    for (const piece of path) if (piece.length > 0) maker.Add(edge(piece));
    return maker.Wire();
  };

  const shape = (solid: Solid): Any => {
    switch (solid.kind) {
      case 'sphere':
        return new oc.BRepPrimAPI_MakeSphere(pnt(solid.centre), solid.radius).Shape();
      case 'cylinder': {
        const axis = sub(solid.to, solid.from);
        const ax2 = new oc.gp_Ax2(pnt(solid.from), dir(axis));
        return new oc.BRepPrimAPI_MakeCylinder(ax2, solid.radius, norm(axis)).Shape();
      }
      case 'box': {
        const [x, y, z] = solid.axes;
        const [hx, hy, hz] = solid.half;
        const corner = [scale(x, hx), scale(y, hy), scale(z, hz)].reduce(
          (p, step) => sub(p, step),
          solid.centre,
        );
        const ax2 = new oc.gp_Ax2(pnt(corner), dir(z), dir(x));
        return new oc.BRepPrimAPI_MakeBox(ax2, 2 * hx, 2 * hy, 2 * hz).Shape();
      }
      default:
        throw new RangeError(`kernel: no shape for a ${solid.kind}`);
    }
  };

  const apart = (a: Any, b: Any): number => {
    const found = new oc.BRepExtrema_DistShapeShape(a, b);
    if (!found.IsDone()) throw new Error('kernel: distance not found');
    return found.Value();
  };

  return {
    length: (path) => {
      const properties = new oc.GProp_GProps();
      oc.BRepGProp.LinearProperties(wire(path), properties, false, false);
      return properties.Mass();
    },
    toSolid: (path, solid) => apart(wire(path), shape(solid)),
    between: (a, b) => apart(wire(a), wire(b)),
  };
}
