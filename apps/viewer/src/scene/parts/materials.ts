/** Every surface and stroke of the scene, made once for a theme. */
import {
  AlwaysStencilFunc,
  BackSide,
  Color,
  DoubleSide,
  GreaterDepth,
  LineBasicMaterial,
  LineDashedMaterial,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  MeshPhongMaterial,
  NotEqualStencilFunc,
  ReplaceStencilOp,
} from 'three';
import { blend, type Inks, tintOf } from './inks.ts';
import type { Surrounding } from './kinds.ts';
import { shellMaterial } from './shell-material.ts';
import { keepWide, type PixelUniform } from './wide.ts';

const LEAST_CHOSEN_PX = 1.9;
const LEAST_OTHER_PX = 0.8;

/** Marks the pixels where the chosen tube is seen, so that its ghost is not drawn over itself. */
const CHOSEN = {
  stencilWrite: true,
  stencilRef: 1,
  stencilFunc: AlwaysStencilFunc,
  stencilZPass: ReplaceStencilOp,
};
/** Only beside it; what is drawn so keeps the next of the kind out too. */
const BESIDE_CHOSEN = {
  stencilWrite: true,
  stencilRef: 1,
  stencilFunc: NotEqualStencilFunc,
  stencilZPass: ReplaceStencilOp,
};

/** Surroundings stand back behind the lines: a part of the ground's colour is mixed into theirs. */
const FADED = 0.42;

export type Materials = ReturnType<typeof makeMaterials>;

function tubes(inks: Inks, pixel: PixelUniform) {
  const gloss = new Color(0.16, 0.16, 0.16);
  const wide = { pixel, least: LEAST_CHOSEN_PX };
  const hidden = { transparent: true, depthWrite: false, depthFunc: GreaterDepth, ...BESIDE_CHOSEN };
  return {
    chosen: keepWide(
      new MeshPhongMaterial({ vertexColors: true, specular: gloss, shininess: 38, ...CHOSEN }),
      wide,
    ),
    /** Where the chosen tube runs behind something. */
    ghost: keepWide(new MeshBasicMaterial({ vertexColors: true, opacity: 0.5, ...hidden }), wide),
    stale: keepWide(
      new MeshLambertMaterial({ color: inks.tubeOther, transparent: true, opacity: 0.4, depthWrite: false }),
      wide,
    ),
    outline: keepWide(new MeshBasicMaterial({ color: inks.select, side: BackSide }), { ...wide, grow: 3.4 }),
    other: keepWide(
      new MeshPhongMaterial({ color: inks.tubeOther, vertexColors: true, specular: gloss, shininess: 20 }),
      { pixel, least: LEAST_OTHER_PX },
    ),
  };
}

function solids(inks: Inks) {
  const faces = new Map<Surrounding['because'], Material>();
  const edges = new Map<Surrounding['because'], Material>();
  for (const because of ['hot', 'moving', 'fixed', 'wiring', null] as const) {
    const tint = tintOf(inks, because);
    // Pushed back a little, so that the edges on them are whole.
    const push = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };
    faces.set(because, new MeshLambertMaterial({ color: blend(tint, inks.bg, FADED), ...push }));
    edges.set(because, new LineBasicMaterial({ color: blend(tint, inks.ink, 0.34) }));
  }
  const plate = { transparent: true, depthWrite: false, side: DoubleSide };
  return {
    face: (because: Surrounding['because']) => faces.get(because)!,
    edge: (because: Surrounding['because']) => edges.get(because)!,
    faces,
    edges,
    edgeSelected: new LineBasicMaterial({ color: inks.select }),
    plate: new MeshBasicMaterial({ color: inks.fixed, opacity: 0.16, ...plate }),
    shell: shellMaterial(inks.keepoff),
    shellPlate: new MeshBasicMaterial({ color: inks.keepoff, opacity: 0.1, ...plate }),
  };
}

function strokes(inks: Inks) {
  const over = { transparent: true, depthTest: false, depthWrite: false };
  return {
    polygon: new LineDashedMaterial({
      color: inks.ink,
      opacity: 0.5,
      dashSize: 5,
      gapSize: 4,
      ...over,
      ...BESIDE_CHOSEN,
    }),
    misfit: new LineBasicMaterial({ color: inks.fail, ...over }),
    guide: new LineBasicMaterial({ color: inks.select, opacity: 0.8, ...over }),
    plumb: new LineBasicMaterial({ color: inks.bead, opacity: 0.55, transparent: true }),
    foot: new MeshBasicMaterial({ color: inks.bead, opacity: 0.55, transparent: true, side: DoubleSide }),
  };
}

export function makeMaterials(inks: Inks, pixel: PixelUniform) {
  const metal = blend(inks.tubeOther, inks.bg, 0.25);
  const all = {
    ...tubes(inks, pixel),
    ...solids(inks),
    ...strokes(inks),
    fitting: new MeshPhongMaterial({ color: metal, specular: new Color(0.2, 0.2, 0.2), shininess: 30 }),
    nut: new MeshPhongMaterial({
      color: blend(metal, inks.ink, 0.12),
      specular: new Color(0.2, 0.2, 0.2),
      shininess: 30,
      flatShading: true,
    }),
    bead: new MeshPhongMaterial({ color: inks.bead, specular: new Color(0.4, 0.4, 0.4), shininess: 60 }),
    beadHidden: new MeshBasicMaterial({
      color: inks.bead,
      transparent: true,
      opacity: 0.3,
      depthFunc: GreaterDepth,
      depthWrite: false,
      ...BESIDE_CHOSEN,
    }),
    flow: new MeshBasicMaterial({
      vertexColors: true,
      side: DoubleSide,
      depthTest: false,
      depthWrite: false,
      transparent: true,
    }),
  };
  return { ...all, dispose: () => disposeAll(all) };
}

function disposeAll(all: Readonly<Record<string, unknown>>): void {
  for (const one of Object.values(all)) {
    if (one instanceof Map) for (const material of one.values()) (material as Material).dispose();
    else if (typeof one === 'object' && one !== null && 'dispose' in one) (one as Material).dispose();
  }
}
