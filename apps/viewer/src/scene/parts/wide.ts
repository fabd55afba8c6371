/** Tubes that are never thinner than a few pixels, so that a brake line is not lost on a long machine. */
import type { Material, WebGLProgramParametersWithUniforms } from 'three';

/** Shared by all materials of a scene; set before each frame. */
export interface PixelUniform {
  /** mm across a pixel: in perspective at 1 mm from the eye. */
  value: number;
}

export interface WideAsk {
  readonly pixel: PixelUniform;
  /** Smallest half width, px. */
  readonly least: number;
  /** Grown by this beyond its surface, px. */
  readonly grow?: number;
}

const DECLARED = 'attribute float tubeRadius;\nuniform float pixelMm;\n';

export function keepWide<M extends Material>(material: M, { pixel, least, grow = 0 }: WideAsk): M {
  const grown = `
    if (tubeRadius > 0.0) {
      float across = pixelMm * (isOrthographic ? 1.0 : -(modelViewMatrix * vec4(position, 1.0)).z);
      transformed += normal * (max(0.0, ${least.toFixed(2)} * across - tubeRadius) + ${grow.toFixed(2)} * across);
    }`;
  material.onBeforeCompile = (shader: WebGLProgramParametersWithUniforms) => {
    shader.uniforms.pixelMm = pixel;
    shader.vertexShader =
      DECLARED + shader.vertexShader.replace('#include <begin_vertex>', `#include <begin_vertex>${grown}`);
  };
  material.customProgramCacheKey = () => `wide ${least} ${grow}`;
  return material;
}
