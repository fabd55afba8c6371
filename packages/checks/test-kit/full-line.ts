/** A line whose job says all there is to say: metal, liquid, duty. Round figures, so that answers can be worked by hand. */
import type { Duty, Fluid, Line, Material } from '@runback/job';
import { aLine, figure, type LineSpec } from '../../../tests/helpers/a-line.ts';

export const METAL = {
  density: figure(8000),
  youngs: figure(200_000),
  yield: figure(210),
  expansion: figure(16 / 1_000_000),
  strength: figure(500),
  allowable: figure(120),
} as const satisfies Partial<Material>;

export const OIL: Fluid = {
  id: 'oil',
  name: 'oil',
  density: figure(900),
  viscosity: figure(40),
  surfaceTension: figure(30),
};

export interface FullSpec extends LineSpec {
  readonly metal?: Partial<Material>;
  readonly fluid?: Fluid | null;
  readonly duty?: Partial<Duty>;
  readonly bleed?: Line['bleed'];
}

export function fullLine({ metal = METAL, fluid = OIL, duty = {}, bleed, ...spec }: FullSpec): Line {
  const line = aLine(spec);
  return {
    ...line,
    tube: { ...line.tube, material: { ...line.tube.material, ...metal } },
    fluid,
    duty: { ...line.duty, ...duty },
    bleed: bleed === undefined ? line.bleed : bleed,
  };
}
